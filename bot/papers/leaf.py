"""Papers of lists: heads, lines and rows in columns, over as many pages as they need."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import accumulate
from typing import TYPE_CHECKING

from bot.papers.columns import widths
from bot.papers.sheet import GREY, MARGIN, PALE, Look, Sheet

if TYPE_CHECKING:
    from core.app.papers import Leaf, Paper, Section

TITLE = Look(17, bold=True)
HEAD = Look(12, bold=True)
TEXT = Look(10)
#: Of what is read from afar, on one page: larger.
FROM_AFAR = {"crib": Look(11.5)}
SMALL = Look(8, grey=True)
#: Room around the text of a cell [mm], and a box to tick.
BESIDE, ABOVE = 1.2, 1.1
BOX = 3.8
#: How high a row to write on is at least [mm].
PENCIL = 7.6
BETWEEN = 4.0


class Page:
    """Where the next thing goes. A new page begins with the title of what goes on."""

    def __init__(self, sheet: Sheet, title: str, look: Look) -> None:
        self.sheet = sheet
        self.look = look
        self.title = title
        self.wide = sheet.width - 2 * MARGIN
        self.bottom = sheet.height - MARGIN - 3
        sheet.page()
        self.y = MARGIN + sheet.box((MARGIN, MARGIN), (self.wide, 3 * TITLE.high), title, TITLE) + 1

    @property
    def most(self) -> float:
        """The height of the highest thing that one page holds [mm]."""
        return self.bottom - MARGIN - 4 * HEAD.high

    def room_for(self, high: float) -> bool:
        """Whether it still goes on this page; else a new one is begun."""
        if self.y + high <= self.bottom:
            return True
        self.sheet.page()
        self.sheet.line_of((MARGIN, MARGIN), self.wide, f"{self.title}, continued", SMALL)
        self.y = MARGIN + SMALL.high + 3
        return False

    def text(self, said: str, look: Look) -> None:
        """A paragraph, which stays together."""
        lines, fits = self.sheet.fitted(said, (self.wide, self.most), look)
        self.room_for(len(lines) * fits.high)
        self.y += self.sheet.box((MARGIN, self.y), (self.wide, self.most), said, look) + 1


def draw(sheet: Sheet, paper: Paper, _bot: str | None) -> None:
    """Each leaf from a page of its own."""
    leaves: Sequence[Leaf] = paper.content
    for leaf in leaves:
        page = Page(sheet, leaf.title, FROM_AFAR.get(paper.about, TEXT))
        for line in leaf.lead:
            page.text(line, page.look)
        for section in leaf.sections:
            alike = [each for each in leaf.sections if each.rows and each.columns == section.columns] if section.columns else [section]
            _section(page, section, alike)
        page.y += BETWEEN
        for line in leaf.foot:
            page.text(line, page.look.at(page.look.size - 1))


@dataclass(frozen=True, slots=True)
class Columns:
    """Where the columns of some rows lie: how wide the text of each may be, after a box to tick."""

    heads: Sequence[str]
    widths: Sequence[float]
    indent: float

    def places(self) -> list[float]:
        """Where the text of each begins, from the left edge."""
        starts = accumulate(self.widths, lambda x, width: x + width + 2 * BESIDE, initial=MARGIN + self.indent + BESIDE)
        return list(starts)[: len(self.widths)]


def _columns(page: Page, section: Section, alike: Sequence[Section]) -> Columns:
    """Columns for a section, the same for all those alike."""
    indent = BOX + 2 if any(each.to_tick for each in alike) else 0.0
    cells = [[page.sheet.wide(cell, page.look) for cell in row] for each in alike for row in each.rows]
    heads = [page.sheet.wide(name, SMALL) for name in section.columns or [""] * len(cells[0])]
    shared = widths(cells, heads, page.wide - indent, 2 * BESIDE)
    return Columns(section.columns, [width - 2 * BESIDE for width in shared], indent)


def _section(page: Page, section: Section, alike: Sequence[Section]) -> None:
    """Its head, which stays with what comes first under it, then its lines and rows."""
    page.y += BETWEEN
    if section.head:
        page.room_for(HEAD.high + SMALL.high + 2 * PENCIL)
        page.sheet.line_of((MARGIN, page.y), page.wide, section.head, HEAD)
        page.y += HEAD.high + 0.8
    for line in section.lines:
        page.text(line, page.look)
    if section.rows:
        columns = _columns(page, section, alike)
        _heads(page, columns)
        for row in section.rows:
            _row(page, row, columns, to_tick=section.to_tick)


def _heads(page: Page, columns: Columns) -> None:
    if not any(columns.heads):
        return
    for x, width, name in zip(columns.places(), columns.widths, columns.heads, strict=True):
        page.sheet.line_of((x, page.y), width, name, SMALL)
    page.y += SMALL.high + 0.6
    page.sheet.rule((MARGIN, page.y), (MARGIN + page.wide, page.y), 0.3)


def _row(page: Page, row: Sequence[str], columns: Columns, *, to_tick: bool) -> None:
    """A row, with lines around what is for the pencil. On a new page the heads are told again."""
    sheet = page.sheet
    cells = [sheet.fitted(cell, (width, page.most), page.look) for cell, width in zip(row, columns.widths, strict=True)]
    high = max([len(lines) * look.high + 2 * ABOVE for lines, look in cells] + [0 if all(row) else PENCIL])
    if not page.room_for(high):
        _heads(page, columns)
    for x, width, cell in zip(columns.places(), columns.widths, row, strict=True):
        sheet.box((x, page.y + ABOVE), (width, page.most), cell, page.look)
        if x > MARGIN + columns.indent + BESIDE and columns.heads and not all(row):
            sheet.rule((x - BESIDE, page.y), (x - BESIDE, page.y + high), 0.15, PALE)
    if to_tick:
        sheet.frame((MARGIN + 0.2, page.y + ABOVE), (BOX, BOX), 0.3)
    page.y += high
    sheet.rule((MARGIN, page.y), (MARGIN + page.wide, page.y), 0.15, PALE if all(row) else GREY)
