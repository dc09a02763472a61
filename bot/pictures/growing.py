"""Weights over time, drawn: dots for what was weighed, a line for where that leads, a bar for the likely days of the target."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from bot.pictures.fitting import wide
from bot.pictures.letters import drawable
from bot.pictures.look import BROWN, INK, LOOK, MAIN, OTHER, SMALL, SOFT, TEXT, THICK, THIN, WIDTH
from bot.pictures.sheet import EDGE, Sheet

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from core.app.pictures import Aim, Growing, Point, Series

#: The plot [inch].
LEFT, TALL, BELOW = 0.62, 4.3, 0.75
#: Room at the right for the names of several animals.
NAMES = 0.8
#: Up to this share of the target's height the breed's name keeps clear of the words on the target.
CLEAR = 0.7
#: Markers and dashes that tell animals apart without colour.
MARKS = ("o", "s", "^", "D", "v", "P", "X", "*")


def growing(told: Growing) -> Sheet:
    """The picture."""
    sheet = Sheet(told.title, told.note, TALL + BELOW + 0.25)
    several = len(told.series) > 1
    axes = sheet.axes(LEFT, 0.25, WIDTH - LEFT - EDGE - (NAMES if several else 0.08), TALL)
    _frame(axes, told)
    _usual(axes, told)
    if told.target is not None:
        from matplotlib.patheffects import withStroke  # noqa: PLC0415 - loaded by the first picture

        axes.axhline(told.target, color=INK, linewidth=THIN, dashes=(6, 3))
        words = axes.annotate(
            told.target_said, (told.along.start, told.target), (2, 4), textcoords="offset points", fontsize=TEXT, zorder=6
        )
        words.set_path_effects([withStroke(linewidth=3, foreground="white")])  # a curve may run through them
    if told.today is not None:
        axes.axvline(told.today, color=SOFT, linewidth=THIN, dashes=(1, 2))
        axes.annotate("today", (told.today, told.up.end), (0, 3), textcoords="offset points", ha="center", fontsize=SMALL, color=SOFT)
    if told.own:
        axes.plot(*_apart(told.own), color=MAIN, linewidth=THICK, solid_capstyle="round")
    if several:
        _several(axes, told.series)
    else:
        _one(axes, told)
    if told.aim is not None and told.target is not None:
        _aim(axes, told.aim, told.target, told.along.end)
    return sheet


def _frame(axes: Axes, told: Growing) -> None:
    from matplotlib.ticker import MaxNLocator  # noqa: PLC0415 - loaded by the first picture

    axes.set_xlim(told.along.start, told.along.end)
    axes.set_ylim(told.up.start, told.up.end)
    axes.yaxis.set_major_locator(MaxNLocator(nbins=7, steps=[1, 2, 5, 10]))
    axes.set_xticks([at for at, _ in told.along.marks], [said for _, said in told.along.marks])
    axes.set_xlabel(told.along.label, fontsize=TEXT)
    axes.annotate(
        told.up.label, (0, 1), (-6, 6), xycoords="axes fraction", textcoords="offset points", ha="right", fontsize=TEXT, weight="bold"
    )


def _usual(axes: Axes, told: Growing) -> None:
    """The breed's curve, its name on that side of it where the animal's own weights are not."""
    if not told.usual:
        return
    axes.plot(*_apart(told.usual), color=OTHER, linewidth=2, dashes=(3, 1.6))
    below = _runs_above(told)
    at = told.usual[len(told.usual) // 5] if below else _clear(told, wide(told.usual_said, SMALL))
    look: dict[str, Any] = {"ha": "left", "va": "top"} if below else {"ha": "right", "va": "bottom"}
    shift = (8, -2) if below else (-8, 4)
    axes.annotate(drawable(told.usual_said), at, shift, textcoords="offset points", fontsize=SMALL, color=BROWN, **look)


def _clear(told: Growing, words: float) -> Point:
    """The point of the usual curve left of which so wide words [inch] fit: clear of those on the target, below them if they can."""
    room = (WIDTH - LEFT - EDGE - NAMES) / (told.along.end - told.along.start)
    fits = [each for each in told.usual if (each[0] - told.along.start) * room > words + 0.15] or told.usual[-1:]
    target = told.target or told.up.end
    below, above = [each for each in fits if each[1] < CLEAR * target], [each for each in fits if each[1] > target / CLEAR**0.5]
    return (below[-1:] or above[:1] or fits[-1:])[0]


def _runs_above(told: Growing) -> bool:
    """Whether the newest weights lie above the usual curve, on the whole."""
    ends = [one.points[-1] for one in told.series]
    return sum(up - min(told.usual, key=lambda each: abs(each[0] - along))[1] for along, up in ends) >= 0


def _one(axes: Axes, told: Growing) -> None:
    """The weights of one animal; where no curve runs through them, joined."""
    along, up = _apart(told.series[0].points)
    if not told.own:
        axes.plot(along, up, color=MAIN, linewidth=THICK / 2)
    axes.plot(along, up, "o", color=MAIN, markersize=9, markeredgecolor="white", markeredgewidth=1, clip_on=False, zorder=5)


def _several(axes: Axes, series: tuple[Series, ...]) -> None:
    """Each animal's weights in its own shape, its name at the end, none over another."""
    order = sorted(series, key=lambda one: one.points[-1][1])
    places = _spread([_height(axes, one.points[-1][1]) for one in order], SMALL * 1.25)
    for at, (one, place) in enumerate(zip(order, places, strict=True)):
        axes.plot(*_apart(one.points), MARKS[at % len(MARKS)] + "-", color=MAIN, linewidth=1.8, markersize=7, markeredgecolor="white")
        end = one.points[-1]
        axes.annotate(
            drawable(one.name),
            end,
            (1.02, place),
            xycoords="data",
            textcoords=("axes fraction", "axes points"),
            va="center",
            fontsize=SMALL,
            arrowprops={"arrowstyle": "-", "color": SOFT, "linewidth": 0.6, "shrinkA": 0, "shrinkB": 3},
        )


def _height(axes: Axes, up: float) -> float:
    """How high a weight is above the lower edge [points]."""
    low, high = axes.get_ylim()
    return (up - low) / (high - low) * TALL * 72


def _spread(wanted: list[float], apart: float) -> list[float]:
    """The places nearest to those wanted, lowest first, that are so far apart."""
    placed: list[float] = []
    for each in wanted:
        placed.append(max(each, placed[-1] + apart) if placed else each)
    over = max(placed[-1] - TALL * 72, 0.0)
    for at in range(len(placed) - 1, -1, -1):
        ceiling = placed[at + 1] - apart if at + 1 < len(placed) else placed[at] - over
        placed[at] = min(placed[at], ceiling)
    return placed


def _aim(axes: Axes, aim: Aim, target: float, end: float) -> None:
    """A diamond on the day of the target, a bar over its likely days, and the day in words where the picture is empty."""
    late = end if aim.late is None else min(aim.late, end)
    axes.plot([aim.early, late], [target, target], color=LOOK, linewidth=7, alpha=0.45, solid_capstyle="butt", zorder=4)
    axes.annotate(
        aim.said,
        (aim.on, target),
        (0.985, 0.04),
        xycoords="data",
        textcoords="axes fraction",
        ha="right",
        va="bottom",
        fontsize=TEXT,
        weight="bold",
        color=LOOK,
        arrowprops={"arrowstyle": "-", "color": LOOK, "linewidth": 1, "relpos": (0.5, 1), "shrinkB": 5},
    )
    axes.plot([aim.on], [target], "D", color=LOOK, markersize=10, markeredgecolor="white", clip_on=False, zorder=6)


def _apart(points: tuple[Point, ...]) -> tuple[list[float], list[float]]:
    return [along for along, _ in points], [up for _, up in points]
