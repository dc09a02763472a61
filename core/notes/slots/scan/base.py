"""The pass over a message's tokens, and what it has made of them so far; phrases of the lexicon."""

from __future__ import annotations

from typing import Final

from core.handbook.breeds import breed_color_words, breed_words
from core.handbook.colors import color_words
from core.notes.slots.animals import HerdWords
from core.notes.slots.items import NO_MARKS, Item
from core.notes.slots.lexicon import Lexicon
from core.notes.slots.tokens import Token

NEWEST: Final = 8  # not a figure: items that a later word may still take back

NOTHING: Final = Token("p", "", "", 0, 0, glued=False)  # past the end


def named_color(phrase: str, marks: frozenset[str]) -> tuple[str | None, str | None] | None:
    """The handbook's names of the colour and the breed that a phrase stands for."""
    if "color" not in marks and "breed_name" not in marks:
        return None
    color = color_words().get(phrase) if "color" in marks else None
    breed = breed_words().get(phrase) if "breed_name" in marks else None
    if breed and color is None:
        color = breed_color_words().get(phrase, (None, None))[1]
    return color, breed


class Scanned:
    """The pass over a message's tokens, and what it has made of them so far; phrases of the lexicon."""

    def __init__(self, tokens: list[Token], herd: HerdWords, lexicon: Lexicon) -> None:
        self.tokens = tokens
        self.herd = herd
        self.lexicon = lexicon
        self.items: list[Item] = []
        self.at = 0
        self._sifted = 0  # so many items are among those already said
        self._said: set[str] = set()

    def _said_already(self, *words: str) -> bool:
        """Whether an item so far has one of these marks or sorts."""
        while self._sifted < len(self.items) - NEWEST:
            self._said.update(self.items[self._sifted].marks, (self.items[self._sifted].sort,))
            self._sifted += 1
        return not self._said.isdisjoint(words) or any(
            item.sort in words or not item.marks.isdisjoint(words) for item in self.items[-NEWEST:]
        )

    def _key(self, at: int) -> str:
        tokens = self.tokens
        return tokens[at].key if 0 <= at < len(tokens) else ""

    def _add(self, sort: str, end: int, value: object = None, marks: frozenset[str] = NO_MARKS, *, spoken: bool = False) -> None:
        start = self.at
        first = self.tokens[start]
        said = first.text if end == start + 1 else " ".join([token.text for token in self.tokens[start:end]])
        self.items.append(Item(sort, start, end, value, marks, said, first.glued, spoken))
        self.at = end

    def _take(self, item: Item) -> None:
        item.glued = self.tokens[item.start].glued
        while self.items and self.items[-1].start >= item.start:
            self.items.pop()
        self.items.append(item)
        self.at = item.end

    def _follow(self, at: int, words: tuple[str, ...]) -> bool:
        """Whether these words stand at an index."""
        tokens = self.tokens
        if at + len(words) > len(tokens):
            return False
        for word in words:
            if tokens[at].key != word:
                return False
            at += 1
        return True

    def _phrase(self, word: str) -> bool:
        """The longest phrase that begins here."""
        at = self.at + 1
        longer = self.lexicon.longer.get(word)
        if longer is not None:
            for rest, marks in longer.get(self._key(at), ()):
                if len(rest) == 1 or self._follow(at, rest):
                    self._add("word", at + len(rest), named_color(" ".join((word, *rest)), marks), marks)
                    return True
        single = self.lexicon.single.get(word)
        if single is None or (word == "k" and self._key(at) and not self._key(at)[:1].isdigit()):
            return False
        self._add("word", at, named_color(word, single), single)
        return True
