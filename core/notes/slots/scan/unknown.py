"""Words that nobody knows: slips put right, names of newcomers, words of the barn beside a number only."""

from __future__ import annotations

from functools import lru_cache
from typing import Final

from core.handbook.colors import color_words
from core.notes.slots.dates import DATE_FIRST
from core.notes.slots.heard import RIGHTED
from core.notes.slots.items import NO_MARKS
from core.notes.slots.lexicon import BESIDE_NUMBER, FOREIGN, Lexicon
from core.notes.slots.numbers import ORDINALS
from core.notes.slots.scan.caged import SPELLED
from core.notes.slots.scan.labelled import ENDS_SENTENCE
from core.notes.slots.scan.marks import Marks
from core.notes.slots.scan.tagged import NUMBER_FIRST, PLURAL_SEX, SEX_WORDS
from core.notes.slots.stray_space import put_back, run_together
from core.notes.slots.tokens import NUMBER, WORD, Token

OWN_WORDS: Final = frozenset({*SEX_WORDS, *PLURAL_SEX, *SPELLED, *DATE_FIRST, *ORDINALS})
AT_START: Final = frozenset({"so", "told", "least", "wind", "way", "ways", "find"})
WEIGHED_BETWEEN: Final = frozenset({"way", "ways"})
SHORT_FORMS: Final = {
    "xmas": "christmas",
    "n": "and",
    "bc": "because",
    "wldnt": "wouldnt",
    "wudnt": "wouldnt",
    "cldnt": "couldnt",
    "cudnt": "couldnt",
    "hsnt": "hasnt",
    "ddnt": "didnt",
    "dint": "didnt",
    "sry": "sorry",
    "srry": "sorry",
    "yst": "yesterday",
}


@lru_cache(maxsize=1)
def words_as_typed(lexicon: Lexicon) -> frozenset[str]:
    """Words that are surely no slip."""
    return ((lexicon.known - FOREIGN) | OWN_WORDS) - RIGHTED.keys() - {"n"}


class Unknown(Marks):
    """Words that nobody knows: slips put right, names of newcomers, words of the barn beside a number only."""

    def _mend(self) -> None:
        """Put slips right in words that nobody knows, before any of them is read."""
        as_typed = words_as_typed(self.lexicon)
        for at, typed in enumerate(self.tokens):
            token, word = typed, typed.key
            if word in as_typed or (typed.sort != WORD and word not in RIGHTED):
                continue
            if word in RIGHTED and word not in self.herd.names:
                RIGHTED[word](self.tokens, at, self.herd)
                token = self.tokens[at]
                word = token.key
            if word == "n" and not (at + 1 < len(self.tokens) and self.tokens[at + 1].glued):
                token.key = token.text = SHORT_FORMS["n"]
                continue
            if token.sort != WORD or word in self.herd.names or word in OWN_WORDS:
                continue
            if token.capital and at and self.tokens[at - 1].key not in ENDS_SENTENCE and not self._shouted():
                continue  # somebody's name
            if self._space_put_back(at) or self._space_put_back(at - 1) or word in self.lexicon.known:
                continue
            if word in SHORT_FORMS:
                token.key = token.text = SHORT_FORMS[word]
                continue
            if self.herd.by_slip(word) or (word.endswith("s") and self.herd.by_slip(word[:-1])):
                continue
            meant = self.lexicon.meant(word) or self.lexicon.meant_before(word, self._key(at + 1))
            if meant and not self._names_newcomer(at, meant):
                token.key = token.text = meant
            elif not meant:
                run_together(self.tokens, at, self.lexicon)

    def _space_put_back(self, at: int) -> bool:
        return put_back(self.tokens, at, self.lexicon, self.herd.names)

    def _shouted(self) -> bool:
        """Whether the message is written in capitals throughout."""
        return sum(1 for token in self.tokens if token.capital) * 3 > len(self.tokens)

    def _unknown(self, token: Token) -> None:
        word = token.key
        if word in self.lexicon.known:
            self._beside_number(word)
            return
        if self._names_newcomer(self.at, ""):
            self._add("word", self.at + 1)
            return
        tags = self.herd.by_slip(word)
        if not tags and word.endswith("s"):
            tags = self.herd.by_slip(word[:-1])
        if tags:
            self._animal(tags, self.at + 1, exact=False)
            return
        self._add("word", self.at + 1)

    def _names_newcomer(self, at: int, meant: str) -> bool:
        """Whether an unknown word stands where a new animal's name does; it may still be a slip of a breed, or uncapped of a colour."""
        before = self._key(at - 1)
        if before in {"named", "called"}:
            return True
        if not (before.isdigit() and any("new" in marks for _, marks in self.lexicon.phrases.get(self._key(0), ()))):
            return False
        marks = frozenset().union(*(found for _, found in self.lexicon.phrases.get(meant, ())))
        return marks.isdisjoint({"breed_name", "bag", "each", "feed"}) and ("color" not in marks or self.tokens[at].capital)

    def _colored_name(self) -> bool:
        """`new doe 7 Magpie new zealand white`: a colour's word is the name where another colour follows."""
        if not self._names_newcomer(self.at, "") or not any(later.key in color_words() for later in self.tokens[self.at + 1 :]):
            return False
        self._add("word", self.at + 1)
        return True

    def _beside_number(self, word: str) -> None:
        """A real word that stands for a barn word only beside a number or an animal."""
        meant = BESIDE_NUMBER.get(word)
        if (
            meant
            and (self._beside() or (word == "bread" and self._key(self.at - 1) in {"shes", "is", "was", "feels", "felt", "feeling"}))
            and (word not in AT_START or self.at == 0 or (word in WEIGHED_BETWEEN and self._between()))
        ):
            options = self.lexicon.phrases.get(meant, ())
            marks = next((marks for rest, marks in options if not rest), NO_MARKS)
            self._add("word", self.at + 1, None, marks)
            self.items[-1].said = meant
            return
        self._add("word", self.at + 1)

    def _between(self) -> bool:
        """`R23 ways five pounds`: an animal before and a number behind."""
        after = self._key(self.at + 1)
        return bool(self.items) and self.items[-1].sort in {"num", "animal"} and (after in NUMBER_FIRST or after[:1].isdigit())

    def _beside(self) -> bool:
        before = self.items[-1].sort in {"num", "animal"} if self.items else False
        following = self.at + 1
        if following >= len(self.tokens):
            return before
        token = self.tokens[following]
        return before or token.sort == NUMBER or token.key in NUMBER_FIRST or token.key in self.herd.names or token.key in SEX_WORDS
