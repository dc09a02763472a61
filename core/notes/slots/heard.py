"""What an ear makes of the barn's words when a note is dictated: letters said one by one, and words that only sound like the one meant.

A word is put right only where the words beside it leave no other sense; what stays doubtful is left to be asked about.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from typing import Final

from core.notes.slots.animals import HerdWords
from core.notes.slots.dates import DATE_FIRST
from core.notes.slots.items import LB, OZ, key
from core.notes.slots.numbers import NUMBER_WORDS, ORDINALS, TENS
from core.notes.slots.tokens import NUMBER, WORD, Token

SPELT: Final = frozenset({"bcs", "dq"})
SORE_PLACES: Final = frozenset(
    {"hock", "hocks", "hawk", "hawks", "hox", "foot", "feet", "eye", "eyes", "ear", "ears", "toe", "toes", "nose"}
)
BREEDS: Final = frozenset({"bred", "breed", "bread", "red", "rebred", "put", "refused"})
PALPATED_TAILS: Final = frozenset({"pated", "patted", "paid", "pate"})
BUCK_SAID: Final = frozenset({"buck", "book", "bucks", "books", "boys", "males"})
TATTOOED: Final = frozenset({"tattooed", "tattoo", "tattooing", "tagged"})
SEXED_KITS: Final = frozenset({"wean", "weaned", "waned", "kits", "litter", *BUCK_SAID})
WHEN_DUE: Final = frozenset({"when", "whens", "who", "whos"})
BEHIND_DUE: Final = frozenset({"", "this", "next", "today", "tomorrow", "soon", "on", "in", "?"})
LAST_UNIT = 9
OF_PARENTS: Final = {"o": "out", "d": "daughter", "s": "son"}
BAGS: Final = frozenset({"bag", "bags", "sack", "sacks", "feed", "pellets"})
NEAR = 4  # words: as far as the ear's guess is borne out by others


def _is_number(token: Token) -> bool:
    return token.sort == NUMBER or token.key in NUMBER_WORDS


def _become(token: Token, word: str) -> None:
    token.key = token.text = word


def _join(tokens: list[Token], at: int, end: int, word: str) -> None:
    tokens[at:end] = [Token(WORD, word, word, tokens[at].start, tokens[end - 1].end, tokens[at].glued)]


def _of_parents(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`R21 d/o Clover`, `2 o/o 16`: whose kit it is, in three signs."""
    if key(tokens, at + 1) == "/" and key(tokens, at + 2) == "o" and tokens[at + 1].glued and tokens[at + 2].glued:
        first, last = tokens[at], tokens[at + 2]
        word = OF_PARENTS[first.key]
        tokens[at : at + 3] = [
            Token(WORD, word, word, first.start, first.end, first.glued),
            Token(WORD, "of", "of", last.start, last.end, glued=False),
        ]


def _bought(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`bt 2 bags`: short for bought where a number follows; else it may be `but`."""
    if at + 1 < len(tokens) and _is_number(tokens[at + 1]) and any(token.key in BAGS for token in tokens[at + 2 : at + 2 + NEAR]):
        _become(tokens[at], "bought")


def _best_of(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`best of bred`: a placing, no mating."""
    if key(tokens, at - 1) == "of" and key(tokens, at - 2) == "best":
        _become(tokens[at], "breed")


def _spelt(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`b c s`, `d q`."""
    if tokens[at].key in OF_PARENTS and key(tokens, at + 1) == "/":
        _of_parents(tokens, at, _herd)
        return
    said, end = "", at
    while end < len(tokens) and len(tokens[end].key) == 1 and tokens[end].sort == WORD and (end == at or not tokens[end].glued):
        said, end = said + tokens[end].key, end + 1
        if said in SPELT:
            _join(tokens, at, end, said)
            return


def _club(tokens: list[Token], at: int, herd: HerdWords) -> None:
    """`a four h kid`; `four flint` behind `lift`."""
    if key(tokens, at + 1) == "h":
        _join(tokens, at, at + 2, "4h")
    elif key(tokens, at + 1) in herd.names and key(tokens, at - 1) in {"lift", "lifted"}:
        _become(tokens[at], "for")


def _toward(tokens: list[Token], at: int, herd: HerdWords) -> None:
    """`bred fifteen two flint`: a name behind the doe and her mating."""
    before = [token.key for token in tokens[max(at - NEAR, 0) : at]]
    named = key(tokens, at + 1) in herd.names or key(tokens, at + 1) in {"buck", "book"}
    if named and not BREEDS.isdisjoint(before) and (LB | OZ).isdisjoint(before):
        _become(tokens[at], "to")


def _sore(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    following = key(tokens, at + 1)
    if following in SORE_PLACES:
        _become(tokens[at], "sore")
        if following in {"hawk", "hawks", "hox"}:
            _become(tokens[at + 1], "hock" if following == "hawk" else "hocks")


def _tattooed(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`tattooed R30 out of 16, book, black`: the sex of a kit that gets its number."""
    if key(tokens, at - 1) not in {"the", "a", "my", "our", "this", "herd", "record", "log", "in"} and not TATTOOED.isdisjoint(
        [token.key for token in tokens[:at]]
    ):
        _become(tokens[at], "buck")


def _mites(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    if key(tokens, at - 1) in {"ear", "ears", "year", "fur"}:
        _become(tokens[at], "mites")


def _palpated(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    if key(tokens, at + 1) in PALPATED_TAILS:
        _join(tokens, at, at + 2, "palpated")


def _does(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`two bucks three doze`."""
    counted = at > 0 and _is_number(tokens[at - 1])
    if counted and not SEXED_KITS.isdisjoint(token.key for token in tokens[: at + NEAR]):
        _become(tokens[at], "does")


def _bred(tokens: list[Token], at: int, herd: HerdWords) -> None:
    """`red dough sixteen to book three`: a doe, and a buck behind `to`."""
    if not (_named(tokens, at + 1, herd) and key(tokens, at - 1) in {"", "and", "then", "um", "uh", "so", "i", "we"}):
        return
    for place in range(at + 2, min(at + 2 + NEAR, len(tokens) - 1)):
        if tokens[place].key in {"to", "two", "too", "with"} and _named(tokens, place + 1, herd):
            _become(tokens[at], "bred")
            return


def _rebred(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    _become(tokens[at], "rebred")


def _named(tokens: Sequence[Token], at: int, herd: HerdWords) -> bool:
    said = key(tokens, at)
    return said in herd.names or said in {"her", "him", "doe", "dough", "buck", "book"} or (at < len(tokens) and _is_number(tokens[at]))


def _them(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`sold one of em`, `every one of em's alive`."""
    _become(tokens[at], "them")


def _short_is(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`one's dead`: `is` in short."""
    if tokens[at].text.endswith("'s"):
        _become(tokens[at], tokens[at].key[:-1])


def _due(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`when is fourteen do`."""
    if key(tokens, at + 1) in BEHIND_DUE and any(token.key in WHEN_DUE for token in tokens[:at]):
        _become(tokens[at], "due")


def _ordinal(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`on the twenty third`: a day of the month."""
    part = ORDINALS.get(key(tokens, at + 1), LAST_UNIT + 1)
    if part <= LAST_UNIT and key(tokens, at - 1) in DATE_FIRST | {"the"} and key(tokens, at + 2) != "of":
        first, last = tokens[at], tokens[at + 1]
        number = str(TENS[first.key] + part)
        tail = {1: "st", 2: "nd", 3: "rd"}.get(part, "th")
        tokens[at : at + 2] = [
            Token(NUMBER, number, number, first.start, first.end, first.glued),
            Token(WORD, tail, tail, last.start, last.end, glued=True),
        ]


def _bucks(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`three box and two does`."""
    counted = at > 0 and _is_number(tokens[at - 1])
    if counted and not {"does", "doze", "doughs", "girls"}.isdisjoint(token.key for token in tokens[at + 1 : at + 1 + NEAR]):
        _become(tokens[at], "bucks")


def _hocks(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    if key(tokens, at - 1) == "sore":
        _become(tokens[at], "hocks")


def _weaned(tokens: list[Token], at: int, herd: HerdWords) -> None:
    """`wind sixteen three bucks two does`: an animal behind it, and kits counted."""
    kits = any(token.key in SEXED_KITS or token.key in {"does", "kids", "babies"} for token in tokens[at + 2 : at + 2 + NEAR])
    if at == 0 and kits and _named(tokens, at + 1, herd):
        _become(tokens[at], "weaned")


def _my_status(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`clover has my status`: mastitis."""
    if key(tokens, at + 1) == "status" and key(tokens, at - 1) in {"has", "got", "had", "hot"}:
        _join(tokens, at, at + 2, "mastitis")


def _lifted(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`fifteen would not left for flint`."""
    if key(tokens, at - 1) in {"wouldnt", "didnt", "wont"} or (
        key(tokens, at - 1) == "not" and key(tokens, at - 2) in {"would", "did", "will"}
    ):
        _become(tokens[at], "lift")


def _last(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`las night`: the thumb's last."""
    if key(tokens, at + 1) in {"night", "nite", "week", "month"}:
        _become(tokens[at], "last")


def _days_own(tokens: list[Token], at: int, _herd: HerdWords) -> None:
    """`last night's round`, `Monday's list`: the day that something is of."""
    token = tokens[at]
    if token.text.endswith("'s") or (at and tokens[at - 1].key == "last" and at + 1 < len(tokens) and tokens[at + 1].sort == WORD):
        token.key = token.text = token.key[:-1]


RIGHTED: Final[Mapping[str, Callable[[list[Token], int, HerdWords], None]]] = {
    **dict.fromkeys(
        (
            "nights",
            "mornings",
            "evenings",
            "afternoons",
            "mondays",
            "tuesdays",
            "wednesdays",
            "thursdays",
            "fridays",
            "saturdays",
            "sundays",
        ),
        _days_own,
    ),
    **dict.fromkeys(("b", "d"), _spelt),
    **dict.fromkeys(("o", "s"), _of_parents),
    **dict.fromkeys(("bred", "bread"), _best_of),
    **dict.fromkeys(("bt", "bght", "bot"), _bought),
    "four": _club,
    "twenty": _ordinal,
    "thirty": _ordinal,
    "two": _toward,
    "too": _toward,
    "soar": _sore,
    "hox": _hocks,
    "hawks": _hocks,
    "hops": _hocks,
    "hooks": _hocks,
    "locks": _hocks,
    "wind": _weaned,
    "las": _last,
    "my": _my_status,
    "left": _lifted,
    "box": _bucks,
    "book": _tattooed,
    "mights": _mites,
    "mice": _mites,
    "pal": _palpated,
    **dict.fromkeys(("doze", "dose", "doughs", "dues"), _does),
    "red": _bred,
    "bread": _bred,
    "rebread": _rebred,
    **dict.fromkeys(("ones", "furs", "types", "sizes"), _short_is),
    "em": _them,
    "ems": _them,
    "do": _due,
    "dew": _due,
}
