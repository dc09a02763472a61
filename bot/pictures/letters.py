"""Letters of any script on a picture: DejaVu Sans, which comes with the drawing library; what it lacks is marked as a letter that is not there."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

#: What stands for a letter that no font has.
NO_LETTER = "\u25af"


@lru_cache(maxsize=1)
def _known() -> frozenset[int]:
    """The letters of the font."""
    import matplotlib as mpl  # noqa: PLC0415 - loaded by the first picture
    from matplotlib.ft2font import FT2Font  # noqa: PLC0415

    return frozenset(FT2Font(str(Path(mpl.get_data_path(), "fonts", "ttf", "DejaVuSans.ttf"))).get_charmap())


def drawable(text: str) -> str:
    """The text with a mark for each letter that can't be drawn; line ends stay."""
    known = _known()
    return "".join(letter if ord(letter) in known or letter == "\n" else NO_LETTER for letter in text)
