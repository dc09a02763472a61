"""Text that fits: shrunk first, then broken into lines, never cut."""

from __future__ import annotations

from collections.abc import Callable
from functools import lru_cache
from typing import TYPE_CHECKING

from bot.pictures.letters import drawable
from bot.pictures.look import DOTS, SMALL, SMALLEST, set_up

if TYPE_CHECKING:
    from matplotlib.backends.backend_agg import RendererAgg

POINTS_IN_INCH = 72


def fitted(said: str, size: float, wide_: float | None, *, bold: bool = False, least: float = SMALL) -> tuple[list[str], float]:
    """The text in as many lines as it needs to be no wider than that [inch], and the size of its letters: smaller, but not below `least`, before it is broken."""
    said = drawable(said)
    whole = 0.0 if wide_ is None else wide(said, size, bold=bold)
    if wide_ is None or whole <= wide_:
        return said.split("\n"), size
    if whole * least / size <= wide_:
        return said.split("\n"), size * wide_ / whole
    size = max(min(size, least), SMALLEST)
    return _broken(said, size, wide_, bold=bold), size


def _broken(said: str, size: float, wide_: float, *, bold: bool) -> list[str]:
    """Lines no wider than that, broken between words; a word that is wider by itself where it must be."""
    lines = [""]
    for word in said.split():
        joined = f"{lines[-1]} {word}".strip()
        if wide(joined, size, bold=bold) <= wide_:
            lines[-1] = joined
            continue
        lines += [""] if lines[-1] else []
        for letter in word:
            if lines[-1] and wide(lines[-1] + letter, size, bold=bold) > wide_:
                lines.append("")
            lines[-1] += letter
    return lines


def wide(said: str, size: float, *, bold: bool = False) -> float:
    """How wide the text is [inch]."""
    from matplotlib.font_manager import FontProperties  # noqa: PLC0415 - loaded by the first picture

    font = FontProperties(size=size, weight="bold" if bold else "normal")
    measure: Callable[..., tuple[float, float, float]] = _measuring().get_text_width_height_descent
    return max(measure(part, font, ismath=False)[0] for part in said.split("\n")) / DOTS if said else 0.0


@lru_cache(maxsize=1)
def _measuring() -> RendererAgg:
    """Something that knows how wide letters are."""
    from matplotlib.backends.backend_agg import RendererAgg  # noqa: PLC0415

    set_up()
    return RendererAgg(1, 1, DOTS)  # type: ignore[no-untyped-call]


def line_tall(size: float) -> float:
    """How tall a line of letters of that size is, its air included [inch]."""
    return size * 1.3 / POINTS_IN_INCH
