"""A placing at a show."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.herd.changes import seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import called, dated, noted, parts, said, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Shown:
    """A placing at a show."""

    kind: ClassVar[str] = "shown"

    who: Tag
    on: date
    placing: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Shown, herd: Herd, today: date) -> Problem | None:
    """An animal that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))


def apply(fact: Shown, herd: Herd) -> Herd:
    """Kept with what was seen of it."""
    return seen(herd, fact.who, fact.on, fact.kind, said(fact))


def reply(fact: Shown, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The placing."""
    return (dated(parts(f"{called(after, fact.who)} shown", fact.placing), fact.on, after),)


def show(fact: Shown, _herd: Herd) -> str:
    """`2026-11-25: 3 shown, placing best of breed`."""
    return noted(fact.on, parts(f"{fact.who} shown", told("placing ", fact.placing)))


KIND = Kind(fact=Shown, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
