"""A chore that has no event of its own was done."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.herd.changes import closed
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import dated, noted, whom
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class ChoreDone:
    """A chore that has no event of its own was done."""

    kind: ClassVar[str] = "done"

    chore: str
    on: date
    who: Tag | None = None
    key: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: ChoreDone, herd: Herd, today: date) -> Problem | None:
    """An animal on the book, where one is named."""
    known = fact.who is None or herd.find(fact.who) is not None
    return worst(not_yet(fact.on, today), None if known else animal_problem(herd, fact.who or "", fact.on))


def apply(fact: ChoreDone, herd: Herd) -> Herd:
    """The chore is closed."""
    return closed(herd, fact.chore, fact.who, fact.key, fact.on)


def reply(fact: ChoreDone, _before: Herd, after: Herd) -> tuple[str, ...]:
    """What is done."""
    who = f" ({whom(after, fact.who)})" if fact.who is not None and fact.who not in fact.chore else ""
    return (dated(f"Done: {fact.chore.replace('_', ' ')}{who}", fact.on, after),)


def show(fact: ChoreDone, _herd: Herd) -> str:
    """`2026-11-25: done for 9 key kindling:9:2026-10-28: trimming nails`."""
    who = f" for {fact.who}" if fact.who is not None else ""
    key = f" key {fact.key}" if fact.key else ""
    return noted(fact.on, f"done{who}{key}: {fact.chore}")


KIND = Kind(fact=ChoreDone, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
