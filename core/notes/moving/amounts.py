"""Weights, counts, money and sexes as cells hold them."""

from __future__ import annotations

import re
from decimal import Decimal
from typing import Final

from core.notes.fact import Cents, Sex
from core.notes.moving.table import Cell
from core.notes.slots.items import GRAM, KG, LB, OZ, grams_said, pair_grams

#: What a cell says where nothing is known.
NOTHING: Final = frozenset({"", "-", "--", "---", "?", "??", "n/a", "na", "none", "unknown", "unk", ".", "tbd", "nil", "null"})
DITTO: Final = frozenset({'"', "''", "ditto", "do", "do.", "dito", "\u201d", "\u201c", "\u3003", '""', "same", '-"-', "same as above"})
_NUMBER: Final = re.compile(r"\d+(?:[.,]\d+)?|[.,]\d+")
_THOUSANDS: Final = re.compile(r"\d{1,3}(?:,\d{3})+(?:\.\d+)?")
_PAIR: Final = re.compile(r"(\d+) ?(?:-|#|lbs?\.?,?|pounds?,?|'| ) ?(\d+(?:\.\d+)?) ?(?:oz\.?|ounces?|\")?")
_LB_LAST: Final = re.compile(r"^(\d+-\d+) ?lbs?\.?$")  # 2-14 lb
_WITH_UNIT: Final = re.compile(r"(\d+(?:[.,]\d+)?|[.,]\d+) ?([a-z#]+)\.?")
_UNITS: Final = {**dict.fromkeys(LB | {"#"}, "lb"), **dict.fromkeys(OZ, "oz"), **dict.fromkeys(KG, "kg"), **dict.fromkeys(GRAM, "g")}
_SEXES: Final[dict[str, Sex]] = {
    **dict.fromkeys(("b", "buck", "bucks", "m", "male", "males", "boy", "\u2642", "sr buck", "jr buck", "senior buck", "junior buck"), "buck"),
    **dict.fromkeys(("d", "doe", "does", "f", "female", "females", "girl", "\u2640", "sr doe", "jr doe", "senior doe", "junior doe"), "doe"),
}  # fmt: skip
_YES: Final = frozenset({"yes", "y", "true", "x", "1", "\u2713", "\u2714"})


def is_blank(cell: Cell) -> bool:
    """Whether the cell says nothing, or that nothing is known."""
    return cell is None or str(cell).strip().lower() in NOTHING


def number_of(cell: Cell) -> Decimal | None:
    """A number, with a decimal point or comma; None where the cell is none."""
    if isinstance(cell, bool) or cell is None:
        return None
    said = str(cell).strip()
    if _THOUSANDS.fullmatch(said):
        return Decimal(said.replace(",", ""))
    return Decimal(said.replace(",", ".")) if _NUMBER.fullmatch(said) else None


def count_of(cell: Cell) -> int | None:
    """A whole number; None where the cell is none."""
    number = number_of(cell)
    return int(number) if number is not None and number == int(number) else None


def cents_of(cell: Cell) -> Cents | None:
    """Money; None where the cell is none."""
    said = str(cell).strip().lstrip("$\u20ac\u00a3").removesuffix("$").removesuffix("\u20ac").strip()
    number = number_of(said)
    return Cents((number * 100).to_integral_value()) if number is not None else None


def sex_of(cell: Cell) -> Sex | None:
    """`buck` or `doe`; None where the cell is neither."""
    return _SEXES.get(str(cell).strip().lower().rstrip("."))


def is_yes(cell: Cell) -> bool:
    """Whether the cell is a tick and no more."""
    return str(cell).strip().lower() in _YES


def grams_of(cell: Cell, unit: str, dots: str | None) -> int | None:
    """A weight [g]: with its own unit, in pounds and ounces, or bare in that unit. None where the cell is no weight.

    unit  lb, oz, kg or g: what a bare number counts
    dots  `ounces` where 4.6 means 4 lb 6 oz
    """
    bare = number_of(cell)
    said = str(cell).strip().lower()
    if bare is not None:
        whole, dot, ounces = said.partition(".")
        return pair_grams(int(whole or 0), int(ounces)) if dot and unit == "lb" and dots == "ounces" else grams_said(bare, unit)
    if pair := _PAIR.fullmatch(_LB_LAST.sub(r"\1", said)):
        return pair_grams(Decimal(pair[1]), Decimal(pair[2]))
    own = _WITH_UNIT.fullmatch(said)
    named = _UNITS.get(own[2]) if own else None
    if own is None or named is None:
        return None
    thousands = named == "g" and _THOUSANDS.fullmatch(own[1]) is not None  # 1,984 g is no 2 g
    return grams_said(Decimal(own[1].replace(",", "" if thousands else ".")), named)


def unit_named(words: str) -> str | None:
    """The unit that a heading names: `Weight (oz)`, `lbs`."""
    return next((_UNITS[word] for word in re.findall(r"[a-z]+|#", words.lower()) if word in _UNITS), None)


def has_dots(cell: Cell) -> bool:
    """Whether it is a bare number with a dot, which may part pounds from ounces."""
    return isinstance(cell, float | str) and number_of(cell) is not None and "." in str(cell) and not str(cell).endswith(".0")
