"""Whether the lines of a message are a list of animals or litters, as it comes out of a spreadsheet or is typed like one.

What the tables of a note are (weights, births, sales under known headings) is none of these: they are read as notes.
"""

from __future__ import annotations

from typing import Final

from core.herd.settings import Settings
from core.notes.layout.tables import table_told
from core.notes.moving.grid import SEPARATORS, Grid, grid_of, separator_of
from core.notes.moving.heads import word_meaning
from core.notes.moving.layout import BIRTHS, laid_out

#: A row has so many cells, and a list so many lines.
CELLS: Final = 3  # not a figure: a way of keeping lists
LINES: Final = 2  # not a figure: a way of keeping lists
#: What an animal's row says beside its name.
FIRST: Final = "column 1"  # what the first column is called where nothing heads it
OF_AN_ANIMAL: Final = frozenset({"sex", "breed", "born", "color"})


def is_list(text: str) -> bool:
    """Whether it is a list that goes the way of a spreadsheet."""
    lines = [line for line in text.splitlines() if line.strip()]
    if len(lines) < LINES or not any(sign in lines[0] for sign in SEPARATORS):
        return False
    separator = separator_of(text)
    if any(line.count(separator) < CELLS - 1 for line in lines) or table_told(text) is not None:
        return False
    grid = grid_of(text, "")
    heads = [word_meaning(cell) for cell in grid.rows[0][1] if cell is not None]
    return _is_headed(heads) or _is_bare(grid)


def _is_headed(heads: list[str | None]) -> bool:
    """Whether these are headings of animals or litters, hardly one of them unknown."""
    known = {head for head in heads if head is not None}
    if len(known) < CELLS or sum(head is None for head in heads) > 1:
        return False
    births = "doe" in known and not known.isdisjoint(BIRTHS - {"alive"})
    return births or (not known.isdisjoint({"tag", "name"}) and len(known & OF_AN_ANIMAL) > 0)


def _is_bare(grid: Grid) -> bool:
    """Whether rows without headings tell of animals, by what stands in their cells: a sex in each, and a breed, a colour or a birth."""
    columns = laid_out(grid, Settings(), {}).columns
    means = {column.means for column in columns}
    named = columns[0].means not in OF_AN_ANIMAL and all(cells[0] is not None for _, cells in grid.rows)
    return columns[0].head == FIRST and named and "sex" in means and len(means & OF_AN_ANIMAL) > 1
