"""Sheets out of files: texts, workbooks, ZIPs and folders."""

from __future__ import annotations

import io
import zipfile
from datetime import date, datetime, time
from pathlib import Path

import pytest

from bot.tables import sheets
from bot.tables.sheets import NoSheetsError, sheets_in, sheets_of
from bot.tables.zips import zipped
from tests.workbooks import workbook


def test_a_text_is_one_sheet(tmp_path: Path) -> None:
    """Its bytes as they are; what ends its name is left out."""
    (tmp_path / "my.herd.csv").write_bytes(b"Tag\n14\n")
    assert sheets_in(tmp_path / "my.herd.csv") == (("my.herd", b"Tag\n14\n"),)
    assert sheets_of("herd", b"x") == (("herd", b"x"),)


def test_a_workbook_is_its_sheets() -> None:
    """Rows with their numbers; days stay days, spaces around words go, a time of day is words."""
    content = workbook(Herd=[["Tag ", "DOB"], [14, date(2025, 3, 4)], [None, time(7, 30)]], Empty=[])
    assert sheets_of("x.xlsx", content) == (
        ("Herd", [(1, ["Tag", "DOB"]), (2, [14, datetime(2025, 3, 4)]), (3, [None, "07:30:00"])]),  # noqa: DTZ001 - as a workbook has it
        ("Empty", []),
    )


def test_a_zip_and_a_folder_are_the_tables_in_them(tmp_path: Path) -> None:
    """In the order of their names; what is no table is left alone."""
    files = {"b.csv": b"2", "a.csv": b"1", "readme.md": b"x"}
    for name, content in files.items():
        (tmp_path / name).write_bytes(content)
    assert sheets_of("x.zip", zipped(files)) == sheets_in(tmp_path) == (("a", b"1"), ("b", b"2"))


@pytest.mark.parametrize("content", [b"PK\x03\x04broken", b"\xd0\xcf\x11\xe0old", zipped({"xl/workbook.xml": b"<x>"})])
def test_what_is_no_table(content: bytes) -> None:
    """Broken, or of a form that nobody here reads."""
    with pytest.raises(NoSheetsError, match=r"\w"):
        sheets_of("x.xlsx", content)


def test_a_zip_that_unpacks_to_too_much(monkeypatch: pytest.MonkeyPatch) -> None:
    """It is refused before it is unpacked."""
    monkeypatch.setattr(sheets, "MOST", 10)
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_DEFLATED) as archive:
        archive.writestr("a.csv", b"0" * 11)
    with pytest.raises(NoSheetsError, match="too much"):
        sheets_of("x.zip", out.getvalue())
