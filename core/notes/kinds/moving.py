"""A rabbit is put in another cage."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.herd.changes import changed, seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import called, dated, noted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A rabbit is put in another cage."""

    kind: ClassVar[str] = "moved"

    who: Tag
    cage: str
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Moved, herd: Herd, today: date) -> Problem | None:
    """The animal must be there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))


def apply(fact: Moved, herd: Herd) -> Herd:
    """It lives in that cage now."""
    return changed(seen(herd, fact.who, fact.on, fact.kind, said(fact)), fact.who, cage=fact.cage)


def reply(fact: Moved, _before: Herd, after: Herd) -> tuple[str, ...]:
    """Who lives where now."""
    return (dated(f"{called(after, fact.who)} is in cage {fact.cage}", fact.on, after),)


def show(fact: Moved, _herd: Herd) -> str:
    """`2026-11-25: moved 14 to cage B3`."""
    return noted(fact.on, f"moved {fact.who} to cage {fact.cage}")


KIND = Kind(fact=Moved, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
