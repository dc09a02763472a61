"""A denial right behind a death, a sale or a cull: "no she isnt" behind "tulip is dead" takes it back."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from core.herd.questions import same_tag
from core.notes.journal import Entry
from core.notes.kinds.undoing import Undo
from core.notes.meaning import Meaning
from core.notes.reading import Message
from core.notes.replay import Book
from core.notes.talk.amend import undone
from core.notes.talk.answer import animal_said, plain
from core.notes.talk.recall import subject_of

#: Kinds by which an animal leaves, and what is denied of it then.
_LEAVING: Final = {
    "died": "dead|died|die|gone",
    "sold": "sold|sell|gone",
    "given_away": "given away|given|give away|give|gone",
    "culled": "culled|cull|butchered|butcher|dead|killed|gone",
}
_OF_US: Final = frozenset({"i", "we"})
_DENIED: Final = re.compile(
    r"^(?P<lead>(?:(?:no|nope|wait|actually|oops|sorry|hold on)\b[\s,.!-]*)*)(?P<who>\w+?)"
    r"(?:(?P<alive>(?:'s| is|s)(?: still)? (?:alive|fine|here|ok))"
    r"|(?:(?:'s| is|s|'re) not| (?:is|was|were|are|did|has|had|have)n'?t| (?:was|were|are|did|has|had|have) not| ain'?t)(?: been)?"
    r"(?P<what>(?: \w+){0,3}?))(?: (?:yet|after all|at all))?$"
)
_OBJECT: Final = re.compile(r" (?:him|her|it|them|that)\b")
_DEAD: Final = frozenset({"died", "culled"})


def denied_leaving(book: Book, message: Message, last: Sequence[Entry]) -> Meaning | None:
    """The undo of what such words deny of the person's last note; None where they are something else."""
    left = [entry for entry in last if entry.fact.kind in _LEAVING]
    found = _DENIED.match(plain(message.text)) if left and _is_right_behind(book, message, left[0]) else None
    if found is None or len({entry.fact.kind for entry in left}) > 1:
        return None
    kind, what = left[0].fact.kind, _OBJECT.sub("", found["what"] or "").strip()
    not_so = kind in _DEAD if found["alive"] else (found["lead"] and not what) or re.fullmatch(_LEAVING[kind], what)
    if not not_so:
        return None
    undo = _undo(book, found["who"], left)
    meaning = undone(book, message, undo, None) if undo is not None else None
    return replace(meaning, notices=(*meaning.notices, "If it was right as it stood, send that note again.")) if meaning else None


def _is_right_behind(book: Book, message: Message, entry: Entry) -> bool:
    """Whether nothing was sent by that person since."""
    return next((note.id for note in reversed(book.notes) if note.author == message.author), None) == entry.note.id


def _undo(book: Book, who: str, left: Sequence[Entry]) -> Undo | None:
    """What takes it back: of the one animal spoken of, of the one named, or of all."""
    kind = left[0].fact.kind
    tag = animal_said(book.herd, who)
    if tag is not None:
        named = [entry for entry in left if same_tag(subject_of(entry.fact) or "", tag)]
        return Undo(who=tag, about=kind) if named else None
    if who in {"they", *_OF_US}:
        return Undo(about=kind)
    return Undo(who=subject_of(left[0].fact), about=kind) if len(left) == 1 and who in {"she", "he", "it", "that"} else None
