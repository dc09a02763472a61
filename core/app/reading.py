"""What a note would become, told without writing anything down: `haynote read`. Works from a roster alone, without a database."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime, tzinfo
from typing import Any

from core.app.telling import reading_document
from core.notes.journal import Note
from core.notes.listen import noted, printed
from core.notes.reading import Message, ReplyTo
from core.notes.replay import Book, book, zone
from core.notes.roster import herd_of
from core.problem import Problem

#: The question that a line which is no message gets.
NO_MESSAGE = 'This line is no message. Send one as {"text": "14 kindled 8"}.'


@dataclass(slots=True)
class Reader:
    """Reads messages against a farm's book, each conversation in the light of what was said in it before."""

    start: Book
    explains: bool = False  # whether each document also tells why, under `explain`
    _talks: dict[str, Book] = field(default_factory=dict)
    _counts: dict[str, int] = field(default_factory=dict)

    def timezone(self) -> tzinfo:
        """The farm's timezone."""
        return zone(self.start.herd.settings.timezone)

    def read(self, text: str, at: datetime, *, author: str = "me") -> dict[str, Any]:
        """What one message on its own becomes, as the contract prints it."""
        return self._read(self.start, Message(text, at, author))[1]

    def read_in(self, conversation: str, message: Message, edit_of: int | None = None) -> dict[str, Any]:
        """What a message of a conversation becomes; `edit_of` is the number of the message that it replaces, counted from 0."""
        count = self._counts.get(conversation, 0)
        self._counts[conversation] = count + 1
        known = self._talks.get(conversation, self.start)
        place = count if edit_of is None else edit_of
        edits = sum(note.chat == conversation and note.number == str(place) for note in known.notes)
        numbered = Message(message.text, message.at, message.author, conversation, str(place), edits, message.reply_to)
        note, document = self._read(known, numbered)
        self._talks[conversation] = known.with_note(note) if note.id > known.last_id else known
        return document

    def read_request(self, request: Any, at: datetime) -> dict[str, Any]:
        """What a line of `--jsonl` becomes; `at` is when it was sent unless it says so. One that is no message asks `what`."""
        asked = request_of(request, at)
        if asked is None:
            return {"facts": [], "ask": {"why": "what", "text": NO_MESSAGE, "choices": []}, "unread": ""}
        if asked.conversation is not None:
            return self.read_in(asked.conversation, asked.message, asked.edit_of)
        return self._read(self.start, asked.message)[1]

    def _read(self, known: Book, message: Message) -> tuple[Note, dict[str, Any]]:
        """The note that the message would be, and its document."""
        if not self.explains:
            note = noted(known, message)
            return note, reading_document(printed(note))
        from core.notes.explain import explained  # noqa: PLC0415 - only who asks for it pays for it

        note, why = explained(known, message)
        return note, reading_document(printed(note)) | {"explain": why}


@dataclass(frozen=True, slots=True)
class Request:
    """A line of `--jsonl`."""

    message: Message
    conversation: str | None = None
    edit_of: int | None = None


def request_of(said: Any, at: datetime) -> Request | None:
    """The message of a line; None where it is no message, or holds what can't be."""
    if not isinstance(said, Mapping) or not isinstance(said.get("text"), str):
        return None
    conversation, edit_of = said.get("conversation"), said.get("edit_of")
    if not (edit_of is None or (isinstance(edit_of, int) and edit_of >= 0)):
        return None
    try:
        sent = at if said.get("at") is None else moment(said["at"], at)
        reply_to = _reply_to(said.get("reply_to"))
    except (TypeError, ValueError):
        return None
    message = Message(said["text"], sent, str(said.get("from") or "me"), reply_to=reply_to)
    return Request(message, None if conversation is None else str(conversation), edit_of)


def moment(said: str, like: datetime) -> datetime:
    """The time that was said, in the other's offset where it names none. ValueError or TypeError where it is no time."""
    found = datetime.fromisoformat(said)
    return found if found.tzinfo else found.replace(tzinfo=like.tzinfo)


def _reply_to(said: Any) -> ReplyTo | None:
    """The chore that a line answers; TypeError where it names none."""
    if said is None:
        return None
    if not isinstance(said, Mapping) or not isinstance(said.get("chore"), str):
        raise TypeError(said)
    who = said.get("doe") or said.get("who")
    return ReplyTo(said["chore"], None if who is None else str(who), said.get("key"))


def what_is_wrong(error: Exception) -> str:
    """What stands in the way of a roster, in words."""
    if isinstance(error, KeyError):
        return f"{error} is missing"
    return str(error) if isinstance(error, ValueError) else f"it has not the right form ({error})"


def reader_of(roster: Any) -> Reader | Problem:
    """A reader for the farm that a roster describes; or what is wrong with the roster."""
    try:
        return Reader(book(herd_of(roster)))
    except (AttributeError, KeyError, TypeError, ValueError) as error:
        text = f"The roster can't be read: {what_is_wrong(error)}."
        return Problem("bad_roster", text, remedy="It is one JSON object with farm, animals, breedings and litters; only tags are needed.")
