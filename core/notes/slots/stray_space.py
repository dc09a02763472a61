"""A space that the thumb put a letter too early or too late: `las tnight`, `fros tlast night`, `kin dled`."""

from __future__ import annotations

from collections.abc import Container
from typing import Final

from core.notes.slots.common_words import COMMON
from core.notes.slots.lexicon import FOREIGN, Lexicon
from core.notes.slots.tokens import WORD, Token

LONG_HALF: Final = 4  # letters of what stands behind the small word
SHORTEST: Final = 3  # letters of a half, once the letter is back
LITTLE: Final = frozenset({"in", "to", "on", "of", "is", "it", "at", "my", "we", "he", "all", "for"})  # shorter halves that may be


def put_back(tokens: list[Token], at: int, lexicon: Lexicon, names: Container[str]) -> bool:
    """Whether two words, one of them unknown, became two known ones by one letter moved over, or one known one by joining them."""
    following = at + 1
    if at < 0 or following >= len(tokens) or not tokens[at].sort == tokens[following].sort == WORD:
        return False
    one, other = tokens[at].key, tokens[following].key
    if one in names or other in names or not (one + other).isalpha() or "'" in tokens[at].text:
        return False  # "my mother's old pony"
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


#: Small words that the thumb leaves no space behind.
FIRST_HALVES: Final = ("last", "this", "the", "her", "his", "a")


def run_together(tokens: list[Token], at: int, lexicon: Lexicon) -> None:
    """Part an unknown word that is two known ones: `lastnight`, `thismorning`, `awhite toenail`."""
    word = tokens[at].key
    for half in FIRST_HALVES:
        rest = word.removeprefix(half)
        if len(rest) < min(len(word), LONG_HALF) or rest not in lexicon.known or rest in FOREIGN:
            continue
        token = tokens[at]
        middle = token.start + len(half)
        tokens[at : at + 1] = [
            Token(WORD, half, half, token.start, middle, token.glued),
            Token(WORD, rest, rest, middle, token.end, glued=False),
        ]
        return


def _whole(half: str, lexicon: Lexicon) -> bool:
    return (len(half) >= SHORTEST and _known(half, lexicon)) or half in LITTLE


def _known(word: str, lexicon: Lexicon) -> bool:
    return word in lexicon.words or word in COMMON or (word in lexicon.known and word not in FOREIGN)


def _write(token: Token, word: str) -> None:
    token.key = token.text = word
