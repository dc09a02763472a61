"""The sheet that a picture is drawn on: a head, room below it, and text that shrinks to fit rather than be cut."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, Any

from bot.pictures.ink import DOTS, HEAD, INK, PALE, SMALL, SMALLEST, SOFT, TEXT, WIDTH, set_up
from bot.pictures.letters import drawable

if TYPE_CHECKING:
    from matplotlib.axes import Axes

#: Air around everything [inch].
EDGE = 0.16
POINTS_IN_INCH = 72


class Sheet:
    """A figure of the usual width and so many inches of room below its head, measured from the top left in inches."""

    def __init__(self, title: str, note: str, room: float) -> None:
        from matplotlib.backends.backend_agg import FigureCanvasAgg  # noqa: PLC0415 - loaded by the first picture
        from matplotlib.figure import Figure  # noqa: PLC0415

        set_up()
        self._figure = Figure(figsize=(WIDTH, room), dpi=DOTS, facecolor="white")
        self._canvas = FigureCanvasAgg(self._figure)
        head = _Head(self, title, note)
        self.top = head.height
        self.height = room + self.top
        self._figure.set_size_inches(WIDTH, self.height)
        head.put()

    def axes(self, left: float, top: float, width: float, height: float) -> Axes:
        """Axes at a place below the head [inch], with a pale grid and no box."""
        place = (left / WIDTH, 1 - (self.top + top + height) / self.height, width / WIDTH, height / self.height)
        axes = self._figure.add_axes(place)
        for side in ("top", "right", "left"):
            axes.spines[side].set_visible(False)
        axes.tick_params(length=4, width=1.2, labelsize=TEXT)
        axes.tick_params(axis="y", length=0)
        axes.grid(visible=True, axis="y", color=PALE, linewidth=1)
        axes.set_axisbelow(True)
        return axes

    def text(self, left: float, top: float, said: str, *, size: float = TEXT, wide: float | None = None, **look: Any) -> int:
        """Text below the head, its upper edge at `top` [inch], shrunk and then broken into lines to be no wider than `wide`. How many lines."""
        return self.write(left, self.top + top, said, size=size, wide=wide, **look)

    def write(self, left: float, top: float, said: str, *, size: float, wide: float | None, **look: Any) -> int:
        """The same, measured from the upper edge of the sheet."""
        lines, size = self.fitted(said, size, wide, bold=look.get("weight") == "bold")
        look = {"va": "top", "ha": "left", "linespacing": 1.15, **look}
        self._figure.text(left / WIDTH, 1 - top / self.height, "\n".join(lines), fontsize=size, **look)
        return len(lines)

    def fitted(self, said: str, size: float, wide: float | None, *, bold: bool = False) -> tuple[list[str], float]:
        """The text in as many lines as it needs to be no wider than that [inch], and the size of its letters: smaller before it is broken."""
        said = drawable(said)
        if wide is None:
            return said.split("\n"), size
        whole = self.wide(said, size, bold=bold)
        if whole <= wide:
            return said.split("\n"), size
        if whole * SMALL / size <= wide:
            return said.split("\n"), size * wide / whole
        size = max(min(size, SMALL), SMALLEST)
        return self._broken(said, size, wide, bold=bold), size

    def _broken(self, said: str, size: float, wide: float, *, bold: bool) -> list[str]:
        """Lines no wider than that, broken between words; a word that is wider by itself where it must be."""
        lines = [""]
        for word in said.split():
            joined = f"{lines[-1]} {word}".strip()
            if self.wide(joined, size, bold=bold) <= wide:
                lines[-1] = joined
                continue
            lines += [""] if lines[-1] else []
            for letter in word:
                if lines[-1] and self.wide(lines[-1] + letter, size, bold=bold) > wide:
                    lines.append("")
                lines[-1] += letter
        return lines

    def wide(self, said: str, size: float, *, bold: bool = False) -> float:
        """How wide the text is [inch]."""
        from matplotlib.font_manager import FontProperties  # noqa: PLC0415

        font = FontProperties(size=size, weight="bold" if bold else "normal")
        measure = self._canvas.get_renderer().get_text_width_height_descent  # type: ignore[no-untyped-call]
        return max(measure(part, font, ismath=False)[0] for part in said.split("\n")) / DOTS if said else 0.0

    def png(self) -> bytes:
        """The picture."""
        out = io.BytesIO()
        self._figure.savefig(out, format="png", pil_kwargs={"compress_level": 6})
        return out.getvalue()


class _Head:
    """The title and, under it, what else is to be said first."""

    def __init__(self, sheet: Sheet, title: str, note: str) -> None:
        self._sheet = sheet
        wide = WIDTH - 2 * EDGE
        self._parts = [
            (sheet.fitted(said, size, wide, bold=bold), bold) for said, size, bold in ((title, HEAD, True), (note, TEXT, False)) if said
        ]
        self.height = 2 * EDGE + sum(self._tall(*part) for part, _ in self._parts)

    @staticmethod
    def _tall(lines: list[str], size: float) -> float:
        return len(lines) * line_tall(size)

    def put(self) -> None:
        """Draw it."""
        top = EDGE
        for (lines, size), bold in self._parts:
            look = {"weight": "bold", "color": INK} if bold else {"color": SOFT}
            self._sheet.write(EDGE, top, "\n".join(lines), size=size, wide=None, **look)
            top += self._tall(lines, size)


def line_tall(size: float) -> float:
    """How tall a line of letters of that size is, its air included [inch]."""
    return size * 1.3 / POINTS_IN_INCH
