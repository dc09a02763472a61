"""A sheet as somebody kept it: rows of cells, read from bytes or from words of a chat whatever their letters and their separators."""

from __future__ import annotations

import csv
import io
import re
from collections import Counter
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Final

from core.notes.moving.table import Cell

#: What parts cells, the surest first.
SEPARATORS: Final = ("\t", "|", ";", ",")
#: So many lines are looked at to find the separator.
LOOKED_AT: Final = 60  # not a figure: a way of keeping sheets
#: A field may be so long [letters]; a file with a longer one is no table.
LONGEST: Final = 1_000_000
#: Of so many letters of a text at most one is of the sort that nobody types.
TYPED: Final = 100  # not a figure: letters
_UNTYPED: Final = re.compile(r"[\x01-\x08\x0e-\x1f]")
_MARKS: Final = ((b"\xef\xbb\xbf", "utf-8-sig"), (b"\xff\xfe", "utf-16"), (b"\xfe\xff", "utf-16"))


@dataclass(frozen=True, slots=True)
class Grid:
    """One sheet. `rows` holds the number of each row as its file counts it, with its cells; rows with nothing in them are left out."""

    name: str
    rows: tuple[tuple[int, tuple[Cell, ...]], ...]


def decoded(content: bytes) -> str:
    """The text of a file: by its mark, else UTF-8, else UTF-16 by its noughts, else as Windows wrote it in the West."""
    for mark, name in _MARKS:
        if content.startswith(mark):
            return content.decode(name, errors="replace")
    if b"\x00" in content[:LOOKED_AT]:
        noughts = [content[start:LOOKED_AT:2].count(0) for start in (0, 1)]
        return content.decode("utf-16-be" if noughts[0] > noughts[1] else "utf-16-le", errors="replace")
    try:
        return content.decode("utf-8")
    except UnicodeDecodeError:
        return content.decode("cp1252", errors="replace")


def is_text(text: str) -> bool:
    """Whether it is text at all: a picture or a printed page is full of signs that nobody types."""
    return len(_UNTYPED.findall(text)) * TYPED <= len(text)


def grid_of(text: str, name: str) -> Grid:
    """The grid of a text with separators; one column where it has none."""
    separator = separator_of(text)
    rows = ((number, tuple(clean(cell) for cell in cells)) for number, cells in _parted(text, separator))
    return tidy(name, rows)


def tidy(name: str, rows: Iterable[tuple[int, Sequence[Cell]]]) -> Grid:
    """The grid of numbered rows: empty rows left out, empty cells None, all rows as long as the longest."""
    told = [(number, cells) for number, cells in rows if any(cell is not None and cell != "" for cell in cells)]
    width = max((_width(cells) for _, cells in told), default=0)
    padded = ((number, tuple(cell if cell != "" else None for cell in cells[:width])) for number, cells in told)
    return Grid(name, tuple((number, cells + (None,) * (width - len(cells))) for number, cells in padded))


def _width(cells: Sequence[Cell]) -> int:
    """The place behind the last cell that holds something."""
    return max((place for place, cell in enumerate(cells, start=1) if cell is not None and cell != ""), default=0)


def clean(cell: str) -> str:
    """A cell without the spaces around it, and with hard spaces made soft."""
    return cell.replace("\u00a0", " ").replace("\ufeff", "").strip()


def separator_of(text: str) -> str:
    """What parts the cells: what gives most lines the same number of them, more than one."""
    best, most = ",", 0.0
    for separator in SEPARATORS:
        widths = Counter(len(cells) for _, cells in _parted(_head(text), separator) if any(cell.strip() for cell in cells))
        several = [(lines, width) for width, lines in widths.items() if width > 1]
        share = max(several)[0] / widths.total() if several else 0.0
        if share > most:
            best, most = separator, share
    return best


def _head(text: str) -> str:
    return "\n".join(text.splitlines()[:LOOKED_AT])


def _parted(text: str, separator: str) -> Iterable[tuple[int, list[str]]]:
    """Each row with the line that it begins on. A quote that never closes ends with its line; one alone in its cell means `the same`."""
    sign = re.escape(separator)
    before, more = ("", "") if separator == "\t" else ('(?<!")', '(?!")')
    text = re.sub(rf'(?m)(^|{before}{sign})"(?=[ \r]*(?:$|{sign}{more}))', "\\1\u3003", text.replace("\r\n", "\n").replace("\r", "\n"))
    quoted = text.count('"') % 2 == 0
    if csv.field_size_limit() < LONGEST:
        csv.field_size_limit(LONGEST)
    lines = io.StringIO(text.replace("\x00", ""), newline="")
    reader = csv.reader(lines, delimiter=separator, quoting=csv.QUOTE_MINIMAL if quoted else csv.QUOTE_NONE, skipinitialspace=True)
    begins = 1
    for cells in reader:
        yield begins, cells
        begins = reader.line_num + 1
