"""A doe is put to a buck."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core import words
from core.herd.calendar import mating_chores
from core.herd.changes import ancestor, mated_again, of_sex
from core.herd.matings import SERVICE_DAYS, open_mating
from core.herd.state import Herd, Mating
from core.notes.checking import animal_problem, not_born, not_yet, was_gone, worst, wrong_sex
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import chores_of_mating, dated, noted, parts, to_come
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Bred:
    """A doe is put to a buck."""

    kind: ClassVar[str] = "bred"

    doe: Tag
    buck: Tag
    on: date
    falls: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Bred, herd: Herd, today: date) -> Problem | None:
    """A doe and a buck that are there; a stud that is not on the book is from elsewhere."""
    buck = herd.find(fact.buck)
    return worst(
        not_yet(fact.on, today),
        animal_problem(herd, fact.doe, fact.on, "doe"),
        worst(wrong_sex(buck, "buck"), was_gone(buck, fact.on), not_born(buck, fact.on)) if buck else None,
    )


def apply(fact: Bred, herd: Herd) -> Herd:
    """One more mating; an earlier open one of another service has come to nothing."""
    doe = herd.find(fact.doe)
    if doe is None:
        return herd
    herd = mated_again(of_sex(herd, fact.doe, "doe"), doe.key, fact.on)
    herd, buck = ancestor(of_sex(herd, fact.buck, "buck"), fact.buck, "buck")
    return herd.with_mating(Mating(doe=doe.key, buck=buck, on=fact.on, falls=fact.falls))


def reply(fact: Bred, before: Herd, after: Herd) -> tuple[str, ...]:
    """The mating, and the days that count from it."""
    falls = f", {words.count(fact.falls, 'fall')}" if fact.falls is not None else ""
    line = dated(f"Doe {fact.doe} bred to {fact.buck}{falls}", fact.on, after)
    doe = after.find(fact.doe)
    if doe is None:
        return (line,)
    stranger = (f"{fact.buck} wasn't on the book: kept as a buck from elsewhere.",) if before.find(fact.buck) is None else ()
    earlier = open_mating(before, doe.key, fact.on)
    ended = earlier is not None and (fact.on - earlier.on).days > SERVICE_DAYS
    again = (f"Her breeding of {words.day(earlier.on)} counts as not taken.",) if earlier and ended else ()
    ahead = to_come(chores_of_mating(after, doe.key, fact.on), after.day)
    return tuple(each for each in (line, *stranger, *again, ahead) if each)


def show(fact: Bred, _herd: Herd) -> str:
    """`2026-11-25: bred doe 15 to buck 3, 2 falls`."""
    falls = None if fact.falls is None else words.count(fact.falls, "fall")
    return noted(fact.on, parts(f"bred doe {fact.doe} to buck {fact.buck}", falls))


KIND = Kind(
    fact=Bred, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, chores=mating_chores, reply=reply, show=show
)
