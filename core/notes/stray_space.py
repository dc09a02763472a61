"""A space that the thumb put a letter too early or too late: `las tnight`, `fros tlast night`, `kin dled`."""

from __future__ import annotations

from collections.abc import Container
from typing import Final

from core.notes.common_words import COMMON
from core.notes.lexicon import FOREIGN, Lexicon
from core.notes.tokens import WORD, Token

SHORTEST: Final = 3  # letters of a half, once the letter is back
LITTLE: Final = frozenset({"in", "to", "on", "of", "is", "it", "at", "my", "we", "he", "all", "for"})  # shorter halves that may be


def put_back(tokens: list[Token], at: int, lexicon: Lexicon, names: Container[str]) -> bool:
    """Whether two words, one of them unknown, became two known ones by one letter moved over, or one known one by joining them."""
    following = at + 1
    if at < 0 or following >= len(tokens) or not tokens[at].sort == tokens[following].sort == WORD:
        return False
    one, other = tokens[at].key, tokens[following].key
    if one in names or other in names or not (one + other).isalpha():
        return False
    known = _known(one, lexicon), _known(other, lexicon)
    if all(known):
        return False
    if one + other in lexicon.words and not any(known):
        _write(tokens[at], one + other)
        tokens[at].end = tokens[following].end
        del tokens[following]
        return True
    for left, right in ((one + other[:1], other[1:]), (one[:-1], one[-1:] + other)):
        if _whole(left, lexicon) and _whole(right, lexicon) and max(len(left), len(right)) >= SHORTEST:
            _write(tokens[at], left)
            _write(tokens[following], right)
            return True
    return False


def _whole(half: str, lexicon: Lexicon) -> bool:
    return (len(half) >= SHORTEST and _known(half, lexicon)) or half in LITTLE


def _known(word: str, lexicon: Lexicon) -> bool:
    return word in lexicon.words or word in COMMON or (word in lexicon.known and word not in FOREIGN)


def _write(token: Token, word: str) -> None:
    token.key = token.text = word
