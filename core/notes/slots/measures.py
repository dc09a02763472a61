"""Numbers with what they measure: pounds and ounces, kilos, cups, doses, money, degrees, spans of time, times of day.

Over 300 lines: each unit has its own reader, and all share what an amount is.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from typing import Final

from core.notes.slots.dates import PERIODS
from core.notes.slots.items import COUNTED, CUP, DEGREE, DOLLAR, DOSE, GRAM, KG, LB, NO_MARKS, OZ, Item, grams_said, key, pair_grams
from core.notes.slots.numbers import FRACTIONS, TENS, spoken
from core.notes.slots.tokens import NUMBER, Token

MOST_CUPS: Final = 10  # `38.9 c` is a fever, no ration
HALVES: Final = {
    "half": Decimal("0.5"),
    "quarter": Decimal("0.25"),
    "third": Decimal("0.333"),
    "1/2": Decimal("0.5"),
}  # not a figure: a quarter
#: What units may be said in two letters: `c c`, `m l`.
PARTED_UNITS: Final = frozenset({"c", "m"})
DASHED_UNITS: Final = LB | OZ | DOSE | {"pound", "day", "week"}
BEHIND_FRACTION: Final = LB | KG | CUP | OZ | {"bags", "bag", "sacks", "sack", "cups", "", ",", ";", ".", "in", "inches", "and"}
#: Behind a number that follows pounds they say that it is no ounces.
NO_OUNCES: Final = frozenset(
    {*(COUNTED - {"live", "alive"}), *LB, *KG, *GRAM, *CUP, *DOLLAR, *PERIODS, "of", "-", "#", "@", "x", "each", "cents", "bucks", "ea"}
)
#: Words and signs that may say of what a number before them is so much.
TAILS: Final = frozenset(
    {*LB, *OZ, *KG, *GRAM, *CUP, *DOSE, *DOLLAR, *DEGREE, *PERIODS, *PARTED_UNITS}
    | {"-", "#", "f", "am", "pm", "a", "p", "in", "below", "oclock", "%", "percent", "st", "nd", "rd", "th"}
)


#: A third is an amount before a cup only: else it may be a place or a day.
OF_CUP: Final = frozenset({("of", "a"), ("cup", ""), ("cup", "of"), ("cup", "a"), ("cup", "."), ("cup", ","), ("cup", "now")})
THIRDS: Final = Decimal("0.667")


def amount_at(tokens: Sequence[Token], at: int) -> tuple[Decimal, int, bool, bool] | None:
    """The amount that begins at `at`, fractions included: value, index after it, said in words, possessive."""
    if at >= len(tokens):
        return None
    token = tokens[at]
    if token.sort == NUMBER:
        return _with_fraction(tokens, plain_number(token.key), at + 1, spoken_words=False)
    if token.sort == "slash":
        part = fraction(token.key)
        return (part, at + 1, False, False) if part is not None else None
    if token.key in FRACTIONS and token.key != "third":
        dozen = spoken(tokens, at)
        return (dozen[0], dozen[1], True, False) if dozen is not None else (FRACTIONS[token.key], at + 1, True, False)
    if token.key in {"a", "an"} and key(tokens, at + 1) in {"half", "quarter"}:
        return FRACTIONS[key(tokens, at + 1)], at + 2, True, False
    words = spoken(tokens, at)
    if words is None:
        return None
    value, end, possessive = words
    if key(tokens, end) in {"third", "thirds"} and value == 2 and key(tokens, end + 1) in {"of", "cup"}:  # not a figure: two thirds
        return THIRDS, end + 1, True, False
    if possessive:
        return value, end, True, True
    if key(tokens, end) in {"tenth", "tenths"} and 0 < value < 10 and value == int(value):  # not a figure: two tenths
        return value / 10, end + 1, True, False
    if key(tokens, end) in {"quarters", "quarter"} and value < 4:
        return value * Decimal("0.25"), end + 1, True, False  # not a figure: a quarter
    return _with_fraction(tokens, value, end, spoken_words=True)


def plain_number(text: str) -> Decimal:
    """Digits as typed: commas for thousands, or a decimal comma."""
    whole, comma, part = text.partition(",")
    if comma and len(part) < 3:
        return Decimal(f"{whole}.{part}")
    return Decimal(text.replace(",", ""))


def fraction(text: str) -> Decimal | None:
    """`3/4` as a number; None where it can't be a fraction."""
    over, _, under = text.partition("/")
    if not under.isdigit() or int(under) not in {2, 3, 4, 8, 16} or not 0 < int(over) < int(under):
        return None
    return (Decimal(over) / Decimal(under)).quantize(Decimal("0.001")).normalize()


def _with_fraction(tokens: Sequence[Token], value: Decimal, end: int, *, spoken_words: bool) -> tuple[Decimal, int, bool, bool]:
    """Past `3/4` or `and a half`."""
    if end < len(tokens) and tokens[end].sort == "slash" and not tokens[end].glued:
        part = fraction(tokens[end].key)
        if part is not None and key(tokens, end + 1) in BEHIND_FRACTION:
            return value + part, end + 1, spoken_words, False
    if key(tokens, end) in {"and", "&"}:
        after = end + 2 if key(tokens, end + 1) in {"a", "an"} else end + 1
        part = HALVES.get(key(tokens, after))
        if part is not None and (after == end + 2 or key(tokens, after) in {"half", "1/2"}):
            return value + part, after + 1, spoken_words, False
        if key(tokens, end + 1) in {"three", "3"} and key(tokens, end + 2) in {"quarter", "quarters"}:
            return value + Decimal("0.75"), end + 3, spoken_words, False  # not a figure: three quarters
    return value, end, spoken_words, False


def measure(tokens: Sequence[Token], at: int, value: Decimal, end: int) -> Item | None:
    """The number that runs from `at` to `end`, with the unit behind it; None where no unit is."""
    unit = key(tokens, end)
    if unit not in TAILS:
        return None
    if unit in PERIODS and not tokens[end].glued and end + 1 < len(tokens) and tokens[end + 1].glued and tokens[end + 1].sort == NUMBER:
        return None  # `12 wk2`: the unit belongs to the number behind it
    if unit in {"week", "wk"} and key(tokens, end + 1) == "of":
        return None  # `cull 12 week of dec 7`
    if unit == "-" and key(tokens, end + 1) in DASHED_UNITS:
        end, unit = end + 1, key(tokens, end + 1)
    if unit == "#" and tokens[end].glued and not (end + 1 < len(tokens) and tokens[end + 1].glued):
        return _pounds(tokens, at, value, end + 1)
    if unit in LB:
        return _pounds(tokens, at, value, end + 1)
    if unit in OZ or unit in KG or (unit in GRAM and unit != "gr"):
        return _made(tokens, "weight", at, end + 1, grams_said(value, unit), _unit_name(unit), value)
    if (
        unit == "c"
        and key(tokens, end + 1) != "c"
        and value < MOST_CUPS
        and (value != int(value) or key(tokens, end + 1) in {"pellets", "feed", "daily", "a", "per", "/"})
    ):
        return _cups(tokens, at, value, end + 1)
    if unit in CUP and (unit != "c" or key(tokens, end + 1) != "c") and unit != "c":
        return _cups(tokens, at, value, end + 1)
    if unit in DOSE or (unit in PARTED_UNITS and key(tokens, end + 1) in {"c", "l"} and not tokens[end].glued):
        last = end + 1 if unit in DOSE else end + 2
        return _made(tokens, "dose", at, last, _words(tokens, at, last))
    if unit in DOLLAR and not (unit == "$" and key(tokens, end + 1)[:1].isdigit()):
        return _money(tokens, at, value, end + 1)
    return _degrees(tokens, at, value, end) or _time_words(tokens, at, value, end) or _others(tokens, at, value, end)


def _made(tokens: Sequence[Token], sort: str, at: int, end: int, value: object, unit: str = "", amount: Decimal | None = None) -> Item:
    return Item(sort, at, end, (value, amount) if amount is not None else value, NO_MARKS, _words(tokens, at, end), unit=unit)


def _words(tokens: Sequence[Token], at: int, end: int) -> str:
    return " ".join(token.text for token in tokens[at:end])


def _unit_name(unit: str) -> str:
    if unit in OZ:
        return "oz"
    return "kg" if unit in KG else "g"


def _pounds(tokens: Sequence[Token], at: int, value: Decimal, end: int) -> Item:
    """`4 lb 6`, `4 lbs. 6 oz`, `four pounds and six ounces`, `a pound and a half`."""
    after = end
    if key(tokens, after) == "." and key(tokens, after - 1) in {"lb", "lbs"}:
        after += 1
    joined = key(tokens, after) in {",", "and", "&"}
    if joined:
        after += 1
    part = HALVES.get(key(tokens, after + 1)) if key(tokens, after) == "a" and joined else None
    if part is not None:
        return _made(tokens, "weight", at, after + 2, grams_said(value + part, "lb"), "lb", value + part)
    alone = key(tokens, end - 1).startswith("pounder")  # "fifty pounders eighteen dollars"
    found = amount_at(tokens, after) if after < len(tokens) and value == int(value) and not alone else None
    heard = {"ate": 8, "won": 1, "too": 2, "to": 2, "for": 4, "fore": 4}.get(key(tokens, after))
    if found is None and heard is not None and key(tokens, after + 1) in OZ | {""}:
        found = Decimal(heard), after + 1, True, False
    if found:
        ounces, last, _, possessive = found
        named = key(tokens, last) in OZ
        if named or (not joined and not possessive and _bare_ounces(tokens, after, ounces, last)):
            return _made(tokens, "weight", at, last + named, pair_grams(value, ounces), "lb", value + ounces / 16)
    return _made(tokens, "weight", at, end, grams_said(value, "lb"), "lb", value)


def _bare_ounces(tokens: Sequence[Token], at: int, ounces: Decimal, end: int) -> bool:
    """Whether a number behind pounds is their ounces, though no unit says so."""
    following = key(tokens, end)
    if ounces != int(ounces) or "." in tokens[at].key or ounces > 19:
        return False
    if following in TENS and key(tokens, end + 1) in {"each", "ea", "apiece", "a", "per"}:
        return False  # "fifty pounds nineteen fifty each"
    if following in NO_OUNCES:
        return False
    return not (end < len(tokens) and tokens[end].sort in {"pair", "clock", "slash"})


def _cups(tokens: Sequence[Token], at: int, value: Decimal, end: int) -> Item:
    """`a cup and a half`."""
    if key(tokens, end) == "and":
        after = end + 2 if key(tokens, end + 1) == "a" else end + 1
        part = HALVES.get(key(tokens, after))
        if part is not None:
            return _made(tokens, "cup", at, after + 1, value + part)
    return _made(tokens, "cup", at, end, value)


def _money(tokens: Sequence[Token], at: int, value: Decimal, end: int) -> Item:
    """Dollars, and cents where they follow."""
    cents = amount_at(tokens, end + 1) if key(tokens, end) == "and" and end + 1 < len(tokens) else None
    if cents and key(tokens, cents[1]) in {"cents", "cent"}:
        return _made(tokens, "money", at, cents[1] + 1, int(value * 100 + cents[0]))
    bare = amount_at(tokens, end) if key(tokens, end) in TENS and value == int(value) else None
    if bare and 10 <= bare[0] < 100 and key(tokens, bare[1]) in ENDS_PRICE:  # not a figure: cents in two figures
        return _made(tokens, "money", at, bare[1], int(value * 100 + bare[0]))  # "nineteen dollars fifty apiece"
    return _made(tokens, "money", at, end, int((value * 100).to_integral_value()))


#: Behind dollars and cents in words.
ENDS_PRICE: Final = frozenset({"", ".", ",", ";", "\n", "each", "apiece", "a", "per", "total", "for", "and"})
#: Behind `20 below` they leave it degrees of frost.
BELOW_WHAT: Final = frozenset(
    {"zero", ".", "!", ",", "\n", "outside", "out", "tonight", "today", "overnight", "again", "this", "last", "in"}
)


def _degrees(tokens: Sequence[Token], at: int, value: Decimal, end: int) -> Item | None:
    unit = key(tokens, end)
    scale = ""
    last = end
    if unit in DEGREE:
        last = end + 1
        scale = {"fahrenheit": "F", "celsius": "C"}.get(unit, "")
        if key(tokens, last) in {"f", "c", "fahrenheit", "celsius"}:
            scale, last = key(tokens, last)[0].upper(), last + 1
    elif unit in {"f", "c"} and key(tokens, end + 1) not in {"c", "section"} and not _begins_code(tokens, end):
        scale, last = unit.upper(), end + 1
    elif unit == "below" and key(tokens, end + 1) in BELOW_WHAT:
        last = end
    else:
        return None
    below = key(tokens, last) == "below" or key(tokens, at - 1) in {"minus", "negative"}
    minus = key(tokens, at - 1) == "-" and tokens[at].glued and (at == 1 or not tokens[at - 1].glued)
    if below or minus:
        value = -value
    return _made(
        tokens,
        "temp",
        at - 1 if minus or key(tokens, at - 1) in {"minus", "negative"} else at,
        last + (key(tokens, last) == "below") + (key(tokens, last) == "below" and key(tokens, last + 1) == "zero"),
        value,
        scale,
    )


def _begins_code(tokens: Sequence[Token], at: int) -> bool:
    """Whether the letter belongs to a cage behind it: `14 C2`."""
    return at + 1 < len(tokens) and tokens[at + 1].glued and tokens[at + 1].sort == NUMBER


def _time_words(tokens: Sequence[Token], at: int, value: Decimal, end: int) -> Item | None:
    """`6 pm`, `nine p m`, `six thirty` only behind `at`."""
    unit = key(tokens, end)
    half = unit if unit in {"am", "pm"} else ""
    last = end + 1
    if not half and unit in {"a", "p"} and key(tokens, end + 1) in {"m", "."}:
        half = unit + "m"
        last = end + 2
        while key(tokens, last) in {"m", "."} and last < end + 4 and tokens[last].glued:
            last += 1
    if (
        unit == "in"
        and key(tokens, end + 1) == "the"
        and key(tokens, end + 2) in {"evening", "afternoon", "morning"}
        and key(tokens, at - 1) in {"at", "around", "about", "by"}
        and 0 < value <= 12  # not a figure: hours of the clock
        and value == int(value)
    ):
        half, last = ("am" if key(tokens, end + 2) == "morning" else "pm"), end + 3
    if half and value == int(value) and 0 < value <= 12:  # not a figure: hours of the clock
        return _made(tokens, "time", at, last, f"{int(value) % 12 + 12 * (half == 'pm'):02d}:00")  # not a figure: hours of the clock
    if key(tokens, end) == "oclock" and 0 < value <= 12:  # not a figure: hours of the clock
        return _made(tokens, "time", at, end + 1, f"{int(value):02d}:00")
    return None


def _others(tokens: Sequence[Token], at: int, value: Decimal, end: int) -> Item | None:
    unit = key(tokens, end)
    if unit in {"%", "percent"}:
        return _made(tokens, "percent", at, end + 1, value)
    if unit in {"st", "nd", "rd", "th"} and tokens[end].glued:
        return _made(tokens, "ordinal", at, end + 1, int(value))
    period = PERIODS.get(unit)
    if unit in {"day", "week"} and value != 1 and key(tokens, end + 1).isdigit() and not tokens[end].glued:
        period = None
    if unit == "d" and key(tokens, end + 1) not in {"wd", "withdrawal", "old", "withdraw", "wdl", "w"}:
        period = None
    if unit in {"mo", "min"} and not (tokens[end].glued or key(tokens, end + 1) in {"old", "ago", "", "."}):
        period = None
    if period and value == int(value):
        last = end + 1
        if key(tokens, last) == "-" and key(tokens, last + 1) == "old":
            last += 1
        if key(tokens, last) in {"old", "olds"}:
            last += 1
        return _made(tokens, "span", at, last, (int(value), period))
    return None


def clock_time(text: str, half: str = "") -> str | None:
    """`HH:MM` of a time as typed; None where there is no such time."""
    hours, minutes = (int(part) for part in text.split(":"))
    if half == "pm" and hours < 12:  # not a figure: hours of the clock
        hours += 12  # not a figure: hours of the clock
    if half == "am" and hours == 12:  # not a figure: hours of the clock
        hours = 0
    return f"{hours:02d}:{minutes:02d}" if hours < 24 and minutes < 60 else None  # not a figure: hours and minutes
