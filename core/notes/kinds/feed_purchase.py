"""Feed is bought."""

from __future__ import annotations

from dataclasses import dataclass, replace
from datetime import date
from typing import ClassVar

from core import words
from core.herd.settings import feed_bag
from core.herd.state import Event, Herd
from core.notes.checking import not_yet, worst
from core.notes.fact import Cents
from core.notes.kind import Example, Kind
from core.notes.telling import dated, grams, noted, parts, said
from core.problem import Problem


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedBought:
    """Feed is bought."""

    kind: ClassVar[str] = "feed_bought"

    on: date
    grams: int | None = None
    bags: int | None = None
    price: Cents | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()


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
    price = None if fact.price is None else f"{words.money(fact.price)} in all"
    each = f"{words.money(fact.price // fact.bags)} a bag" if fact.price is not None and fact.bags else None
    return (dated(f"Feed bought: {parts(bags, grams(after, weight), price, each)}", fact.on, after),)


def show(fact: FeedBought, _herd: Herd) -> str:
    """`2026-11-25: bought feed, 4 bags, 90718 g, 74.00 in all`."""
    bags = None if fact.bags is None else words.count(fact.bags, "bag")
    weight = None if fact.grams is None else f"{fact.grams} g"
    return noted(fact.on, parts("bought feed", bags, weight, None if fact.price is None else f"{words.money(fact.price)} in all"))


KIND = Kind(fact=FeedBought, examples=EXAMPLES, not_this=NOT_THIS, check=check, apply=apply, reply=reply, show=show)
