"""A space that the thumb put a letter too early or too late: `las tnight`, `fros tlast night`, `kin dled`."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from core.notes.lexicon import FOREIGN, Lexicon
from core.notes.tokens import WORD, Token

SHORTEST: Final = 3  # letters of each half, once the letter is back


def put_back(tokens: list[Token], at: int, lexicon: Lexicon, names: Sequence[str]) -> bool:
    """Whether two words, one of them unknown, became two known ones by one letter moved over, or one known one by joining them."""
    following = at + 1
    if following >= len(tokens) or tokens[following].sort != WORD or tokens[following].glued:
        return False
    one, other = tokens[at].key, tokens[following].key
    if any(word in names for word in (one, other)) or not (one + other).isalpha():
        return False
    if _known(one, lexicon) and _known(other, lexicon):
        return False
    for left, right in ((one + other[:1], other[1:]), (one[:-1], one[-1:] + other)):
        if min(len(left), len(right)) >= SHORTEST and _known(left, lexicon) and _known(right, lexicon):
            _write(tokens[at], left)
            _write(tokens[following], right)
            return True
    if one + other in lexicon.words and not _known(one, lexicon) and not _known(other, lexicon):
        _write(tokens[at], one + other)
        tokens[at].end = tokens[following].end
        del tokens[following]
        return True
    return False


def _known(word: str, lexicon: Lexicon) -> bool:
    return word in lexicon.known and word not in FOREIGN - lexicon.words


def _write(token: Token, word: str) -> None:
    token.key = token.text = word
