"""Kits move from one doe to another."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core import words
from core.herd.changes import fostered_in, fostered_out
from core.herd.litters import litter_meant, newest_litter, nursed_litter, the_litter
from core.herd.state import Herd, Litter
from core.notes.checking import animal_problem, nest_problem, not_yet, too_many, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need, Pick, first_need
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.items import Item
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


EXAMPLES: tuple[Example, ...] = (
    Example("slipped two of Sorrel's in with Thistle's bunch", ({"from": "12", "to": "16", "count": 2, "on": "2026-11-25"},)),
    Example("evened up the litters, 2 from 12 to 16", ({"from": "12", "to": "16", "count": 2, "on": "2026-11-25"},)),
    Example("gave Thistle three of Sorrel's kits", ({"from": "12", "to": "16", "count": 3, "on": "2026-11-25"},)),
    Example("put two of 12's kits under 16", ({"from": "12", "to": "16", "count": 2, "on": "2026-11-25"},)),
    Example("Fostered: 1 kit, 12 to 16", ({"from": "12", "to": "16", "count": 1, "on": "2026-11-25"},)),
    Example("Moved three of Sorrel's kits over to Thistle to even them out", ({"from": "12", "to": "16", "count": 3, "on": "2026-11-25"},)),
    Example("3 kits 12 to 16", ({"from": "12", "to": "16", "count": 3, "on": "2026-11-25"},)),
    Example("12 > 16 2 kits", ({"from": "12", "to": "16", "count": 2, "on": "2026-11-25"},)),
    Example("16 took 2 from 12", ({"from": "12", "to": "16", "count": 2, "on": "2026-11-25"},)),
    Example(
        "14 kindled 9, gave 2 to 12",
        ({"kind": "kindled", "doe": "14", "born": 9, "on": "2026-11-25"}, {"from": "14", "to": "12", "count": 2, "on": "2026-11-25"}),
    ),
    Example("fosterd 2 kits form 12 to 16", ({"from": "12", "to": "16", "count": 2, "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "9 is a fine foster mother",
    "swapped 14 to B3",
    "moved 14 to B3",
    "gave R22 to the neighbor",
    "put 15 in with 3",
)

OPENS: Final = ("foster",)
CUES: Final = {
    "foster": "fostered | fost | foster | fosters | fostering | fostered over | foster over | swapped",
    "shift": "take | tuck | tuck them | slip | slip them | moved | move | put | took | gave | switched | transferred | stuck | shifted | stole | slipped | swapped | pulled | tucked | moving",
    "onto": "to | under | with | onto | into | in with | over to | in",
    "off_of": "from | off | off of | out of | outta | from under | of",
}  # fmt: skip


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"from", "kits"})


def read(c: Clause) -> None:
    """Kits from one doe to another: how many, from whom, to whom."""
    cue = c.first("foster")
    if cue is None:
        cue = c.first("shift")
        if not _goes_over(c, cue):
            return
    if (c.has("cage_word") and not c.has("kits", "litter")) or (cue is not None and _of_no_kits(c, cue)):
        return
    ends = _ends(c)
    if ends is None:
        told = c.before is not None and any(found.fact is Fostered for found in c.before.found)
        if c.first("foster") is None or (told and not c.sorted_as("num")):
            return
        ends = (None, None)
    giver, taker = ends
    count, used = _count(c, cue, {id(item) for pick in ends if pick for item in pick.items})
    if cue is not None:
        used.append(c.items[cue])
    need = None if count is not None else Need("how_many", "count", "How many kits were moved? Send the number.")
    found = c.past(Fostered, giver, "from_", {"count": count}, used, need)
    if taker is not None:
        found.used.extend(taker.items)
        c.fill(found, taker, "to")
    else:
        found.need = first_need(found.need, Need("which_animal", "to", "To which doe were they moved?"))
    c.take(found)


def _goes_over(c: Clause, shift: int | None) -> bool:
    """`moved 2 kits from 12 to 9`, `12 > 9 2 kits`: without a word of fostering, two does, or kits just born and a doe."""
    if "foster" in c.virtual:
        return True
    told = shift is not None or ((c.has("kits") or c.has("from")) and (c.has("to", "onto") or ">" in c.text()))
    return told and (_two_does(c) or _of_the_newborn(c))


def _of_no_kits(c: Clause, cue: int) -> bool:
    """`a good foster mom` only says which; `swapped 14 to B3` is a new cage."""
    return (c.said(cue) == "foster" and _of_a_kind(c, cue)) or (
        c.said(cue) == "swapped" and bool(c.sorted_as("code", "cage")) and not c.has("kits", "litter")
    )


def _count(c: Clause, cue: int | None, places: set[int]) -> tuple[int | None, list[Item]]:
    """How many: the number nearest behind the verb that is neither doe, or one where a single kit is spoken of."""
    counts = [i for i in c.sorted_as("num") if c.whole(i) is not None and id(c.items[i]) not in places]
    if cue is not None:
        counts.sort(key=lambda i: (i < cue, abs(i - cue)))
    if counts:
        return c.whole(counts[0]), [c.items[counts[0]]]
    one = any(
        ("kits" in item.marks or item.said == "runt") and c.said(i - 1) in {"a", "another", "the smallest"}
        for i, item in enumerate(c.items)
    )
    return (1 if one else None), []


def _of_a_kind(c: Clause, cue: int) -> bool:
    """`a good foster mom`, `wouldn't take the foster kit`: it only says which, and no number is moved."""
    following = c.items[cue + 1] if cue + 1 < len(c.items) else None
    if following is None or c.has("to", "onto"):
        return False
    return bool(following.marks & {"dam_word", "doe_word"}) or ("kits" in following.marks and c.said(cue - 1) in {"the", "a", "that"})


ENDS: Final = frozenset({"animal", "code", "num"})


def _places(c: Clause) -> list[int]:
    """Animals, and bare numbers behind `from`, `to`, `under` or beside `>`."""
    places = []
    for i in c.placed(ENDS):
        if c.items[i].sort != "num":
            places.append(i)
        elif c.whole(i) is not None and c.known(i) and not c.counted(i):
            before = c.items[i - 1] if i else None
            beside = (
                c.said(i + 1) == ">"
                or c.said(i - 1) == ">"
                or (c.said(i + 1) in {"to", "into", "under"} and c.has("kits") and c.known(i + 2) is not None)
            )
            took = i == c.opening() and c.said(i + 1) in {"took", "takes", "adopted"} and c.whole(i + 2) is not None and "from" in c.marks
            if beside or took or (before is not None and (before.marks & {"onto", "off_of", "to", "from"} or before.said == "doe")):
                places.append(i)
    return places


def _two_does(c: Clause) -> bool:
    places = _places(c)
    tags = {c.mention(i).tags if c.mention(i) else None for i in places}  # type: ignore[union-attr] # asked just before
    number = any(c.whole(i) is not None and i not in places for i in c.sorted_as("num"))
    bucks = [i for i in places if (animal := c.known(i)) and animal.sex == "buck"]
    unheard = any(c.items[i].sort == "code" for i in places) and not number
    return (
        len(tags) >= 2
        and not bucks
        and not unheard
        and (c.has("kits") or number)
        and not c.has("cage_word", "falls")
        and (c.has("kits") or not c.has("in_with") or "hers" in c.text() or c.part_of() is not None)
    )


def _of_the_newborn(c: Clause) -> bool:
    """`14 kindled 9, gave 2 to 12`: some of the kits just told of go to another doe."""
    places = _places(c)
    taker = c.known(places[0]) if len(places) == 1 else None
    numbers = [i for i in c.sorted_as("num") if c.whole(i) is not None and i not in places]
    born = c.before is not None and any(found.fact.kind == "kindled" for found in c.before.found)
    return born and len(numbers) == 1 and taker is not None and taker.sex == "doe"


def _ends(c: Clause) -> tuple[Pick | None, Pick | None] | None:
    """Giver and taker, by the word before each."""
    giver = taker = None
    rest = []
    places = _places(c)
    if len(places) < 2 and c.has("foster"):
        places = [i for i in range(len(c.items)) if i in places or (c.known(i) is not None and not c.counted(i))]
    for i in places:
        before = c.items[i - 1].marks if i else frozenset()
        if c.said(i - 1) == ">" or (before & {"onto", "to"} and not before & {"off_of", "from"}):
            taker = taker if taker is not None else i
        elif before & {"off_of", "from"} or c.said(i + 1) == ">" or c.items[i].unit == "possessive":
            giver = giver if giver is not None else i
        else:
            rest.append(i)
    if giver is None and rest:
        giver = rest.pop(0)
    if taker is None and rest:
        taker = rest.pop(0)
    if giver is None and taker is None:
        return None
    return (c.pick(giver) if giver is not None else c.spoken_of(), c.pick(taker) if taker is not None else None)


def check(fact: Fostered, herd: Herd, today: date) -> Problem | None:
    """Two does with litters, and no more kits than the first one has."""
    giver, taker = herd.find(fact.from_), herd.find(fact.to)
    there = worst(
        not_yet(fact.on, today),
        nest_problem(herd, fact.from_, fact.on),
        animal_problem(herd, fact.to, fact.on, "doe"),
        _same_doe(fact) if giver is not None and giver == taker else None,
    )
    if there or giver is None or taker is None:
        return there
    litter = nursed_litter(herd, giver.key, fact.on) or the_litter(herd, giver.key, fact.on)
    if litter is None or _taking(herd, taker.key, fact.on) is None:
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


WRITTEN = ("fostered {count:NUM} kits? from doe {from:TAG} to doe {to:TAG}",)


def show(fact: Fostered, _herd: Herd) -> str:
    """`2026-11-25: fostered 2 kits from doe 14 to doe 9`."""
    return noted(fact.on, f"fostered {words.count(fact.count, 'kit')} from doe {fact.from_} to doe {fact.to}")


KIND = Kind(fact=Fostered, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
