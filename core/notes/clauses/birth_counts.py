"""How many kits were born, live and are dead: each number of a birth by the word beside it, and how the three must agree."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import Final

from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need
from core.notes.slots.items import Item

#: `7 look good`: so many are alive.
LOOKING: Final = frozenset({"look", "are", "seem", "doing"})
WELL_OFF: Final = frozenset({"good", "great", "fine", "ok", "okay", "healthy", "strong", "well", "alive", "doing"})
#: How a kit lies that the doe lay on.
LAID_FLAT: Final = frozenset({"flat", "squished", "squashed", "flattened"})
#: How live kits look, between `all` and their label.
LIVELY: Final = frozenset({"pink", "fat", "warm", "healthy", "happy", "and", "look", "looking", "seem", "still", "plump", "strong", "nice"})


@dataclass(slots=True)
class Tally:
    """What the numbers of a birth count.

    counts      kits by `born`, `alive` and `dead`
    claimed     where the numbers stand that are explained
    everything  labels that hold for all that were born: `all alive`
    apart       labels with no number beside them: `three were outside and didn't survive`
    """

    counts: dict[str, int] = field(default_factory=dict)
    claimed: set[int] = field(default_factory=set)
    everything: list[str] = field(default_factory=list)
    apart: list[str] = field(default_factory=list)


def birth_counts(c: Clause) -> tuple[dict[str, int], list[Item]]:
    """Numbers by their labels, then the one without a label; `all alive` is all that were born."""
    labels = _labels(c)
    behind = _labels_lead(c, labels)
    c.use(i for i in c.sorted_as("num") if c.said(i + 1) in {"runt", "runts"})  # one of those that live
    tally = Tally()
    for i in c.sorted_as("num"):
        if _look_well(c, i):
            tally.counts["alive"] = c.whole(i) or 0
            tally.claimed.add(i)
    for label in labels:
        _count_beside(c, label, tally, behind=behind)
    _count_unlabelled(c, tally)
    if c.has("all_alive"):
        tally.everything.append("alive")
    for name in tally.everything:
        if "born" in tally.counts:
            tally.counts.setdefault(name, tally.counts["born"])
    return tally.counts, [c.items[i] for i in tally.claimed]


def _labels(c: Clause) -> list[int]:
    """Where the words stand that say what a number counts."""
    labels = [i for i in c.each("alive", "dead", "born", "lose") if "kindle" not in c.items[i].marks]
    return sorted([*labels, *(i for i, item in enumerate(c.items) if item.said in LAID_FLAT and c.whole(i - 1) is not None)])


def _labels_lead(c: Clause, labels: list[int]) -> bool:
    """`born 8, alive 7`: each number stands behind its label; not `6 wiggling and one that wasn't`."""
    if not labels or c.said(labels[-1] + 1) in {"and", ","}:
        return False
    following = c.past_fillers(labels[-1] + 1, 1)
    return c.whole(following) is not None and not (c.counted(following) or _look_well(c, following))


def _look_well(c: Clause, i: int) -> bool:
    """`7 look good`."""
    return c.whole(i) is not None and c.said(i + 1) in LOOKING and c.said(i + 2) in WELL_OFF and c.said(i - 1) != "all"


def _count_beside(c: Clause, label: int, tally: Tally, *, behind: bool) -> None:
    """The number that a label counts; the first told of a label holds, and one that says otherwise stays unexplained."""
    name = _label(c, label)
    place = _number_of(c, label, tally.claimed, behind=behind or "lose" in c.items[label].marks)
    if place is not None:
        if name != "born" and _all_but(c, place):
            name = "dead" if name == "alive" else "alive"
        number = c.whole(place) or 0
        if tally.counts.setdefault(name, number) == number:
            tally.claimed.add(place)
    elif name != "born" and _all_before(c, label):
        tally.everything.append(name)
    elif name != "born" and label and "none" in c.items[label - 1].marks:
        tally.counts.setdefault(name, 0)
    elif name == "dead":
        tally.apart.append(name)


def _all_but(c: Clause, place: int) -> bool:
    """`all but one alive`."""
    return c.said(place - 1) in {"but", "except", "all but"} and place > 1 and "all" in c.items[place - 2].marks | c.items[place - 1].marks


def _count_unlabelled(c: Clause, tally: Tally) -> None:
    """The first number without a label is of those born; what only repeats or completes the others is explained with it."""
    counts, claimed = tally.counts, tally.claimed
    free = [i for i in c.sorted_as("num") if i not in claimed and c.whole(i) is not None and c.said(i + 1) not in {"night", "nights"}]
    if "born" in counts or not free:
        return
    counts["born"] = c.whole(free[0]) or 0
    repeated = [i for i in free[1:] if c.whole(i) in counts.values() or _the_rest(c, i, counts)]
    claimed.update([free[0], *repeated])
    last = [i for i in free[1:] if i not in repeated]
    if len(last) == 1 and len(tally.apart) == 1 and tally.apart[0] not in counts:
        counts[tally.apart[0]] = c.whole(last[0]) or 0
        claimed.add(last[0])


def _the_rest(c: Clause, i: int, counts: dict[str, int]) -> bool:
    """`seven, six of them pink and one stillborn`: what is left of those born when the dead are told apart."""
    return c.said(i + 1) == "of" and c.whole(i) == counts["born"] - counts.get("dead", 0)


def _label(c: Clause, i: int) -> str:
    """What the word at `i` counts."""
    marks = c.items[i].marks
    if "alive" in marks:
        return "alive"
    return "dead" if marks & {"dead", "lose"} or c.said(i) in LAID_FLAT else "born"


def _all_before(c: Clause, label: int) -> bool:
    """`all warm and alive`, `everybody alive`."""
    before = c.past_fillers(label - 1, -1)
    while before > 0 and c.said(before) in LIVELY:
        before = c.past_fillers(before - 1, -1)
    return before >= 0 and bool(c.items[before].marks & {"all"} or c.said(before) in {"everybody", "everyone"})


def _labelled(c: Clause, i: int) -> bool:
    """Whether a label stands there, whose own number stands before it."""
    return i < len(c.items) and bool(c.items[i].marks & {"alive", "dead"})


def _number_of(c: Clause, label: int, claimed: set[int], *, behind: bool) -> int | None:
    """Where the whole number stands that a label counts."""
    before, after = c.past_fillers(label - 1, -1), c.past_fillers(label + 1, 1)
    if before >= 0 and (
        c.items[before].marks & {"kits", "newborn"} or (c.said(before) in {"those", "these"} and c.said(before - 1) == "of")
    ):
        before = c.past_fillers(before - 1, -1)
    order = (after, before) if behind else (before, after)
    for place in order:
        if c.whole(place) is not None and place not in claimed and (place == before or behind or not _labelled(c, place + 1)):
            return place
    return None


def reckoned(values: dict[str, int | None]) -> dict[str, int | None]:
    """The number that the other two leave."""
    born, alive, dead = values["born"], values["alive"], values["dead"]
    if born is None and alive is not None and dead is not None:
        born = alive + dead
    elif born is not None and alive is None and dead is not None and dead <= born:
        alive = born - dead
    elif born is not None and dead is None and alive is not None and alive <= born:
        dead = born - alive if alive < born else None
    elif born is None and alive is not None:
        born = alive
    return {"born": born, "alive": alive, "dead": dead}


def count_need(values: dict[str, int | None]) -> Need | None:
    """What to ask where no number was told, or where they don't agree: `kindled 6, 8 dead`."""
    born, alive, dead = values["born"], values["alive"], values["dead"]
    if born is None and alive is None:
        return Need("how_many", "born", "How many did she have? Send the number, for example 8, 2 dead.")
    if born is not None and dead is not None and alive is None and dead > born:
        return Need("impossible", "born", f"{born} born and {dead} dead can't be. How many were born, and how many of them dead?")
    if born is not None and (alive or 0) + (dead or 0) != born and alive is not None and (dead is not None or alive > born):
        return Need("which_number", "born", f"{born} born, {alive} alive, {dead or 0} dead don't add up. Which is right?")
    return None
