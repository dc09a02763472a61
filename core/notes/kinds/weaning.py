"""A litter leaves its doe."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core import words
from core.handbook import reproduction as figures
from core.herd.calendar import weigh_chores
from core.herd.changes import tallied
from core.herd.litters import alive_now, litter_meant, litters_of, live_born, the_litter
from core.herd.state import Herd, Litter
from core.notes.checking import nest_problem, not_yet, too_many, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need, Pick, first_need
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.items import Item
from core.notes.telling import dated, noted, parts, when
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Weaned:
    """A litter leaves its doe."""

    kind: ClassVar[str] = "weaned"

    doe: Tag
    count: int
    on: date
    bucks: int | None = None
    does: int | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("weaned 16: bucks 3, does 2", ({"doe": "16", "count": 5, "bucks": 3, "does": 2, "on": "2026-11-25"},)),
    Example("weaned 16 x5", ({"doe": "16", "count": 5, "on": "2026-11-25"},)),
    Example("Doe 16, litter weaned: 5 (3M/2F).", ({"doe": "16", "count": 5, "on": "2026-11-25", "bucks": 3, "does": 2},)),
    Example("weaned 16: 5 kits, 4 bucks 1 doe", ({"doe": "16", "count": 5, "bucks": 4, "does": 1, "on": "2026-11-25"},)),
    Example("weaned 16: 1 buck 4 does", ({"doe": "16", "count": 5, "bucks": 1, "does": 4, "on": "2026-11-25"},)),
    Example(
        "Thistle's litter got weaned today, three boys and two girls",
        ({"doe": "16", "count": 5, "on": "2026-11-25", "bucks": 3, "does": 2},),
    ),
    Example("We pulled Thistle's babies off her today, all five", ({"doe": "16", "count": 5, "on": "2026-11-25"},)),
    Example("16 weaned 5: 2b 3d", ({"doe": "16", "count": 5, "on": "2026-11-25", "bucks": 2, "does": 3},)),
    Example("weaned thistle three bucks and two does", ({"doe": "16", "count": 5, "on": "2026-11-25", "bucks": 3, "does": 2},)),
    Example("Weaning 22 Nov: doe 16, 3 bucks, 2 does.", ({"doe": "16", "count": 5, "on": "2026-11-22", "bucks": 3, "does": 2},)),
    Example("Weaned from 16: 5.", ({"doe": "16", "count": 5, "on": "2026-11-25"},)),
    Example("weaend 16 5 kits", ({"doe": "16", "count": 5, "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "14 kindled 5",
    "wean 16 next week?",
    "16 not weaned yet",
)

OPENS: Final = ("wean",)
CUES: Final = {
    "off_her": "off",
    "wean": "weaned | wean | weened | wn | weans | weaning | weaned off | wnd | weanings | weined | weaned out | split the litter from",
}  # fmt: skip


def read(c: Clause) -> None:
    """A litter off its doe: how many, and of each sex; with no count the book's."""
    cue = c.first("wean")
    if cue is None and "wean" not in c.virtual:
        cue = _pulled_off(c)
        if cue is None:
            return
    if cue is not None and cue == c.opening() and c.to_come(cue) and not c.has("bucks_word", "does_word", "kits", "litter"):
        return  # it is only planned
    if (
        cue is not None
        and c.has("dead", "die", "lose", "sell", "cull")
        and cue + 1 < len(c.items)
        and c.items[cue + 1].marks & {"kits", "litter"}
    ):
        return  # "one of 16's weaned kits is dead"
    bucks, used = _sexed(c, "bucks_word")
    does, used_does = _sexed(c, "does_word")
    used = [*used, *used_does, *([c.items[cue]] if cue is not None else [])]
    c.used.update(id(item) for item in used)
    pick = _doe(c, cue)
    if pick:
        c.used.update(id(item) for item in pick.items)
    count, place = _count(c, cue)
    if place is not None:
        used.append(c.items[place])
    need = None
    if count is None and bucks is not None and does is not None:
        count = bucks + does
    uncounted = [i for i in c.each("bucks_word", "does_word") if c.items[i] not in used]
    if count is None and (bucks is not None or does is not None) and not uncounted and not c.has("litter"):
        count = (bucks or 0) + (does or 0)
    if count is None:
        count = None if uncounted else _on_the_book(c, pick)
        if count is None:
            need = Need("how_many", "count", "How many were weaned? Send the number.")
    if bucks is not None and does is not None and count is not None and bucks + does != count:
        need = Need("which_number", "count", f"{bucks} bucks and {does} does make {bucks + does}, not {count}. How many were weaned?")
    c.take(c.past(Weaned, pick, "doe", {"count": count, "bucks": bucks, "does": does}, used, first_need(need, _to_come(c, cue))))


def _to_come(c: Clause, cue: int | None) -> Need | None:
    """`wean 16 sat`: a day of the week behind the bare verb may lie behind or ahead."""
    if (
        cue is None
        or c.said(cue) != "wean"
        or not any(c.items[i].value.shape == "weekday" and c.items[i].value.modifier != "last" for i in c.dates())
    ):
        return None
    return Need("when", "on", "Was that done, or is it to be done? Send the day, for example: 21 nov.")


def _pulled_off(c: Clause) -> int | None:
    """`pulled Thistle's babies off her`."""
    if not c.has("kits", "litter") or c.has("onto", "box"):
        return None
    off = next((i for i, item in enumerate(c.items) if item.said == "off"), None)
    pulled = next((i for i, item in enumerate(c.items) if item.said in {"pulled", "took"}), None)
    return pulled if pulled is not None and off is not None and off > pulled else None


def _sexed(c: Clause, mark: str) -> tuple[int | None, list[Item]]:
    labels = c.each("bucks_word", "does_word")
    last = c.past_fillers(labels[-1] + 1, 1) if labels else 0
    behind = bool(labels) and c.whole(last) is not None and not c.counted(last)
    for i in c.each(mark):
        after = c.past_fillers(i + 1, 1)
        place = after if behind and c.whole(after) is not None else c.number_for(i, behind=False)
        if (
            place is None
            and c.said(i - 1) in {"little", "nice", "pretty", "big", "good", "young", "fat", "healthy"}
            and c.whole(i - 2) is not None
        ):
            place = i - 2
        if place is not None:
            return c.whole(place), [c.items[place], c.items[i]]
    single = "buck_word" if mark == "bucks_word" else "doe_word"
    for i in c.each(single):
        if c.whole(i - 1) == 1:
            return 1, [c.items[i - 1], c.items[i]]
    return None, []


def _doe(c: Clause, cue: int | None) -> Pick | None:
    if c.explicit():
        return c.subject_of(cue)
    if c.strangers() and not any((animal := c.known(i)) and animal.sex == "doe" for i in c.sorted_as("num")):
        return c.spoken_of()
    led = c.led("from", "of", "off", "doe", "for")
    numbers = [i for i in c.sorted_as("num") if c.whole(i) is not None and not c.counted(i)]
    if led is not None:
        return c.pick(led)
    if numbers and (c.known(numbers[0]) or len(numbers) > 1 or not c.spoken_of()):
        return c.pick(numbers[0])
    return c.spoken_of()


def _count(c: Clause, _cue: int | None) -> tuple[int | None, int | None]:
    for i in c.each("kits", "all"):
        place = c.number_for(i)
        if place is not None:
            return c.whole(place), place
    numbers = [i for i in c.sorted_as("num") if c.whole(i) is not None]
    return (c.whole(numbers[0]), numbers[0]) if numbers else (None, None)


def _on_the_book(c: Clause, pick: Pick | None) -> int | None:
    animal = c.herd.find(pick.tag) if pick and pick.tag else None
    litter = the_litter(c.herd, animal.key, c.today) if animal else None
    return alive_now(litter) if litter and alive_now(litter) else None


def check(fact: Weaned, herd: Herd, today: date) -> Problem | None:
    """No more than live, sexes that add up, and not too young."""
    doe = herd.find(fact.doe)
    there = worst(not_yet(fact.on, today), nest_problem(herd, fact.doe, fact.on), _sexes(fact))
    if there or doe is None:
        return there
    litter = weanable(herd, doe.key, fact.on)
    if litter is not None and _second_part(fact, litter):
        return None
    return too_many(herd, litter, fact.doe, fact.count, fact.on, "weaned") or (_too_young(fact, litter) if litter else None)


def _sexes(fact: Weaned) -> Problem | None:
    known = (fact.bucks or 0) + (fact.does or 0)
    both = fact.bucks is not None and fact.does is not None
    if known <= fact.count and not (both and known < fact.count):
        return None
    text = f"{fact.bucks or 0} bucks and {fact.does or 0} does make {known}, not {fact.count}. Which number is wrong?"
    return Problem("which_number", text, (), 'Send it again, for example "weaned 16: 3 bucks 2 does".')


def _too_young(fact: Weaned, litter: Litter) -> Problem | None:
    age = (fact.on - litter.born_on).days
    if age >= figures.ASK_WEAN_DAY.value:
        return None
    text = f"Doe {fact.doe}'s kits are only {words.count(age, 'day')} old. Were they weaned {words.full_day(fact.on)}?"
    return Problem("confirm", text, ("yes", "no"), "Answer yes, or send the right doe or day.")


def weanable(herd: Herd, doe: str, on: date) -> Litter | None:
    """The litter that is weaned: the eldest under her that is of age, else the one a note on her kits is about."""
    under = [each for each in litters_of(herd, doe) if each.born_on <= on and each.weaned_on is None and alive_now(each)]
    of_age = [each for each in under if (on - each.born_on).days >= figures.ASK_WEAN_DAY.value]
    return of_age[0] if of_age else litter_meant(herd, doe, on)


def apply(fact: Weaned, herd: Herd) -> Herd:
    """The kits leave their dam; a second part of a litter that was weaned in two goes is added."""
    doe = herd.find(fact.doe)
    litter = weanable(herd, doe.key, fact.on) if doe else None
    if litter is None:
        return herd
    again = _second_part(fact, litter)
    earlier = litter.weaned or 0
    weaned = replace(
        tallied(litter, fact.on, fact.count + (earlier if again else 0)),
        weaned_on=litter.weaned_on if again else fact.on,
        weaned=fact.count + (earlier if again else 0),
        weaned_bucks=_sum(litter.weaned_bucks, fact.bucks) if again else fact.bucks,
        weaned_does=_sum(litter.weaned_does, fact.does) if again else fact.does,
    )
    herd = herd.with_litter(weaned)
    for kit in [herd.animals[key] for key in litter.tagged if key in herd.animals]:
        herd = herd.with_animal(replace(kit, weaned_on=fact.on)) if kit.living and kit.weaned_on is None else herd
    return herd


def _second_part(fact: Weaned, litter: Litter) -> bool:
    """Whether these are the rest of a litter that is weaned in two goes."""
    nest = [kits for day, kits in litter.tally if litter.weaned_on is not None and day < litter.weaned_on]
    return bool(nest) and (litter.weaned or 0) + fact.count <= nest[-1]


def _sum(one: int | None, other: int | None) -> int | None:
    return None if one is None and other is None else (one or 0) + (other or 0)


def reply(fact: Weaned, before: Herd, after: Herd) -> tuple[str, ...]:
    """How many of how many were weaned, and what follows."""
    sexes = words.listed(words.count(n, one) for n, one in ((fact.bucks, "buck"), (fact.does, "doe")) if n is not None)
    line = dated(f"Doe {fact.doe}: weaned {words.count(fact.count, 'kit')}" + (f", {sexes}" if sexes else ""), fact.on, after)
    doe = before.find(fact.doe)
    litter = weanable(before, doe.key, fact.on) if doe else None
    if litter is None:
        return (line, f"Doe {fact.doe} has no litter on the book, so I could only keep the note.")
    raised = f"At {(fact.on - litter.born_on).days} days; {live_born(litter)} were born alive."
    missing = alive_now(litter) - fact.count if litter.weaned_on is None else 0
    untold = f'The book had {missing} more. If you know why: "{fact.doe} lost {missing}, cold".' if missing > 0 else None
    weigh = next((chore for chore in weigh_chores(after, fact.on) if chore.key.startswith(f"weigh:{litter.dam}:{litter.born_on}")), None)
    ahead = f"Weigh them {when(weigh.on, after.day)}." if weigh else None
    return tuple(each for each in (line, raised, untold, ahead) if each)


WRITTEN = ("weaned doe {doe:TAG}, {count:NUM} kits?(?:, {bucks:NUM} bucks?)?(?:, {does:NUM} does?)?",)


def show(fact: Weaned, _herd: Herd) -> str:
    """`2026-11-25: weaned doe 16, 5 kits, 3 bucks, 2 does`."""
    sexes = [words.count(n, one) for n, one in ((fact.bucks, "buck"), (fact.does, "doe")) if n is not None]
    return noted(fact.on, parts(f"weaned doe {fact.doe}", words.count(fact.count, "kit"), *sexes))


KIND = Kind(fact=Weaned, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
