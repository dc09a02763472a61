"""Somebody counts the kits under a doe."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core import words
from core.herd.changes import tallied
from core.herd.litters import litter_meant
from core.herd.state import Herd
from core.notes.checking import kits_then, nest_problem, not_yet, worst
from core.notes.clauses.amounts import age_in_days, ages
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Pick
from core.notes.clauses.with_animals import LOOKS
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.common_words import COMMON
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


EXAMPLES: tuple[Example, ...] = (
    Example("12 has 6 kits, 5 min", ({"doe": "12", "count": 6, "on": "2026-11-25"},)),
    Example("no losses under 12, she still has 7", ({"doe": "12", "count": 7, "on": "2026-11-25"},)),
    Example("12 has 7 kits", ({"doe": "12", "count": 7, "on": "2026-11-25"},)),
    Example(
        "Thistle's five kits are six weeks old now and into everything", ({"doe": "16", "count": 5, "on": "2026-11-25", "age_days": 42},)
    ),
    Example("still 5 kits under 16", ({"doe": "16", "count": 5, "on": "2026-11-25"},)),
    Example("counted 7 in Sorrel's nest", ({"doe": "12", "count": 7, "on": "2026-11-25"},)),
    Example("Sorrel has only 5 left", ({"doe": "12", "count": 5, "on": "2026-11-25"},)),
    Example("sixteen's got five kits", ({"doe": "16", "count": 5, "on": "2026-11-25"},)),
    Example("twelve has six left", ({"doe": "12", "count": 6, "on": "2026-11-25"},)),
    Example("Doe 12: 6 kits on day 15.", ({"doe": "12", "count": 6, "on": "2026-11-25", "age_days": 15},)),
    Example("counted 16s babies and theres 5", ({"doe": "16", "count": 5, "on": "2026-11-25"},)),
    Example("16 has5 kits", ({"doe": "16", "count": 5, "on": "2026-11-25"},)),
    Example("16 kits ct 5", ({"doe": "16", "count": 5, "on": "2026-11-25"},)),
    Example("12 ct 7", ({"doe": "12", "count": 7, "on": "2026-11-25"},)),
    Example("Sorrel's box, still 7 in there", ({"doe": "12", "count": 7, "on": "2026-11-25"},)),
    Example("12 wk2 6 kits", ({"doe": "12", "count": 6, "on": "2026-11-25", "age_days": 14},)),
    Example("Doe 16: 5 kits, age 48 days, all on pellets.", ({"doe": "16", "count": 5, "on": "2026-11-25", "age_days": 48},)),
)
NOT_THIS: tuple[str, ...] = (
    "12 lst two kits to teh cold",
    "how many kits has 12?",
    "33 has a white toenail",
    "12 has snuffles",
)

OPENS: Final = ("count",)
CUES: Final = {
    "count": "dn to | rearing | has reared | feeding all | down to | still got | has got | counted | count | kit count | ct | kit ct | kit cnt | kits ct | kit counts | still has | kits left | kits now | up to | counts | kit check | now at | has still got | raising | nursing",
    "has_kits": "has | has a | got | has got | theres",
    "well": "eyes open | eyes opening | eyes are open | eyes all open | warm | fat | wiggly | wiggling | fuzzy | healthy | squirming | plump | thriving",
    "left_over": "left | remaining | now | still",
}  # fmt: skip


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"alive", "all", "all_alive", "box", "kits", "nest_place", "sign:good"})


def read(c: Clause) -> None:
    """How many kits are under a doe: `12 has 6 kits`, `down to six`, `12 6 kits`."""
    cue = c.first("count", "has_kits")
    kits = c.first("kits")
    if kits is None and cue is not None and c.said(cue) in {"down to", "up to"} and c.has("weather:cold", "weather:heat", "weather:frost"):
        return  # "down to 18 tonight"
    number = _number(c, cue, kits)
    if number is None or (c.has("sell", "list", "cull", "give", "purchase", "tag", "per_day", "drug") and not c.has("count")):
        return
    pick = _doe(c, cue, number)
    if pick is None or any(item is c.items[number] for item in pick.items):
        return
    animal = c.herd.find(pick.tag) if pick.tag else None
    if animal is not None and animal.sex == "buck" and kits is None and cue is None:
        return
    if cue is None and _unknown_verb(c, number):
        return
    told = ages(c)
    used = [c.items[number], *(c.items[i] for i in (cue, kits) if i is not None)]
    values: dict[str, int | None] = {"count": c.whole(number)}
    if told:
        used.append(c.items[told[0]])
        values["age_days"] = age_in_days(c.items[told[0]])
    c.take(c.past(KitsCounted, pick, "doe", values, used))


def _unknown_verb(c: Clause, number: int) -> bool:
    """Whether a word that nobody knows stands before the number: it may say what became of them."""
    before = c.past_fillers(number - 1, -1)
    item = c.items[before] if before >= 0 else None
    return item is not None and item.sort == "word" and not item.marks and item.said not in COMMON


#: What kits that are alive are seen to be.
WELL: Final = frozenset(
    {"warm", "fat", "pink", "wiggly", "wiggling", "full", "fuzzy", "healthy", "squirming", "round", "plump", "thriving", "hopping"}
)


def _number(c: Clause, cue: int | None, kits: int | None) -> int | None:
    """Where the number stands that tells how many there are."""
    every = next((i for i in c.each("all") if c.whole(i + 1) is not None), None)
    if every is not None and (kits is not None or c.has("nest_place") or c.said(every + 2) in WELL):
        return every + 1
    if kits is None and cue is None:
        return _seen_there(c)
    if cue is None:
        still = _still_there(c)
        if still is not None or kits == c.opening():
            return still if still is not None else _behind_the_head(c)
    place = None if kits is None else _beside_kits(c, kits)
    return place if place is not None or cue is None else _behind_the_count(c, cue)


def _seen_there(c: Clause) -> int | None:
    """Kits without that word: `12 nest 7 warm`, `7 in there`, `six left` behind a loss."""
    whole = [i for i in c.sorted_as("num") if c.whole(i) is not None]
    well = next((i for i in whole if i != c.opening() and c.said(i + 1) in WELL), None) if c.has("sign:good", "nest_place") else None
    if well is not None:
        return well
    inside = next((i for i in whole if (c.said(i + 1), c.said(i + 2)) == ("in", "there")), None)
    if inside is not None and c.has("box", "nest_place"):
        return inside  # "checked nestbox 12 all good 7 in there"
    alive = c.first("alive")
    if c.has("chore_word", "alive") and any("nest check" in item.said for item in c.items):
        return c.number_for(alive, behind=False) if alive is not None else None  # "Nest check. Doe 12: 7 live"
    still, left = _still_there(c), c.first("left_over", "alive")
    if still is None and left is not None and ((alive is not None and c.has("left_over")) or _of_the_lost(c)):
        return c.number_for(left, behind=False)
    return still


def _still_there(c: Clause) -> int | None:
    """`still 7 in there`."""
    still = next((i + 1 for i in c.each("left_over") if c.said(i) == "still" and c.whole(i + 1) is not None), None)
    there = still is not None and (c.has("nest_place") or (c.said(still + 1), c.said(still + 2)) == ("in", "there"))
    return still if there else None


def _behind_the_head(c: Clause) -> int | None:
    """`Kits under 12: 7`."""
    free = [i for i in c.sorted_as("num") if c.whole(i) is not None]
    return free[-1] if free and c.said(free[-1] - 1) == ":" else None


def _beside_kits(c: Clause, kits: int) -> int | None:
    """`seven fat kits`, `kits now 7`, `counted 12s kits, theres 9`."""
    there = next((i + 1 for i in c.each("has_kits") if c.said(i) in {"theres", "there's"} and c.whole(i + 1) is not None), None)
    if there is not None and kits < there:
        return there
    place = c.number_for(_past_looks(c, kits), behind=False)
    alone = c.whole(kits + 1) is not None and (kits + 2 >= len(c.items) or c.items[kits + 2].sort in {"mark", "break"})
    if place is None and (c.said(kits + 1) in {"now", ":", "left", "="} or (alone and c.said(kits - 1) in {":", "|", ",", "-"})):
        return kits + 1 if alone else c.number_for(kits)
    return place


def _behind_the_count(c: Clause, cue: int) -> int | None:
    """`12 down to 6`, `count 12: 7`, `6 kits left`; not `12 has 6 toes`."""
    if c.said(cue) in {"kits left", "kits now"}:
        return c.number_for(cue, behind=False)
    if c.said(cue) in {"count", "ct", "kit count", "kit check", "kit ct", "kit cnt", "kits ct", "kit counts"}:
        numbers = [i for i in c.sorted_as("num") if c.whole(i) is not None]
        return numbers[-1] if numbers else None
    place = c.past_fillers(cue + 1, 1)
    return place if c.whole(place) is not None and _of_kits(c, cue, place) else None


def _of_kits(c: Clause, cue: int, place: int) -> bool:
    """Whether what stands behind the number lets it be of kits."""
    after = c.items[place + 1] if place + 1 < len(c.items) else None
    return (
        after is None
        or after.sort in {"mark", "date", "break"}
        or bool(after.marks & {"kits", "alive", "left_over", "all", "count", "lose", "well"})
        or after.said in {"in", "in with", "under", "of", "and", "so", "but", "as", "healthy", "i", "we"}
        or (after.said in {"for", "with"} and "count" in c.items[cue].marks)
    )


def _past_looks(c: Clause, kits: int) -> int:
    """The place of the first word that tells how the kits look: `seven fat kits`."""
    while c.said(kits - 1) in LOOKS or c.said(kits - 1) in WELL:
        kits -= 1
    return kits


def _of_the_lost(c: Clause) -> bool:
    """`5 left`, right behind the loss of some of them."""
    if sum(1 for item in c.items if item.sort != "mark") > LITTLE:
        return False
    before = [found.fact.kind for found in c.before.found] if c.before is not None else [fact.kind for fact in c.scene.context.last]
    return "kits_lost" in before


LITTLE: Final = 3  # not a figure: items: `only 5 left`


def _doe(c: Clause, cue: int | None, number: int) -> Pick | None:
    if c.explicit():
        return c.subject_of(cue if cue is not None else number)
    opening = c.opening()
    if opening is not None and opening != number and c.whole(opening) is not None and not c.counted(opening):
        return c.pick(opening)
    if cue is not None and cue > 0 and cue - 1 != number and c.known(cue - 1) is not None:
        return c.pick(cue - 1)
    led = c.led("under", "with", "w", "for", "on", "of", "in", "doe")
    boxed = next((i + 1 for i in c.each("box", "nest_place") if c.known(i + 1) is not None and i + 1 != number), None)
    place = led if led is not None and led != number else boxed
    return c.pick(place) if place is not None else c.spoken_of()


def check(fact: KitsCounted, herd: Herd, today: date) -> Problem | None:
    """More kits than the book knows are confirmed."""
    doe = herd.find(fact.doe)
    there = worst(not_yet(fact.on, today), nest_problem(herd, fact.doe, fact.on))
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
        return (line, f'That is {missing} fewer than on the book. If you know why: "{fact.doe} lost {missing}, cold".')
    return (line, "That agrees with the book.") if missing == 0 else (line, "The book is put right.")


WRITTEN = ("doe {doe:TAG} has {count:NUM} kits?(?: at {age_days:NUM} days?)?",)


def show(fact: KitsCounted, _herd: Herd) -> str:
    """`2026-11-25: doe 12 has 6 kits at 15 days`."""
    age = f" at {words.count(fact.age_days, 'day')}" if fact.age_days is not None else ""
    return noted(fact.on, f"doe {fact.doe} has {words.count(fact.count, 'kit')}{age}")


KIND = Kind(fact=KitsCounted, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
