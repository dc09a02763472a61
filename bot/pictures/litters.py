"""A doe's litters as columns: the live-born dark, the dead-born hatched on top, the weaned a light column inside."""

from __future__ import annotations

from typing import Any

from bot.pictures.look import INK, LOOK, MAIN, OTHER, SMALL, TEXT, WIDTH
from bot.pictures.sheet import EDGE, Sheet
from core.app.pictures import Litters

#: The plot [inch].
LEFT, TALL, ABOVE, BELOW = 0.5, 3.6, 0.2, 1.3
#: Columns: of the born, of the weaned inside.
BROAD, SLIM = 0.72, 0.3
#: So many days fit under their columns on one line.
SIDE_BY_SIDE = 7


def litters(told: Litters) -> Sheet:
    """The picture."""
    sheet = Sheet(told.title, told.note, ABOVE + TALL + BELOW)
    axes = sheet.axes(LEFT, ABOVE, WIDTH - LEFT - EDGE, TALL)
    _columns(axes, told)
    names = [one.name for one in told.litters]
    top = float(max(one.alive + one.dead for one in told.litters))
    if told.following:
        _following(axes, len(names), told.following, f"{told.following_said}, 8 times in 10")
        names, top = [*names, told.following_said], max(top, told.following[2])
    _scales(axes, names, top)
    axes.legend(
        loc="upper left", bbox_to_anchor=(-0.06, -0.19), ncols=2, frameon=False, fontsize=SMALL, handlelength=1.4, columnspacing=1.2
    )
    return sheet


def _columns(axes: Any, told: Litters) -> None:
    """A column a litter, with the number that live on top."""
    places = range(len(told.litters))
    alive, dead = [one.alive for one in told.litters], [one.dead for one in told.litters]
    axes.bar(places, alive, BROAD, color=MAIN, label="born alive")
    lost = [at for at in places if dead[at]]
    if lost:
        look: dict[str, Any] = {"facecolor": "white", "edgecolor": INK, "hatch": "////", "linewidth": 1.2, "label": "born dead"}
        axes.bar(lost, [dead[at] for at in lost], BROAD, bottom=[alive[at] for at in lost], **look)
    weaned = [(at, one.weaned) for at, one in enumerate(told.litters) if one.weaned is not None]
    if weaned:
        axes.bar([at for at, _ in weaned], [kits for _, kits in weaned], SLIM, color=OTHER, edgecolor="white", linewidth=1, label="weaned")
    for at, one in enumerate(told.litters):
        axes.annotate(
            str(one.alive), (at, one.alive + one.dead), (0, 3), textcoords="offset points", ha="center", fontsize=TEXT, weight="bold"
        )


def _following(axes: Any, at: int, expected: tuple[float, float, float], label: str) -> None:
    """The litter to come, as a point with its range."""
    low, likely, high = expected
    pen: dict[str, Any] = {"color": LOOK, "elinewidth": 2.2, "capsize": 6, "capthick": 2.2}
    dot: dict[str, Any] = {"fmt": "o", "markersize": 9, "markerfacecolor": "white", "markeredgewidth": 2.2}
    axes.errorbar([at], [likely], [[likely - low], [high - likely]], label=label, **dot, **pen)


def _scales(axes: Any, names: list[str], top: float) -> None:
    """The litters' names below, the kits at the side in whole numbers."""
    from matplotlib.ticker import MaxNLocator  # noqa: PLC0415 - loaded by the first picture

    axes.set_xlim(-0.7, max(len(names), 3) - 0.3)
    axes.set_ylim(0, max(top, 1) * 1.15)
    narrow = len(names) > SIDE_BY_SIDE
    axes.set_xticks(range(len(names)), [name.replace(" ", "\n") if narrow else name for name in names], fontsize=SMALL)
    axes.yaxis.set_major_locator(MaxNLocator(nbins=7, integer=True))
    axes.annotate("kits", (0, 1), (-6, 6), xycoords="axes fraction", textcoords="offset points", ha="right", fontsize=TEXT, weight="bold")
