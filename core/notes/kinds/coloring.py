"""An animal's colour is settled."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core.herd.changes import changed
from core.herd.state import Herd
from core.notes.checking import animal_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.fact import Tag
from core.notes.kind import Example, Kind
from core.notes.slots.items import color_said
from core.notes.telling import called, color_written, dated, noted
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class ColorSettled:
    """An animal's colour is settled."""

    kind: ClassVar[str] = "color"

    who: Tag
    color: str
    on: date


EXAMPLES: tuple[Example, ...] = (
    Example("Buck 31, color castor confirmed.", ({"who": "31", "color": "castor", "on": "2026-11-25"},)),
    Example("32 turned out opal", ({"who": "32", "color": "opal", "on": "2026-11-25"},)),
    Example("33 is black otter", ({"who": "33", "color": "black otter", "on": "2026-11-25"},)),
    Example(
        "color 32 castor, 33 black",
        ({"who": "32", "color": "castor", "on": "2026-11-25"}, {"who": "33", "color": "black", "on": "2026-11-25"}),
    ),
    Example("R21 is white", ({"who": "R21", "color": "white", "on": "2026-11-25"},)),
    Example("color of 31: castor", ({"who": "31", "color": "castor", "on": "2026-11-25"},)),
    Example("No doubt left about 31, his color is castor through and through", ({"who": "31", "color": "castor", "on": "2026-11-25"},)),
    Example("31 is a castor", ({"who": "31", "color": "castor", "on": "2026-11-25"},)),
    Example("32 moulted out opal", ({"who": "32", "color": "opal", "on": "2026-11-25"},)),
    Example("thirty two is opal", ({"who": "32", "color": "opal", "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "16 litter 3 castor 2 black",
    "new doe 40 mini rex opal",
    "the red barn is done",
)

OPENS: Final = ()
CUES: Final = {
    "color_is": "have | has a | colored | coloured | appears | is turning | molted out | molting out | moulted out | molted to | molted | moulted | came in | turned out | is | shes | hes | is a | looks | looks like a | coloring up | color | colour | color of | coming in | going to be | definitely | its a",
}  # fmt: skip


#: Sorts of items and marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"color"})


#: What may stand behind a colour that is settled; any other word may be what has that colour.
BEHIND: Final = frozenset(
    {
        "color", "colour", "colored", "and", "now", "confirmed", "then", "all", "but", "with", "not", "for", "after", "today", "like", "this",
        "through", "as", "in", "without", "by", "just", "so", "too",
    }
)  # fmt: skip


def read(c: Clause) -> None:
    """An animal and nothing but its colour."""
    colors = [i for i, item in enumerate(c.items) if color_said(item) and not c.taken(i)]
    if len(colors) != 1 or c.has("litter", "kits", "new", "tag", "fault", "dq", "sell", "list", "breed", "ail"):
        return
    place, told = colors[0], c.first("color_is")
    if (told is None and len(c.items) > 3) or _of_a_thing(c, place, told):
        return
    pick = c.pick(place - 1) if told is not None and c.known(place - 1) is not None else c.subject_of(place)
    if pick is None or (not pick.items and not c.has("pronoun")) or any(c.items[i] not in pick.items for i in c.sorted_as("num")):
        return
    used = [c.items[place], *([c.items[told]] if told is not None else [])]
    c.take(c.past(ColorSettled, pick, "who", {"color": color_said(c.items[place])}, used))


def _of_a_thing(c: Clause, place: int, told: int | None) -> bool:
    """`the red barn is done`; `the opal doe is sweet` only says which."""
    after = c.items[place + 1] if place + 1 < len(c.items) else None
    if after is None:
        return False
    which = told is not None and told > place and bool(after.marks & {"doe_word", "buck_word"})
    return which or (after.sort == "word" and not after.marks & {"buck_word", "doe_word", "pronoun"} and after.said not in BEHIND)


def check(fact: ColorSettled, herd: Herd, today: date) -> Problem | None:
    """An animal that is there."""
    return worst(not_yet(fact.on, today), animal_problem(herd, fact.who, fact.on))


def apply(fact: ColorSettled, herd: Herd) -> Herd:
    """That is its colour now."""
    return changed(herd, fact.who, color=fact.color)


def reply(fact: ColorSettled, before: Herd, after: Herd) -> tuple[str, ...]:
    """The colour, and what it was before."""
    animal = before.find(fact.who)
    old = animal.color if animal else None
    was = f", was {old}" if old is not None and old != fact.color else ""
    return (dated(f"{called(after, fact.who)} is {fact.color}{was}", fact.on, after),)


WRITTEN = ("{who:TAG} color {color:COLOR}",)


def show(fact: ColorSettled, _herd: Herd) -> str:
    """`2026-11-25: 33 color black`."""
    return noted(fact.on, f"{fact.who} color {color_written(fact.color)}")


KIND = Kind(fact=ColorSettled, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
