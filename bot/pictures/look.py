"""The look of every picture: dark on white, read by shape and lightness first, so that grey print and colour-blind eyes lose nothing."""

from __future__ import annotations

import logging
from functools import lru_cache

#: Text and the axes; what stands back; the grid.
INK, SOFT, PALE = "#111111", "#5c5c5c", "#dcdcdc"
#: What the picture is about, and what is held against it. One dark, one light, blue and orange: no eye mixes them up.
MAIN, OTHER = "#00497a", "#e07a00"
#: Words that belong to OTHER: dark enough to read.
BROWN = "#8f4a00"
#: What wants a look: darker than OTHER, and always with a mark of its own.
LOOK = "#b23a00"

#: Width of every picture [inch], dots in an inch: 1080 dots across, as phones show them.
WIDTH, DOTS = 5.4, 200
#: Letters [points]: heads, text, and the smallest that long names are shrunk to.
HEAD, TEXT, SMALL, SMALLEST = 16.0, 12.0, 10.5, 7.5
#: Lines [points].
THICK, THIN = 2.6, 1.2


@lru_cache(maxsize=1)
def set_up() -> None:
    """Tell the drawing library the look; nobody else here uses it. Signs such as $ in a name are letters, not formulas."""
    import matplotlib as mpl  # noqa: PLC0415 - loaded by the first picture

    logging.getLogger("matplotlib.font_manager").setLevel(logging.ERROR)  # that a script has no bold letters is no news
    mpl.rcParams.update(
        {
            "text.parse_math": False,
            "font.family": ["DejaVu Sans"],
            "font.size": TEXT,
            "text.color": INK,
            "axes.edgecolor": INK,
            "axes.linewidth": 1.2,
            "axes.labelcolor": INK,
            "xtick.color": INK,
            "ytick.color": INK,
            "hatch.linewidth": 1.4,
            "path.simplify": True,
        }
    )
