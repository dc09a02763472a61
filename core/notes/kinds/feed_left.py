"""What is left in the feed bin."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar

from core.herd.state import Event, Herd
from core.notes.checking import not_yet
from core.notes.kind import Example, Kind
from core.notes.telling import dated, grams, noted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedLeft:
    """What is left in the feed bin."""

    kind: ClassVar[str] = "feed_left"

    grams: int
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: FeedLeft, _herd: Herd, today: date) -> Problem | None:
    """Not in the future."""
    return not_yet(fact.on, today)


def apply(fact: FeedLeft, herd: Herd) -> Herd:
    """The bin as it was found."""
    return replace(herd, feed=(*herd.feed, Event(fact.on, fact.kind, said(fact))))


def reply(fact: FeedLeft, _before: Herd, after: Herd) -> tuple[str, ...]:
    """What is left."""
    return (dated(f"Feed left: {grams(after, fact.grams)}", fact.on, after),)


def show(fact: FeedLeft, _herd: Herd) -> str:
    """`2026-11-25: 54431 g feed left`."""
    return noted(fact.on, f"{fact.grams} g feed left")


KIND = Kind(fact=FeedLeft, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
