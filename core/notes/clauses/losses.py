"""A loss of kits: the word that tells of it, whose kits they were, and how many."""

from __future__ import annotations

from typing import Final

from core.herd.litters import alive_now, the_litter
from core.herd.state import Litter
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need, Pick
from core.notes.slots.items import Item

#: What kits eat: then nobody eats them.
EATEN_BY_KITS: Final = frozenset({"hay", "grass", "solid", "solids", "well", "good", "like", "oats", "on", "out"})


def loss_cue(c: Clause) -> int | None:
    """The word that tells of a loss; -1 where an earlier statement's verb holds on."""
    for mark in ("step", "eat", "lose"):
        cue = c.first(mark)
        if cue is not None and not _of_no_kits(c, cue, mark):
            return cue
    for way in (_fewer, _carried_off, _dead):
        cue = way(c)
        if cue is not None:
            return cue
    return -1 if "lose" in c.virtual else None


def _of_no_kits(c: Clause, cue: int, mark: str) -> bool:
    """`lots of hay`, `stepped out`, `eating well`, `lost weight`: the word, and no kits."""
    said, after, kits = c.said(cue), c.said(cue + 1), c.has("kits", "litter")
    behind = c.items[cue + 1 : cue + 3]
    return (
        (said == "lots" and c.whole(cue + 1) is None and not (behind and behind[0].marks & {"no_count", "all", "pronoun"}))
        or (mark == "step" and after in {"herself", "himself", "out", "out of", "in", "into", "over", "themselves"})
        or (mark == "eat" and not kits and c.number_for(cue) is None)
        or (mark == "eat" and any(item.marks & {"feed"} or item.said in EATEN_BY_KITS for item in behind))
        or (mark == "lose" and said in {"lost", "lose"} and after in {"weight", "her", "his", "fur", "a"} and not kits)
    )


def _fewer(c: Clause) -> int | None:
    """`Sorrel's down two kits`."""
    fewer = c.first("fewer")
    if fewer is None or not c.has("kits", "litter"):
        return None
    one = c.said(fewer) == "down" and c.said(fewer + 1) in {"a", "another", "one"}
    return fewer if one or c.whole(fewer + 1) is not None else None


def _carried_off(c: Clause) -> int | None:
    """`a rat took two`, `something got into 12's litter`."""
    taken = c.first("took_kits")
    if taken is None or not c.has("cause:predator"):
        return None
    return taken if c.has("litter", "kits") or c.whole(taken + 1) is not None else None


def _dead(c: Clause) -> int | None:
    """`found a dead kit`, `12 2 dead`, `two froze`."""
    dead = c.first("dead", "die", "froze", "cause:cold", "cause:sick", "cause:starved")
    if dead is None or c.said(dead - 1) in {"no", "none", "zero"}:
        return None
    starved = c.said(dead) == "starved" and c.whole(dead - 1) is not None
    if not starved and c.items[dead].marks.isdisjoint({"dead", "die", "froze"}):
        return None
    return dead if c.has("kits", "litter") or _of_a_doe(c, dead) else None


def _of_a_doe(c: Clause, dead: int) -> bool:
    """`12 2 dead`, `found 2 dead under 12`, `one of Sorrel's was found dead`."""
    if c.part_of() is not None:
        return True
    number = c.number_for(dead, behind=False)
    if number is None and any(mark.startswith("cause:") for mark in c.marks):
        number = next((i for i in c.sorted_as("num") if c.whole(i) is not None and i != c.opening()), None)
    if number is None:
        number = next((i for i in c.sorted_as("num") if c.said(i + 1) == "of" and c.whole(i) is not None), None)
    pick = doe_of_the_lost(c, dead)
    if number is None or pick is None or pick.tag is None or c.items[number] in pick.items:
        return False
    return nursing(c, pick)


def nursing(c: Clause, pick: Pick) -> bool:
    """Whether it is a doe with live kits."""
    animal = c.herd.find(pick.tag) if pick.tag else None
    if animal is None or animal.sex == "buck":
        return False
    litter = the_litter(c.herd, animal.key, c.today)
    return litter is not None and alive_now(litter) > 0


def doe_of_the_lost(c: Clause, cue: int) -> Pick | None:
    """The doe named, at the start, behind `under`, `from`, or the one spoken of."""
    if c.explicit():
        return c.subject_of(cue if cue >= 0 else None)
    opening = c.opening()
    if (
        opening is not None
        and c.whole(opening) is not None
        and opening != cue
        and not c.counted(opening)
        and c.said(opening + 1) != "of"
        and c.known(opening)
    ):
        return c.pick(opening)
    if (
        opening is not None
        and c.whole(opening) is not None
        and cue == opening + 1
        and not c.counted(opening)
        and (c.known(opening) is not None or c.spoken_of() is None)  # "12 down to 6, one smothered"
    ):
        return c.pick(opening)
    led = c.led("of", "from", "under", "in", "on", "with", "for", "litter")
    if led is not None:
        return c.pick(led)
    return c.spoken_of()


STILL_THERE: Final = frozenset({"makes", "leaves", "leaving", "making", "now", "down to", "now at"})


LEAVES: Final = frozenset({"leaves", "leaving", "leaves her", "leaving her"})


def number_left(c: Clause) -> int | None:
    """Where the number of those stands that are left: `so that's six of them left now`, `six left`."""
    for i in range(len(c.items) - 1):
        if c.said(i) in LEAVES and c.whole(i + 1) is not None and i and c.said(i + 2) in {"", ".", ",", "now", "in", "alive", "left"}:
            return i + 1  # "so that leaves six"
    for i in c.each("left_over", "count"):
        if c.said(i) not in {"left", "remaining", "kits left"} or c.said(i + 1) in {"the", "her", "in", "on", "for"}:
            continue
        before = i - 1
        while before > 0 and (c.items[before].marks & {"kits", "alive", "pronoun"} or c.said(before) in {"of", "the", "those", "still"}):
            before -= 1
        if c.whole(before) is not None and not (before and "lose" in c.items[before - 1].marks):
            return before
    return None


def lost_count(c: Clause, cue: int, litter: Litter | None, left: int | None) -> tuple[int | None, list[Item], Need | None]:
    """How many: the number beside the verb, else any; `them all` is all that live."""
    every = [i for i in c.each("all", "none") if "all" in c.items[i].marks]
    numbers = [
        i
        for i in c.sorted_as("num")
        if c.whole(i) is not None
        and i != left
        and c.said(i - 1) not in STILL_THERE
        and not (c.said(i - 1) in {"are", "is", "has"} and c.said(i - 2) == "now")
    ]
    if numbers:
        nearest = min(numbers, key=lambda i: abs(i - cue) + (3 if i < cue else 0)) if cue >= 0 else numbers[0]
        kits = [i for i in numbers if c.counted(i)]
        chosen = kits[0] if kits else nearest
        return c.whole(chosen), [c.items[chosen]], None
    whole = bool(every) or (c.has("litter") and not c.has("from", "kits"))
    if whole and not c.has("no_count") and litter is not None and alive_now(litter):
        return alive_now(litter), [c.items[i] for i in every[:1]], None
    one = cue >= 0 and c.said(cue + 1) in {"a", "another", "one"} and cue + 2 < len(c.items) and bool(c.items[cue + 2].marks & {"kits"})
    if cue >= 0 and c.said(cue - 1) in {"a", "another"} and c.said(cue + 1) in {"kit", "baby", "bunny", "one"}:
        return 1, [], None  # "a squashed kit"
    if not one and ((cue >= 0 and c.items[cue].marks & {"eat", "step"}) or c.has("no_count")):
        return None, [], Need("how_many", "count", "How many kits were lost? Send the number.")
    singular = next((item for item in c.items if item.said in {"a kit", "kit", "a baby", "baby", "the runt", "runt"}), None)
    if singular is not None and any(
        item.unit == "possessive" or item.said in {"a", "another", "the"}
        for item in c.items[max(0, c.items.index(singular) - 3) : c.items.index(singular)]
    ):
        return 1, [], None
    return None, [], Need("how_many", "count", "How many kits were lost? Send the number.")
