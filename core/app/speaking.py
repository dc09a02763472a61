"""Spoken notes: what was heard is saved at once where it is sure, else shown with what it would become, to save, put right or discard.

A button carries all that it needs, so nothing is in between while a person thinks. Sound itself is the shells' business.
"""

from __future__ import annotations

import json
from dataclasses import dataclass, replace
from datetime import datetime
from typing import TYPE_CHECKING, Any, Final

from core.app.room import Room
from core.app.telling import Told, reading_document
from core.notes.listen import printed
from core.notes.reading import Message
from core.notes.spoken import Ears, Judged, Primer, becomes, judged, primer
from core.reply import Choice, Reply

if TYPE_CHECKING:
    from core.notes.replay import Book

#: What the words of such a button begin with: nobody types that.
BUTTON: Final = "note heard:"
NO_NOTE: Final = "I heard no note."
DISCARDED: Final = "Discarded. Nothing of it is on the book."
TYPE_IT: Final = "Then please type it as it should be. I heard: “{text}”"
LABEL: Final = 60  # not a figure: letters of a button


@dataclass(frozen=True, slots=True)
class Spoken:
    """A spoken note that waits: its words, when and in which message it was sent, and its sound's file.

    do  what is to be done: save, fix, discard
    """

    text: str
    at: datetime
    number: str
    file: str = ""
    do: str = "save"

    def choice(self, label: str, do: str, text: str | None = None) -> Choice:
        """A button: it does that with the note, or with these words in its place."""
        said = [do, self.text if text is None else text, self.at.isoformat(), self.number, self.file]
        return Choice(label, BUTTON + json.dumps(said, ensure_ascii=False))

    def message(self, author: str, chat: str) -> Message:
        """The note as a message, sent when it was spoken."""
        return Message(self.text, self.at, author, chat, self.number)


def spoken(says: str) -> Spoken | None:
    """The spoken note that a pressed button is about; None where it is about something else."""
    if not says.startswith(BUTTON):
        return None
    do, text, at, number, file = json.loads(says.removeprefix(BUTTON))
    return Spoken(text, datetime.fromisoformat(at), number, file, do)


def heard_line(text: str) -> str:
    """What was heard, as every answer to it begins."""
    return f"Heard: “{text}”"


def shown(book: Book, found: Judged, waits: Spoken) -> Reply:
    """What was heard, what it would become, and what can be done with it. Nothing is recorded."""
    if not found.text:
        return Reply((NO_NOTE,))
    if not found.tells:
        typed = (waits.choice("Fix", "fix"), waits.choice("Discard", "discard")) if found.note.ask else ()
        return Reply((heard_line(found.text), NO_NOTE), typed)
    asks = found.note.ask is not None
    others = tuple(waits.choice(_label(text), "save", text) for text in found.others)
    choices = (waits.choice("Save", "save"), *others, waits.choice("Fix", "fix"), waits.choice("Discard", "discard"))
    if asks and found.others:
        choices = (*others, waits.choice("Fix", "fix"), waits.choice("Discard", "discard"))
    return Reply((heard_line(found.text), *_would_be(book, found)), choices)


def _would_be(book: Book, found: Judged) -> tuple[str, ...]:
    lines = becomes(book, found.note)
    if found.others:
        lines = (*lines, "Did you mean one of these?" if found.note.ask else "Or did you mean:")
    return ("Not noted yet. It would be:", *lines)


def _label(text: str) -> str:
    return text if len(text) <= LABEL else text[: LABEL - 1] + "…"


def answered(waits: Spoken) -> Reply | None:
    """What is answered to a button that records nothing; None for the one that saves."""
    if waits.do == "save":
        return None
    return Reply((DISCARDED,)) if waits.do == "discard" else Reply((TYPE_IT.format(text=waits.text),))


def document(found: Judged, ears: Ears, seconds: float) -> dict[str, Any]:
    """What was heard, and what it would become, as `hear --json` prints it."""
    read = reading_document(printed(found.note)) if found.tells else {"facts": [], "ask": None, "unread": ears.first}
    return {
        "heard": ears.first,
        "second": ears.second,
        "agree": found.agree,
        "sure": found.sure,
        **read,
        "others": list(found.others),
        "seconds": seconds,
    }


def told(book: Book, ears: Ears, message: Message, seconds: float) -> Told:
    """What a recording would become, with nothing written down."""
    found = judged(book, ears, message)
    reply = shown(book, found, Spoken(found.text, message.at, message.number))
    sure = ("Both ears agree: sent to the chat, it is noted at once.",) if found.sure else ()
    return Told(document(found, ears, seconds), replace(reply, lines=(*reply.lines, *sure), choices=()))


def primer_of(book: Book) -> Primer:
    """What an ear is told of a farm before it listens."""
    return primer(book.herd)


class Speaking(Room):
    """Spoken notes of a farm."""

    def primer(self) -> Primer:
        """What an ear is told of this farm before it listens."""
        return primer_of(self._hearing.book())

    def hear_spoken(self, ears: Ears, message: Message, file: str = "") -> Reply:
        """What was heard, noted where it is sure or only asks; else shown, with what can be done with it."""
        with self._hearing.turn() as turn:
            found = judged(turn.book, ears, message)
            if not (found.sure or found.only_asks):
                return shown(turn.book, found, Spoken(found.text, message.at, message.number, file))
            reply = turn.hear(replace(message, text=found.text)).reply
        return replace(reply, lines=(heard_line(found.text), *reply.lines))
