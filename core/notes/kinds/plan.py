"""What a person means to do with an animal."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar

from core import words
from core.handbook import health
from core.herd.calendar import plan_chores
from core.herd.state import Herd, Intention
from core.notes.checking import already_past, animal_problem, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import withdrawal_caution
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Planned:
    """What a person means to do with an animal."""

    kind: ClassVar[str] = "planned"

    who: Tag
    what: str
    on: date | None = None
    until: date | None = None
    with_: Tag | None = None
    reason: str | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Planned, herd: Herd, today: date) -> Problem | None:
    """An animal that is there, a day to come, and for a breeding a doe and a buck."""
    doe, buck = ("doe", "buck") if fact.what == "breed" else (None, None)
    return worst(
        already_past(fact.until if fact.until is not None else fact.on, today),
        animal_problem(herd, fact.who, today, doe),
        animal_problem(herd, fact.with_, today, buck) if fact.with_ is not None else None,
    )


def apply(fact: Planned, herd: Herd) -> Herd:
    """One more intention; the last word on its stay holds, and one that is to be kept is no longer for sale."""
    animal = herd.find(fact.who)
    if animal is None:
        return herd
    other = herd.find(fact.with_) if fact.with_ is not None else None
    told_on = herd.day or fact.on or fact.until or date.min
    with_ = other.key if other else fact.with_
    plan = Intention(fact.what, told_on, on=fact.on, until=fact.until, with_=with_, reason=fact.reason)
    listing = None if fact.what == "keep" else animal.listing
    return herd.with_animal(replace(animal, intentions=(*animal.intentions, plan), listing=listing))


def reply(fact: Planned, before: Herd, after: Herd) -> tuple[str, ...]:
    """The plan with its days, and a caution where it ends on the table."""
    link = "to" if fact.what == "breed" else "with"
    other = f" {link} {fact.with_}" if fact.with_ is not None else ""
    day = f" on {words.full_day(fact.on)}" if fact.on and not fact.until else ""
    until = f" until {words.full_day(fact.until)}" if fact.until else ""
    line = f"Planned: {fact.what} {fact.who}{other}{day}{until}" + (f" ({fact.reason})" if fact.reason else "")
    remind = "I will remind you then." if fact.on or fact.until else None
    caution = withdrawal_caution(before, fact.who, fact.on or after.day or date.min) if fact.what == "cull" else None
    slaughter = health.SLAUGHTER if fact.what == "cull" else None
    return tuple(each for each in (words.sentence(line), remind, caution, slaughter) if each)


def show(fact: Planned, _herd: Herd) -> str:
    """`plan to breed 7 with 14 on 2027-01-01 until 2027-01-31 because she is ready`."""
    other = f" with {fact.with_}" if fact.with_ is not None else ""
    on = f" on {fact.on.isoformat()}" if fact.on else ""
    until = f" until {fact.until.isoformat()}" if fact.until else ""
    return f"plan to {fact.what} {fact.who}{other}{on}{until}" + (f" because {fact.reason}" if fact.reason else "")


KIND = Kind(
    fact=Planned, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, chores=plan_chores, reply=reply, show=show
)
