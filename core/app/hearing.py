"""Taking a message in: read against the herd, written down with its facts and its answer in one transaction, and never twice."""

from __future__ import annotations

import threading
from collections.abc import Iterable, Iterator
from contextlib import contextmanager
from dataclasses import replace
from datetime import datetime

from core.app.doing import done, summed_up, told_to_do
from core.app.reckoning import Reckon, here
from core.herd.state import Herd
from core.notes.journal import Note
from core.notes.kinds.query import Query
from core.notes.listen import Heard, listen
from core.notes.reading import Message
from core.notes.replay import Book, book
from core.reply import Reply
from core.store import journal
from core.store.names import Connection, Engine

#: So few new notes are taken into the warm herd one by one; for more it is worked out anew.
FEW = 20


def answer_query(query: Query, asked: Book, at: datetime) -> Reply:
    """The answer to a question, from the reports."""
    from core.reports.answers import answer  # noqa: PLC0415 - the reckoning is loaded by the first question, not by the first note

    reply: Reply = answer(query, asked, at)
    return reply


class Turn:
    """One transaction on a farm's journal, with the book as it will be once the transaction holds."""

    def __init__(self, connection: Connection, farm: int, warm: Book, reckon: Reckon = here) -> None:
        """Catch up with what other programs wrote in the meantime."""
        self.connection = connection
        self.reckon = reckon
        self.farm = farm
        self.book = caught_up(connection, farm, warm)

    def hear(self, message: Message) -> Heard:
        """Read a message and write it down, unless that was done before: then the answer is the one given then."""
        known = listen(self.book, message, self._answer)
        if not known.is_new or not told_to_do(self.book, message):
            return self._taken(known)
        each, untagged = done(self.book, message, lambda line: self._taken(listen(self.book, line, self._answer)), self.reckon)
        heard = self._taken(summed_up(listen(self.book, message, self._answer), each, untagged))
        return replace(heard, note=replace(heard.note, facts=tuple(fact for one in each for fact in one.note.facts)))

    def _taken(self, heard: Heard) -> Heard:
        """The same, written down where it is new."""
        if heard.is_new:
            journal.append(self.connection, self.farm, heard.note)
            self.book = heard.book
        return heard

    def look(self, message: Message) -> Heard:
        """What a message comes to, with nothing written down."""
        return listen(self.book, message, self._answer)

    def _answer(self, query: Query, asked: Book, at: datetime) -> Reply:
        """The answer to a question, with the photos that belong to it."""
        from core.app.photos import with_photos  # noqa: PLC0415 - photos know this class

        return with_photos(self, query, asked, self.reckon(answer_query, query, asked, at))

    def write(self, note: Note) -> None:
        """Put a note into the journal that no person typed here: one brought from another book, or from a roster."""
        journal.append(self.connection, self.farm, note)
        self.book = self.book.with_note(note)


class Hearing:
    """One farm's ear. The herd is kept warm between messages, by the journal's length."""

    def __init__(self, engine: Engine, farm: int) -> None:
        """Nothing is loaded until it is asked for."""
        self.engine = engine
        self.farm = farm
        self.reckon: Reckon = here
        self._warm = book(Herd())
        self._lock = threading.Lock()

    @contextmanager
    def turn(self) -> Iterator[Turn]:
        """A transaction in which messages can be heard. What it adds is kept warm only once it is on the disk."""
        with self._lock:
            with self.engine.begin() as connection:
                journal.take_farm(connection, self.farm)
                turn = Turn(connection, self.farm, self._warm, self.reckon)
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
