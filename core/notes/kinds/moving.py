"""A rabbit is put in another cage."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from itertools import pairwise
from typing import ClassVar, Final

from core.herd.changes import changed, seen
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need, Pick
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.animals import Mention
from core.notes.slots.items import Item
from core.notes.telling import called, dated, name_said, noted, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Moved:
    """A rabbit is put in another cage."""

    kind: ClassVar[str] = "moved"

    who: Tag
    cage: str
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example(
        "moved R21, R22 out of 9's cage to C1",
        ({"who": "R21", "cage": "C1", "on": "2026-11-25"}, {"who": "R22", "cage": "C1", "on": "2026-11-25"}),
    ),
    Example("31 to B4, 32 B5", ({"who": "31", "cage": "B4", "on": "2026-11-25"}, {"who": "32", "cage": "B5", "on": "2026-11-25"})),
    Example("put moss inC1", ({"who": "5", "cage": "C1", "on": "2026-11-25"},)),
    Example("I moved Clover up to C4 after supper", ({"who": "9", "cage": "C4", "on": "2026-11-25"},)),
    Example("swapped 14 to B3", ({"who": "14", "cage": "B3", "on": "2026-11-25"},)),
    Example("moved 14 C2 -> A4", ({"who": "14", "cage": "A4", "on": "2026-11-25"},)),
    Example("12 -> A4", ({"who": "12", "cage": "A4", "on": "2026-11-25"},)),
    Example("Moss to pen 6", ({"who": "5", "cage": "6", "on": "2026-11-25"},)),
    Example("31 is in C2 now", ({"who": "31", "cage": "C2", "on": "2026-11-25"},)),
    Example(
        "moved Pip and 31 to B7",
        (
            {"who": "R23", "cage": "B7", "on": "2026-11-25"},
            {"who": "31", "cage": "B7", "on": "2026-11-25"},
        ),
    ),
    Example("R21 to d2", ({"who": "R21", "cage": "D2", "on": "2026-11-25"},)),
    Example("put 33 in cage 9", ({"who": "33", "cage": "9", "on": "2026-11-25"},)),
    Example("moved moss to cage twelve", ({"who": "5", "cage": "12", "on": "2026-11-25"},)),
    Example("Move: R21 -> C4.", ({"who": "R21", "cage": "C4", "on": "2026-11-25"},)),
    Example("mvoed 14 to c3", ({"who": "14", "cage": "C3", "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "14 kindled 5 in cage 12",
    "12 lost 1 in cage 6",
    "moved 2 kits from 12 to 16",
    "bred 15 to 3",
    "move on already",
)

OPENS: Final = ("move",)
CUES: Final = {
    "move": "mv | mvd | moved | move | moves | moving | relocated | shifted | transferred | moved over",
    "into": "to | into | in | now in | is in | over to",
}  # fmt: skip


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"cage", "cage_word", "code", "num"})


def read(c: Clause) -> None:
    """An animal and its new cage: `14 to B3`, `moved thistle over to cage c seven`."""
    if _listed(c) or not (c.has("move", "cage_word") or c.sorted_as("cage", "code")):
        return
    if _each_to_its_cage(c) or _from_cage_to_cage(c) or _only_where(c):
        return
    cage, used = _cage(c)
    if _a_thing(c):
        c.use(c.sorted_as("cage", "code", "num"))
        return
    if _nobody_told(c):
        return
    if cage is None:
        if c.has("move") and c.has("cage_word") and (c.explicit() or c.led() is not None) and not c.has("kits", "foster"):
            c.take(c.past(Moved, c.subject_of(c.first("move")), "who", {"cage": None}, [], Need("what", "cage", "To which cage?")))
        return
    if (
        not (c.has("move", "shift", "cage_word", "put") or "move" in c.virtual or _plain(c, used[0]))
        or c.has("box", "new", "tag")
        or (c.has("kits") and not _with_kits(c))
    ):
        return
    _into(c, cage, used)


def _nobody_told(c: Clause) -> bool:
    """`swapped 15 and 16` doesn't say who went where; `moved Thistle's bucks to pen 5`: they have no tags yet."""
    return (c.says({"swapped", "traded"}) and not c.has("to", "into")) or any(
        item.unit == "possessive" and bool(after.marks & {"bucks_word", "does_word"}) for item, after in pairwise(c.items)
    )


def _into(c: Clause, cage: str, used: list[Item]) -> None:
    """The animals named before the cage, or the one that the statement is about, go into it."""
    cue = c.first("move", "shift", "put")
    c.used.update(id(item) for item in used)
    at = c.items.index(used[0])
    named = [i for i in range(at) if not c.taken(i) and c.known(i) is not None and not c.counted(i) and not _its_cage(c, i)]
    c.use(i for i in range(at) if _its_cage(c, i))
    if len(named) > 1 and _in_order(c, named, at):
        return
    if len(named) > 1 and c.says({"swapped", "traded"}):
        named = named[-1:]  # "swapped 15 and 16 so 15 is in A2 now"
    told = [*used, *([c.items[cue]] if cue is not None else [])]
    if len(named) > 1:
        for i in named:
            c.take(c.past(Moved, c.pick(i), "who", {"cage": cage}, told))
        return
    pick = c.subject_of(cue if cue is not None or c.items[at].sort != "cage" else at)
    if pick is None and not c.has("move"):
        c.used.difference_update(id(item) for item in used)
        return
    c.take(c.past(Moved, pick, "who", {"cage": cage}, told))


#: Deeds that are done in a cage: nobody is moved there.
DONE_THERE: Final = frozenset({"kindle", "lose", "die", "wean", "count", "breed", "litter_weight", "step", "eat", "has_kits"})


def _only_where(c: Clause) -> bool:
    """`14 kindled 5 in cage 12`: the cage tells where, and no word that anybody went there."""
    return not c.has("move", "shift", "put") and "move" not in c.virtual and not c.marks.isdisjoint(DONE_THERE)


#: What is moved about a barn and is no animal.
THINGS: Final = frozenset(
    """scale table hutch crock feeder waterer bottle bottles fan heater lamp light hose bucket feed hay straw bale bales tray trays camera carrier radio
    stool chair shelf divider mat mats tub bin""".split()  # noqa: SIM905 - a table of words
)


def _a_thing(c: Clause) -> bool:
    """`moved the scale to cage 5`: a thing, and no animal."""
    cue = c.first("move")
    return cue is not None and c.said(cue + 1) in {"the", "a", "my", "our", "that"} and c.said(cue + 2) in THINGS and not c.explicit()


def _its_cage(c: Clause, i: int) -> bool:
    """`out of 9's cage`: where they come from, and nobody who is moved."""
    return c.items[i].unit == "possessive" and i + 1 < len(c.items) and "cage_word" in c.items[i + 1].marks


def _with_kits(c: Clause) -> bool:
    """`14 and her kits to B3`: nothing of the kits is told but that they went along."""
    return any(c.said(i - 1) in {"her", "the"} and c.said(i - 2) in {"and", "with", "&", "w"} for i in c.each("kits"))


def _each_to_its_cage(c: Clause) -> bool:
    """`3 -> A1, 5 -> A2`, `33 is in C2 and 31 in C3`, `31 to B4, 32 B5`."""
    places = [i for i, item in enumerate(c.items) if item.sort in {"cage", "code"} and not c.taken(i)]
    animals = [next((j for j in range(i - 1, max(-1, i - 5), -1) if c.known(j) is not None), None) for i in places]
    led = [bool(c.items[i - 1].marks & {"into", "to"}) or c.said(i - 1) in {">", ":", "="} for i in places]
    led_all = all(led) or (
        (c.has("move") or led[0]) and all(each or c.known(i - 1) is not None for each, i in zip(led, places, strict=True))
    )
    if len(places) < 2 or None in animals or len(set(animals)) != len(places) or not led_all or c.has("new", "tag", "kits"):
        return False
    for i, j in zip(places, animals, strict=True):
        c.take(c.past(Moved, c.pick(j or 0), "who", {"cage": c.items[i].value}, [c.items[i]]))
    return True


#: They say in a list that an animal sits there; and what parts its lines.
THERE: Final = frozenset({"in", "is in", "now in", "is", "to", "to cage", "in cage", ">", "-", ":", "="})
PARTED: Final = frozenset({",", ".", ";", "and", "&"})


def _listed(c: Clause) -> bool:
    """`14 in cage 1, 9 cage 2, 22 3`: behind the first cage that is called one, numbers are cages too; also in the sentence after such a list."""
    places: list[tuple[int, int]] = []
    going_on = _behind_list(c)
    if not going_on and not c.sorted_as("cage"):
        return False
    who: int | None = None
    for i, item in enumerate(c.items):
        sits = item.sort == "cage" or (item.sort == "num" and c.whole(i) is not None and (going_on or bool(places)))
        if who is not None and sits:
            places.append((who, i))
            who = None
        elif who is None and c.known(i) is not None and not c.counted(i):
            who = i
        elif item.sort != "break" and item.said not in (PARTED if who is None else THERE):
            return False
    if who is not None or not any(c.items[cage].sort == "num" for _, cage in places):
        return False
    for animal, cage in places:
        number = str(c.whole(cage)) if c.items[cage].sort == "num" else c.items[cage].value
        c.take(c.past(Moved, c.pick(animal), "who", {"cage": number}, [c.items[cage]]))
    return True


def _behind_list(c: Clause) -> bool:
    """Whether the sentence before, or the whole message before, only told who sits where."""
    last = c.scene.context.last
    if c.before is None:
        return len(last) > 1 and all(isinstance(fact, Moved) and fact.cage.isdigit() for fact in last)
    told = c.before.found
    return bool(told) and all(found.fact is Moved and str(found.values["cage"]).isdigit() for found in told)


def _in_order(c: Clause, named: list[int], at: int) -> bool:
    """`31 and 32 to B1 and B2`: as many cages as animals go in order."""
    cages = [i for i in range(at, len(c.items)) if c.items[i].sort in {"cage", "code"} and c.known(i) is None]
    if len(cages) != len(named):
        return False
    for i, cage in zip(named, cages, strict=True):
        c.take(c.past(Moved, c.pick(i), "who", {"cage": c.items[cage].value}, [c.items[cage]]))
    return True


def _from_cage_to_cage(c: Clause) -> bool:
    """`moved cage 14 to 9`: whoever lives in the one goes to the other."""
    cue = c.first("move")
    if cue is None or cue + 3 >= len(c.items) or c.items[cue + 1].sort != "cage" or "to" not in c.items[cue + 2].marks:
        return False
    to = c.items[cue + 3]
    number = c.whole(cue + 3)
    if (to.sort not in {"cage", "code"} and number is None) or c.has("kits"):
        return False
    old = c.items[cue + 1]
    living = [animal.tag for animal in c.scene.words.living() if animal.cage and animal.cage.lower() == str(old.value).lower()]
    pick = Pick(Mention(tuple(living), f"cage {old.value}"), []) if living else None
    cage = str(number) if number is not None else to.value
    c.take(c.past(Moved, pick, "who", {"cage": cage}, [c.items[cue], old, to]))
    return True


def _plain(c: Clause, cage: Item) -> bool:
    """`14 to B3`, `14 in cage 7`: an animal, a small word, a cage."""
    at = c.items.index(cage)
    return (
        at > 0 and (bool(c.items[at - 1].marks & {"into", "to"}) or c.said(at - 1) == ">") and (at <= 3 or c.known(at - 2) is not None)
    ) or cage.sort == "cage"


def _cage(c: Clause) -> tuple[str | None, list[Item]]:
    for i in c.sorted_as("cage"):
        return c.items[i].value, [c.items[i]]
    codes = c.sorted_as("code")
    if len(codes) > 1 and c.said(codes[-1] - 1) in {">", "to"} and c.has("move"):
        return c.items[codes[-1]].value, [c.items[codes[-1]], c.items[codes[-2]]]  # "moved C2 -> A4"
    for i in codes:
        if i and (
            c.items[i - 1].marks & {"into", "to", "box_in"}
            or "cage_word" in c.items[i - 1].marks
            or c.said(i - 1) in {">", "up to", "down to"}
        ):
            return c.items[i].value, [c.items[i]]
    for i in codes:
        if c.first("move") == i - 2 and c.known(i - 1) is not None:
            return c.items[i].value, [c.items[i]]  # "mvd 31 C4"
    for i in c.each("cage_word"):
        place = i + 2 if c.said(i + 1) in {"number", "no", "-", ":", "#"} else i + 1
        if c.whole(place) is not None and c.has("move", "shift", "put"):
            return str(c.whole(place)), [c.items[place], c.items[i]]
    return None, []


def check(fact: Moved, herd: Herd, today: date) -> Problem | None:
    """The animal must be there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))


def apply(fact: Moved, herd: Herd) -> Herd:
    """It lives in that cage now."""
    return changed(seen(herd, fact.who, fact.on, fact.kind, said(fact)), fact.who, cage=fact.cage)


def reply(fact: Moved, _before: Herd, after: Herd) -> tuple[str, ...]:
    """Who lives where now."""
    return (dated(f"{called(after, fact.who)} is in cage {fact.cage}", fact.on, after),)


WRITTEN = ("moved {who:TAG} to cage {cage:NAME}",)


def show(fact: Moved, _herd: Herd) -> str:
    """`2026-11-25: moved 14 to cage B3`."""
    return noted(fact.on, f"moved {fact.who} to cage {name_said(fact.cage)}")


KIND = Kind(fact=Moved, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN, plain=True)
