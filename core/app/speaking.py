"""Spoken notes: what was heard is saved at once where it is sure, else shown with what it would become, to save, put right or discard.

A button carries all that it needs, so nothing is in between while a person thinks. Sound itself is the shells' business.
"""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass, replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from core.app.letters import Letter, answer_of, letter_of, put
from core.app.photos import folder_of, lay_down
from core.app.room import Room
from core.app.telling import Told, reading_document
from core.notes.journal import Note
from core.notes.listen import Heard, printed
from core.notes.reading import Ask, Message
from core.notes.spoken import MISHEARD, Ears, Judged, Primer, becomes, judged, primer
from core.reply import Choice, Reply
from core.store import buttons, intake, people

if TYPE_CHECKING:
    from core.app.hearing import Turn
    from core.notes.replay import Book
    from core.store.intake import Update

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
    others = tuple(waits.choice(_label(text), "save", text) for text in found.others)
    rest = (*others, waits.choice("Fix", "fix"), waits.choice("Discard", "discard"))
    asks = found.note.ask is not None
    if not found.tells and not asks:
        return Reply((heard_line(found.text), NO_NOTE))
    if not found.tells:
        return Reply((heard_line(found.text), f"{NO_NOTE} Did you mean:" if others else NO_NOTE), rest)
    saves = () if asks and others else (waits.choice("Save", "save"),)
    return Reply((heard_line(found.text), *_would_be(book, found)), (*saves, *rest))


def _would_be(book: Book, found: Judged) -> tuple[str, ...]:
    """What it would put on the book, what would be asked, and that something else may have been meant."""
    facts, ask = becomes(book, found.note), found.note.ask
    lines = ("Not noted yet. It would be:", *facts) if facts else ("Not noted yet.",)
    if ask is None:
        return (*lines, "Or did you mean:") if found.others else lines
    if found.others:
        return (*lines, f"{ask.text.partition('. ')[0].rstrip('.')}. Did you mean:")
    return (*lines, f"I would ask: {ask.text}")


def _label(text: str) -> str:
    return text if len(text) <= LABEL else text[: LABEL - 1] + "…"


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

    def voice_folder(self, spare: Path) -> Path:
        """Where recordings lie while their notes wait: beside the book; of a book that is in no file in the spare place."""
        return folder_of(self._engine.url, "voices") or spare

    def keep_voice(self, folder: Path, content: bytes) -> Path:
        """The recording laid into the folder, under what it holds."""
        file = f"{hashlib.sha256(content).hexdigest()}.sound"
        lay_down(folder, file, content)
        return folder / file

    def hear_spoken(self, ears: Ears, message: Message) -> Reply:
        """What was heard, noted where it is sure or only asks; else shown, with what can be done with it."""
        with self._hearing.turn() as turn:
            found = _taken(turn, ears, message, "")
            return found if isinstance(found, Reply) else found.reply

    def spoken_update(self, update: Update, ears: Ears, message: Message, now: datetime, file: str) -> bool:
        """The same for a message kept in the inbox, all or nothing. Whether the recording in that file is still needed."""
        with self._hearing.turn() as turn:
            found = _taken(turn, ears, message, file)
            key, waits = f"update:{update.bot_id}:{update.update_id}", isinstance(found, Reply) and bool(found.choices)
            self._answer(turn, _letter(key, message, found), now)
            intake.mark(turn.connection, self._farm, update.id, "done")
        return waits

    def answer_spoken(self, waits: Spoken, message: Message) -> Reply:
        """What comes of a button under a spoken note; the message says who pressed it, where and when."""
        with self._hearing.turn() as turn:
            found = _pressed(turn, waits, message)
            return found if isinstance(found, Reply) else found.reply

    def spoken_pressed(self, update: Update, waits: Spoken, message: Message, button: str) -> None:
        """The same for a press kept in the inbox: answer, spend the button, and be done with it, all or nothing."""
        with self._hearing.turn() as turn:
            found = _pressed(turn, waits, message)
            self._answer(turn, _letter(f"spoken:{message.chat}:{waits.number}", replace(message, number=waits.number), found), message.at)
            buttons.spend(turn.connection, self._farm, button, message.at)
            intake.mark(turn.connection, self._farm, update.id, "done")

    def _answer(self, turn: Turn, letter: Letter, now: datetime) -> None:
        people.know_chat(turn.connection, self._farm, letter.chat)
        put(turn.connection, self._farm, letter, now)


def _taken(turn: Turn, ears: Ears, message: Message, file: str) -> Heard | Reply:
    """The note recorded where it is sure or only asks; what is shown otherwise."""
    found = judged(turn.book, ears, message)
    if not (found.sure or found.only_asks):
        return shown(turn.book, found, Spoken(found.text, message.at, message.number, file))
    heard = turn.hear(replace(message, text=found.text))
    return replace(heard, reply=replace(heard.reply, lines=(heard_line(found.text), *heard.reply.lines)))


def _pressed(turn: Turn, waits: Spoken, message: Message) -> Heard | Reply:
    """The note recorded as it was sent; let go; or what was heard kept, and the right words asked for."""
    if waits.do == "save":
        return turn.hear(waits.message(message.author, message.chat))
    if waits.do == "fix":
        ask = Ask("what", TYPE_IT.format(text=waits.text), ())
        number = f"{MISHEARD}{waits.number}"
        turn.write(Note(turn.book.last_id + 1, waits.text, message.at, message.author, message.chat, number, ask=ask, reply=ask.text))
        return Reply((ask.text,))
    return Reply((DISCARDED,))


def _letter(key: str, message: Message, found: Heard | Reply) -> Letter:
    if isinstance(found, Reply):
        return letter_of(key, message.chat, found, message.number)
    return answer_of(key, message.chat, found, message.number)
