"""Days as cells hold them: typed, in figures in any order, with the month in letters, or as a spreadsheet's count of days."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date, datetime, timedelta
from typing import Final

from core.notes.moving.table import Cell
from core.notes.slots.dates import MONTHS

#: The orders that a date in figures may have.
ORDERS: Final = ("MDY", "DMY", "YMD")
_ISO: Final = re.compile(r"(\d{4})[-/.](\d{1,2})[-/.](\d{1,2})(?:[ T]\d.*)?")
_FIGURES: Final = re.compile(r"(\d{1,2})[-/. ](\d{1,2})[-/. ](\d{2}|\d{4})\.?(?: 0?0:00(?::00)?)?")
_LETTERS: Final = re.compile(
    r"(?:[a-z]+,? )?(?:(\d{1,2})(?:st|nd|rd|th)?[-/. ]*([a-z]+)\.?|([a-z]+)\.?[-/ ]*(\d{1,2})(?:st|nd|rd|th)?)[-/., ']*(\d{4}|\d{2})"
)
#: The day nought of spreadsheets, and the counts that are days of a rabbitry [days].
_NOUGHT: Final = date(1899, 12, 30)  # not a figure: a way of keeping sheets
_COUNTS: Final = range(32874, 73051)  # not a figure: 1990 to 2099
_CENTURY: Final = 2000  # not a figure: two figures are years of this century


def day_of(cell: Cell, order: str) -> date | None:
    """The day; None where the cell holds none, or one that can't be. `order` is that of figures."""
    if isinstance(cell, date):
        return cell.date() if isinstance(cell, datetime) else cell
    said = str(cell).strip().lower()
    if isinstance(cell, int | float) or said.isdigit():
        return _counted(said)
    if iso := _ISO.fullmatch(said):
        return _day(int(iso[1]), int(iso[2]), int(iso[3]))
    if figures := _FIGURES.fullmatch(said):
        return _in_order(figures, order)
    letters = _LETTERS.fullmatch(said)
    month = MONTHS.get(letters[2] or letters[3]) if letters else None
    return _day(_year(letters[5]), month, int(letters[1] or letters[4])) if letters and month else None


def _counted(said: str) -> date | None:
    """A spreadsheet's count of days, or `20250304`."""
    count = float(said)
    if int(count) in _COUNTS:
        return _NOUGHT + timedelta(int(count))
    return _day(int(said[:4]), int(said[4:6]), int(said[6:])) if len(said) == len("20250304") else None


def _in_order(figures: re.Match[str], order: str) -> date | None:
    one, two, three = figures.groups()
    if order == "YMD":
        return _day(_year(one), int(two), int(three)) if len(three) < len("2025") else None
    day, month = (int(one), int(two)) if order == "DMY" else (int(two), int(one))
    return _day(_year(three), month, day)


def _year(said: str) -> int:
    return int(said) if len(said) > 2 else _CENTURY + int(said)  # not a figure: two figures


def _day(year: int, month: int, day: int) -> date | None:
    try:
        return date(year, month, day)
    except ValueError:
        return None


def is_day(cell: Cell) -> bool:
    """Whether the cell holds a day, in whatever order; a bare count is none."""
    return not isinstance(cell, int | float) and not str(cell).isdigit() and any(day_of(cell, order) for order in ORDERS)


def orders_of(cells: Iterable[Cell]) -> tuple[str, ...]:
    """The orders in which the most of the figures are days: one where they decide it, several where either could be."""
    figures = [cell for cell in cells if isinstance(cell, str) and _FIGURES.fullmatch(cell.strip())]
    fits = {order: sum(day_of(cell, order) is not None for cell in figures) for order in ORDERS}
    most = max(fits.values())
    return tuple(order for order in ORDERS if fits[order] == most and (order != "YMD" or most > max(fits["MDY"], fits["DMY"])))
