"""Kits move from one doe to another."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core import words
from core.herd.changes import fostered_in, fostered_out
from core.herd.litters import litter_meant, newest_litter, nursed_litter
from core.herd.state import Herd, Litter
from core.notes.checking import animal_problem, not_yet, too_many, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import dated, kits_left, noted
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Fostered:
    """Kits move from one doe to another."""

    kind: ClassVar[str] = "fostered"

    from_: Tag
    to: Tag
    count: int
    on: date


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: Fostered, herd: Herd, today: date) -> Problem | None:
    """Two does with litters, and no more kits than the first one has."""
    giver, taker = herd.find(fact.from_), herd.find(fact.to)
    there = worst(
        not_yet(fact.on, today),
        animal_problem(herd, fact.from_, fact.on, "doe"),
        animal_problem(herd, fact.to, fact.on, "doe"),
        _same_doe(fact) if giver is not None and giver == taker else None,
    )
    if there or giver is None or taker is None:
        return there
    litter = litter_meant(herd, giver.key, fact.on)
    if litter is None or nursed_litter(herd, taker.key, fact.on) is None:
        return _no_litter(fact.to if litter else fact.from_)
    return too_many(herd, litter, fact.from_, fact.count, fact.on, "moved")


def _same_doe(fact: Fostered) -> Problem:
    return Problem("which_animal", f"From doe {fact.from_} to herself? Which doe took them?", (), 'Send it as "moved 2 kits from 14 to 9".')


def _no_litter(doe: str) -> Problem:
    text = f"Doe {doe} has no litter on the book. Record the move all the same?"
    return Problem("confirm", text, ("yes", "no"), f'Answer yes, or first note the kindling: "{doe} kindled 6 on 3/4".')


def apply(fact: Fostered, herd: Herd) -> Herd:
    """Kits leave one nest for the other; where one is not on the book, the other still counts them."""
    giver, taker = herd.find(fact.from_), herd.find(fact.to)
    old = litter_meant(herd, giver.key, fact.on) if giver else None
    new = _taking(herd, taker.key, fact.on) if taker else None
    if old is not None:
        herd = herd.with_litter(fostered_out(old, fact.on, fact.count, new.key if new else None))
    if new is not None:
        new = herd.litters[new.key]
        herd = herd.with_litter(fostered_in(new, fact.on, fact.count, old.key if old else None))
    return herd


def _taking(herd: Herd, doe: str, on: date) -> Litter | None:
    """The nest that takes them: the litter under the doe, or her youngest unweaned one even if its own kits died."""
    youngest = newest_litter(herd, doe, on)
    return nursed_litter(herd, doe, on) or (youngest if youngest and youngest.weaned_on is None else None)


def reply(fact: Fostered, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The move, and what lies in both nests now."""
    line = dated(f"Moved {words.count(fact.count, 'kit')} from doe {fact.from_} to doe {fact.to}", fact.on, after)
    return (line, *(_nest(after, doe, fact.on) for doe in (fact.from_, fact.to)))


def _nest(herd: Herd, tag: str, on: date) -> str:
    doe = herd.find(tag)
    return kits_left(herd, _taking(herd, doe.key, on) if doe else None, tag)


def show(fact: Fostered, _herd: Herd) -> str:
    """`2026-11-25: fostered 2 kits from doe 14 to doe 9`."""
    return noted(fact.on, f"fostered {words.count(fact.count, 'kit')} from doe {fact.from_} to doe {fact.to}")


KIND = Kind(fact=Fostered, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
