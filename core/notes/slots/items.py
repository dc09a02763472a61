"""What a note is made of, word group by word group: animals, numbers, weights, days, money, and the words between.

Nothing is decided here that needs the whole note: a bare number stays a number, and `4-6` a pair, until a kind wants them.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Any, Final

from core.notes.slots.tokens import Token
from core.words import OUNCE_G, OUNCES_IN_POUND, POUND_G, grams_of

NO_MARKS: Final[frozenset[str]] = frozenset()
SIGNS: Final = frozenset({"mark", "break"})


@dataclass(slots=True, eq=False)
class Item:
    """A group of tokens with one meaning.

    sort   animal, num, weight, pair, clock, time, money, temp, date, span, dose, cup, percent, ordinal, code, word, mark, break
    value  what it comes to: a Mention, Decimal, grams, Said, (count, period), text ...
    marks  what its words may do in a note
    said   the words
    """

    sort: str
    start: int
    end: int
    value: Any
    marks: frozenset[str]
    said: str
    glued: bool = False
    spoken: bool = False
    unit: str = ""


LB: Final = frozenset({"lb", "lbs", "pounder", "pounders", "pound", "pounds", "pd", "pnd", "pnds"})
OZ: Final = frozenset({"oz", "ozs", "ounce", "ounces", "onces"})
KG: Final = frozenset({"kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"})
GRAM: Final = frozenset({"g", "gm", "gms", "gram", "grams", "gr"})
CUP: Final = frozenset({"cup", "cups", "c"})
DOSE: Final = frozenset({"ml", "mls", "cc", "ccs", "mg", "drops", "drop", "tablet", "tablets", "tsp", "iu", "units", "pill", "pills"})
DOLLAR: Final = frozenset({"dollars", "dollar", "usd", "$"})
DEGREE: Final = frozenset({"degrees", "degree", "deg", "\u00b0", "fahrenheit", "celsius"})
COUNTED: Final = frozenset(
    """kits kit babies baby bunnies kids dead alive live died born does dows doese doe bucks buck males females stillborn lost living bags bag
     fall falls girls boys pink kitts survived doa ded castor black mouths""".split()  # noqa: SIM905 - a table of words
)


def marks_of(items: Sequence[Item], more: frozenset[str] = NO_MARKS) -> frozenset[str]:
    """All that the words of these items may do in a note."""
    told = [item.marks for item in items if item.marks]
    return more.union(*told) if told else more


def only_signs(items: Iterable[Item]) -> bool:
    """Whether they say nothing: marks and ends of lines."""
    return all(item.sort in SIGNS for item in items)


def key(tokens: Sequence[Token], at: int) -> str:
    """The word at an index; empty past either end."""
    return tokens[at].key if 0 <= at < len(tokens) else ""


def grams_said(amount: Decimal, unit: str) -> int | None:
    """Whole grams [g] of an amount in a unit."""
    if unit in LB:
        return grams_of(amount)
    if unit in OZ:
        return grams_of(0, amount)
    return int((amount * (1000 if unit in KG else 1)).to_integral_value())


def pair_grams(pounds: Decimal | int, ounces: Decimal | int) -> int | None:
    """Whole grams of pounds and ounces said together [g]; None where the ounces are over fifteen."""
    if not 0 <= ounces < OUNCES_IN_POUND:
        return None
    return int((POUND_G * pounds + OUNCE_G * ounces).to_integral_value())


def color_said(item: Item) -> str | None:
    """The handbook's colour that the words name."""
    return item.value[0] if item.sort == "word" and item.value else None


def breed_said(item: Item) -> str | None:
    """The handbook's breed that the words name."""
    return item.value[1] if item.sort == "word" and item.value else None
