"""Cells as people keep them: weights, counts, money, sexes and days."""

from __future__ import annotations

from datetime import date, datetime
from decimal import Decimal

import pytest

from core.notes.moving import amounts, days
from core.notes.moving.table import Cell


@pytest.mark.parametrize(
    ("cell", "unit", "dots", "grams"),
    [
        ("4.5", "lb", None, 2041),
        (4.5, "lb", "decimal", 2041),
        ("4.6", "lb", "ounces", 1984),
        (".6", "lb", "ounces", 170),
        ("4", "lb", "ounces", 1814),
        ("2,05", "kg", None, 2050),
        ("4-6", "lb", None, 1984),
        ("4#6", "lb", None, 1984),
        ("4 lb 6 oz", "kg", None, 1984),
        ("4 lbs, 6.5 oz", "lb", None, 1999),
        ("4'6\"", "lb", None, 1984),
        ("70 oz", "lb", None, 1984),
        ("1.9kg", "lb", None, 1900),
        ("4#", "kg", None, 1814),
        ("1,984 g", "lb", None, 1984),
        ("1,984", "g", None, 1984),
        ("1,984 kg", "g", None, 1984),
        ("2-14 lb", "kg", None, 1304),
        ("2-14 lbs", "kg", None, 1304),
        ("dead", "lb", None, None),
        ("4 stone", "lb", None, None),
        (None, "lb", None, None),
    ],
)
def test_weights(cell: Cell, unit: str, dots: str | None, grams: int | None) -> None:
    """With their own unit, in pounds and ounces, or bare in the sheet's."""
    assert amounts.grams_of(cell, unit, dots) == grams


@pytest.mark.parametrize(
    ("cell", "number"),
    [("8", 8), (8, 8), (8.0, 8), ("1,250", 1250), ("2,5", Decimal("2.5")), (True, None), (None, None), ("eight", None), ("-3", None)],
)
def test_numbers(cell: Cell, number: Decimal | int | None) -> None:
    """A comma parts thousands or tenths; a tick and a word are no number."""
    assert amounts.number_of(cell) == number


def test_counts_money_sexes_and_ticks() -> None:
    """What is none of them is None."""
    assert [amounts.count_of(cell) for cell in ("8", 8.0, "8.5", "x")] == [8, 8, None, None]
    assert [amounts.cents_of(cell) for cell in ("$45.00", "45 \u20ac", 45, "free", "1,250.50")] == [4500, 4500, 4500, None, 125050]
    assert [amounts.sex_of(cell) for cell in ("D", "sr. buck", "F.", "\u2640", "x", "Sr Doe")] == ["doe", None, "doe", "doe", None, "doe"]
    assert [amounts.is_yes(cell) for cell in ("X", "yes", "3/1")] == [True, True, False]
    assert [amounts.is_blank(cell) for cell in (None, "", " ?", "N/A", 0)] == [True, True, True, True, False]
    assert [amounts.unit_named(words) for words in ("Weight (oz)", "Wt lbs", "Wt #", "Weight")] == ["oz", "lb", "lb", None]
    assert [amounts.has_dots(cell) for cell in ("4.6", 4.0, 4.5, 4, "4", "a.b", "4,6")] == [True, False, True, False, False, False, False]


@pytest.mark.parametrize(
    ("cell", "order", "day"),
    [
        (date(2025, 3, 4), "MDY", date(2025, 3, 4)),
        (datetime(2025, 3, 4, 7, 30), "MDY", date(2025, 3, 4)),  # noqa: DTZ001 - as a workbook has it
        ("2025-03-04", "DMY", date(2025, 3, 4)),
        ("2025-03-04 00:00:00", "DMY", date(2025, 3, 4)),
        ("3/4/25", "MDY", date(2025, 3, 4)),
        ("4.3.2025", "DMY", date(2025, 3, 4)),
        ("25-03-04", "YMD", date(2025, 3, 4)),
        ("25-3-2025", "YMD", None),
        ("13/13/2025", "MDY", None),
        ("Mar 4, 2025", "MDY", date(2025, 3, 4)),
        ("4-Mar-25", "MDY", date(2025, 3, 4)),
        ("Tuesday, March 4th 2025", "MDY", date(2025, 3, 4)),
        ("4 Smarch 2025", "MDY", None),
        (45720, "MDY", date(2025, 3, 4)),
        ("45720.0", "MDY", None),
        (45720.5, "MDY", date(2025, 3, 4)),
        ("20250304", "MDY", date(2025, 3, 4)),
        (7, "MDY", None),
        ("soon", "MDY", None),
    ],
)
def test_days(cell: Cell, order: str, day: date | None) -> None:
    """Typed, in figures in the sheet's order, with the month in letters, or counted by a spreadsheet."""
    assert days.day_of(cell, order) == day


def test_which_orders_a_columns_figures_leave_open() -> None:
    """A day over twelve decides; figures that go both ways leave two; years first are seen."""
    assert days.orders_of(["3/4/25", "3/25/25"]) == ("MDY",)
    assert days.orders_of(["3/4/25", "5/6/2025"]) == ("MDY", "DMY")
    assert days.orders_of(["25/3/25", "3/4/25", 45720]) == ("DMY",)
    assert days.orders_of(["25-12-30", "25-12-31"]) == ("DMY", "YMD") or days.orders_of(["99-12-30"]) == ("YMD",)
    assert [days.is_day(cell) for cell in ("3/4/25", "2025", 45720, "x", date(2025, 3, 4))] == [True, False, False, False, True]
