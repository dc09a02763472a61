"""Measures day by day, one above the other over the same days: whole lines for all that stay, broken ones for the plan."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from bot.pictures.look import BROWN, INK, LOOK, MAIN, OTHER, SMALL, TEXT, THICK, WIDTH
from bot.pictures.sheet import EDGE, Sheet
from core.app.pictures import Days

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from core.app.pictures import Panel

#: A panel, the words above it, the marks below the last [inch].
LEFT, TALL, ABOVE, BELOW = 0.55, 2.1, 0.75, 0.5


def days(told: Days) -> Sheet:
    """The picture."""
    sheet = Sheet(told.title, told.note, (TALL + ABOVE) * len(told.panels) + BELOW)
    for at, panel in enumerate(told.panels):
        axes = sheet.axes(LEFT, (TALL + ABOVE) * at + ABOVE, WIDTH - LEFT - EDGE, TALL)
        _panel(axes, panel)
        last = at == len(told.panels) - 1
        axes.set_xticks([day for day, _ in told.marks], [said if last else "" for _, said in told.marks])
        axes.text(0, 1 + 0.42 / TALL, panel.label, transform=axes.transAxes, fontsize=TEXT, weight="bold")
        for day, _ in told.events:
            axes.axvline(day, color=LOOK, linewidth=1.8, dashes=(1, 1))
        if last:
            _events(axes, told)
    return sheet


def _panel(axes: Axes, panel: Panel) -> None:
    axes.plot(panel.whole, color=MAIN, linewidth=THICK)
    _key(axes, panel.whole_said if panel.planned else "", MAIN, MAIN, 0.0, solid=True)
    if panel.planned:
        axes.plot(panel.planned, color=OTHER, linewidth=THICK, dashes=(3, 1.4))
        _key(axes, panel.planned_said, OTHER, BROWN, 0.46, solid=False)
    axes.set_xlim(0, len(panel.whole) - 1)
    axes.set_ylim(0, (max(*panel.whole, *panel.planned) or 1.0) * 1.12)
    axes.locator_params(axis="y", integer=all(each == int(each) for each in (*panel.whole, *panel.planned)))


def _key(axes: Axes, said: str, color: str, words: str, left: float, *, solid: bool) -> None:  # noqa: PLR0913 - what a line is told by
    """A piece of a line and whose it is, above the panel."""
    if not said:
        return
    up = 1 + 0.2 / TALL
    line: dict[str, Any] = {} if solid else {"dashes": (2, 1)}
    axes.plot([left, left + 0.07], [up, up], transform=axes.transAxes, color=color, linewidth=THICK, clip_on=False, **line)
    axes.text(left + 0.085, up, said, transform=axes.transAxes, fontsize=SMALL, va="center", color=words)


def _events(axes: Axes, told: Days) -> None:
    """What happens on single days, in words beside their lines, low in the panel, one above the other."""
    end = axes.get_xlim()[1]
    for at, (day, said) in enumerate(told.events):
        right = day > end / 2
        axes.annotate(
            said, (day, 0), (-5 if right else 5, 6 + 16 * at), textcoords="offset points", ha="right" if right else "left", fontsize=SMALL,
            weight="bold", color=LOOK, bbox={"facecolor": "white", "edgecolor": "none", "pad": 1, "alpha": 0.85},
        )  # fmt: skip
    axes.spines["bottom"].set_color(INK)
