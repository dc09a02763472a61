"""A pedigree: the animal above, then its ancestors in columns, sires over dams; who is not known has a line to be filled by hand."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from bot.papers.sheet import GREY, HARD_SPACE, MARGIN, Look, Sheet

if TYPE_CHECKING:
    from core.app.papers import Ancestor, Paper, PedigreeTree

TITLE = Look(19, bold=True)
TEXT = Look(11)
SMALL = Look(9)
#: Where the tree begins and ends, from the edges [mm].
ABOVE, BELOW = 34.0, 17.0
BESIDE = 2.0
#: Names by generation, large to small.
NAMES = (12.5, 10.5, 9.0, 8.0, 7.2)


def draw(sheet: Sheet, paper: Paper, _bot: str | None) -> None:
    """One page."""
    tree: PedigreeTree = paper.content
    wide = sheet.width - 2 * MARGIN
    sheet.page()
    sheet.line_of((MARGIN, MARGIN - 1), wide, tree.animal.named, TITLE)
    sheet.line_of((MARGIN, MARGIN + 8), wide, " \u00b7 ".join(tree.animal.told), TEXT)
    sheet.line_of((MARGIN, MARGIN + 14), wide, " ".join(tree.lines), SMALL)
    column = wide / len(tree.generations)
    high = sheet.height - ABOVE - BELOW
    for at, row in enumerate(tree.generations):
        for place, one in enumerate(row):
            room = high / len(row)
            _one(sheet, (MARGIN + at * column, ABOVE + place * room), (column, room), one, at)
            if place % 2 == 0:
                ends = (_line(ABOVE + each * room, room, at) for each in (place, place + 1))
                _bracket(sheet, MARGIN + at * column, *ends)


def _one(sheet: Sheet, place: tuple[float, float], room: tuple[float, float], one: Ancestor | None, generation: int) -> None:
    """A name on its line in the middle of its room, what else is known under it."""
    (x, y), (wide, high) = place, room
    name = Look(NAMES[generation], bold=True)
    told = Look(max(NAMES[generation] - 2, 6))
    line = _line(y, high, generation)
    left, width = x + BESIDE, wide - BESIDE - 1.5
    sheet.rule((x, line), (x + wide, line), 0.2, GREY)
    if one is not None:
        lines, fits = sheet.fitted(one.named, (width, line - y), name)
        sheet.box((left, line - len(lines) * fits.high), (width, line - y), one.named, fits)
        sheet.box((left, line + 0.4), (width, y + high - line - 0.8), _told(one), told)


def _line(y: float, high: float, generation: int) -> float:
    """Where a name's line is: in the middle of its room, higher where the room is low, so that there is room under it."""
    name = Look(NAMES[generation])
    return y + high / 2 if high > 4 * name.high else y + min(name.high + 0.3, high / 2)


def _told(one: Ancestor) -> str:
    """What else is known; a day or a weight is never broken."""
    return " \u00b7 ".join(part.replace(" ", HARD_SPACE) if re.search(r"\d", part) else part for part in one.told)


def _bracket(sheet: Sheet, x: float, sire: float, dam: float) -> None:
    """The line that joins sire and dam to their kit."""
    sheet.rule((x, sire), (x, dam), 0.3, GREY)
