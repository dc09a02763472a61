"""What is said to the bot before the note itself: `please ...`, `ok so ...`, `can you log ...`.

Politeness changes nothing. A wish to write something down heads a note only where a note follows: `log 12` asks for the journal.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import Final

from core.notes.reading import Reading
from core.notes.slots.tokens import MARK, Token

_POLITE: Final = (
    ("please", "be", "so", "good", "as", "to"),
    ("please", "be", "so", "kind", "as", "to"),
    ("please", "note", "that"),
    ("i", "would", "like", "it", "noted", "that"),
    ("i", "should", "like", "it", "noted", "that"),
    ("i", "would", "like", "to", "set"),
    ("i", "should", "like", "to", "set"),
    ("kindly", "note", "that"),
    ("just", "for", "the", "record"),
    ("for", "the", "record"),
    ("please",),
    ("kindly",),
    ("pls",),
    ("plz",),
    ("ok", "so"),
    ("okay", "so"),
)
_WISHES: Final = frozenset({"can", "could", "would", "will"})
_WRITING: Final = (("log",), ("record",), ("note",), ("jot", "down"), ("write", "down"), ("put", "down", "that"))
#: They mean something else unless they are wished for: `put down 33` is a death.
_WRITING_IF_WISHED: Final = (*_WRITING, ("put", "down"), ("mark",), ("enter",), ("add",))
_FIRST: Final = frozenset(words[0] for words in (*_POLITE, *_WRITING_IF_WISHED)) | _WISHES


def headless(found: Sequence[Token]) -> tuple[int, bool]:
    """Where in the text the note begins behind its polite head, 0 for no head; and whether the head says to write it down."""
    if not found or found[0].key not in _FIRST:
        return 0, False
    at = _past(found, 0, _POLITE)
    wished = _key(found, at) in _WISHES and _key(found, at + 1) in {"you", "u"}
    behind = _past(found, at + 2, _POLITE) if wished else at
    written = _past(found, behind, _WRITING_IF_WISHED if wished else _WRITING)
    writing = written > behind
    if writing:
        at = written + 1 if _key(found, written) == "that" else written
    if not 0 < at < len(found) - 1:
        return 0, False
    return (found[at].start, writing) if found[at].sort != MARK else (0, False)


def _key(found: Sequence[Token], at: int) -> str:
    return found[at].key if at < len(found) else ""


def _past(found: Sequence[Token], at: int, heads: Sequence[tuple[str, ...]]) -> int:
    """The index behind one of the heads, and behind a comma there; the same index where none stands."""
    for words in heads:
        if all(_key(found, at + i) == word for i, word in enumerate(words)):
            end = at + len(words)
            return end + 1 if _key(found, end) == "," or (_key(found, end) == ":" and len(words) > 1) else end
    return at


def tells(reading: Reading) -> bool:
    """Whether a note was read: at least one fact that is neither a remark nor a question to the bot."""
    return any(fact.kind not in {"remark", "query"} for fact in reading.facts)
