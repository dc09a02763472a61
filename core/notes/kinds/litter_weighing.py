"""A whole litter on the scale."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core import words
from core.handbook import breeds
from core.herd.litters import litter_meant, on_book
from core.herd.state import Herd
from core.notes.checking import kits_then, nest_problem, not_yet, worst
from core.notes.clauses.amounts import age_in_days, ages, bare_weight
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need, Pick
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.items import Item, grams_said
from core.notes.talk.dotted import what_is_the_dot
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


EXAMPLES: tuple[Example, ...] = (
    Example("lw 12 3-6", ({"doe": "12", "grams": 1531, "on": "2026-11-25"},)),
    Example("all 5 of 16s kits 2 lb each", ({"doe": "16", "grams": 4536, "on": "2026-11-25", "count": 5},)),
    Example("12 litter weighed 3 lb 12", ({"doe": "12", "grams": 1701, "on": "2026-11-25"},)),
    Example("litter of 16 9-8", ({"doe": "16", "grams": 4309, "on": "2026-11-25"},)),
    Example("16 five kits 9 lb 4 all together", ({"doe": "16", "grams": 4196, "on": "2026-11-25", "count": 5},)),
    Example("12 litter 21d wt 4-2", ({"doe": "12", "grams": 1871, "on": "2026-11-25", "age_days": 21},)),
    Example(
        "sixteens litter weighed nine pounds eight at seven weeks",
        ({"doe": "16", "grams": 4309, "on": "2026-11-25", "age_days": 49},),
    ),
    Example(
        "Litter weight (doe 12, 7 kits, 15 days): 3 lb 9 oz",
        ({"doe": "12", "grams": 1616, "on": "2026-11-25", "count": 7, "age_days": 15},),
    ),
)
NOT_THIS: tuple[str, ...] = (
    "12 3-9",
    "12 has 7 kits",
)

OPENS: Final = ("litter_weight",)
CUES: Final = {
    "litter_weight": "babies weight | babies weigh | babies weighed | kits weigh | kits weighed | kits weight | bunch weighed | bunch weighs | kits together weigh | babies together weigh | kits all together weigh | litter weight | litter weighed | litter wt | litter weighs | ltr wt | litter weights | litter wts | litter scale | litter came in at | litter wgt | weighed the litter | weighed litter"
    " | whole litter weighed | litter total | lw",
}  # fmt: skip


AVERAGES: Final = frozenset({"avg", "average", "averaged", "averages", "averaging", "ave"})


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"kits", "litter"})


def read(c: Clause) -> None:
    """All kits of a doe on the scale together."""
    if not c.has("litter_weight", "litter") and not (c.has("kits") and _of_kits(c)):
        return
    if c.has("sell", "list", "breed", "cull", "kindle") or (c.has("color_is") and c.has("color")):
        return
    weights = c.sorted_as("weight", "pair", "clock")
    place = weights[0] if weights else _bare(c)
    if place is None:
        return
    grams, items = (c.grams(place), [c.items[place]]) if weights else bare_weight(c, place)
    c.used.add(id(c.items[place]))
    cue = c.first("litter_weight", "litter", "kits")
    pick = _doe(c, cue)
    if pick:
        c.used.update(id(item) for item in pick.items)
    kits = c.first("kits")
    count = _counted(c, kits)
    told = ages(c)
    used = [*items, *(c.items[i] for i in (cue, count, kits) if i is not None), *(c.items[i] for i in told[:1])]
    kits_weighed = c.whole(count) if count is not None else None
    each = [item for item in c.items if "each" in item.marks or item.said in AVERAGES] if grams is not None else []
    if each:  # "all 5 of 16's kits 2 lb each"
        used += each
        grams = _of_all(c.items[place], grams, kits_weighed) if kits_weighed else None
    values = {"grams": grams, "count": kits_weighed, "age_days": age_in_days(c.items[told[0]]) if told else None}
    c.take(c.past(LitterWeighed, pick, "doe", values, used, None if grams is not None else _which_weight(c.items[place], each=bool(each))))


def _bare(c: Clause) -> int | None:
    """`litter weight of 12 3.6`: a number with a fraction, where a word of weighing is said."""
    numbers = c.sorted_as("num") if c.has("litter_weight", "weigh") else []
    return next((i for i in numbers if c.items[i].value != int(c.items[i].value)), None)


def _counted(c: Clause, kits: int | None) -> int | None:
    """How many were weighed: the number of the kits, else the only one left."""
    count = c.number_for(kits) if kits is not None else None
    if count is not None:
        return count
    free = [i for i in c.sorted_as("num") if c.whole(i) is not None]
    return free[0] if len(free) == 1 else None


def _which_weight(item: Item, *, each: bool) -> Need:
    """What to ask where the weight of all is not told."""
    if each:
        return Need("which_number", "grams", "How much is that for the whole litter?")
    return what_is_the_dot(item) or Need("which_number", "grams", "Which weight is that? Ounces go up to 15.")


def _of_kits(c: Clause) -> bool:
    """Whether the kits are what was weighed: counted, or somebody's."""
    kits = c.first("kits") or 0
    return c.number_for(kits) is not None or (kits > 0 and c.items[kits - 1].unit == "possessive")


def _of_all(item: Item, each: int | None, kits_weighed: int) -> int | None:
    """The weight of all kits where that of each was said [g], from its exact amount where it has a unit."""
    if item.sort == "weight":
        return grams_said(item.value[1] * kits_weighed, item.unit)
    return each * kits_weighed if each is not None else None


def _doe(c: Clause, cue: int | None) -> Pick | None:
    if c.explicit():
        return c.subject_of(cue)
    led = c.led("of", "on", "for", "doe", "from", "under")
    if led is not None:
        return c.pick(led)
    opening = c.opening()
    if opening is not None and c.whole(opening) is not None and not c.counted(opening):
        return c.pick(opening)
    if cue is not None and c.whole(cue + 1) is not None and not c.counted(cue + 1) and c.known(cue + 1):
        return c.pick(cue + 1)
    return c.spoken_of()


def check(fact: LitterWeighed, herd: Herd, today: date) -> Problem | None:
    """A litter on the book, no more kits than it has, and a weight that kits can have."""
    doe = herd.find(fact.doe)
    there = worst(not_yet(fact.on, today), nest_problem(herd, fact.doe, fact.on))
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


WRITTEN = ("doe {doe:TAG} litter(?: of {count:NUM})? weighed {grams:NUM} g(?: at {age_days:NUM} days?)?",)


def show(fact: LitterWeighed, _herd: Herd) -> str:
    """`2026-11-25: doe 12 litter of 7 weighed 1673 g at 21 days`."""
    of = f" of {fact.count}" if fact.count is not None else ""
    age = f" at {words.count(fact.age_days, 'day')}" if fact.age_days is not None else ""
    return noted(fact.on, f"doe {fact.doe} litter{of} weighed {fact.grams} g{age}")


KIND = Kind(fact=LitterWeighed, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
