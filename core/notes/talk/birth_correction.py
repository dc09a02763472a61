"""A birth put right in a few words: "no, 8 born 2 dead", "no, 22 had 8", "no 7 alive" right after a kindling.

On their own such words would tell of another litter, or of kits lost since; behind a "no" they mean the birth just noted.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Final

from core.herd.questions import fitting
from core.herd.state import Animal, Herd
from core.notes.slots.numbers import spoken
from core.notes.slots.tokens import NUMBER, Token, tokens

_LABELS: Final[Mapping[str, str]] = {
    **dict.fromkeys(("born", "total", "altogether"), "born"),
    **dict.fromkeys(("alive", "live", "living", "survived"), "alive"),
    **dict.fromkeys(("dead", "doa", "stillborn", "died"), "dead"),
}
_VERBS: Final = frozenset({"had", "has", "kindled", "have", "were", "was", "kits", "kit", "babies", "bunnies"})
_FILLERS: Final = frozenset(
    {
        "to", "start", "at", "first", "originally", "actually", "begin", "birth", "she", "her", "it", "and", "with", "of", "them", "em",
        "there", "only", "just", "in", "all", "but", "the", "is", "are", "doe",
    }
)  # fmt: skip


def birth_numbers(text: str, doe: str, herd: Herd) -> dict[str, int] | None:
    """Born, alive and dead as the words say them; None where they say anything else, or name another doe."""
    found = tokens(text)
    at = _behind_doe(found, herd.find(doe), herd)
    numbers: dict[str, int] = {}
    bare: list[int] = []
    has_verb = at > 0
    while at < len(found):
        token = found[at]
        number, following = _number(found, at)
        if number is not None:
            bare.append(number)
        elif token.key == "not":
            following = _number(found, following)[1] if following < len(found) else following  # "2 dead, not 1"
        elif token.key in _LABELS:
            if not bare:
                return None
            numbers[_LABELS[token.key]] = bare.pop()
        elif token.key in _VERBS:
            has_verb = True
        elif token.sort != "p" and token.key not in _FILLERS:
            return None
        at = following
    if len(bare) == 1 and "born" not in numbers and (has_verb or numbers):
        numbers["born"] = bare.pop()
    return numbers if numbers and not bare else None


def _behind_doe(found: list[Token], doe: Animal | None, herd: Herd) -> int:
    """Index of the first word behind the doe's own tag or name and a verb; 0 where the words don't begin with her."""
    start = 1 if found and found[0].key == "doe" else 0
    if doe is None or len(found) < start + 2 or found[start + 1].key not in _VERBS - {"kits", "kit", "babies", "bunnies"}:
        return 0
    return start + 1 if doe in fitting(herd, found[start].key) else 0


def _number(found: list[Token], at: int) -> tuple[int | None, int]:
    """The whole number at that place, in figures or words, and the index behind it."""
    if found[at].sort == NUMBER:
        return (int(found[at].key) if found[at].key.isdigit() else None), at + 1
    if found[at].key == "none":
        return 0, at + 1
    told = spoken(found, at)
    return (int(told[0]), told[1]) if told and told[0] == int(told[0]) else (None, at + 1)
