"""A doe is felt for kits."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar

from core.herd.changes import of_sex, seen, with_outcome
from core.herd.matings import open_mating, open_matings
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import by_tag, chores_of_mating, dated, noted, said, to_come
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Palpated:
    """A doe is felt for kits."""

    kind: ClassVar[str] = "palpated"

    doe: Tag
    result: str
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Palpated, herd: Herd, today: date) -> Problem | None:
    """A doe that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"))


def apply(fact: Palpated, herd: Herd) -> Herd:
    """Felt on her open matings; open ends them."""
    doe = herd.find(fact.doe)
    if doe is None:
        return herd
    herd = seen(of_sex(herd, fact.doe, "doe"), fact.doe, fact.on, fact.kind, said(fact))
    felt = tuple(mating for mating in open_matings(herd, doe.key, fact.on) if mating.on < fact.on)
    known = tuple(replace(m, palpated=(*m.palpated, (fact.on, fact.result))) if m in felt else m for m in herd.matings)
    herd = replace(herd, matings=known)
    if fact.result != "open":
        return herd
    ended = tuple(mating for mating in open_matings(herd, doe.key, fact.on) if mating.on < fact.on)
    return with_outcome(herd, ended, "open", fact.on)


def reply(fact: Palpated, before: Herd, after: Herd) -> tuple[str, ...]:
    """What was felt on which day after the mating, and what follows."""
    doe = after.find(fact.doe)
    mating = open_mating(before, doe.key, fact.on) if doe else None
    age = f", day {(fact.on - mating.on).days} after buck {by_tag(before, mating.buck)}" if mating else ""
    line = dated(f"Doe {fact.doe} palpated {fact.result}{age}", fact.on, after)
    if doe is None or mating is None:
        return (line, "There is no open breeding of hers on the book.")
    if fact.result == "open":
        return (line, "That breeding is closed. She can be bred again.")
    again = "Feel again in a few days." if fact.result == "unsure" else None
    return tuple(each for each in (line, again, to_come(chores_of_mating(after, doe.key, fact.on), after.day)) if each)


def show(fact: Palpated, _herd: Herd) -> str:
    """`2026-11-25: doe 22 palpated open`."""
    return noted(fact.on, f"doe {fact.doe} palpated {fact.result}")


KIND = Kind(fact=Palpated, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
