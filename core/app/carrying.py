"""The journal as JSON lines, out of one book and into another: everything as it was typed, read, answered, edited and taken back."""

from __future__ import annotations

import json
from collections.abc import Iterable, Iterator
from datetime import UTC, datetime
from typing import Any

from core.notes.fact import from_json, to_json
from core.notes.journal import Note, Target
from core.notes.kinds import KIND_OF
from core.notes.reading import ReplyTo
from core.problem import Problem
from core.store.asking import ask_from_json, ask_to_json

#: The first line of a journal file says what it is.
FORM = "haynote journal"
VERSION = 1


def journal_lines(farm: str, notes: Iterable[Note]) -> Iterator[str]:
    """The notes, one a line, after a line that says what this is."""
    yield json.dumps({"form": FORM, "version": VERSION, "farm": farm}, ensure_ascii=False)
    for note in notes:
        yield json.dumps(_note_to_json(note), ensure_ascii=False)


def _note_to_json(note: Note) -> dict[str, Any]:
    answers = note.reply_to
    return {
        "note": note.id,
        "at": note.at.astimezone(UTC).isoformat(),
        "author": note.author,
        "chat": note.chat,
        "number": note.number,
        "edit": note.edit,
        "text": note.text,
        "reply_to": None if answers is None else {"chore": answers.chore, "who": answers.who, "key": answers.key},
        "facts": [to_json(fact) for fact in note.facts],
        "reverses": [{"note": target.note, "index": target.index} for target in note.reverses],
        "ask": None if note.ask is None else ask_to_json(note.ask),
        "subject": note.subject,
        "unread": note.unread,
        "reply": note.reply,
    }


def notes_of(lines: Iterable[str]) -> tuple[Note, ...] | Problem:
    """The notes of a journal file; or which line is none."""
    told = [(number, line) for number, line in enumerate(lines, start=1) if line.strip()]
    if not told or not _is_head(told[0][1]):
        return _bad("This is no journal of Haynote: its first line does not say so.")
    notes: list[Note] = []
    for number, line in told[1:]:
        try:
            note = _note_from_json(json.loads(line))
        except (KeyError, TypeError, ValueError, AttributeError):
            return _bad(f"Line {number} of the journal can't be read.")
        if note.id != len(notes) + 1:
            return _bad(f"Line {number} of the journal is note {note.id}, where note {len(notes) + 1} should be.")
        notes.append(note)
    return tuple(notes)


def _bad(text: str) -> Problem:
    return Problem("bad_journal", text, remedy="Nothing was changed. Give a whole file that 'haynote export --journal' wrote.")


def _is_head(line: str) -> bool:
    try:
        head = json.loads(line)
    except ValueError:
        return False
    return isinstance(head, dict) and (head.get("form"), head.get("version")) == (FORM, VERSION)


def _note_from_json(said: dict[str, Any]) -> Note:
    """The note. KeyError, TypeError, ValueError or AttributeError where it was tampered with."""
    at = datetime.fromisoformat(said["at"])
    if at.tzinfo is None:
        raise ValueError(said["at"])
    return Note(
        id=said["note"],
        text=said["text"],
        at=at,
        author=said["author"],
        chat=said["chat"],
        number=said["number"],
        edit=said["edit"],
        reply_to=None if said["reply_to"] is None else ReplyTo(**said["reply_to"]),
        facts=tuple(from_json(KIND_OF[fact["kind"]].fact, fact) for fact in said["facts"]),
        reverses=tuple(Target(target["note"], target["index"]) for target in said["reverses"]),
        ask=None if said["ask"] is None else ask_from_json(said["ask"]),
        subject=said["subject"],
        unread=said["unread"],
        reply=said["reply"],
    )
