"""Tables as a workbook (XLSX), one sheet each. Text stays text: no cell that a person typed can become a formula."""

from __future__ import annotations

import io
from collections.abc import Iterable, Iterator
from datetime import date
from decimal import Decimal
from typing import TYPE_CHECKING, Any

from core.words import count

if TYPE_CHECKING:
    from core.app import Table

#: What a cell of a workbook can hold at most [letters], and from which year on it knows days [D: ECMA-376, SpreadsheetML].
LONGEST = 32_767
FIRST_YEAR = 1901
#: Control signs that XML has no way to write; a carriage return would come back as a line feed.
BAD = dict.fromkeys([*range(9), 11, 12, *range(14, 32), 0xFFFE, 0xFFFF], "\ufffd") | {13: "\n"}
WIDEST = 40  # letters


def workbook(tables: Iterable[Table]) -> bytes:
    """The workbook. What a cell can't hold is told in the first sheet, under `not here`."""
    from openpyxl import Workbook  # noqa: PLC0415 - only who wants a workbook waits for it

    book = Workbook(write_only=True)
    told = list(tables)
    for table in told:
        _sheet(book, table, _lost(told) if table is told[0] else ())
    out = io.BytesIO()
    book.save(out)
    return out.getvalue()


def _lost(tables: Iterable[Table]) -> Iterator[str]:
    """What the cells can't hold, in words."""
    texts = [cell for table in tables for row in table.rows for cell in row if isinstance(cell, str)]
    long = sum(len(text) > LONGEST for text in texts)
    odd = sum(text != text.translate(BAD) for text in texts)
    if long:
        yield f"{count(long, 'text')} longer than a cell can hold ({LONGEST} letters): cut here, whole in the other forms."
    if odd:
        yield f"{count(odd, 'text')} with control signs that a workbook can't write: a mark stands in their place here."


def _sheet(book: Any, table: Table, lost: Iterable[str]) -> None:
    sheet = book.create_sheet(table.name)
    sheet.freeze_panes = "A2"
    for place, column in enumerate(table.columns):
        longest = max([len(column), *(len(str(row[place])) for row in table.rows[:200])])
        sheet.column_dimensions[_letters(place)].width = min(longest, WIDEST) + 2
    sheet.append([_cell(sheet, column, bold=True) for column in table.columns])
    for row in (*table.rows, *(("not here", line) for line in lost)):
        sheet.append([_cell(sheet, cell) for cell in row])


def _letters(place: int) -> str:
    """The name of a column: A, B, ... AA."""
    from openpyxl.utils import get_column_letter  # noqa: PLC0415

    return str(get_column_letter(place + 1))


def _cell(sheet: Any, value: Any, *, bold: bool = False) -> Any:
    """A cell; text is marked as text, whatever it begins with."""
    from openpyxl.cell import WriteOnlyCell  # noqa: PLC0415

    if isinstance(value, date) and value.year < FIRST_YEAR:
        value = value.isoformat()
    if not isinstance(value, str):
        cell = WriteOnlyCell(sheet, value)
        cell.number_format = "0.00" if isinstance(value, Decimal) else cell.number_format
        return cell if value is not None else None
    cell = WriteOnlyCell(sheet, value.translate(BAD)[:LONGEST])
    cell.data_type = "s"
    cell.quotePrefix = value[:1] in "=+-@'"
    if bold:
        from openpyxl.styles import Font  # noqa: PLC0415

        cell.font = Font(bold=True)
    return cell
