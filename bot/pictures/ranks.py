"""Animals beside each other: the name and what it stands on above each one's bar, the best guess as a mark on it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from bot.pictures.fitting import fitted, line_tall
from bot.pictures.look import INK, LOOK, MAIN, PALE, SMALL, SOFT, TEXT, WIDTH
from bot.pictures.sheet import EDGE, Sheet

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from core.app.pictures import Group, Ranks, Row

#: A row's bar with its air, a heading, the gap where rows were left out; the words above the first and below the last row [inch].
BAR, HEADING, GAP, ABOVE, BELOW = 0.24, 0.4, 0.3, 0.3, 0.62
#: What the names and, beside them, the words of what they stand on may take of the width [inch].
NAMES = 3.1
PLOT = WIDTH - 2 * EDGE - 0.1


def ranks(told: Ranks) -> Sheet:
    """The picture."""
    from matplotlib.ticker import MaxNLocator  # noqa: PLC0415 - loaded by the first picture

    tall = sum(_tall(group) for group in told.groups)
    below = BELOW + (line_tall(TEXT) if told.marked_said else 0)
    sheet = Sheet(told.title, told.note, ABOVE + tall + below)
    axes = sheet.axes(EDGE + 0.05, ABOVE, PLOT, tall)
    span = (told.along.end - told.along.start) or 1.0
    axes.set_xlim(told.along.start - 0.03 * span, told.along.end + 0.03 * span)
    axes.set_ylim(tall, 0)
    axes.set_yticks([])
    axes.grid(visible=True, axis="x", color=PALE, linewidth=1)
    axes.axvline(told.line, color=INK, linewidth=1.6, dashes=(4, 2))
    axes.annotate(told.line_said, (told.line, 0), (0, 3), textcoords="offset points", ha=_side(told), fontsize=SMALL, weight="bold")
    axes.xaxis.set_major_locator(MaxNLocator(nbins=6, steps=[1, 2, 5, 10]))
    axes.xaxis.set_major_formatter("{x:g}")
    axes.set_xlabel(told.along.label, fontsize=TEXT)
    top = 0.0
    for group in told.groups:
        top = _group(axes, group, top)
    if told.marked_said:
        sheet.text(
            EDGE, ABOVE + tall + BELOW - 0.06, f"\u25c6 {told.marked_said}", size=TEXT, wide=WIDTH - 2 * EDGE, color=LOOK, weight="bold"
        )
    return sheet


def _side(told: Ranks) -> str:
    """To which side of the line its words go, so that they stay on the picture."""
    share = (told.line - told.along.start) / ((told.along.end - told.along.start) or 1.0)
    return "left" if share < 0.25 else "right" if share > 0.75 else "center"


def _tall(group: Group) -> float:
    return sum(_row_tall(row) for row in group.rows) + HEADING * bool(group.heading) + GAP * bool(group.left_out)


def _row_tall(row: Row) -> float:
    lines, size = _name(row)
    return BAR + len(lines) * line_tall(size)


def _name(row: Row) -> tuple[list[str], float]:
    return fitted(row.name, TEXT, NAMES, bold=True)


def _group(axes: Axes, group: Group, top: float) -> float:
    """Draw a group below `top`; where it ends."""
    left, right = axes.get_xlim()
    white = {"facecolor": "white", "edgecolor": "none", "pad": 0.8}
    if group.heading:
        lines, size = fitted(group.heading, TEXT, PLOT)
        axes.text(left, top + 0.1, " ".join(lines), fontsize=size, va="top", color=SOFT, bbox=white)
        axes.axhline(top + HEADING - 0.02, color=SOFT, linewidth=1)
        top += HEADING
    for at, row in enumerate(group.rows):
        if group.left_out and at == group.upper:
            axes.text(
                (left + right) / 2,
                top + GAP / 2,
                f"{group.left_out} more between",
                fontsize=SMALL,
                ha="center",
                va="center",
                color=SOFT,
                bbox=white,
            )
            top += GAP
        top = _row(axes, row, top, white)
    return top


def _row(axes: Axes, row: Row, top: float, white: dict[str, object]) -> float:
    left, right = axes.get_xlim()
    color = LOOK if row.marked else MAIN
    lines, size = _name(row)
    axes.text(left, top + 0.05, "\n".join(lines), fontsize=size, weight="bold", va="top", linespacing=1.1, bbox=white)
    told, small = fitted(row.stands_on, SMALL, PLOT - NAMES)
    axes.text(right, top + 0.06, "\n".join(told), fontsize=small, ha="right", va="top", color=color if row.marked else SOFT, bbox=white)
    end = top + _row_tall(row)
    middle = end - BAR / 2 + 0.02
    axes.plot([row.low, row.high], [middle, middle], color=color, linewidth=5, alpha=0.4, solid_capstyle="butt", zorder=3)
    axes.plot(
        [row.value], [middle], "D" if row.marked else "o", color=color, markersize=9, markeredgecolor="white", zorder=4, clip_on=False
    )
    return end
