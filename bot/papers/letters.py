"""Letters for all that is written on a PDF: fonts are opened as the text needs them, and what none of them has is told."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, cast
from unicodedata import category

from bot.papers import fonts

if TYPE_CHECKING:
    from fpdf import FPDF
    from fpdf.fonts import TTFFont

#: What stands for a letter that no font has.
NO_LETTER = "\u25af"
#: Scripts that are written from the right, or whose letters change shape beside each other, begin and end here in Unicode.
SHAPED = (("\u0590", "\u08ff"), ("\u0900", "\u109f"), ("\u1780", "\u17ff"), ("\ufb1d", "\ufeff"))

#: Signs that nobody sees, such as joiners and what tells an emoji's form: without a font for them they are left out.
UNSEEN = {"Cf", "Mn"}


class Letters:
    """The fonts of one document. `missing` are the letters that none of them has."""

    def __init__(self, pdf: FPDF) -> None:
        self._pdf = pdf
        pdf.add_font("text", "", fonts.regular())
        pdf.add_font("text", "B", fonts.bold())
        self._others = fonts.others()
        self._fallback: list[str] = []
        self._looked_at: set[str] = set()
        self._widths: dict[tuple[str, bool], float] = {}
        self._left_out: set[str] = set()
        self.missing: set[str] = set()

    def width_of(self, said: str, *, bold: bool = False) -> float:
        """How wide the text is with letters of one point [mm]."""
        known = self._widths.get((said, bold))
        if known is None:
            drawn = self.ready(said, 100, bold=bold)
            known = self._widths[said, bold] = self._pdf.get_string_width(drawn) / 100
        return known

    def ready(self, said: str, size: float, *, bold: bool = False) -> str:
        """The text as it can be drawn, with its font set, and set to join where its script wants it."""
        said = fonts.in_our_order(said)
        self._find(set(said) - self._looked_at)
        self._pdf.set_font("text", "B" if bold else "", size)
        self._pdf.set_text_shaping(use_shaping_engine=any(first <= letter <= last for letter in said for first, last in SHAPED))
        unseen = self.missing | self._left_out
        return "".join(self._instead(letter) if letter in unseen else letter for letter in said) if unseen else said

    def _instead(self, letter: str) -> str:
        return "" if letter in self._left_out else NO_LETTER

    def _find(self, letters: set[str]) -> None:
        """Open further fonts until each letter is in one; what is in none is remembered as missing."""
        self._looked_at |= letters
        wanted = {letter for letter in letters if not letter.isspace() and not self._has(letter)}
        while wanted:
            path = next(self._others, None)
            if path is None:
                self._left_out |= {letter for letter in wanted if category(letter) in UNSEEN}
                self.missing |= wanted - self._left_out
                return
            self._open(path)
            wanted = {letter for letter in wanted if not self._has(letter)}

    def _open(self, path: Path) -> None:
        name = f"other{len(self._fallback)}"
        self._pdf.add_font(name, "", path)
        self._fallback.append(name)
        self._pdf.set_fallback_fonts(self._fallback, exact_match=False)

    def _has(self, letter: str) -> bool:
        return any(ord(letter) in cast("TTFFont", self._pdf.fonts[name]).cmap for name in ("text", *self._fallback))
