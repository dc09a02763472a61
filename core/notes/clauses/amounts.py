"""Numbers without a unit, and spans of time as days."""

from __future__ import annotations

from typing import Final

from core.notes.clauses.clause import Clause
from core.notes.slots.items import GRAM, KG, Item, pair_grams
from core.words import grams_of

DAYS_IN: Final = {"day": 1, "week": 7, "month": 30, "year": 365}  # not a figure: days in the calendar's units
GRAMS_FROM = 20  # not a figure: in a farm of kilos a bare number from here on is grams


def bare_weight(c: Clause, i: int) -> tuple[int | None, list[Item]]:
    """A number without a unit [g], in the farm's unit; None where the farm has not said what a dot means."""
    item = c.items[i]
    settings = c.herd.settings
    if _named_unit(c) or _in_kilos(c) or settings.weight_units != "lb":
        grams = item.value * 1000 if item.value < GRAMS_FROM else item.value
        return int(grams.to_integral_value()), [item]
    if item.value == int(item.value) or settings.dotted_weight == "decimal":
        return grams_of(item.value), [item]
    if settings.dotted_weight == "ounces":
        pounds, _, ounces = str(item.value).partition(".")
        return pair_grams(int(pounds), int(ounces)), [item]
    return None, [item]


def cents(c: Clause, i: int) -> int:
    """Money, or a number that is said of money [cents]."""
    item = c.items[i]
    return int(item.value) if item.sort == "money" else int((item.value * 100).to_integral_value())


def _named_unit(c: Clause) -> bool:
    """Whether a heading says kilos: `weights (kg): 31 1.71`."""
    heading = [item.said for clause in (c, c.before) if clause is not None for item in clause.items if item.sort == "word"]
    return not (KG | GRAM).isdisjoint(heading) or (c.before is not None and bool(c.virtual) and _named_unit(c.before))


def _in_kilos(c: Clause) -> bool:
    """Whether a weight beside it, or in the list before, is said in kilos: `31 2 kg, 32 1.9`."""
    return any(item.sort == "weight" and item.unit == "kg" for clause in (c, c.before) if clause is not None for item in clause.items)


def ages(c: Clause) -> list[int]:
    """Indices of the free spans that may tell an age: minutes and hours tell how long something took."""
    return [i for i in c.sorted_as("span") if c.items[i].value[1] not in {"minute", "hour"}]


def age_in_days(item: Item) -> int:
    """A span of time in days; a month counts as 30, begun days of hours as whole ones."""
    count, period = item.value
    if period in {"minute", "hour"}:
        return -(-int(count) // (24 if period == "hour" else 1440))  # not a figure: hours and minutes of a day
    return int(count) * DAYS_IN.get(period, 1)
