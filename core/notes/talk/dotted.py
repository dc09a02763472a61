"""What the dot in a weight stands for: `4.6` is four and six tenths to one farm, four pounds six ounces to another.

A farm is asked once; its answer settles the weight that it was asked about, and is remembered for all that follow.
"""

from __future__ import annotations

import re
from typing import Final

from core.notes.clauses.scene import Need
from core.notes.reading import Ask
from core.notes.slots.items import Item

DECIMAL: Final = "decimal"
OUNCES: Final = "ounces"

_CHOICES: Final = (re.compile(r"(\d+)\.(\d{1,2}) lb"), re.compile(r"(\d+) lb (\d{1,2}) oz"))
_WAYS: Final = {
    DECIMAL: frozenset(
        {"decimal", "decimals", "a decimal", "it's decimal", "its decimal", "pounds", "tenths", "dot is decimal", "the first"}
    ),
    OUNCES: frozenset(
        {
            "ounces",
            "oz",
            "pounds and ounces",
            "pounds ounces",
            "pounds & ounces",
            "lb oz",
            "lbs oz",
            "lb and oz",
            "lbs and oz",
            "lbs and ounces",
            "the second",
        }
    ),
}


def what_is_the_dot(item: Item) -> Need | None:
    """The question about a dotted number in a farm that has not said what its dot means; None for any other number."""
    pounds, dot, ounces = item.said.partition(".")
    if item.sort != "num" or not dot or len(ounces) > 2:
        return None
    both = (f"{item.said} lb", f"{pounds} lb {int(ounces)} oz")
    text = f"Is that {both[0]} or {both[1]}? I will remember how you write it."
    return Need("which_number", "grams", text, both)


def dot_told(ask: Ask, said: str) -> str | None:
    """What an answer says of the dot, `decimal` or `ounces`; None where it wasn't asked about, or the answer is something else.

    said  the answer in lower case, without what surrounds it
    """
    if len(ask.choices) != 2 or not all(shape.fullmatch(choice) for shape, choice in zip(_CHOICES, ask.choices, strict=True)):
        return None
    for way, choice in zip((DECIMAL, OUNCES), ask.choices, strict=True):
        if said in _WAYS[way] or _spelled(said) == choice:
            return way
    return None


def _spelled(said: str) -> str:
    """The weight as the choices spell it: `4 pounds 6 ounces`, `4-6` and `4lb6` as `4 lb 6 oz`."""
    pair = re.fullmatch(r"(\d+)\s*(?:-|#|lbs?\.?|pounds?)\s*,?\s*(?:and )?(\d{1,2})(?:\s*(?:oz|ounces?)\.?)?", said)
    if pair:
        return f"{pair[1]} lb {int(pair[2])} oz"
    whole = re.fullmatch(r"(\d+\.\d{1,2})\s*(?:lbs?|pounds?)\.?", said)
    return f"{whole[1]} lb" if whole else said
