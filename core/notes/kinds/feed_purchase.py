"""Feed is bought."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar, Final

from core import words
from core.herd.settings import feed_bag
from core.herd.state import Event, Herd
from core.notes.checking import not_yet, worst
from core.notes.clauses.amounts import cents
from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Need
from core.notes.fact import Cents
from core.notes.kind import Example, Kind
from core.notes.slots.items import grams_said
from core.notes.telling import dated, grams, money, noted, parts, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedBought:
    """Feed is bought."""

    kind: ClassVar[str] = "feed_bought"

    on: date
    grams: int | None = None
    bags: int | None = None
    price: Cents | None = None


EXAMPLES: tuple[Example, ...] = (
    Example("my cousin sold us a bag of feed for ten bucks", ({"on": "2026-11-25", "bags": 1, "price": "10.00"},)),
    Example("at the feed store, three bags for $60", ({"on": "2026-11-25", "bags": 3, "price": "60.00"},)),
    Example("Feed: 4 bags @ 18.75 = 75.00", ({"on": "2026-11-25", "bags": 4, "price": "75.00"},)),
    Example("feed 2 bags 44.98", ({"on": "2026-11-25", "bags": 2, "price": "44.98"},)),
    Example("bought 5 50 lb bags of feed at 19.50", ({"bags": 5, "grams": 113398, "price": "97.50", "on": "2026-11-25"},)),
    Example("Grabbed 5 bags of feed, 50 lb each, $97.50 total", ({"on": "2026-11-25", "grams": 113398, "bags": 5, "price": "97.50"},)),
    Example("bought four bags at nineteen fifty a bag", ({"on": "2026-11-25", "bags": 4, "price": "78.00"},)),
    Example("Feed: bought 6 bags (50 lb) at $18.75.", ({"on": "2026-11-25", "grams": 136078, "bags": 6, "price": "112.50"},)),
    Example("Bought two of the 40 lb bags of pellets at 16.50 each", ({"on": "2026-11-25", "grams": 36287, "bags": 2, "price": "33.00"},)),
    Example("boght 2 bags", ({"on": "2026-11-25", "bags": 2},)),
    Example("bt 3 bags @21", ({"bags": 3, "price": "63.00", "on": "2026-11-25"},)),
)
NOT_THIS: tuple[str, ...] = (
    "feed store closed, no bags",
    "feed is 22 a bag",
    "80 lb feed left",
    "bought a buck, tag 50, red, $45",
    "bought straw for 9.00",
)

OPENS: Final = ("purchase",)
CUES: Final = {
    "purchase": "bought | purchased | feed purchase | bot | brought home | stocked up",
    "buy": "sold me | sold us | bought a | picked up a | got a | grabbed a | bought | buy | picked up | purchased | purchase | bot | got | feed purchase | brought home | paid | loaded up | stocked up | buying | grabbed | brought",
    "bag": "bag of feed | a bag of feed | bags of feed | sack of feed | sacks of feed | bag | bags | sack | sacks",
    "feed_place": "feed store | feed mill | feed shop | feed lady | feed man | feed guy | feed truck | feed co op",
    "not_feed": "sunflower | sunflowers | sunflower seeds | carrot | carrots | apple | apples | banana | barley | pumpkin | straw | hay | bale | bales | salt | lick | shavings | bedding | treats | water | bottle | bottles | waterer | cage | cages | wire | corn | oats",
}  # fmt: skip


TERSE: Final = 4  # not a figure: items: `feed 4 bags 76`
_OF_ALL: Final = frozenset({"total", "all", "in all", "altogether", "all together", "all told"})  # `at 78 total`


def read(c: Clause) -> None:
    """Bags, their weight and price; `each` means a bag."""
    if not _bought(c) or (c.has("not_feed") and not c.has("feed")):
        return
    bags = _bags(c)
    weights = c.sorted_as("weight")
    price, each = _price(c, bags)
    count = c.whole(bags) if bags is not None else None
    if count is None and _one_bag(c, weights):
        count = 1
    used = [item for item in c.items if item.marks & {"buy", "feed", "bag", "each"}]
    used += [c.items[i] for i in (bags, price, *weights[:1]) if i is not None]
    total = _total_grams(c, weights, count)
    paid = None if price is None else Cents(cents(c, price) * (count if each and count else 1))
    used += [
        c.items[i] for i in c.sorted_as("num", "money") if c.items[i] not in used and cents(c, i) == paid and not c.counted(i)
    ]  # "4 bags @ 18.75 = 75.00"
    values = {"grams": total, "bags": count, "price": paid}
    nothing = total is None and count is None and paid is None
    need = Need("how_many", "bags", "How many bags of feed, and what did they cost?") if nothing else None
    c.take(c.past(FeedBought, None, "", values, used, need))


def _bought(c: Clause) -> bool:
    """Whether feed was bought: by its verb, by the store, or by bags and a price without one."""
    return (
        (c.has("buy") or "buy" in c.virtual or _tersely(c) or (c.has("bag") and c.has("feed_place") and bool(c.sorted_as("money"))))
        and (c.has("feed", "bag", "feed_place") or _times(c) is not None)
        and not (c.has("setting") and not c.has("buy", "purchase"))
    )


def _tersely(c: Clause) -> bool:
    """`feed 2 bags 44.98`, `feed 4 bags 76`, `3x50lb @ 19.50`."""
    priced = bool(c.sorted_as("money") or any(item.sort == "num" and not item.said.isdigit() and not item.spoken for item in c.items))
    of_feed = c.has("feed") or bool(c.sorted_as("weight") and c.has("each") and c.marks.isdisjoint({"sell", "feed_left", "list"}))
    return (
        (c.has("bag") and of_feed and priced)
        or (len(c.items) <= TERSE and c.has("feed", "bag") and c.said(0) in {"feed", "fd"} and len(c.sorted_as("num")) == 2)
        or (_times(c) is not None and _priced(c))
    )


def _one_bag(c: Clause, weights: list[int]) -> bool:
    """`bought a 50 lb bag`, `bought a bag of feed`, `sold me a bag of feed`."""
    if weights:
        return any(c.said(i) in {"bag", "bag of feed", "sack", "sack of feed"} and i - 1 in weights for i in c.each("bag"))
    return any(_bought_one(c, i) for i in c.each("bag")) or any(
        f"{c.said(i)} {c.said(i + 1)}".startswith("a bag of") for i in c.each("bag", "each")
    )


#: Marks that it can begin with where a figure stands, without a word of its own.
BESIDE: Final = frozenset({"feed"})


def _times(c: Clause) -> int | None:
    """Index of the count in `3x50lb`, `3 x 50 lb`: so many bags of that weight."""
    return next((i - 2 for i in c.sorted_as("weight") if c.said(i - 1) in {"x", "*"} and c.whole(i - 2) is not None), None)


def _priced(c: Clause) -> bool:
    return bool(c.sorted_as("money")) or any("." in c.said(i) for i in c.sorted_as("num"))


def _bought_one(c: Clause, i: int) -> bool:
    """`bought a bag`, `got another sack`; not `bought feed, 22 a bag`."""
    return c.said(i - 1).split(" ")[-1] in {"a", "another"} and bool({"buy", "new"} & (c.items[i - 1].marks | c.items[max(i - 2, 0)].marks))


def _bags(c: Clause) -> int | None:
    for i in c.each("bag"):
        place = c.number_for(i, behind=c.said(i + 1) in {":", "="})
        if place is None and i > 1 and c.items[i - 1].sort == "weight" and c.whole(c.past_fillers(i - 2, -1)) is not None:
            place = c.past_fillers(i - 2, -1)  # "three of the fifty pound bags"
        if place is not None:
            return place
    times = _times(c)
    if times is not None:
        return times
    return next(
        (
            i
            for i in c.sorted_as("num")
            if c.whole(i) is not None and (c.said(i + 1) in {"@", "x"} or (i + 1 < len(c.items) and "feed" in c.items[i + 1].marks))
        ),
        None,
    )


def _price(c: Clause, bags: int | None) -> tuple[int | None, bool]:
    money = c.sorted_as("money")
    if money:
        return money[0], _each(c, money[0])
    for i in c.sorted_as("num"):
        if i != bags and (
            _each(c, i)
            or c.said(i - 1) in {"@", "at", "for", "paid"}
            or c.said(i + 1) in _OF_ALL
            or c.items[i].said.count(".") == 1
            or len(c.items) <= TERSE
            or (i + 1 < len(c.items) and "bucks_word" in c.items[i + 1].marks)  # "thirty bucks"
        ):
            return i, _each(c, i)
    return None, False


def _each(c: Clause, i: int) -> bool:
    return (
        any(0 <= j < len(c.items) and "each" in c.items[j].marks for j in (i - 1, i + 1, i + 2))
        or c.said(i - 1) == "@"
        or (c.said(i - 1) == "at" and c.said(i + 1) not in _OF_ALL)
    )


def _total_grams(c: Clause, weights: list[int], count: int | None) -> int | None:
    """The weight of all, from exact pounds: a bag's weight times the bags."""
    if not weights:
        return None
    amount, unit = c.items[weights[0]].value[1], c.items[weights[0]].unit
    return grams_said(amount * (count or 1), unit)


def check(fact: FeedBought, _herd: Herd, today: date) -> Problem | None:
    """Bags or a weight."""
    none = fact.grams is None and fact.bags is None
    much = Problem("how_many", "How much feed was it?", (), 'Send it as "bought 4 bags feed 18.50 each".') if none else None
    return worst(not_yet(fact.on, today), much)


def apply(fact: FeedBought, herd: Herd) -> Herd:
    """More feed in the bin."""
    return replace(herd, feed=(*herd.feed, Event(fact.on, fact.kind, said(fact))))


def reply(fact: FeedBought, _before: Herd, after: Herd) -> tuple[str, ...]:
    """Bags, weight and price."""
    bags = None if fact.bags is None else words.count(fact.bags, "bag")
    weight = fact.grams if fact.grams is not None else (fact.bags or 0) * feed_bag(after.settings)
    price = None if fact.price is None else f"{money(after, fact.price)} in all"
    each = f"{money(after, fact.price // fact.bags)} a bag" if fact.price is not None and fact.bags else None
    return (dated(f"Feed bought: {parts(bags, grams(after, weight), price, each)}", fact.on, after),)


WRITTEN = ("bought feed(?:, {bags:NUM} bags?)?(?:, {grams:NUM} g)?(?:, {price:MONEY} in all)?",)


def show(fact: FeedBought, _herd: Herd) -> str:
    """`2026-11-25: bought feed, 4 bags, 90718 g, 74.00 in all`."""
    bags = None if fact.bags is None else words.count(fact.bags, "bag")
    weight = None if fact.grams is None else f"{fact.grams} g"
    return noted(fact.on, parts("bought feed", bags, weight, None if fact.price is None else f"{words.money(fact.price)} in all"))


KIND = Kind(
    fact=FeedBought, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show, written=WRITTEN, plain=True
)
