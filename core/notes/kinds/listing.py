"""An animal is offered for sale."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core import words
from core.herd.calendar import sale_chores
from core.herd.changes import changed
from core.herd.litters import the_litter
from core.herd.state import Herd, Listing
from core.notes.checking import already_past, leaver_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.leaving import leaving
from core.notes.clauses.scene import Need, first_need
from core.notes.fact import Cents, Tag
from core.notes.kind import Example, Kind
from core.notes.slots.dates import Days
from core.notes.slots.items import Item
from core.notes.telling import dated, money, noted, of_kits, whom
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Listed:
    """An animal is offered for sale."""

    kind: ClassVar[str] = "for_sale"

    on: date
    who: Tag | None = None
    litter_of: Tag | None = None
    count: int | None = None
    price: Cents | None = None
    until: date | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("for sale 2 of 16's 25 each", ({"litter_of": "16", "count": 2, "price": "25.00", "on": "2026-11-25"},)),
    Example("If anyone asks, 33 is for sale at fifty dollars", ({"on": "2026-11-25", "who": "33", "price": "50.00"},)),
    Example("listed R22 at $35", ({"on": "2026-11-25", "who": "R22", "price": "35.00"},)),
    Example(
        "R21 and R23 for sale, $45 each",
        (
            {"on": "2026-11-25", "who": "R21", "price": "45.00"},
            {"on": "2026-11-25", "who": "R23", "price": "45.00"},
        ),
    ),
    Example("put 3 of 16's kits up for sale for 20 each", ({"on": "2026-11-25", "litter_of": "16", "count": 3, "price": "20.00"},)),
    Example("offering 33 for 75", ({"on": "2026-11-25", "who": "33", "price": "75.00"},)),
    Example(
        "I'm listing R23 for 45 until the end of the month",
        ({"on": "2026-11-25", "who": "R23", "price": "45.00", "until": "2026-11-30"},),
    ),
    Example("fs 33 60", ({"on": "2026-11-25", "who": "33", "price": "60.00"},)),
    Example("32 list 50", ({"on": "2026-11-25", "who": "32", "price": "50.00"},)),
    Example("thirty two for sale sixty dollars", ({"on": "2026-11-25", "who": "32", "price": "60.00"},)),
    Example(
        "Listed: R21 and R22, $45 each.",
        (
            {"on": "2026-11-25", "who": "R21", "price": "45.00"},
            {"on": "2026-11-25", "who": "R22", "price": "45.00"},
        ),
    ),
    Example(
        "For sale until 10 Dec: R21, $30; R22, $35.",
        (
            {"on": "2026-11-25", "who": "R21", "price": "30.00", "until": "2026-12-10"},
            {"on": "2026-11-25", "who": "R22", "price": "35.00", "until": "2026-12-10"},
        ),
    ),
)
NOT_THIS: tuple[str, ...] = (
    "sold R23 $40",
    "is 32 for sale?",
    "list of chores",
    "took R21 off the list",
)

OPENS: Final = ("list",)
CUES: Final = {
    "list": "for sale | for sail | four sale | for sail | four sale | fs | price on | the price on | dropped price on | dropped the price on | lowered the price on | lowered price on | cut the price on | raised the price on | new price on | new price for | put an ad up | put up an ad | placed an ad | list | listed | listing | asking | put up for sale | up for sale | putting up for sale | advertise | advertised | selling | offered | offering",
    "until": "until | til | till | thru | through | by | up to",
}  # fmt: skip


def read(c: Clause) -> None:
    """What is offered, at what price, until when."""
    cue = c.first("list")
    if cue is None and "list" not in c.virtual:
        return
    if cue is not None and c.said(cue) == "list" and _struck_off(c, cue):
        return
    if cue is not None and c.said(cue) in {"selling", "offering", "asking"} and not (c.sorted_as("money") or c.sorted_as("num")):
        return
    until, used = _until(c)
    c.used.update(id(item) for item in used)
    found = leaving(c, Listed, cue, to=False, money=True)
    for each in found:
        each.used.extend(used)
        if until is not None:
            each.values["until"] = until.on
            if until.on is None:
                each.need = first_need(each.need, Need("when", "until", "Until which day? For example: until dec 20."))


def _struck_off(c: Clause, cue: int) -> bool:
    """`took 31 off the sale list`: no longer on offer."""
    return any(c.said(i) in {"off", "off of", "from"} and c.said(i + 1) in {"the", "my", "our"} for i in range(max(cue - 3, 0), cue))


def _until(c: Clause) -> tuple[Days | None, list[Item]]:
    for i in c.each("until"):
        place = c.past_fillers(i + 1, 1)
        if place < len(c.items) and c.items[place].sort == "date":
            return c.resolved(c.items[place].value, "plan"), [c.items[place], c.items[i]]
    if "list" in c.virtual:
        return _until_said(c)
    return None, []


def _until_said(c: Clause) -> tuple[Days | None, list[Item]]:
    """The end that the list began with, line by line: `for sale until 15 Dec: 31, $45; 32, $50; R22, $35`."""
    told = next((found.values.get("until") for found in (c.before.found if c.before else ()) if found.fact is Listed), None)
    return (Days(told), []) if told is not None else (None, [])


def check(fact: Listed, herd: Herd, today: date) -> Problem | None:
    """An animal that is there, or no more untagged kits than there are; an offer that ends after it begins."""
    ends = already_past(fact.until, fact.on)
    return worst(not_yet(fact.on, today), leaver_problem(herd, fact.who, fact.litter_of, fact.count, fact.on, "for sale"), ends)


def apply(fact: Listed, herd: Herd) -> Herd:
    """On offer from then on."""
    if fact.who is not None:
        return changed(herd, fact.who, listing=Listing(fact.on, fact.price, fact.until))
    doe = herd.find(fact.litter_of or "")
    litter = the_litter(herd, doe.key, fact.on) if doe else None
    if litter is None:
        return herd
    offer = (fact.on, fact.count or 0, fact.price, fact.until)
    return herd.with_litter(replace(litter, for_sale=(*litter.for_sale, offer)))


def reply(fact: Listed, before: Herd, after: Herd) -> tuple[str, ...]:
    """The offer, and when it comes up again."""
    who = whom(before, fact.who) if fact.who is not None else of_kits(None, fact.litter_of, fact.count)
    price = f" at {money(after, fact.price)}" if fact.price is not None else ""
    until = f" until {words.full_day(fact.until)}. I will remind you then" if fact.until else ""
    return (dated(f"For sale: {who}{price}{until}", fact.on, after),)


WRITTEN = (
    "for sale {who:TAG}(?: at {price:MONEY})?(?: until {until:DAY})?",
    "for sale {count:NUM} kits? of doe {litter_of:TAG}(?: at {price:MONEY})?(?: until {until:DAY})?",
)


def show(fact: Listed, _herd: Herd) -> str:
    """`2026-11-25: for sale R23 at 60.00 until 2026-12-20`."""
    price = f" at {words.money(fact.price)}" if fact.price is not None else ""
    until = f" until {fact.until.isoformat()}" if fact.until else ""
    return noted(fact.on, f"for sale {of_kits(fact.who, fact.litter_of, fact.count)}{price}{until}")


KIND = Kind(
    fact=Listed, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, chores=sale_chores, reply=reply, show=show, written=WRITTEN
)
