"""A whole litter on the scale."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar

from core import words
from core.handbook import breeds
from core.herd.litters import litter_meant, on_book
from core.herd.state import Herd
from core.notes.checking import animal_problem, kits_then, not_yet, worst
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import dated, grams, noted
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class LitterWeighed:
    """A whole litter on the scale."""

    kind: ClassVar[str] = "litter_weighed"

    doe: Tag
    grams: int
    on: date
    count: int | None = None
    age_days: int | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


def check(fact: LitterWeighed, herd: Herd, today: date) -> Problem | None:
    """A litter on the book, no more kits than it has, and a weight that kits can have."""
    doe = herd.find(fact.doe)
    there = worst(not_yet(fact.on, today), animal_problem(herd, fact.doe, fact.on, "doe"))
    if there or doe is None:
        return there
    litter = litter_meant(herd, doe.key, fact.on)
    known = kits_then(herd, litter, fact.on)
    if litter is None or (fact.count or 0) > known:
        text = f"The book knows of {words.count(known, 'kit')} of doe {fact.doe}. Record the weight all the same?"
        return Problem("confirm", text, ("yes", "no"), "Answer yes, or send the right doe or number.")
    a_kit = fact.grams / max(1, fact.count or known)
    if fact.grams > 0 and a_kit <= breeds.heaviest_believable_g(doe.breed):
        return None
    text = f"{grams(herd, a_kit)} a kit can't be. What did they weigh?"
    return Problem("impossible", text, (), f'Send it again: "{fact.doe} litter 5 lb 4 oz".')


def apply(fact: LitterWeighed, herd: Herd) -> Herd:
    """One more weight of the litter."""
    doe = herd.find(fact.doe)
    litter = litter_meant(herd, doe.key, fact.on) if doe else None
    if litter is None:
        return herd
    count = fact.count if fact.count is not None else on_book(herd, litter) or None
    return herd.with_litter(replace(litter, weighings=(*litter.weighings, (fact.on, fact.grams, count))))


def reply(fact: LitterWeighed, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The weight of all, a kit's share, and their age."""
    doe = after.find(fact.doe)
    litter = litter_meant(after, doe.key, fact.on) if doe else None
    line = dated(f"Doe {fact.doe}'s litter: {grams(after, fact.grams)}", fact.on, after)
    if litter is None:
        return (line, f"Doe {fact.doe} has no litter on the book, so I could only keep the note.")
    count = litter.weighings[-1][2] if litter.weighings else None
    each = f", {grams(after, fact.grams / count)} a kit for {count}" if count else ""
    return (line, f"Day {(fact.on - litter.born_on).days}{each}.")


def show(fact: LitterWeighed, _herd: Herd) -> str:
    """`2026-11-25: doe 12 litter of 7 weighed 1673 g at 21 days`."""
    of = f" of {fact.count}" if fact.count is not None else ""
    age = f" at {words.count(fact.age_days, 'day')}" if fact.age_days is not None else ""
    return noted(fact.on, f"doe {fact.doe} litter{of} weighed {fact.grams} g{age}")


KIND = Kind(fact=LitterWeighed, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
