"""Taking a message in: read against the herd, written down with its facts and its answer in one transaction, and never twice."""

from __future__ import annotations

import threading
from collections.abc import Iterable, Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace

from sqlalchemy import Connection, Engine

from core.app.answering import answer
from core.notes.fact import Fact
from core.notes.journal import Note
from core.notes.listen import listen
from core.notes.reading import Message
from core.notes.replay import Book, book
from core.herd.state import Herd
from core.reply import Reply
from core.store import journal

#: So few new notes are taken into the warm herd one by one; for more it is worked out anew.
FEW = 20


@dataclass(frozen=True, slots=True)
class Heard:
    """A message as it stands in the journal. `note` is None where the same message had been heard before."""

    reply: Reply
    note: Note | None
    facts: tuple[Fact, ...] = ()


class Turn:
    """One transaction on a farm's journal, with the book as it will be once the transaction holds."""

    def __init__(self, connection: Connection, farm: int, warm: Book) -> None:
        """Catch up with what other programs wrote in the meantime."""
        self.connection = connection
        self.farm = farm
        self.book = caught_up(connection, farm, warm)

    def hear(self, message: Message) -> Heard:
        """Read a message and write it down, unless that was done before."""
        known = journal.reply_to_note(self.connection, self.farm, message.chat, message.number, message.edit)
        if known is not None:
            return Heard(known, None)
        heard = listen(self.book, message)
        reply = answer(heard, message)
        return self.write(replace(heard.note, reply=reply.text), reply)

    def write(self, note: Note, reply: Reply) -> Heard:
        """Put a note into the journal and the warm book."""
        journal.append(self.connection, self.farm, note, reply.choices)
        self.book = self.book.with_note(note)
        return Heard(reply, note, note.facts)


class Hearing:
    """One farm's ear. The herd is kept warm between messages, by the journal's length."""

    def __init__(self, engine: Engine, farm: int) -> None:
        """Nothing is loaded until it is asked for."""
        self.engine = engine
        self.farm = farm
        self._warm = book(Herd())
        self._lock = threading.Lock()

    @contextmanager
    def turn(self) -> Iterator[Turn]:
        """A transaction in which messages can be heard. What it adds is kept warm only once it is on the disk."""
        with self._lock:
            with self.engine.begin() as connection:
                journal.take_farm(connection, self.farm)
                turn = Turn(connection, self.farm, self._warm)
                yield turn
            self._warm = turn.book

    def book(self) -> Book:
        """The farm's book as it stands."""
        with self.turn() as turn:
            return turn.book

    def hear(self, message: Message) -> Heard:
        """The answer to a message, which is in the journal once this returns."""
        with self.turn() as turn:
            return turn.hear(message)

    def hear_all(self, messages: Sequence[Message]) -> tuple[Heard, ...]:
        """The answers to several messages, all of them in one transaction."""
        with self.turn() as turn:
            return tuple(turn.hear(message) for message in messages)


def caught_up(connection: Connection, farm: int, warm: Book) -> Book:
    """The book with all notes of the journal. One shorter than the warm book was put back from a copy: it is read anew."""
    last = journal.last_id(connection, farm)
    if last < warm.last_id:
        warm = book(warm.start)
    if last == warm.last_id:
        return warm
    return with_notes(warm, journal.load(connection, farm, warm.last_id))


def with_notes(known: Book, notes: Iterable[Note]) -> Book:
    """The book with later notes taken in."""
    new = tuple(notes)
    if len(new) > FEW:
        return book(known.start, (*known.notes, *new), known.line)
    for note in new:
        known = known.with_note(note)
    return known
