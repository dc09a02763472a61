"""Signs: money, tags behind `#`, a minus, and the ditto below a value."""

from __future__ import annotations

from dataclasses import replace
from decimal import Decimal
from typing import Final

from core.notes.slots.animals import Mention
from core.notes.slots.items import NO_MARKS, Item
from core.notes.slots.measures import amount_at
from core.notes.slots.scan.figures import Figures
from core.notes.slots.scan.labelled import ENDS_BUT_COLON
from core.notes.slots.tokens import NUMBER, WORD, Token

COPIED: Final = frozenset({"weight", "pair", "cage", "code", "dose", "cup", "money"})
TITLES: Final = frozenset({"mr", "mrs", "ms", "dr", "miss", "st"})


class Marks(Figures):
    """Signs: money, tags behind `#`, a minus, and the ditto below a value."""

    def _mark(self, token: Token) -> None:
        if token.key == "$" and self.at + 1 < len(self.tokens) and self.tokens[self.at + 1].sort == NUMBER:
            cents = int((amount_at(self.tokens, self.at + 1) or (Decimal(0),))[0] * 100)
            self._add("money", self.at + 2, cents)
            return
        if token.key == "#" and self.at + 1 < len(self.tokens) and self.tokens[self.at + 1].key.isdigit():
            number = self.tokens[self.at + 1].key
            known = self.herd.tagged(number)
            self._animal((known.tag,) if known else (), self.at + 2)
            if not known:
                self.items[-1].value = Mention((), number)
            return
        if token.key == "-" and not token.glued and self._takes_away():
            self._add("word", self.at + 1, None, frozenset({"fewer"}))
            self.items[-1].said = "minus"
            return
        if token.key == '"' and self._ditto():
            return
        if token.key == "." and token.glued and self._titles():
            self.at += 1
            return
        if token.key == "/" and token.glued and self.items and self.items[-1].said in {"w", "in w"}:
            self.at += 1
            return
        self._add("break" if token.key == "\n" else "mark", self.at + 1)

    def _takes_away(self) -> bool:
        """`12 -2 kits`: the sign at the number takes kits off; with a space on both sides it only parts."""
        following = self.at + 1
        counts = self._key(following + 1) in {"kit", "kits"} and self._key(following).isdigit() and self.tokens[following].glued
        return counts and bool(self.items) and self.items[-1].sort in {"animal", "num"}

    def _ditto(self) -> bool:
        """`31 4-6; 32 ditto`, a `"` below a value: what was said of the animal of the row before."""
        place = len(self.items)
        while place and self.items[place - 1].said in {":", ",", "-", "="}:
            place -= 1
        ends = self._key(self.at + 1) in {"", ".", ";", ",", "\n"}
        if not ends or place < 3 or self.items[place - 1].sort not in {"animal", "num"}:  # not a figure: an animal, its value and a mark
            return False
        parting = place - 2
        row: list[Item] = []
        for item in reversed(self.items[:parting]):
            if item.said in ENDS_BUT_COLON or item.sort in {"animal", "break"}:
                break
            row.insert(0, item)
        values = [item for item in row if item.sort in COPIED or (item.marks and item.sort == "word")]
        if self.items[parting].said not in {";", ",", "\n", "."} or not any(item.sort in COPIED for item in values):
            return False
        self.items.extend(replace(item, start=self.at, end=self.at + 1) for item in values)
        self.at += 1
        return True

    def _titles(self) -> bool:
        """`Mr. Hale`, `J. Alvarez`: the dot belongs to somebody's name."""
        following = self.at + 1
        if following >= len(self.tokens) or not self.tokens[following].capital or self.tokens[following].key in self.herd.names:
            return False
        before = self.tokens[self.at - 1]
        if self.items[-1].sort != "word":
            return False  # "150 G."
        if before.key not in TITLES and not (
            len(before.key) == 1 and before.capital and before.sort == WORD and before.key not in {"f", "c"}
        ):
            return False
        last = self.items[-1]
        last.marks, last.value = NO_MARKS, None
        return True
