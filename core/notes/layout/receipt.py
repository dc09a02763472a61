"""A pasted till receipt: the line that sells rabbit feed is taken, the rest is asked about.

A receipt is full of numbers that mean nothing to the herd; a total is never the price of feed, a card number never a doe.
"""

from __future__ import annotations

import re
from datetime import date
from decimal import Decimal
from typing import Final

from core.notes.fact import Cents
from core.notes.kinds.feed_purchase import FeedBought
from core.notes.reading import Ask, Reading
from core.notes.slots.dates import Said, days_of
from core.notes.slots.items import grams_said

_CLOSING: Final = re.compile(r"^\s*(?:sub ?total|total|tax|sales tax|balance due|amount due)\b.*\d", re.IGNORECASE | re.MULTILINE)
_FEED: Final = re.compile(r"\b(?:pellets?|rabbit feed|rabbit chow|bunny feed|rabbit food)\b", re.IGNORECASE)
_AMOUNT: Final = re.compile(r"\b(\d+(?:\.\d+)?)\s*(lbs?|kg)\b", re.IGNORECASE)
_EACH: Final = re.compile(r"\b(\d{1,3})\s*(?:@|x)\s*\$?(\d+\.\d\d)", re.IGNORECASE)
_MONEY: Final = re.compile(r"\$?(\d+\.\d\d)\b")
_DAY: Final = re.compile(r"\b(\d{1,2})/(\d{1,2})/(\d{2}|\d{4})\b")
LINES_AT_LEAST: Final = 3


def is_receipt(text: str) -> bool:
    """Several lines, one of them a tax or a total."""
    return text.count("\n") + 1 >= LINES_AT_LEAST and len(_MONEY.findall(text)) >= LINES_AT_LEAST and _CLOSING.search(text) is not None


def receipt_read(text: str, today: date, order: str) -> Reading:
    """The feed on the receipt, and the question what else of it matters."""
    on = _bought_on(text, today, order)
    lines = [line for line in text.split("\n") if _FEED.search(line) and _MONEY.search(line)]
    facts = tuple(fact for line in lines if (fact := _feed(line, on)) is not None) if on else ()
    taken = "I took the feed from that receipt. " if facts else ""
    question = f"{taken}I can't tell what the other lines are for. Send what you want kept as a note, for example \u201cbought 4 bags feed 50 lb 18.50 each\u201d."
    return Reading(facts, Ask("what" if on else "when", question))


def _bought_on(text: str, today: date, order: str) -> date | None:
    found = _DAY.search(text)
    if found is None:
        return today
    year = int(found.group(3))
    on = days_of(
        Said("numeric", int(found.group(1)), int(found.group(2)), year + 2000 if year < 100 else year), today, "past", order
    ).on  # not a figure: a century
    return on if on and on <= today else None


def _feed(line: str, on: date) -> FeedBought | None:
    """One line's bags, weight and price; None where its numbers don't agree."""
    each, amount, money = _EACH.search(line), _AMOUNT.search(line), _MONEY.findall(line)
    bags = int(each.group(1)) if each else 1
    price = Decimal(money[-1])
    if each and len(money) > 1 and Decimal(each.group(2)) * bags != price:
        return None
    if each and len(money) == 1:
        price = Decimal(each.group(2)) * bags
    grams = grams_said(Decimal(amount.group(1)) * bags, amount.group(2).lower()) if amount else None
    return FeedBought(on=on, grams=grams, bags=bags, price=Cents(int(price * 100)))
