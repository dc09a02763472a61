"""Words, numbers and marks of a message, in order."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import Final

WORD: Final = "w"
NUMBER: Final = "n"
MARK: Final = "p"

_TOKEN: Final = re.compile(
    r"(?:(?P<word>[^\W\d]+(?:'[^\W\d]+)?)"
    r"|(?P<dots>\.{2,}(?!\.))"
    r"|(?P<iso>\d{4}-\d{1,2}-\d{1,2}(?!\d))"
    r"|(?P<slash>\d{1,4}/\d{1,2}(?:/\d{2,4})?(?![\d/]))"
    r"|(?P<clock>\d{1,2}:\d{2}(?!\d)(?!:\d))"
    r"|(?P<pair>\d{1,3}[-#]\d{1,2}(?:\.\d+)?(?![\d-]))"
    r"|(?P<club>4-?h\b)"
    r"|(?P<num>\d{1,3}(?:,\d{3})+(?:\.\d+)?(?![\d,])|\d+(?:\.\d{1,3}|,\d{1,3}(?!\.\d))?(?!\d)|\d+|(?<!\d)\.\d+)"
    r"|(?P<break>\n)"
    r"|(?P<mark>\S))"
)
_WORD_GROUP: Final = _TOKEN.groupindex["word"]


#: They are counted whole: the dot before their number ends a sentence (`church.40 bucks`). Before anything else it may be a dose (`ivermectin.2 ml`).
_COUNTED: Final = re.compile(r" ?(?:left|kits?|babies|dead|alive|live|born|bucks?|does|dollars|more)\b")


@dataclass(slots=True)
class Token:
    """One word, number or mark.

    sort   `w`, `n`, `p`, or for figures with a shape of their own `iso`, `slash`, `clock`, `pair`
    text   as typed (cleaned), lower case; for words without apostrophes in `key`
    glued  nothing stands between it and the token before
    capital typed with a capital
    """

    sort: str
    text: str
    key: str
    start: int
    end: int
    glued: bool
    capital: bool = False


#: Short forms that would be other words without their apostrophe.
CONTRACTED: Final = {
    "i'll": "will",
    "we'll": "will",
    "she'll": "will",
    "he'll": "will",
    "we're": "are",
    "i'd": "shall",
    "she'd": "shall",
    "he'd": "shall",
    "we'd": "shall",
}
_SORTS: Final = {"word": WORD, "club": WORD, "num": NUMBER, "mark": MARK, "break": MARK}


def tokens(text: str) -> list[Token]:
    """The tokens of a cleaned message."""
    found: list[Token] = []
    lower = text.lower()
    start = 0
    for piece in lower.split(" "):
        end = start + len(piece)
        if piece.isalpha():  # most of every message
            found.append(Token(WORD, piece, piece, start, end, False, text[start] != piece[0]))  # noqa: FBT003 - not glued; by name it takes longer
        elif piece and piece[-1] in ",." and (said := piece[:-1]).isalpha():
            found.append(Token(WORD, said, said, start, end - 1, False, text[start] != said[0]))  # noqa: FBT003
            found.append(Token(MARK, piece[-1], piece[-1], end - 1, end, True))  # noqa: FBT003
        elif piece:
            _take_apart(text, lower, start, end, found)
        start = end + 1
    return found


def _take_apart(text: str, lower: str, begin: int, stop: int, found: list[Token]) -> None:
    """Add the tokens between two spaces."""
    last_end = -1
    for match in _TOKEN.finditer(lower, begin, stop):
        group = match.lastindex or 0
        start, end = match.span(group)
        said = lower[start:end]
        if group == _WORD_GROUP:
            key = said if said.isalpha() else CONTRACTED.get(said) or said.replace("'", "")
            found.append(Token(WORD, said, key, start, end, start == last_end, text[start] != said[0]))
        elif (name := match.lastgroup or "") == "dots":
            mark = "," if start and text[start - 1].isdigit() and text[end : end + 1].isdigit() else "."
            found.append(Token(MARK, mark, mark, start, end, start == last_end))
        else:
            if name == "num" and said[0] == "." and start == last_end and found[-1].sort == WORD and _COUNTED.match(lower, end):
                found.append(Token(MARK, ".", ".", start, start + 1, glued=True))  # "sold at church.40 bucks"
                said, start = said[1:], start + 1
            found.append(Token(_SORTS.get(name, name), said, said, start, end, start == last_end))
        last_end = end
