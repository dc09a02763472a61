"""One row of a sheet: its cells by what they are, and the facts that it comes to. What no fact takes is kept as words."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field, replace
from datetime import date

from core.notes.fact import Fact, Sex
from core.notes.kinds.remark import Remark
from core.notes.moving.amounts import DITTO, count_of, is_blank, sex_of
from core.notes.moving.days import day_of
from core.notes.moving.layout import Column, Layout
from core.notes.moving.table import Cell
from core.notes.moving.whose import Whose, words_of

#: How a row begins that only sums up others.
_SUMS = frozenset({"total", "totals", "sum", "average", "avg", "mean", "count", "subtotal", "sub-total"})


@dataclass(slots=True)
class Row:
    """A row as it is read. `facts` in the order that they happened; `words`: what nothing took; `why`: why it came to nothing;
    `sex`: what the line above the animals says of them."""

    layout: Layout
    line: int
    cells: tuple[Cell, ...]
    whose: Whose
    today: date
    facts: list[Fact] = field(default_factory=list)
    words: list[str] = field(default_factory=list)
    doubts: list[str] = field(default_factory=list)
    undated: bool = False
    why: str = ""
    sex: Sex | None = None

    @property
    def place(self) -> str:
        """Where it stands: `Herd, row 12`."""
        return f"{self.layout.name}, row {self.line}"

    def text(self) -> str:
        """Its cells as they stood."""
        return " | ".join(words_of(cell) for cell in self.cells if cell is not None)

    def columns(self, *names: str) -> Iterator[tuple[Column, Cell]]:
        """The columns that are one of these, with their cells that say something."""
        for column in self.layout.means(*names):
            if not is_blank(self.cells[column.place]):
                yield column, self.cells[column.place]

    def cell(self, name: str) -> Cell:
        """The cell of that column; None where it says nothing."""
        return next((cell for _, cell in self.columns(name)), None)

    def keep(self, name: str) -> None:
        """Keep the column's words: nothing can be made of them."""
        self.words += [f"{column.head}: {words_of(cell)}" for column, cell in self.columns(name)]

    def tag(self, name: str) -> str | None:
        """The animal in that column."""
        return self.whose.tag_of(self.cell(name))

    def day(self, name: str) -> date | None:
        """The day in that column; what is none is kept as words, and so is one to come."""
        cell = self.cell(name)
        if cell is None:
            return None
        day = day_of(cell, self.layout.order)
        if day is None or day > self.today:
            self.doubts.append(f"{words_of(cell)} is {'no day' if day is None else 'still to come'}")
            self.keep(name)
            return None
        return day

    def count(self, name: str) -> int | None:
        """The whole number in that column; what is none is kept as words."""
        cell = self.cell(name)
        number = count_of(cell)
        if cell is not None and number is None:
            self.doubts.append(f"{words_of(cell)} is no number")
            self.keep(name)
        return number

    def nobody(self, why: str) -> None:
        """Keep the whole row as words: it tells of no animal."""
        self.why = why
        self.facts.append(Remark(text=self.text(), on=self.today))

    def remarks(self, who: str | None, on: date) -> None:
        """Its remarks, and the words that nothing took, as one remark: last, once everything else is read."""
        told = [words_of(cell) for _, cell in self.columns("remark")]
        unknown = [(column.head, self.cells[column.place]) for column in self.layout.columns if column.means is None]
        told += [f"{head}: {words_of(cell)}" for head, cell in unknown if not is_blank(cell)]
        if told or self.words:
            self.facts.append(Remark(text="; ".join((*told, *self.words)), on=on, who=who))


def without_dittos(layout: Layout) -> Layout:
    """The sheet with each ditto mark replaced by what stands above it."""
    rows: list[tuple[int, tuple[Cell, ...]]] = []
    for line, cells in layout.rows:
        above = rows[-1][1] if rows else (None,) * len(cells)
        rows.append((line, tuple(_above(cell, up) for cell, up in zip(cells, above, strict=True))))
    return replace(layout, rows=tuple(rows))


def _above(cell: Cell, up: Cell) -> Cell:
    return up if isinstance(cell, str) and cell.lower() in DITTO else cell


def known_words(row: Row, names: Iterable[str]) -> bool:
    """Whether any of these columns says something."""
    return any(row.cell(name) is not None for name in names)


def no_record(row: Row) -> str:
    """Why the row tells of no animal: the headings again, a total, a line that parts the sheet; empty where it tells of one."""
    told = [cell for cell in row.cells if not is_blank(cell)]
    heads = [words_of(cell) for cell in told] == [row.layout.columns[at].head for at, cell in enumerate(row.cells) if not is_blank(cell)]
    if heads and told:
        return "it is the headings again"
    if not told or words_of(told[0]).lower().split()[0].rstrip(":") in _SUMS:
        return "it only sums up"
    alone = len(told) == 1 and len(row.layout.columns) > 2  # not a figure: a list has two columns
    parts = alone and bool(row.layout.means("tag", "doe")) and row.cell("remark") is None
    said = words_of(told[0])
    return "it parts the sheet" if parts and (not any(sign.isdigit() for sign in said) or " " in said) else ""


def section_sex(row: Row) -> Sex | None:
    """What a line that parts the sheet says of the animals below it: `Does:`."""
    return next((sex for cell in row.cells if cell is not None and (sex := sex_of(words_of(cell).rstrip(":")))), None)
