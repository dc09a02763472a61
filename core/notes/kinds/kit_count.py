"""Somebody counts the kits under a doe."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar

from core import words
from core.herd.changes import tallied
from core.herd.litters import litter_meant
from core.herd.state import Herd
from core.notes.checking import animal_problem, kits_then, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import dated, noted
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class KitsCounted:
    """Somebody counts the kits under a doe."""

    kind: ClassVar[str] = "kit_count"

    doe: Tag
    count: int
    on: date
    age_days: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: KitsCounted, herd: Herd, today: date) -> Problem | None:
    """More kits than the book knows are confirmed."""
    doe = herd.find(fact.doe)
    there = worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"))
    if there or doe is None:
        return there
    litter = litter_meant(herd, doe.key, fact.on)
    known = kits_then(herd, litter, fact.on)
    if fact.count <= known:
        return None
    text = f"The book knows of {words.count(known, 'kit')} under doe {fact.doe}, not {fact.count}. Is {fact.count} right?"
    return Problem("confirm", text, ("yes", "no"), "Answer yes to put the book right, or send the number again.")


def apply(fact: KitsCounted, herd: Herd) -> Herd:
    """What was counted is what there is; kits missing without a word count as gone, not as lost to a cause."""
    doe = herd.find(fact.doe)
    litter = litter_meant(herd, doe.key, fact.on) if doe else None
    if litter is None:
        return herd
    counted = replace(litter, counts=(*litter.counts, (fact.on, fact.count)))
    if litter.weaned_on is not None:
        return herd.with_litter(counted)
    return herd.with_litter(tallied(counted, fact.on, fact.count))


def reply(fact: KitsCounted, before: Herd, after: Herd) -> tuple[str, ...]:
    """The count, and how it compares with the book."""
    line = dated(f"Doe {fact.doe} has {words.count(fact.count, 'kit')}", fact.on, after)
    doe = before.find(fact.doe)
    litter = litter_meant(before, doe.key, fact.on) if doe else None
    if litter is None:
        return (line, f"Doe {fact.doe} has no litter on the book, so I could only keep the note.")
    missing = kits_then(before, litter, fact.on) - fact.count
    if missing > 0:
        return (line, f"That is {missing} fewer than on the book. If you know why: \"{fact.doe} lost {missing}, cold\".")
    return (line, "That agrees with the book.") if missing == 0 else (line, "The book is put right.")


def show(fact: KitsCounted, _herd: Herd) -> str:
    """`2026-11-25: doe 12 has 6 kits at 15 days`."""
    age = f" at {words.count(fact.age_days, 'day')}" if fact.age_days is not None else ""
    return noted(fact.on, f"doe {fact.doe} has {words.count(fact.count, 'kit')}{age}")


KIND = Kind(fact=KitsCounted, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
