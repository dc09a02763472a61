"""A PDF being made: text that is shrunk until it fits and never cut, lines, boxes and codes. Black and greys only: it is printed.

All lengths are millimetres from the left top corner; sizes of letters are points.
"""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import TYPE_CHECKING, Literal

from bot.papers.letters import Letters

if TYPE_CHECKING:
    from fpdf import FPDF

BLACK = 0
GREY = 90  # still dark enough for a bad printer
PALE = 180
#: What printers can't print, and a little more [mm].
MARGIN = 11.0
MM_IN_POINT = 25.4 / 72
#: Height of a line, as a share of the letters' size.
LEADING = 1.22
#: Where in a line its letters stand, as a share of its height: shrunk ones stand on the same line as large ones.
BASE = 0.75

HARD_SPACE = "\u00a0"
#: A space between a number and its unit.
UNIT = re.compile(r"(?<=\d) (?=%|(?:lb|oz|kg|g)\b)")

Place = tuple[float, float]


@dataclass(frozen=True, slots=True)
class Look:
    """How text looks."""

    size: float
    bold: bool = False
    grey: bool = False
    align: Literal["L", "C", "R"] = "L"

    @property
    def high(self) -> float:
        """How high a line of it is [mm]."""
        return self.size * MM_IN_POINT * LEADING

    def at(self, size: float) -> Look:
        """The same in that size."""
        return replace(self, size=size)


FOOT = Look(8, grey=True)


class Sheet:
    """One document. `width` and `height` are the page's."""

    def __init__(self, size: str, title: str, made_at: datetime, *, across: bool = False) -> None:
        """An empty document of that size of sheet, upright or across."""
        from fpdf import FPDF  # noqa: PLC0415 - loaded by the first paper

        self._pdf: FPDF = FPDF(orientation="landscape" if across else "portrait", unit="mm", format=size)
        self._pdf.set_auto_page_break(auto=False)
        self._pdf.set_margin(0)
        self._pdf.c_margin = 0
        self._pdf.set_title(title)
        self._pdf.set_creation_date(made_at)
        self.letters = Letters(self._pdf)
        self.width, self.height = self._pdf.w, self._pdf.h

    @property
    def pages(self) -> int:
        """How many pages there are."""
        return int(self._pdf.pages_count)

    def page(self) -> None:
        """A new page."""
        self._pdf.add_page()

    def feet(self, said: str) -> None:
        """A line at the foot of every page: the text, and which page of how many."""
        for number in range(1, self.pages + 1):
            self._pdf.page = number
            self._pdf.set_font("text", "", 1)  # another than the last page ended with: only a change is written down
            below = (MARGIN, self.height - MARGIN)
            self.line_of(below, self.width - 2 * MARGIN - 30, said, FOOT)
            self.line_of(below, self.width - 2 * MARGIN, f"{number} of {self.pages}", replace(FOOT, align="R"))

    def content(self) -> bytes:
        """The file."""
        return bytes(self._pdf.output())

    def line_of(self, place: Place, width: float, said: str, look: Look) -> None:
        """Text on one line of that width, shrunk until it fits."""
        natural = self.letters.width_of(said, bold=look.bold) * look.size
        fits = look.at(look.size * min(1, width / natural)) if natural else look
        down = (look.high - fits.high) * BASE
        self._write((place[0], place[1] + down), width, said, fits)

    def box(self, place: Place, room: Place, said: str, look: Look) -> float:
        """Text in a box of that width and height, on as many lines as it needs, shrunk until all of it fits. How high it became."""
        lines, fits = self.fitted(said, room, look)
        for at, line in enumerate(lines):
            self._write((place[0], place[1] + at * fits.high), room[0], line, fits)
        return len(lines) * fits.high

    def fitted(self, said: str, room: Place, look: Look) -> tuple[list[str], Look]:
        """The lines of a text in a box of that width and height, and the look in which all of it fits."""
        width, height = room
        lines = self.wrapped(said, width, look)
        while look.size > 1 and (len(lines) * look.high > height or any(self.wide(line, look) > width for line in lines)):
            look = look.at(look.size * 0.95)
            lines = self.wrapped(said, width, look)
        return lines, look

    def wrapped(self, said: str, width: float, look: Look) -> list[str]:
        """The text in lines of at most that width; a single word that is wider stands alone. Hard spaces break no line."""
        lines: list[str] = []
        for word in filter(None, UNIT.sub(HARD_SPACE, said).split(" ")):
            longer = f"{lines[-1]} {word}" if lines else word
            if lines and self.wide(longer, look) <= width:
                lines[-1] = longer
            else:
                lines.append(word)
        return lines

    def wide(self, said: str, look: Look) -> float:
        """How wide the text is [mm]."""
        return self.letters.width_of(said, bold=look.bold) * look.size

    def rule(self, start: Place, end: Place, thick: float = 0.2, shade: int = BLACK) -> None:
        """A straight line."""
        self._pdf.set_draw_color(shade)
        self._pdf.set_line_width(thick)
        self._pdf.line(*start, *end)

    def frame(self, place: Place, room: Place, thick: float = 0.2, shade: int = BLACK) -> None:
        """An empty rectangle."""
        self._pdf.set_draw_color(shade)
        self._pdf.set_line_width(thick)
        self._pdf.rect(*place, *room)

    def dots(self, place: Place, side: float, matrix: Sequence[Sequence[int]]) -> None:
        """A square of dark and light fields, such as a QR code: dark where the matrix has a one."""
        step = side / len(matrix)
        self._pdf.set_fill_color(BLACK)
        for row, fields in enumerate(matrix):
            for first, after in _runs(fields):
                self._pdf.rect(place[0] + first * step, place[1] + row * step, (after - first) * step, step, style="F")

    def _write(self, place: Place, width: float, said: str, look: Look) -> None:
        said = self.letters.ready(said, look.size, bold=look.bold)
        self._pdf.set_text_color(GREY if look.grey else BLACK)
        self._pdf.set_xy(*place)
        self._pdf.cell(width, look.high, said, align=look.align)


def _runs(fields: Sequence[int]) -> list[tuple[int, int]]:
    """Where dark fields begin and end."""
    found: list[tuple[int, int]] = []
    for at, dark in enumerate(fields):
        if dark and found and found[-1][1] == at:
            found[-1] = (found[-1][0], at + 1)
        elif dark:
            found.append((at, at + 1))
    return found
