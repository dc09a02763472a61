"""The nest box goes in or comes out."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core.herd.changes import of_sex, seen
from core.herd.litters import newest_litter
from core.herd.matings import open_matings
from core.herd.state import Herd
from core.notes.checking import animal_problem, nest_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Pick
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.telling import chores_of_litter, chores_of_mating, dated, noted, said, to_come
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class NestBoxMoved:
    """The nest box goes in or comes out."""

    kind: ClassVar[str] = "nest_box"

    doe: Tag
    change: str
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example("the opal doe's box in", ({"doe": "15", "change": "in", "on": "2026-11-25"},)),
    Example("box in 14", ({"doe": "14", "change": "in", "on": "2026-11-25"},)),
    Example("NB in 9", ({"doe": "9", "change": "in", "on": "2026-11-25"},)),
    Example(
        "box out 12 and 16",
        (
            {"doe": "12", "change": "out", "on": "2026-11-25"},
            {"doe": "16", "change": "out", "on": "2026-11-25"},
        ),
    ),
    Example("Put the nest box in with Juno this afternoon", ({"doe": "14", "change": "in", "on": "2026-11-25"},)),
    Example("Pulled Thistle's nest box today", ({"doe": "16", "change": "out", "on": "2026-11-25"},)),
    Example("box out 16", ({"doe": "16", "change": "out", "on": "2026-11-25"},)),
    Example("nb out 12", ({"doe": "12", "change": "out", "on": "2026-11-25"},)),
    Example("next box in for fourteen", ({"doe": "14", "change": "in", "on": "2026-11-25"},)),
    Example("Juno's box is in as of Monday", ({"doe": "14", "change": "in", "on": "2026-11-23"},)),
    Example("took the box out of sixteen", ({"doe": "16", "change": "out", "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "found a dead kit in 12's box",
    "looked in 12's box, 7 kits",
    "9 peeing in the box",
    "16 peeing in the box",
    "put 9 in cage B3",
    "the feed box is empty",
    "Juno's box is in the shed",
    "all quiet in Thistle's nest box",
    "rained all night and not one box got wet",
    "lifted the lid of Sorrel's box and it is warm in there",
    "Clover went flying into the box when the truck backfired",
)

OPENS: Final = ("box",)
CUES: Final = {
    "box": "the nest for | put the nest | the nesting box | her nesting box | the kindling box | box placed | nest box placed | nest box installed | box installed | box given | the box | her box | the nest box | her nest box | that nest box | the nestbox | her nestbox | took the box | box out | nest box out | nb out | nestbox out | next box out | nest box | nestbox | nesting box | next box | nest bx | nb | box | nest boxes | boxes | next mark | kindling box | bx | nextbox | box in | nb in | nestbox in | nest box in | next box in",
    "box_in": "went in with | placed | box placed | nest box placed | nest box installed | box installed | box given | putting | put the nest | giving | provided | placing | hung | set up | in with | in w | in for | in to | in under | box in | nb in | nestbox in | nest box in | next box in | in | gave | put in | added | into | set in | got her | gets | got | has her | went in | installed",
    "box_out": "out | box out | nest box out | nb out | nestbox out | next box out | pulled | removed | took out | taken out | took | pull | remove | took away | taken | took the box | came out | out of | off",
}  # fmt: skip


def read(c: Clause) -> None:
    """A box and whether it went in or out; what a doe does in it is another matter."""
    cue = c.first("box")
    if cue is None:
        if "box" not in c.virtual:
            return
        cue = -1
    change = _change(c, cue)
    if change is None or c.has("cause:predator") or (cue > 0 and c.items[cue - 1].marks & {"none"}):
        return
    if change == "in" and c.has("dead", "die", "lose", "found"):
        return  # "a dead kit in 12's box"
    if any(c.said(i) == "still" and c.said(i + 1) == "to" for i in range(len(c.items))):
        return  # "box for 14 still to go in"
    if change == "in" and any(item.said in LOOKED for item in c.items):
        return  # "looked in 12's box, 7 kits"
    used = [item for item in c.items if item.marks & {"box", "box_in", "box_out"}]
    for pick in [*c.listed_subjects(cue), *_one_more(c)]:
        c.take(c.past(NestBoxMoved, pick, "doe", {"change": change}, used))


def _one_more(c: Clause) -> list[Pick]:
    """`a box in with Clover and one in with Juno`: one stands for a box."""
    ones = [i for i in c.sorted_as("num") if c.items[i].spoken and c.items[i].value == 1 and i + 2 < len(c.items)]
    more = [i for i in ones if "box_in" in c.items[i + 1].marks and c.known(i + 2) is not None]
    c.use(more)
    return [c.pick(i + 2) for i in more]


LOOKED: Final = frozenset(
    {"looked", "look", "looking", "peeked", "peek", "peeking", "peered", "checked", "check", "checking", "saw", "see"}
)
TAKEN_OUT: Final = frozenset({"came out", "took out", "taken out", "pulled", "removed"})
TAKEN: Final = frozenset({"took", "take", "taken", "pulled", "pull", "removed", "remove", "took out", "taken out", "moved", "came"})


def _change(c: Clause, cue: int) -> str | None:
    """`out` beats `in`; the word nearest the box counts."""
    own = c.items[cue].marks & {"box_in", "box_out"} if cue >= 0 else frozenset()
    if own:
        return "out" if "box_out" in own else "in"
    behind = c.items[cue + 2] if cue >= 0 and cue + 2 < len(c.items) else None
    if c.said(cue + 1) in {"is in", "are in"} and (
        behind is None or behind.sort != "word" or behind.said in {"with", "for", "now", "as", "since"}
    ):
        return "in"  # "Clover's box is in"
    if cue >= 0 and c.said(cue + 1) in {"out of", "off"} and c.known(cue + 2) is not None:
        return "out"  # "got the box out of Sorrel's cage"
    taken = any(c.said(i) in TAKEN for i in range(len(c.items)))
    outs = [
        i
        for i in c.each("box_out")
        if i != cue and (taken or c.said(i) not in {"out of", "off"} or (i > cue and c.said(i - 1) in {"is", "are", "came", "box"}))
    ]
    has = c.said(cue - 1) in {"has a", "has the", "have a", "has her"} or (
        c.said(cue - 1) in {"a", "the"} and c.said(cue - 2) in {"has", "have", "has got", "got"}
    )
    if has and not outs and c.said(cue) != "box":
        return "in"  # "14 has a nest box as of 11/22"
    ins = [
        i
        for i, item in enumerate(c.items)
        if "box_in" in item.marks and not c.taken(i) and c.said(i + 1) not in {"there", "here"} and not _led_to(c, i, cue)
    ]
    if any(c.said(i) in TAKEN_OUT for i in outs) and ins == [cue + 1] and c.said(cue + 1) == "in":
        ins = []  # "the box in 12 came out": where it was
    if not outs and not ins:
        return None
    nearest_out = min((abs(i - cue) for i in outs), default=99)
    nearest_in = min((abs(i - cue) for i in ins), default=99)
    strong = any(c.items[i].said in {"pulled", "removed", "took out", "taken out", "took", "remove", "out"} for i in outs)
    if strong and nearest_out <= nearest_in + 1:
        return "out"
    return "in" if nearest_in <= nearest_out else "out"


def _led_to(c: Clause, i: int, cue: int) -> bool:
    """`in Sorrel's box`, `jumped into the box`: the box is the place, and nothing was put in."""
    if c.said(i) not in {"in", "into"} or not i < cue:
        return False
    between = c.items[i + 1 : cue]
    owned = len(between) == 1 and between[0].unit == "possessive"
    return owned or (not between and c.said(i) == "into" and c.said(cue).startswith(("the ", "her ")))


def check(fact: NestBoxMoved, herd: Herd, today: date) -> Problem | None:
    """A doe that is there."""
    there = nest_problem(herd, fact.doe, fact.on) if fact.change == "out" else animal_problem(herd, fact.doe, fact.on, "doe")
    return worst(not_yet(fact.on, today), there)


def apply(fact: NestBoxMoved, herd: Herd) -> Herd:
    """In: for her open mating. Out: from under her litter."""
    doe = herd.find(fact.doe)
    if doe is None:
        return herd
    herd = seen(of_sex(herd, fact.doe, "doe"), fact.doe, fact.on, fact.kind, said(fact))
    if fact.change == "in":
        waiting = open_matings(herd, doe.key, fact.on)
        return replace(herd, matings=tuple(replace(m, box_in=fact.on) if m in waiting else m for m in herd.matings))
    litter = newest_litter(herd, doe.key, fact.on)
    return herd.with_litter(replace(litter, box_out=fact.on)) if litter else herd


def reply(fact: NestBoxMoved, _before: Herd, after: Herd) -> tuple[str, ...]:
    """The box, and what comes next."""
    line = dated(f"Doe {fact.doe}: nest box {fact.change}", fact.on, after)
    doe = after.find(fact.doe)
    if doe is None:
        return (line,)
    if fact.change == "in":
        return tuple(each for each in (line, to_come(chores_of_mating(after, doe.key, fact.on), after.day)) if each)
    litter = newest_litter(after, doe.key, fact.on)
    ahead = to_come(chores_of_litter(after, litter, "wean"), after.day) if litter else None
    return tuple(each for each in (line, ahead) if each)


WRITTEN = ("nest box (?P<change>in|out) for doe {doe:TAG}",)


def show(fact: NestBoxMoved, _herd: Herd) -> str:
    """`2026-11-25: nest box in for doe 14`, `nest box out for doe 14`."""
    return noted(fact.on, f"nest box {fact.change} for doe {fact.doe}")


KIND = Kind(fact=NestBoxMoved, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
