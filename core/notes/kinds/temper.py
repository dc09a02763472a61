"""How an animal behaves to people."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.handbook import flags
from core.herd.changes import seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import bad_notes, called, dated, noted, parts, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class TemperShown:
    """How an animal behaves to people."""

    kind: ClassVar[str] = "temper"

    who: Tag
    grade: str
    on: date
    sign: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: TemperShown, herd: Herd, today: date) -> Problem | None:
    """An animal that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))


def apply(fact: TemperShown, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: TemperShown, _before: Herd, after: Herd) -> tuple[str, ...]:
    """How it behaved, and how often it was bad within a year."""
    line = dated(parts(f"{called(after, fact.who)}: {fact.grade} temper", fact.sign), fact.on, after)
    bad = bad_notes(after, fact.who, fact.kind, fact.on) if fact.grade == "bad" else 0
    enough = bad >= flags.BAD_TEMPER_NOTES.value
    return (line, f"That is bad note {bad} in 12 months: it comes up in the digest.") if enough else (line,)


def show(fact: TemperShown, _herd: Herd) -> str:
    """`2026-11-25: 22 temper bad, bit me`."""
    return noted(fact.on, parts(f"{fact.who} temper {fact.grade}", fact.sign))


KIND = Kind(fact=TemperShown, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
