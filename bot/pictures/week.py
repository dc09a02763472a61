"""A week as a strip: the days one below the other, today on dark, what is late marked first."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from bot.pictures.fitting import fitted, line_tall
from bot.pictures.look import INK, LOOK, PALE, SMALL, SOFT, TEXT, WIDTH
from bot.pictures.sheet import EDGE, Sheet

if TYPE_CHECKING:
    from core.app.pictures import DayRow, Week

#: Where the chores begin, and air around a day [inch].
CHORES, AIR = 1.5, 0.1
BOX = "\u25a1"


@dataclass(frozen=True, slots=True)
class _Block:
    """A day with its lines broken to fit: each chore's lines and the size of its letters."""

    row: DayRow
    chores: tuple[tuple[list[str], float], ...]

    @property
    def tall(self) -> float:
        """How much room it takes [inch]."""
        lines = sum(len(said) * line_tall(size) for said, size in self.chores)
        return max(lines + line_tall(SMALL) * bool(self.row.more), line_tall(TEXT)) + 2 * AIR


def week(told: Week) -> Sheet:
    """The picture."""
    blocks = [_block(row) for row in told.days]
    sheet = Sheet(told.title, told.note, sum(block.tall for block in blocks) + EDGE)
    top = 0.0
    for block in blocks:
        _day(sheet, block, top)
        top += block.tall
    return sheet


def _block(row: DayRow) -> _Block:
    wide = WIDTH - CHORES - EDGE - 0.22
    return _Block(row, tuple(fitted(chore, TEXT, wide) for chore in row.chores))


def _day(sheet: Sheet, block: _Block, top: float) -> None:
    row = block.row
    color = LOOK if row.late else INK
    sheet.line(top, PALE)
    if row.today or row.late:
        sheet.block(EDGE - 0.06, top + AIR / 2, CHORES - EDGE - 0.04, line_tall(TEXT) + AIR, color)
    sheet.text(EDGE, top + AIR, row.name, wide=CHORES - EDGE - 0.14, weight="bold", color="white" if row.today or row.late else INK)
    at = top + AIR
    for said, size in block.chores:
        sheet.text(CHORES, at, BOX, size=size, color=color)
        sheet.text(CHORES + 0.22, at, "\n".join(said), size=size, color=color)
        at += len(said) * line_tall(size)
    if row.more:
        sheet.text(CHORES + 0.22, at, f"and {row.more} more", size=SMALL, color=SOFT)
    elif not row.chores:
        sheet.text(CHORES, at, "nothing", size=SMALL, color=SOFT)
