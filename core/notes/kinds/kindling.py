"""A doe gives birth."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core import words
from core.handbook import reproduction as figures
from core.herd.calendar import litter_chores
from core.herd.changes import joined, of_sex, with_outcome
from core.herd.litters import litter_born, newest_litter
from core.herd.matings import fitting_matings, open_matings, possible_sires, unused_matings
from core.herd.state import Herd, Litter
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import by_key, by_tag, chores_of_litter, dated, noted, parts, to_come, told
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Kindled:
    """A doe gives birth."""

    kind: ClassVar[str] = "kindled"

    doe: Tag
    on: date
    born: int | None = None
    alive: int | None = None
    dead: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Kindled, herd: Herd, today: date) -> Problem | None:
    """A doe that is there and was bred long enough ago; numbers that add up to a litter."""
    doe = herd.find(fact.doe)
    timely = _breeding_problem(fact, herd, doe.key) if doe is not None and doe.sex != "buck" else None
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"), _count_problem(fact), timely)


def _count_problem(fact: Kindled) -> Problem | None:
    born, alive, dead = fact.born, fact.alive, fact.dead
    if born is None and alive is None:
        return Problem("how_many", f"How many did doe {fact.doe} have?", (), 'Send the number, for example "8" or "8, 2 dead".')
    total = born if born is not None else (alive or 0) + (dead or 0)
    if (dead or 0) > total or (alive or 0) > total:
        text = f"Doe {fact.doe}: {parts(f'{total} born', told('alive ', alive), told('dead ', dead))}. That can't be."
        return Problem("impossible", text, (), _AGAIN)
    if alive is not None and dead is not None and alive + dead != total:
        text = f"Doe {fact.doe}: {total} born, but {alive} alive and {dead} dead make {alive + dead}. Which number is wrong?"
        return Problem("which_number", text, (), _AGAIN)
    if total > figures.LARGEST_LITTER.value:
        return Problem("confirm", f"{total} is a very large litter. Did doe {fact.doe} have {total}?", ("yes", "no"), _AGAIN)
    return None


_AGAIN = 'Send it again, for example "14 kindled 8, 2 dead".'


def _breeding_problem(fact: Kindled, herd: Herd, doe: str) -> Problem | None:
    """Too early for every breeding on the book can't be; too late for all, or none at all, is confirmed."""
    matings = unused_matings(herd, doe, fact.on)
    days = [(fact.on - mating.on).days for mating in matings]
    remedy = f'Answer yes, or send the breeding that is missing: "bred {fact.doe} to 3 on 10/24".'
    if not days:
        earlier = newest_litter(herd, doe, fact.on)
        known = f" She kindled {words.full_day(earlier.born_on)}." if earlier else ""
        text = f"There is no breeding of doe {fact.doe} on the book that this litter could come from.{known} Did she kindle?"
        return Problem("confirm", text, ("yes", "no"), remedy)
    if max(days) < figures.EARLIEST_KINDLING_DAY.value:
        text = f"Doe {fact.doe} was bred {words.full_day(matings[0].on)}, only {max(days)} days before. Is it another doe, or another day?"
        return Problem("impossible", text, (), f'Send the right doe or day, or the earlier breeding: "bred {fact.doe} to 3 on 10/24".')
    if fitting_matings(herd, doe, fact.on):
        return None
    late = min(day for day in days if day >= figures.EARLIEST_KINDLING_DAY.value)
    text = f"That is day {late} after her last breeding that fits: late for a litter. Did doe {fact.doe} kindle?"
    return Problem("confirm", text, ("yes", "no"), remedy)


def question_after(fact: Kindled, herd: Herd) -> Problem | None:
    """What is asked although the birth is recorded: whose kits they are, where several bucks fit. `herd`: before or after the note."""
    doe = herd.find(fact.doe)
    litter = litter_born(herd, doe.key, fact.on) if doe else None
    if doe is None:
        return None
    keys = litter.sires_possible if litter else possible_sires(herd, doe.key, fact.on)
    if len(keys) < 2:
        return None
    bucks = tuple(by_tag(herd, key) for key in keys)
    text = f"Two breedings fit this litter of doe {fact.doe}: buck {words.listed(bucks, 'or')}. Which is the sire? I left it open."
    remedy = f'Send the buck. If one breeding never happened: "undo the breeding of {fact.doe}" and note the right one.'
    return Problem("which_animal", text, bucks, remedy)


def apply(fact: Kindled, herd: Herd) -> Herd:
    """A litter is born: its sire by the calendar, its dam's breedings closed, kits already on the book joined to it."""
    doe = herd.find(fact.doe)
    if doe is None:
        return herd
    herd = of_sex(herd, fact.doe, "doe")
    sires = possible_sires(herd, doe.key, fact.on)
    born, alive = _born_and_alive(fact)
    key = f"{doe.key}@{fact.on}"
    litter = Litter(
        key=key, dam=doe.key, sire=sires[0] if len(sires) == 1 else None, sires_possible=sires, born_on=fact.on,
        born=born, alive=alive, dead=fact.dead, tally=((fact.on, alive),),
    )  # fmt: skip
    herd = _breedings_closed(herd, doe.key, fact.on)
    if key in herd.litters:
        return herd
    herd = herd.with_litter(litter)
    for animal in [each for each in herd.animals.values() if each.dam == doe.key and each.litter is None and each.born]:
        herd = joined(herd, animal) if litter_born(herd, doe.key, animal.born or fact.on) == litter else herd
    return herd


def _born_and_alive(fact: Kindled) -> tuple[int | None, int]:
    """For the book, alive not said is born less dead, and born not said is alive and dead."""
    alive = fact.alive if fact.alive is not None else max(0, (fact.born or 0) - (fact.dead or 0))
    born = fact.born if fact.born is not None or fact.alive is None else fact.alive + (fact.dead or 0)
    return born, alive


def _breedings_closed(herd: Herd, doe: str, on: date) -> Herd:
    """The breedings that fit have kindled, else the last open one has; other open ones are over."""
    waiting = tuple(mating for mating in open_matings(herd, doe, on) if mating.on < on)
    took = fitting_matings(herd, doe, on) or waiting[-1:]
    herd = with_outcome(herd, took, "kindled", on)
    return with_outcome(herd, tuple(mating for mating in waiting if mating not in took), "rebred", on)


def reply(fact: Kindled, _before: Herd, after: Herd) -> tuple[str, ...]:
    """`Doe 14: 8 born, 6 alive, 2 dead.` with sire, day and what is due."""
    doe = after.find(fact.doe)
    litter = litter_born(after, doe.key, fact.on) if doe else None
    born, alive = _born_and_alive(fact)
    dead = f"{fact.dead} dead" if fact.dead is not None else None
    counted = None if born is None else f"{born} born"
    line = dated(f"Doe {fact.doe}: {parts(counted, f'{alive} alive', dead)}", fact.on, after)
    assumed = "Nobody said how many live, so I count them all." if fact.alive is None and fact.dead is None else None
    if litter is None:
        return tuple(each for each in (line, assumed) if each)
    sire = f"Sire: {by_key(after, litter.sire)}." if litter.sire else None
    ahead = to_come(chores_of_litter(after, litter, "check_nest", "nest_box_out"), after.day)
    return tuple(each for each in (line, assumed, sire, ahead) if each)


def show(fact: Kindled, _herd: Herd) -> str:
    """`2026-11-24: doe 14 kindled 8, 6 alive, 2 dead`."""
    born = f" {fact.born}" if fact.born is not None else ""
    alive = None if fact.alive is None else f"{fact.alive} alive"
    dead = None if fact.dead is None else f"{fact.dead} dead"
    return noted(fact.on, parts(f"doe {fact.doe} kindled{born}", alive, dead))


KIND = Kind(
    fact=Kindled, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, chores=litter_chores, reply=reply, show=show
)
