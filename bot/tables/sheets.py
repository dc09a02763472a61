"""The sheets of a file: a workbook's rows, or the bytes of a text; of a folder or a ZIP, each file in it."""

from __future__ import annotations

import io
import zipfile
from pathlib import Path
from typing import Any

#: A sheet by its name: numbered rows of cells, or the bytes of a text.
Sheet = tuple[str, Any]

#: How a ZIP begins, and what only a workbook has inside.
ZIP = b"PK\x03\x04"
WORKBOOK_PART = "xl/workbook.xml"
#: What is read of a ZIP at most [bytes]: a small file can unpack to a huge one.
MOST = 200_000_000


#: How the names of files end that may hold a list.
ENDINGS = (".csv", ".tsv", ".txt", ".tab", ".xlsx", ".xlsm", ".xls", ".zip", ".json")


def is_list_name(name: str) -> bool:
    """Whether a file of that name may hold a list; one without an ending may."""
    return name.lower().endswith(ENDINGS) or "." not in name


class NoSheetsError(Exception):
    """The file is no table; the words say why."""


def sheets_in(path: Path) -> tuple[Sheet, ...]:
    """The sheets of that file or folder. NoSheetsError or OSError where they can't be read."""
    if path.is_dir():
        return tuple((each.stem, each.read_bytes()) for each in sorted(path.glob("*.csv")))
    return sheets_of(path.name, path.read_bytes())


def sheets_of(name: str, content: bytes) -> tuple[Sheet, ...]:
    """The sheets of a file with that name and content. NoSheetsError where it holds none."""
    stem = name.rpartition(".")[0] or name
    if content.startswith(b"\xd0\xcf\x11\xe0"):
        raise NoSheetsError("it is a workbook of an old form (.xls): save it as .xlsx or .csv first")
    if not content.startswith(ZIP):
        return ((stem, content),)
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as archive:
            if sum(each.file_size for each in archive.infolist()) > MOST:
                raise NoSheetsError("there is too much in it")
            if WORKBOOK_PART not in archive.namelist():
                texts = [each for each in sorted(archive.namelist()) if each.lower().endswith((".csv", ".tsv", ".txt"))]
                return tuple((Path(each).stem, archive.read(each)) for each in texts)
    except (zipfile.BadZipFile, RuntimeError) as error:
        raise NoSheetsError("it is broken") from error
    return _workbook(content)


def _workbook(content: bytes) -> tuple[Sheet, ...]:
    """Every sheet that holds something; formulas by what they came to."""
    from openpyxl import load_workbook  # noqa: PLC0415 - only who brings a workbook waits for it

    try:
        book = load_workbook(io.BytesIO(content), read_only=True, data_only=True)
        sheets = [
            (sheet.title, [(at, list(cells)) for at, cells in enumerate(sheet.iter_rows(values_only=True), start=1)])
            for sheet in book.worksheets
        ]
        book.close()
    except Exception as error:  # whatever a broken workbook does to its reader
        raise NoSheetsError("it is no workbook that can be read") from error
    return tuple((name, [(at, [_plain(cell) for cell in cells]) for at, cells in rows]) for name, rows in sheets)


def _plain(cell: Any) -> Any:
    """Text without the spaces around it; a time of day or a span as its words."""
    from datetime import date  # noqa: PLC0415

    if isinstance(cell, str):
        return cell.replace("\u00a0", " ").strip()
    return cell if cell is None or isinstance(cell, bool | int | float | date) else str(cell)
