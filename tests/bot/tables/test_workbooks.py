"""Workbooks: opened again by the library, they hold what the tables hold, and no formula."""

from __future__ import annotations

import io
from datetime import date
from decimal import Decimal
from typing import Any

import openpyxl
import pytest

from bot.tables.workbook import LONGEST, workbook
from core.app import Table


def sheets(content: bytes) -> dict[str, list[list[Any]]]:
    """The cells of each sheet."""
    return {
        sheet.title: [[cell.value for cell in row] for row in sheet.iter_rows()] for sheet in openpyxl.load_workbook(io.BytesIO(content))
    }


def test_a_sheet_a_table() -> None:
    """Numbers, money, days, yes and no, and nothing, each as what it is."""
    row = ("14", 1984, 2.5, Decimal("4.50"), date(2026, 3, 4), True, None)
    got = sheets(workbook([Table("told weighed", tuple("abcdefg"), (row,))]))
    (head, (tag, grams, share, price, day, yes, nothing)) = got["told weighed"]
    assert head == list("abcdefg")
    assert (tag, grams, share, price, day.date(), yes, nothing) == ("14", 1984, 2.5, 4.5, date(2026, 3, 4), True, None)


@pytest.mark.parametrize("text", ["=1+1", "=HYPERLINK(A1)", "+1", "-1", "@x", "#N/A", "'=1"])
def test_no_text_becomes_a_formula(text: str) -> None:
    """It stands there as it was typed, marked as text."""
    (cell,) = next(openpyxl.load_workbook(io.BytesIO(workbook([Table("t", (text,), ())])))["t"].iter_rows())
    assert (cell.value, cell.data_type) == (text, "s")


def test_what_a_cell_cannot_hold_is_told() -> None:
    """Very long texts are cut, control signs marked; the first sheet says how many."""
    tables = [
        Table("about", ("what", "value"), ()),
        Table("notes", ("a", "b"), (("x" * (LONGEST + 1), "bell\x07"), ("fine", "1900"), ("line\r", ""))),
    ]
    got = sheets(workbook(tables))
    assert [row[0] for row in got["about"][1:]] == ["not here", "not here"]
    assert "1 text longer than a cell can hold" in got["about"][1][1]
    assert "2 texts with control signs" in got["about"][2][1]
    assert len(got["notes"][1][0]) == LONGEST
    assert got["notes"][1][1] == "bell\ufffd"


def test_days_before_spreadsheets_are_text() -> None:
    """Their calendar begins in 1900, and its first weeks are wrong."""
    assert sheets(workbook([Table("t", ("a",), ((date(1899, 1, 2),),))]))["t"][1] == ["1899-01-02"]
