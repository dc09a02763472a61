"""A mark for type, fur, colour, size or the whole animal."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.handbook import asking
from core.herd.changes import seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import called, dated, noted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Scored:
    """A mark for type, fur, colour, size or the whole animal."""

    kind: ClassVar[str] = "scored"

    who: Tag
    trait: str
    score: float
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Scored, herd: Herd, today: date) -> Problem | None:
    """An animal that is there; a score in range."""
    high = asking.SCORE_HIGHEST.value
    text = f"Scores go up to {high:g}; {fact.score:g} is not one. Which is it?"
    off = None if 0 <= fact.score <= high else Problem("which_number", text, (), f'Send it again: "{fact.who} {fact.trait} 4".')
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on), off)


def apply(fact: Scored, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: Scored, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The trait and its mark."""
    return (dated(f"{called(after, fact.who)}: {fact.trait} {fact.score:g}", fact.on, after),)


def show(fact: Scored, _herd: Herd) -> str:
    """`2026-11-25: 33 scored type 4`."""
    return noted(fact.on, f"{fact.who} scored {fact.trait} {fact.score:g}")


KIND = Kind(fact=Scored, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
