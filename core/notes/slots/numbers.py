"""Whole numbers, fractions and decimals as people say them: `twenty two`, `point three`, `two and a half`, `a dozen`."""

from __future__ import annotations

from collections.abc import Container, Sequence
from decimal import Decimal
from typing import Final

from core.notes.slots.tokens import Token

UNITS: Final = {
    "zero": 0, "one": 1, "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9, "ten": 10, "eleven": 11,
    "twelve": 12, "thirteen": 13, "fourteen": 14, "fifteen": 15, "sixteen": 16, "seventeen": 17, "eighteen": 18, "nineteen": 19,  # not a figure: number words
}  # fmt: skip
TENS: Final = {
    "twenty": 20, "thirty": 30, "forty": 40, "fourty": 40, "fifty": 50, "sixty": 60, "seventy": 70, "eighty": 80, "ninety": 90,  # not a figure: number words
}  # fmt: skip
SLIPS: Final = {
    "fourten": "fourteen", "forteen": "fourteen", "fiveteen": "fifteen", "fiften": "fifteen", "sixten": "sixteen", "eigth": "eight",
    "eigh": "eight", "sevin": "seven", "thre": "three", "twelv": "twelve", "tweleve": "twelve", "twinty": "twenty", "thirdy": "thirty",
}  # fmt: skip
ORDINALS: Final = {
    "first": 1, "second": 2, "third": 3, "fourth": 4, "fifth": 5, "sixth": 6, "seventh": 7, "eighth": 8, "ninth": 9, "tenth": 10,
    "eleventh": 11, "twelfth": 12, "thirteenth": 13, "fourteenth": 14, "fifteenth": 15, "sixteenth": 16, "seventeenth": 17,  # not a figure: number words
    "eighteenth": 18, "nineteenth": 19, "twentieth": 20, "thirtieth": 30,
}  # fmt: skip
FRACTIONS: Final = {
    "half": Decimal("0.5"),
    "quarter": Decimal("0.25"),
    "quarters": Decimal("0.25"),
    "third": Decimal("0.333"),
}  # not a figure: a quarter

#: Words that an ear or a phone puts for a number; grammar decides (`items`), never the word alone.
HOMOPHONES: Final = {"to": 2, "too": 2, "for": 4, "fore": 4, "ate": 8, "won": 1, "tree": 3, "free": 3, "tin": 10, "sex": 6, "a": 8}

#: `thirtytwo`: tens and a unit without a space between.
JOINED: Final = {ten + unit: tens + value for ten, tens in TENS.items() for unit, value in UNITS.items() if 0 < value < 10}

NUMBER_WORDS: Final = {**JOINED, **UNITS, **TENS, **{slip: ({**UNITS, **TENS})[word] for slip, word in SLIPS.items()}}


def _plural(word: str) -> str:
    return word[:-1] + "ies" if word.endswith("y") else word + ("es" if word.endswith("x") else "s")


#: `sixteens`, `twentys`: a number with a possessive s.
POSSESSIVE: Final = {form: word for word in NUMBER_WORDS for form in (word + "s", _plural(word)) if form not in {"ones", "tens", "twos"}}


def spoken(tokens: Sequence[Token], at: int) -> tuple[Decimal, int, bool] | None:
    """The number in words that begins at `at`: its value, the index after it, and whether it ended in a possessive s."""
    key = tokens[at].key
    if key == "point":
        return _decimal_part(tokens, at, Decimal(0))
    if key == "dozen":
        return Decimal(12), at + 1, False  # not a figure: a dozen
    if key == "half":
        end = at + 2 if _key(tokens, at + 1) == "a" else at + 1
        return (Decimal(6), end + 1, False) if _key(tokens, end) == "dozen" else None  # not a figure: half a dozen
    if key == "hundred":
        return _hundreds(tokens, 1, at)
    if key in POSSESSIVE:
        return Decimal(NUMBER_WORDS[POSSESSIVE[key]]), at + 1, True
    if key not in NUMBER_WORDS:
        return None
    return _compound(tokens, at)


def _compound(tokens: Sequence[Token], at: int) -> tuple[Decimal, int, bool] | None:
    value = NUMBER_WORDS[tokens[at].key]
    end = at + 1
    following = _key(tokens, end)
    if following == "-" and _key(tokens, end + 1) in UNITS:
        end, following = end + 1, _key(tokens, end + 1)
    if value in TENS.values() and 0 < UNITS.get(following, 0) < 10:
        value, end = value + UNITS[following], end + 1
    elif value in TENS.values() and _unit_of_possessive(following):
        return Decimal(value + _unit_of_possessive(following)), end + 1, True
    elif following == "hundred" and value < 20:  # not a figure: number words: `nineteen hundred` is the last
        return _hundreds(tokens, value, end)
    elif following == "thousand":
        after = end + 2 if _key(tokens, end + 1) == "and" else end + 1
        rest = None if _larger(tokens, after, {"thousand"}) else _at(tokens, after)
        return (value * 1000 + rest[0], rest[1], rest[2]) if rest and rest[0] < 1000 else (Decimal(value * 1000), end + 1, False)
    elif following == "dozen":
        return Decimal(value * 12), end + 1, False  # not a figure: a dozen
    if _key(tokens, end) == "point":
        return _decimal_part(tokens, end, Decimal(value))
    return Decimal(value), end, False


def _hundreds(tokens: Sequence[Token], count: int, hundred: int) -> tuple[Decimal, int, bool]:
    """`hundred`, `two hundred and five`; `hundred` stands at the index."""
    after = hundred + 2 if _key(tokens, hundred + 1) == "and" else hundred + 1
    rest = None if _larger(tokens, after, {"hundred", "thousand"}) else _at(tokens, after)
    if rest and rest[0] < 100:
        return count * 100 + rest[0], rest[1], rest[2]
    return Decimal(count * 100), hundred + 1, False


def _larger(tokens: Sequence[Token], at: int, words: Container[str]) -> bool:
    """Whether the number there is too large to go on with one: `one hundred and one hundred`."""
    return _key(tokens, at) in words or _key(tokens, at + 1) in words


def _at(tokens: Sequence[Token], at: int) -> tuple[Decimal, int, bool] | None:
    return spoken(tokens, at) if at < len(tokens) else None


def _unit_of_possessive(key: str) -> int:
    value = NUMBER_WORDS.get(POSSESSIVE.get(key, ""), 0)
    if key == "ones":
        value = 1
    if key == "twos":
        value = 2
    return value if value < 10 else 0


def _key(tokens: Sequence[Token], at: int) -> str:
    return tokens[at].key if at < len(tokens) else ""


def _decimal_part(tokens: Sequence[Token], point: int, whole: Decimal) -> tuple[Decimal, int, bool] | None:
    """`point seven five`: digits after the point, one by one."""
    digits = ""
    end = point + 1
    while end < len(tokens) and UNITS.get(tokens[end].key, 10) < 10 and len(digits) < 3:
        digits += str(UNITS[tokens[end].key])
        end += 1
    if not digits and end < len(tokens) and tokens[end].key.isdigit():
        digits, end = tokens[end].key, end + 1
    if not digits:
        return (whole, point, False) if whole else None
    return whole + Decimal(f"0.{digits}"), end, False
