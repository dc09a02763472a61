"""Short labels at a number: `1d`, `6a`, `x5`, `day 32`, `3M 2F`."""

from __future__ import annotations

from decimal import Decimal
from typing import Final

from core.notes.slots.items import NO_MARKS, Item
from core.notes.slots.measures import amount_at
from core.notes.slots.scan.counted import MOST_FALLS, NOON, WEANED_LABELS
from core.notes.slots.scan.heard_numbers import CLAUSE_ENDS, HeardNumbers
from core.notes.slots.tokens import Token

SEXES: Final = {"m": frozenset({"bucks_word"}), "f": frozenset({"does_word"})}
ENDS_SENTENCE: Final = frozenset({".", "!", "?", "\n", ":", ";"})
ENDS_BUT_COLON: Final = ENDS_SENTENCE - {":"}
DAYS_BEFORE: Final = frozenset({"wt", "wts", "weight", "weights", "weigh", "weighed", "old", "check", "litter"})
DAY_WORDS: Final = {"day": "day", "week": "week", "wk": "week"}
SHORT_LABELS: Final = {
    "d": frozenset({"dead"}), "a": frozenset({"alive"}), "l": frozenset({"alive"}), "b": frozenset({"born"}), "day": NO_MARKS, "week": NO_MARKS, "wk": NO_MARKS,
}  # fmt: skip
#: Words behind which `x5` says how many.
COUNTING: Final = frozenset({"wean", "kindle", "had", "lose", "die", "kits", "litter", "sell", "cull", "foster", "count", "bag", "treat"})


class Labelled(HeardNumbers):
    """Short labels at a number: `1d`, `6a`, `x5`, `day 32`, `3M 2F`."""

    def _short_label(self, token: Token) -> bool:
        """`1d`, `6a`, `7b` behind a number; `day 32` before one."""
        if token.key in DAY_WORDS:
            found = amount_at(self.tokens, self.at + 1) if self.at + 1 < len(self.tokens) else None
            if found is None or found[0] != int(found[0]):
                return False
            self._add("span", found[1], (int(found[0]), DAY_WORDS[token.key]))
            return True
        if token.key == "d" and self._day_glued():
            return True
        if token.key == "d" and self._days_said():
            number = self.items.pop()
            self.items.append(Item("span", number.start, self.at + 1, (int(number.value), "day"), NO_MARKS, f"{number.said} d"))
            self.at += 1
            return True
        weaned = token.key in WEANED_LABELS and self._said_already("wean")
        if (
            not self.items
            or self.items[-1].sort != "num"
            or not (token.glued or weaned or (token.key == "d" and self._key(self.at + 1) in CLAUSE_ENDS))
        ):
            return False
        self._add("word", self.at + 1, None, WEANED_LABELS[token.key] if weaned else SHORT_LABELS.get(token.key, NO_MARKS))
        return True

    def _day_glued(self) -> bool:
        """`nest box in d28`: a count of days."""
        following = self.at + 1
        if (
            self.tokens[self.at].glued
            or following >= len(self.tokens)
            or not self.tokens[following].glued
            or not self._key(following).isdigit()
            or self._key(self.at - 1) in {"to", "into", "onto"}  # a cage: "R22 to D4"
            or self._moved_to()
            or self.herd.tagged("d" + self._key(following))
            or not self.items
        ):
            return False
        self._add("span", self.at + 2, (int(self._key(following)), "day"))
        return True

    def _times(self) -> bool:
        """`weaned x5`, `castor x2`, `bred 15 to Flint x3`: so many; between a doe and a buck it stands for their mating."""
        following = self.at + 1
        if (
            following >= len(self.tokens)
            or not self.tokens[following].glued
            or not self._key(following).isdigit()
            or self.tokens[self.at].glued
            or not self.items
        ):
            return False
        before, known = self.items[-1], self.herd.tagged(self._key(following))
        falls = self._said_already("breed") and not self._begins_anew()
        counts = falls or self._told_of_kits()
        if before.sort in {"num", "animal"} and not counts and (known is not None or before.sort == "num"):
            return False
        if before.sort == "mark" and not counts:
            return False
        self.at += 1
        self._add("num", self.at + 1, Decimal(self._key(self.at)))
        if falls and int(self._key(self.at - 1)) <= NOON:
            self.items.append(Item("word", self.at - 1, self.at, None, frozenset({"falls"}), "times"))
        return True

    def _told_of_kits(self) -> bool:
        """Whether the words so far count something: behind them `x5` is how many, never a buck. A comma before a doe begins anew."""
        if self._begins_anew():
            return False
        for item in reversed(self.items):
            if item.sort == "break" or item.said in ENDS_BUT_COLON:
                return False
            if item.marks & COUNTING:
                return True
        return False

    def _begins_anew(self) -> bool:
        """Whether a comma, and behind it an animal, stand last: `14 kindled 8, 15 x3`."""
        return len(self.items) > 1 and self.items[-1].sort in {"num", "animal"} and self.items[-2].said in {",", "and", "&", "\n"}

    def _days_said(self) -> bool:
        """`21d wt`, `litter 21d`: days, not dead ones."""
        if not self.items or self.items[-1].sort != "num" or self.items[-1].value != int(self.items[-1].value):
            return False
        return self._key(self.at + 1) in DAYS_BEFORE or self._said_already("litter")

    def _sexed_count(self, token: Token) -> bool:
        """`3M 2F`: bucks and does, behind words of weaning or of a litter."""
        following = self.at + 1
        if self._key(following) not in SEXES or not self.tokens[following].glued or not token.key.isdigit():
            return False
        if not self._said_already("wean", "kits", "litter", "new") or (self._key(following) == "f" and int(token.key) > MOST_FALLS):
            return False
        self._add("num", self.at + 1, Decimal(token.key))
        self._add("word", self.at + 1, None, SEXES[self._key(self.at)])
        return True
