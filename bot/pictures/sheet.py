"""The sheet that a picture is drawn on: a head, room below it, and text that shrinks to fit rather than be cut."""

from __future__ import annotations

import io
from typing import TYPE_CHECKING, Any

from bot.pictures.fitting import fitted, line_tall
from bot.pictures.look import DOTS, HEAD, INK, PALE, SMALL, SOFT, TEXT, WIDTH, set_up

if TYPE_CHECKING:
    from matplotlib.axes import Axes

#: Air around everything [inch].
EDGE = 0.16
#: A title is never smaller than that [points].
LEAST_HEAD = 13.0


class Sheet:
    """A figure of the usual width and so many inches of room below its head, measured from the top left in inches."""

    def __init__(self, title: str, note: str, room: float) -> None:
        from matplotlib.backends.backend_agg import FigureCanvasAgg  # noqa: PLC0415 - loaded by the first picture
        from matplotlib.figure import Figure  # noqa: PLC0415

        set_up()
        self._figure = Figure(figsize=(WIDTH, room), dpi=DOTS, facecolor="white")
        FigureCanvasAgg(self._figure)
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
        lines, size = fitted(said, size, wide, bold=look.get("weight") == "bold")
        look = {"va": "top", "ha": "left", "linespacing": 1.12, **look}
        self._figure.text(left / WIDTH, 1 - top / self.height, "\n".join(lines), fontsize=size, **look)
        return len(lines)

    def block(self, left: float, top: float, width: float, height: float, color: str) -> None:
        """A block of colour below the head [inch]."""
        from matplotlib.patches import Rectangle  # noqa: PLC0415

        place = (left / WIDTH, 1 - (self.top + top + height) / self.height)
        self._figure.add_artist(Rectangle(place, width / WIDTH, height / self.height, color=color, linewidth=0))

    def line(self, top: float, color: str) -> None:
        """A line across, below the head [inch]."""
        from matplotlib.lines import Line2D  # noqa: PLC0415

        up = 1 - (self.top + top) / self.height
        self._figure.add_artist(Line2D([EDGE / WIDTH, 1 - EDGE / WIDTH], [up, up], color=color, linewidth=1.2))

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
            (fitted(said, size, wide, bold=bold, least=LEAST_HEAD if bold else SMALL), bold)
            for said, size, bold in ((title, HEAD, True), (note, TEXT, False))
            if said
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
