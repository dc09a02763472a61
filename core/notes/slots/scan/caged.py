"""Where an animal sits: `cage B3`, `pen 4`, `cage see for`."""

from __future__ import annotations

from typing import Final

from core.notes.slots.measures import amount_at
from core.notes.slots.numbers import HOMOPHONES, NUMBER_WORDS
from core.notes.slots.scan.tagged import MEASURED, NUMBER_FIRST, Tagged
from core.notes.slots.tokens import WORD

SPELLED: Final = {"see": "C", "sea": "C", "be": "B", "bee": "B", "dee": "D", "hay": "A", "ay": "A", "eh": "A", "ee": "E", "gee": "G"}
#: Letters said one by one, in a cage's place.
TO_CAGE: Final = frozenset({"to", "into", "in", "over to", "onto"})

CAGE_WORDS: Final = frozenset({"cage", "pen", "hutch", "hole", "kennel", "stall"})


class Caged(Tagged):
    """Where an animal sits: `cage B3`, `pen 4`, `cage see for`."""

    def _spelled_cage(self, word: str) -> bool:
        """`moved thirty one to c four`: a letter and a spoken number where the animal goes."""
        if self._key(self.at + 1) not in NUMBER_WORDS or not self.items or self.items[-1].said not in TO_CAGE:
            return False
        if not any("move" in item.marks for item in self.items[-8:]):  # not a figure: words
            return False
        found = amount_at(self.tokens, self.at + 1)
        if found is None or found[3] or self._key(found[1]) in MEASURED:
            return False
        self._add("cage", found[1], f"{SPELLED.get(word, word.upper())}{int(found[0])}")
        return True

    def _cage(self) -> bool:
        """`cage B3`, `pen 4`, `cage c seven`, `cage see for`."""
        at = self.at + 1
        while self._key(at) in {"#", "number", "no", ":"}:
            at += 1
        letter = ""
        word = self._key(at)
        if at < len(self.tokens) and self.tokens[at].sort == WORD and (len(word) == 1 or word in SPELLED):
            letter, at = SPELLED.get(word, word.upper()), at + 1
            if self._key(at) == "-":
                at += 1
        number = self._key(at)
        if number.isdigit():
            self._add("cage", at + 1, letter + number)
            return True
        if number in NUMBER_FIRST:
            found = amount_at(self.tokens, at)
            if found and found[0] == int(found[0]):
                self._add("cage", found[1], f"{letter}{int(found[0])}")
                return True
        if letter and number in HOMOPHONES:
            self._add("cage", at + 1, f"{letter}{HOMOPHONES[number]}")
            return True
        return False
