"""The nest box goes in or comes out."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar

from core.herd.changes import of_sex, seen
from core.herd.litters import newest_litter
from core.herd.matings import open_matings
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import chores_of_litter, chores_of_mating, dated, noted, said, to_come
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class NestBoxMoved:
    """The nest box goes in or comes out."""

    kind: ClassVar[str] = "nest_box"

    doe: Tag
    change: str
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: NestBoxMoved, herd: Herd, today: date) -> Problem | None:
    """A doe that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"))


def apply(fact: NestBoxMoved, herd: Herd) -> Herd:
    """In: for her open mating. Out: from under her litter."""
    doe = herd.find(fact.doe)
    if doe is None:
        return herd
    herd = seen(of_sex(herd, fact.doe, "doe"), fact.doe, fact.on, fact.kind, said(fact))
    if fact.change == "in":
        waiting = open_matings(herd, doe.key, fact.on)
        return replace(herd, matings=tuple(replace(m, box_in=fact.on) if m in waiting else m for m in herd.matings))
    litter = newest_litter(herd, doe.key, fact.on)
    return herd.with_litter(replace(litter, box_out=fact.on)) if litter else herd


def reply(fact: NestBoxMoved, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The box, and what comes next."""
    line = dated(f"Doe {fact.doe}: nest box {fact.change}", fact.on, after)
    doe = after.find(fact.doe)
    if doe is None:
        return (line,)
    if fact.change == "in":
        return tuple(each for each in (line, to_come(chores_of_mating(after, doe.key, fact.on), after.day)) if each)
    litter = newest_litter(after, doe.key, fact.on)
    ahead = to_come(chores_of_litter(after, litter, "wean"), after.day) if litter else None
    return tuple(each for each in (line, ahead) if each)


def show(fact: NestBoxMoved, _herd: Herd) -> str:
    """`2026-11-25: nest box in for doe 14`, `nest box out for doe 14`."""
    return noted(fact.on, f"nest box {fact.change} for doe {fact.doe}")


KIND = Kind(fact=NestBoxMoved, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
