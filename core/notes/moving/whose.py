"""Which animal a cell means: its tag, its name, or both, in the book or in the sheets themselves."""

from __future__ import annotations

import re
from collections.abc import Iterable
from datetime import date, datetime, time

from core.herd.state import Herd, folded
from core.notes.moving.amounts import is_blank
from core.notes.moving.days import day_of
from core.notes.moving.layout import Layout
from core.notes.moving.table import Cell

#: What no tag holds: it would end the tag in a note.
_PARTING = re.compile(r"[\s,:\"]+")
_WORDS = re.compile(r"[^\s,:()\[\]#\"/]+")


class Whose:
    """The animals that the sheets and the book know: folded tag -> tag, name -> tag (None where two have it), tag -> birth day."""

    def __init__(self, herd: Herd, layouts: Iterable[Layout]) -> None:
        """The book's spelling of a tag goes before a sheet's."""
        self.tags: dict[str, str] = {}
        self.names: dict[str, str | None] = {}
        self.born: dict[str, date] = {}
        for animal in herd.animals.values():
            self._know(animal.tag, animal.name)
            if animal.born is not None:
                self.born[animal.tag] = animal.born
        for layout in layouts:
            self._learn(layout)

    def _learn(self, layout: Layout) -> None:
        tags, names, births = ([column.place for column in layout.means(name)] for name in ("tag", "name", "born"))
        for _, cells in layout.rows:
            tag, name = _first(cells, tags), _first(cells, names)
            if not (tag or name) or layout.births:
                continue
            kept = self._know(as_tag(tag or name), name or None)
            born = next((day for place in births if (day := day_of(cells[place], layout.order)) is not None), None)
            if born is not None:
                self.born.setdefault(kept, born)

    def _know(self, tag: str, name: str | None) -> str:
        """The tag as it is spelled from now on."""
        kept = self.tags.setdefault(folded(tag), tag)
        if name:
            said = name.lower()
            self.names[said] = kept if self.names.get(said, kept) == kept else None
        return kept

    def tag_of(self, cell: Cell) -> str | None:
        """The tag of the animal; of one that nobody knows, the cell as a tag. None for an empty cell."""
        if is_blank(cell):
            return None
        said = words_of(cell)
        found = self.tags.get(folded(said)) or self.names.get(said.lower()) or self._among(said)
        return found or as_tag(said)

    def _among(self, said: str) -> str | None:
        """`14 (Juno)`, `Juno #14`: all that is known among the words must be the same animal."""
        words = _WORDS.findall(said)
        known = {self.tags.get(folded(word)) or self.names.get(word.lower()) for word in words} - {None}
        return known.pop() if len(words) > 1 and len(known) == 1 else None


def _first(cells: tuple[Cell, ...], places: Iterable[int]) -> str:
    return next((words_of(cells[place]) for place in places if not is_blank(cells[place])), "")


def words_of(cell: Cell) -> str:
    """A cell as words; a spreadsheet keeps the tag 14 as 14.0, and a day with its midnight."""
    if isinstance(cell, datetime):
        return str(cell.date() if cell.time() == time.min else cell)
    return str(int(cell)) if isinstance(cell, float) and cell.is_integer() else str(cell).strip()


def as_tag(said: str) -> str:
    """Words as a tag: no space and no sign in it that would end it in a note."""
    return _PARTING.sub("-", said.strip().lstrip("#").strip()).strip("-") or said.strip()
