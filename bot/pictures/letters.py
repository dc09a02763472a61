"""Letters of any script on a picture: DejaVu Sans, which comes with the drawing library, then the fonts that papers use; what none of them has is marked."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from bot.papers import fonts
from bot.pictures.look import set_up

#: What stands for a letter that no font has.
NO_LETTER = "\u25af"


class Letters:
    """The fonts that pictures are written with; another is opened when a letter asks for it."""

    def __init__(self, others: Iterator[Path]) -> None:
        """DejaVu Sans alone."""
        set_up()
        self._others = others
        self._known = _letters_of(fonts.regular())
        self._missing: set[str] = set()

    def drawable(self, text: str) -> str:
        """The text with a mark for each letter that can't be drawn; line ends stay."""
        drawn = "".join(letter if letter == "\n" or self._has(letter) else NO_LETTER for letter in text)
        return fonts.in_our_order(drawn)

    def _has(self, letter: str) -> bool:
        while ord(letter) not in self._known and letter not in self._missing:
            path = next(self._others, None)
            if path is None:
                self._missing.add(letter)
            else:
                self._known |= _letters_of(path)
                _open(path)
        return letter not in self._missing


def _letters_of(path: Path) -> set[int]:
    from matplotlib.ft2font import FT2Font  # noqa: PLC0415 - loaded by the first picture

    return set(FT2Font(str(path)).get_charmap())


def _open(path: Path) -> None:
    """Let the drawing library take letters from that font too, after those that it has."""
    import matplotlib as mpl  # noqa: PLC0415
    from matplotlib.font_manager import FontProperties, fontManager  # noqa: PLC0415

    fontManager.addfont(path)
    mpl.rcParams["font.family"] = [*mpl.rcParams["font.family"], FontProperties(fname=path).get_name()]


_LETTERS: list[Letters] = []


def drawable(text: str) -> str:
    """The text with a mark for each letter that no font here has."""
    if not _LETTERS:
        _LETTERS.append(Letters(fonts.others()))
    return _LETTERS[0].drawable(text)
