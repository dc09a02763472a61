"""An animal, or untagged kits, are sold. The price of kits is that of all of them, however it was said: so sales add up."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar, Final

from core import words
from core.handbook import health, reproduction
from core.herd.changes import gone, left
from core.herd.litters import the_litter
from core.herd.state import Herd
from core.notes.checking import leaver_problem, not_yet, worst
from core.notes.clauses.clause import Clause
from core.notes.clauses.leaving import leaving
from core.notes.fact import Cents, Tag
from core.notes.kind import Example, Kind
from core.notes.telling import dated, kits_after, money, motherless, noted, of_kits, quoted, said, whom, withdrawal_caution
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class Sold:
    """An animal, or untagged kits, are sold."""

    kind: ClassVar[str] = "sold"

    on: date
    who: Tag | None = None
    litter_of: Tag | None = None
    count: int | None = None
    price: Cents | None = None
    to: str | None = None


EXAMPLES: tuple[Example, ...] = (
    Example(
        "sold R21 and R22 70 for the pair",
        ({"on": "2026-11-25", "who": "R21", "price": "35.00"}, {"on": "2026-11-25", "who": "R22", "price": "35.00"}),
    ),
    Example(
        "sold R22 $30 and gave R21 to my niece",
        (
            {"on": "2026-11-25", "who": "R22", "price": "30.00"},
            {"kind": "given_away", "who": "R21", "to": "my niece", "on": "2026-11-25"},
        ),
    ),
    Example(
        "Sold the last of Thistle's bunch, all five of them, to a lady for $75",
        ({"on": "2026-11-25", "litter_of": "16", "count": 5, "price": "75.00", "to": "a lady"},),
    ),
    Example("sold Thistle's crew for 90", ({"on": "2026-11-25", "litter_of": "16", "count": 5, "price": "90.00"},)),
    Example("sold 31 $55", ({"on": "2026-11-25", "who": "31", "price": "55.00"},)),
    Example("sold 2 of 16's kits for 20 each", ({"on": "2026-11-25", "litter_of": "16", "count": 2, "price": "40.00"},)),
    Example("Flint sold for 80 to a 4-H family", ({"on": "2026-11-25", "who": "3", "price": "80.00", "to": "a 4-h family"},)),
    Example(
        "sold R21 and R22 yesterday, $40 each",
        (
            {"on": "2026-11-24", "who": "R21", "price": "40.00"},
            {"on": "2026-11-24", "who": "R22", "price": "40.00"},
        ),
    ),
    Example("Sold R22 for 35 dollars to the Hendersons", ({"on": "2026-11-25", "who": "R22", "price": "35.00", "to": "the hendersons"},)),
    Example(
        "A nice fellow from the co-op took R22 home with him, well he took him home for $30",
        ({"on": "2026-11-25", "who": "R22", "price": "30.00"},),
    ),
    Example("A lady in a red van bought R22 for 45, cash", ({"on": "2026-11-25", "who": "R22", "price": "45.00"},)),
    Example("An older man took R21 for 40", ({"on": "2026-11-25", "who": "R21", "price": "40.00"},)),
    Example("r22 sold 35 to school", ({"on": "2026-11-25", "who": "R22", "price": "35.00", "to": "school"},)),
    Example("Sold: R23, $40, 24 Nov, to J. Alvarez.", ({"on": "2026-11-24", "who": "R23", "price": "40.00", "to": "j alvarez"},)),
    Example("sold 1 kit o/o 16 $25", ({"litter_of": "16", "count": 1, "price": "25.00", "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "sold on 32, what a buck",
    "sold 16's bucks 20 each",
    "list 32 for 60",
    "sell 31 in december",
    "bought 4 bags feed",
    "what have we sold?",
    "took R21 to the vet for 40",
    "Paid $12 for the vet to look at Moss and I took him home",
)

OPENS: Final = ("sell",)
CUES: Final = {
    "sell": "to auction | to the auction | to the sale barn | at auction | at the auction | selled | solded | have sold | went off with | was purchased by | purchased by | sold | slod | sells | sale | sales | went home with | sold off | was sold | it's old | got sold | sell price",
    "bought_by": "bought",
    "took": "took",
    "took_home": "took him home | took her home | took it home | carried him home | carried her home",
}  # fmt: skip


def _bought(c: Clause, i: int) -> bool:
    """Whether somebody bought the animal at an index: `a lady bought 31 for 40`."""
    animal = c.known(i)
    if animal is None or not animal.living or c.counted(i):
        return False
    following = c.items[i + 1] if i + 1 < len(c.items) else None
    return (
        c.items[i].sort == "animal"
        or following is None
        or following.sort in {"money", "mark", "date", "break"}
        or following.said in {"for", "and", "at", "to", "today"}
    )


def _took(c: Clause) -> int | None:
    """`a fellow took R22 for 35`: somebody else did, and money is named."""
    took = c.first("took")
    if not took or c.known(took + 1) is None or c.known(took - 1) is not None or c.said(took - 1) in {"i", "we", "and", "they"}:
        return None
    priced = bool(c.sorted_as("money")) or any(c.said(i - 1) == "for" for i in c.sorted_as("num"))
    return took if priced else None


def read(c: Clause) -> None:
    """Which animal, or how many kits of a doe; for how much; to whom."""
    cue = c.first("sell")
    if cue is None and c.sorted_as("money"):
        cue = c.first("took_home")
        if cue is not None and c.said(cue - 1) in {"i", "we", "and"}:
            return  # the speaker's own: no sale
    took = _took(c) if cue is None else None
    if cue is None and took is None:
        cue = c.first("bought_by")
        buyer = cue is not None and any(i > cue and _bought(c, i) for i in range(len(c.items)))
        if not buyer and "sell" not in c.virtual:
            return
        if c.has("feed", "bag"):
            return
    if c.has("list", "tentative"):
        return
    leaving(c, Sold, cue if took is None else took, to=True, money=True)


def check(fact: Sold, herd: Herd, today: date) -> Problem | None:
    """An animal that is there, or no more untagged kits than there are."""
    return worst(not_yet(fact.on, today), leaver_problem(herd, fact.who, fact.litter_of, fact.count, fact.on, "sold"))


def apply(fact: Sold, herd: Herd) -> Herd:
    """Gone; untagged kits are fewer."""
    if fact.who is not None:
        return gone(herd, fact.who, fact.on, fact.kind, said(fact))
    doe = herd.find(fact.litter_of or "")
    litter = the_litter(herd, doe.key, fact.on) if doe else None
    return herd.with_litter(left(litter, fact.on, fact.count or 0, fact.kind, said(fact, "litter_of", "count"))) if litter else herd


def reply(fact: Sold, before: Herd, after: Herd) -> tuple[str, ...]:
    """Who was sold for what to whom; a warning inside a withdrawal time."""
    who = whom(before, fact.who) if fact.who is not None else of_kits(None, fact.litter_of, fact.count)
    several = " in all" if (fact.count or 0) > 1 else ""
    price = f" for {money(after, fact.price)}{several}" if fact.price is not None else ""
    line = dated(f"Sold {who}{price}{f' to {fact.to}' if fact.to else ''}", fact.on, after)
    caution = withdrawal_caution(before, fact.who, fact.on)
    kits = kits_after(fact.litter_of, before, after, fact.on)
    told = (line, kits, _too_young(fact, before), motherless(before, fact.who, fact.on), caution)
    return tuple(each for each in told if each)


def _too_young(fact: Sold, before: Herd) -> str | None:
    """What is said of kits that nobody would wean yet: told, not asked, for they may be sold to go later."""
    doe = before.find(fact.litter_of or "")
    litter = the_litter(before, doe.key, fact.on) if doe else None
    if litter is None or litter.weaned_on is not None:
        return None
    age = (fact.on - litter.born_on).days
    return health.TOO_YOUNG_TO_GO.format(age=words.count(age, "day")) if age < reproduction.ASK_WEAN_DAY.value else None


WRITTEN = (
    "sold {who:TAG}(?: for {price:MONEY})?(?: to {to:TEXT})?",
    "sold {count:NUM} kits? of doe {litter_of:TAG}(?: for {price:MONEY})?(?: to {to:TEXT})?",
)


def show(fact: Sold, _herd: Herd) -> str:
    """`2026-11-25: sold R23 for 40.00 to "the feed store"`."""
    return noted(
        fact.on,
        f"sold {of_kits(fact.who, fact.litter_of, fact.count)}"
        + (f" for {words.money(fact.price)}" if fact.price is not None else "")
        + (f" to {quoted(fact.to)}" if fact.to is not None else ""),
    )


KIND = Kind(fact=Sold, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN)
