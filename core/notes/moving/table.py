"""A table as spreadsheets hold it, and how its cells are made safe: nothing that a person typed may become a formula."""

from __future__ import annotations

import csv
import io
import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from decimal import Decimal

#: What a cell may hold; money is a Decimal with two places.
Cell = str | int | float | bool | Decimal | date | None

#: Text that a spreadsheet would take for a formula, and text that was made safe before.
_FORMULA = re.compile(r"'*[=+\-@\t\r\n]")


@dataclass(frozen=True, slots=True)
class Table:
    """One table: its columns in order, and its rows, each as long as that."""

    name: str
    columns: tuple[str, ...]
    rows: tuple[tuple[Cell, ...], ...]


def safe(text: str) -> str:
    """Text that no spreadsheet reckons with: `=1+1` becomes `'=1+1`. `unsafe` takes the sign off again."""
    return f"'{text}" if _FORMULA.match(text) else text


def unsafe(text: str) -> str:
    """The text that `safe` was given."""
    return text[1:] if text.startswith("'") and _FORMULA.match(text) else text


def written(cell: Cell) -> str:
    """A cell as CSV has it: dates ISO, yes and no as true and false, nothing as nothing."""
    if cell is None:
        return ""
    if isinstance(cell, bool):
        return "true" if cell else "false"
    if isinstance(cell, str):
        return safe(cell)
    return cell.isoformat() if isinstance(cell, date) else str(cell)


def csv_text(table: Table) -> str:
    """The table as CSV (RFC 4180): commas, quotes where they are needed, lines ended by CR LF."""
    out = io.StringIO()
    writer = csv.writer(out, lineterminator="\r\n")
    writer.writerow([safe(column) for column in table.columns])
    writer.writerows(_row(table.rows))
    return out.getvalue()


def _row(rows: Iterable[Sequence[Cell]]) -> Iterable[list[str]]:
    """The rows as CSV has them. A row of one empty cell would be an empty line, which readers pass over; no table here has one column."""
    return ([written(cell) for cell in row] for row in rows)
