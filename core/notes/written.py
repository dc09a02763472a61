"""Reading back what the book wrote: the sentence that a kind's `show` makes, taken to pieces by that kind's own patterns.

A pattern names its pieces as the contract names the fields. It fits only whole sentences in which somebody's own words stand in
quotes and every animal is on the book, so a person's note is read this way just where it says the same in the same words.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping
from datetime import date
from functools import cache
from typing import Any, Final

from core.handbook import breeds, colors
from core.herd.chore import CHORES
from core.herd.state import Herd
from core.herd.wishes import normal
from core.notes.fact import Fact, Json, field_names, from_json
from core.notes.kinds import KIND_OF, KINDS
from core.notes.telling import OWN_DAY

_QUOTED: Final = r'"(?:[^"\\]|\\.)*"'

#: What the words in braces of a pattern stand for.
PIECES: Final[Mapping[str, str]] = {
    "TAG": r'[^\s,:"]+',
    "NAME": rf'(?:{_QUOTED}|[^\s,:"]+)',
    "TEXT": _QUOTED,
    "COLOR": rf"(?:{_QUOTED}|[a-z][a-z -]*)",
    "BREED": rf"(?:{_QUOTED}|[A-Z][A-Za-z -]*?)",
    "ORIGIN": "bought|born here|given",
    "CODE": "[a-z]+(?: [a-z]+)*",
    "WORD": "[a-z][a-z_]*(?:-[a-z]+)?",
    "CHORE": f"(?:{_QUOTED}|{'|'.join(CHORES)})",
    "KIND": "|".join(KIND_OF),
    "KEY": r"\S+",
    "NUM": r"\d+",
    "DEC": r"-?\d+(?:\.\d+)?",
    "MONEY": r"\d+\.\d{2}",
    "DAY": r"\d{4}-\d{2}-\d{2}",
    "WORDS": ".+",
    "REST": ".+",
}

#: The plain word that a pattern begins with, or that stands behind an opening name; it may end in `s?`.
_PLAIN_WORD = re.compile(r"(\(\?P<\w+>[^()]*\) )?([a-z]+)(\?)?")
_PIECE = re.compile(r"\{(\w+):([A-Z]+)\}")
_DAY = re.compile(r"(\d{4}-\d{2}-\d{2}): ")
#: Fields that name an animal, and the kinds in which one of them doesn't, or names one that may come from elsewhere.
_ROLES: Final = ("who", "doe", "buck", "from", "to", "litter_of", "with")
_NO_ANIMAL: Final = frozenset({("sold", "to"), ("given_away", "to"), ("treated", "with"), ("bred", "buck")})


def written_fact(text: str, herd: Herd, today: date) -> Fact | None:
    """The fact whose sentence this is; None for any other words. A day in front is that of the event, else it is today's."""
    dated = _DAY.match(text)
    sentence = text[dated.end() :] if dated else text
    first, _, behind = sentence.partition(" ")
    second = behind.partition(" ")[0]
    by_word = _patterns()
    for kind, pattern, pieces in (*by_word.get((0, first.rstrip(":")), ()), *by_word.get((1, second.rstrip(",")), ())):
        found = pattern.fullmatch(sentence)
        own_day = kind in OWN_DAY
        if found and not (own_day and dated):
            said = {name: words for name, words in found.groupdict().items() if words is not None}
            on = dated[1] if dated else today.isoformat()
            fact = _fact(kind, said if own_day else {**said, "on": on}, pieces)
            if fact is not None and _on_the_book(fact, herd):
                return fact
    return None


Pattern = tuple[str, re.Pattern[str], Mapping[str, str]]


@cache
def _patterns() -> Mapping[tuple[int, str], list[Pattern]]:
    """Every kind's patterns by their plain word, which is the first of a sentence (0) or the second (1), and which piece each name is."""
    found: dict[tuple[int, str], list[Pattern]] = {}
    for kind in KINDS:
        for written in kind.written:
            pattern = re.compile(_PIECE.sub(_group, written), re.DOTALL)
            name, word, may_lack_s = _PLAIN_WORD.match(pattern.pattern).groups()  # type: ignore[union-attr]
            for form in (word, word[:-1]) if may_lack_s else (word,):
                found.setdefault((int(name is not None), form), []).append((kind.name, pattern, dict(_PIECE.findall(written))))
    return found


def _group(piece: re.Match[str]) -> str:
    return f"(?P<{piece[1]}>{PIECES[piece[2]]})"


def _fact(kind: str, said: Mapping[str, str], pieces: Mapping[str, str]) -> Fact | None:
    """The fact of these pieces; None where one of them can't be."""
    fact = KIND_OF[kind].fact
    types = {names.json: str(fact.__dataclass_fields__[names.code].type) for names in field_names(fact)}
    values = {name: _value(words, pieces.get(name, ""), types[name].removesuffix(" | None"), said) for name, words in said.items()}
    if any(value is None for value in values.values()):
        return None
    try:
        return from_json(fact, values)
    except ValueError:
        return None


def _value(words: str, piece: str, of_type: str, said: Mapping[str, str]) -> Json:
    """A piece as JSON holds it; None where it can't be one."""
    if of_type == "SettingValue":
        value = normal(said["name"], words)
        return words if isinstance(value, str) else value
    read = _BY_PIECE.get(piece) or _BY_TYPE.get(of_type)
    return read(words) if read else words


def _text(words: str) -> str | None:
    """Words as they are, or out of their quotes."""
    if not words.startswith('"'):
        return words
    try:
        said = json.loads(words)
    except ValueError:
        return None
    return said if isinstance(said, str) else None


def _color(words: str) -> str | None:
    return words if colors.color(words) == words else _text(words) if words.startswith('"') else None


def _breed(words: str) -> str | None:
    known = breeds.breed(words)
    return words if known is not None and known.name == words else _text(words) if words.startswith('"') else None


def _code(words: str) -> str:
    return words.replace(" ", "_")


def _counts(words: str) -> dict[str, int] | None:
    """`3 castor, 2 black`."""
    parts = [re.fullmatch(rf"(\d+) ({PIECES['COLOR']})", part) for part in re.split(r", (?=\d)", words)]
    told = {_color(part[2]): int(part[1]) for part in parts if part}
    return {color: count for color, count in told.items() if color is not None} if len(told) == len(parts) and None not in told else None


def _fields(words: str) -> dict[str, Any] | None:
    """`who "15", count 7`."""
    parts = [re.fullmatch(rf"([a-z_]+) ({_QUOTED}|-?[\d.]+|true|false)", part) for part in re.split(r", (?=[a-z_]+ )", words)]
    try:
        told = {part[1]: json.loads(part[2]) for part in parts if part}
    except ValueError:
        return None
    return told if len(told) == len(parts) else None


_BY_PIECE: Final[Mapping[str, Callable[[str], Json]]] = {
    "NAME": _text,
    "TEXT": _text,
    "CHORE": _text,
    "WORDS": _text,
    "COLOR": _color,
    "BREED": _breed,
    "CODE": _code,
    "ORIGIN": _code,
}
_BY_TYPE: Final[Mapping[str, Callable[[str], Json]]] = {
    "int": int,
    "float": float,
    "bool": lambda words: words == "disqualifies",
    "ColorCounts": _counts,
    "Fields": _fields,
}


def _on_the_book(fact: Fact, herd: Herd) -> bool:
    """Whether every animal of the sentence is on the book and spelled as there, so that no word of a person's note is taken for a tag."""
    said = {names.json: getattr(fact, names.code) for names in field_names(fact)}
    tags = [said[name] for name in _ROLES if said.get(name) is not None and (fact.kind, name) not in _NO_ANIMAL]
    return all((animal := herd.find(tag)) is not None and animal.tag == tag for tag in tags)
