"""From tokens to items: each word is looked up once, and only what grammar allows becomes an animal, a number or a day.

Each class of `slots.scan` knows the ones before it: base, described, tagged, caged, counted, heard_numbers, labelled, figures, marks, unknown, and this.
"""

from __future__ import annotations

from functools import lru_cache
from typing import Final

from core.handbook.colors import color_words
from core.notes.slots.dates import DATE_FIRST
from core.notes.slots.items import NO_MARKS, Item
from core.notes.slots.lexicon import BESIDE_NUMBER, Lexicon
from core.notes.slots.numbers import HOMOPHONES, NUMBER_WORDS, ORDINALS
from core.notes.slots.scan.base import NOTHING, named_color
from core.notes.slots.scan.caged import CAGE_WORDS, SPELLED
from core.notes.slots.scan.counted import WEANED_LABELS
from core.notes.slots.scan.labelled import SHORT_LABELS
from core.notes.slots.scan.tagged import HEARD_LETTERS, LETTERS_OF_TAG, NUMBER_FIRST, PLURAL_SEX, SEX_WORDS
from core.notes.slots.scan.unknown import Unknown
from core.notes.slots.tokens import NUMBER, WORD, Token

NUMBERED_WORDS: Final = CAGE_WORDS | {"animal", "rabbit"}
#: Words that begin a date only with such a word behind them, or with a number.
DATE_BEHIND: Final = {"the": frozenset({"day"}), "in": frozenset({*NUMBER_FIRST, *HOMOPHONES, "a", "an", "couple"})}
Settled = tuple[frozenset[str], tuple[str | None, str | None] | None, frozenset[str]]
#: Words that may be more than themselves; all longer others are only looked up.
OWN_CASE: Final = frozenset(
    {*SHORT_LABELS, *WEANED_LABELS, *SEX_WORDS, *PLURAL_SEX, *NUMBERED_WORDS, *DATE_FIRST, *ORDINALS, *NUMBER_FIRST, *HOMOPHONES, "couple"}
)


@lru_cache(maxsize=1)
def settled_words(lexicon: Lexicon) -> dict[str, Settled]:
    """Words that are read the same wherever they stand, but for a phrase that they may begin: most of every note, and quickly passed.

    Word -> second words of its phrases, the item's value, its marks.
    """
    open_words = BESIDE_NUMBER.keys() | OWN_CASE | color_words().keys() | {"k", "x", "a", "an", "ditto"}
    found: dict[str, Settled] = {}
    for word in filter(str.isalpha, lexicon.known - open_words):
        marks = lexicon.single.get(word, NO_MARKS)
        found[word] = (frozenset(lexicon.longer.get(word, ())), named_color(word, marks), marks)
    for word, dated in DATE_BEHIND.items():  # no date but with one of these words behind them
        found[word] = (dated.union(lexicon.longer.get(word, ())), None, lexicon.single.get(word, NO_MARKS))
    return found


class Scan(Unknown):
    """One pass over a message's tokens."""

    def run(self) -> list[Item]:
        """All items, in order."""
        tokens = self.tokens
        settled = settled_words(self.lexicon)
        names = self.herd.names
        lettering = HEARD_LETTERS.keys() | self.herd.lower_prefixes
        add = self.items.append
        self._mend()
        at, end = 0, len(tokens)
        while at < end:
            token = tokens[at]
            word = token.key
            easy = settled.get(word)
            if easy is not None and word not in names:
                following = tokens[at + 1] if at + 1 < end else NOTHING
                if following.key not in easy[0] and (
                    len(word) > LETTERS_OF_TAG
                    or (following.sort == WORD and not following.glued and word not in lettering and following.key not in NUMBER_WORDS)
                    or not self._may_be_tag(word, following)
                ):
                    add(Item("word", at, at + 1, easy[1], easy[2], token.text, token.glued))
                    at += 1
                    continue
            self.at = at
            if token.sort == WORD:
                self._word(token)
            elif token.sort == "p":
                self._mark(token)
            else:
                self._figure(token)
            at, end = self.at, len(tokens)  # figures split tokens as they are read, and words may be said again
        self.at = at
        return self.items

    def _may_be_tag(self, word: str, following: Token) -> bool:
        """Whether a short word could be the letters of a tag or of a code such as `B3`, or begin a date with the number behind it."""
        return (
            following.glued
            or word in HEARD_LETTERS
            or (following.sort == NUMBER and word in DATE_BEHIND)
            or word.upper() in self.herd.prefixes
            or (following.key in NUMBER_WORDS and (len(word) == 1 or word in SPELLED))
        )

    def _word(self, token: Token) -> None:
        word = token.key
        if (word == "ditto" and self._ditto()) or (word in self.herd.names and self._name(word)):
            return
        if token.capital and word in color_words() and self._colored_name():
            return
        if len(word) > LETTERS_OF_TAG and word not in OWN_CASE:
            if not self._phrase(word):
                self._unknown(token)
            return
        if (word in SHORT_LABELS or word in WEANED_LABELS) and self._short_label(token):
            return
        if word == "x" and self._times():
            return
        if (word in SEX_WORDS or word in PLURAL_SEX) and self._sexed(word):
            return
        if (len(word) == 1 or word in SPELLED) and self._spelled_cage(word):
            return
        if self._letters_of_tag(token) or (word in NUMBERED_WORDS and (self._cage() if word in CAGE_WORDS else self._rabbit())):
            return
        if (word in DATE_FIRST or word in ORDINALS) and self._date():
            return
        if (word in NUMBER_FIRST or word in {"a", "an", "couple"}) and self._number_words(word):
            return
        if word in HOMOPHONES and self._homophone(word):
            return
        if not self._phrase(word):
            self._unknown(token)
