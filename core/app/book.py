"""A farm's book, opened: everything that a shell can ask of it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import AbstractContextManager
from datetime import datetime, tzinfo
from pathlib import Path
from typing import TYPE_CHECKING, Any, Final

from core.app import carrying, looking_after, replaying, telling
from core.app.archiving import Archiving
from core.app.bringing import Bringing
from core.app.leaving import Leaving
from core.app.members import People
from core.app.moving_in import MovingIn
from core.app.moving_out import MovingOut
from core.app.post import Post
from core.app.reading import Reader
from core.app.speaking import Speaking
from core.app.telling import Told
from core.app.ticking import look, put_due
from core.notes.as_notes import export_notes
from core.notes.reading import Message
from core.notes.replay import Book, local_day, zone
from core.problem import Problem
from core.reply import Reply

if TYPE_CHECKING:
    from core.app.papers import ChoreCalendar, Paper, Wanted
    from core.app.pictures import Picture


def _silent(_done: int, _all: int) -> None:
    """Progress that nobody watches."""


class App(Speaking, Post, People, Archiving, MovingOut, MovingIn, Bringing, Leaving):
    """One farm. Each call is a transaction of its own; times are aware. What can't be done is handed back as a `Problem`."""

    def close(self) -> None:
        """Let go of the database."""
        self._engine.dispose()

    #: Nobody works on the messages of one farm beside its server.
    has_workers: Final = False

    def release_gone(self) -> tuple[str, ...]:
        """Nobody, then, who could be gone."""
        return ()

    def of(self, _farm: int) -> App:
        """The farm of that number, where there is only this one."""
        return self

    # notes

    def hear(self, message: Message) -> Reply:
        """The answer to a message, which is in the journal once this returns."""
        return self._hearing.hear(message).reply

    def say(self, message: Message) -> Told:
        """The same, with the facts, the question and the new chores as an object."""
        with self._hearing.turn() as turn:
            before = turn.book.herd
            return telling.said(turn.hear(message), before)

    def replay(self, text: str, *, roster: Any = None, author: str = "me", progress: replaying.Progress = _silent) -> Told | Problem:
        """A file of dated notes taken in; the roster first, into an empty book."""
        problem = None if roster is None else replaying.take_roster(self._hearing, roster, text, author)
        return problem or replaying.replayed(self._hearing, text, author, progress)

    def reader(self, now: datetime) -> Reader:
        """Reads notes against this book without writing them down."""
        return Reader(self._as_of(now))

    def wish(self, name: str) -> str:
        """What holds of a setting that every farm has: `timezone`, `weight_units`, `temperature_units`, `date_order`."""
        return str(getattr(self._hearing.book().herd.settings, name))

    # questions

    @property
    def has_animals(self) -> bool:
        """Whether any animal is on the book, living or gone."""
        return bool(self._hearing.book().herd.animals)

    def due(self, now: datetime, days: int | None = None) -> Told:
        """The chores of the coming days, overdue ones first."""
        told = self._as_of(now)
        return telling.due(told.herd, local_day(now, told.herd), days)

    def digest(self, now: datetime) -> Told:
        """The digest of the week that holds now."""
        told = self._as_of(now)
        return telling.digest(told.herd, local_day(now, told.herd))

    def keep(self, now: datetime) -> Told:
        """Who to keep, sell or cull, with the evidence."""
        told = self._as_of(now)
        return telling.keep(told.herd, local_day(now, told.herd))

    def herd(self, now: datetime) -> Told:
        """Every living animal."""
        told = self._as_of(now)
        return telling.herd(told.herd, local_day(now, told.herd))

    def card(self, tag: str, now: datetime) -> Told | Problem:
        """One animal, living or gone."""
        return telling.card(self._as_of(now), tag, now)

    def newest(self) -> datetime | None:
        """When the last note was sent; None for an empty book."""
        return max((note.at for note in self._hearing.book().notes), default=None)

    def timezone(self) -> tzinfo:
        """The farm's timezone."""
        return zone(self._hearing.book().herd.settings.timezone)

    def _as_of(self, now: datetime) -> Book:
        return telling.as_of(self._hearing.book(), now)

    # pictures and papers

    def picture(self, about: str, key: str | None, now: datetime) -> Picture | Problem:
        """What a picture shows; a Problem where there is nothing to show."""
        from core.app import pictures  # noqa: PLC0415 - loaded when somebody wants a picture

        return self.reckon(pictures.picture, self._as_of(now), about, key, now)

    def calendar(self, now: datetime, asked: Wanted | None = None) -> ChoreCalendar:
        """The chores that `due` tells, of all or of one animal, as entries of a calendar."""
        from core.app import papers  # noqa: PLC0415 - loaded when somebody wants a paper

        return papers.calendar(self._as_of(now), self.name, now, asked or papers.Wanted())

    def paper(self, about: str, asked: Wanted, now: datetime) -> Paper | Problem:
        """What stands on a paper: one of `core.app.papers.PAPERS`."""
        from core.app import papers  # noqa: PLC0415

        return self.reckon(papers.paper, self._as_of(now), self.name, about, asked, now)

    # what goes out by itself

    def tick(self, now: datetime) -> int:
        """Put the reminders and the digest that are due into the outbox, each once. How many messages that made."""
        with self._hearing.turn() as turn:
            return put_due(turn.connection, self._farm, turn.book.herd, now, self.reckon)

    def look(self, now: datetime) -> bool:
        """The same for one farm of many, if it is time to look at it: where not, nothing is reckoned, and this is False."""
        with self._hearing.turn() as turn:
            return look(turn.connection, self._farm, turn.book.herd, now, self.reckon)

    # in and out

    def export_notes(self) -> Iterator[str]:
        """What stands, as dated notes that give the same book when they are replayed."""
        return export_notes(self._hearing.book())

    def export_journal(self) -> Iterator[str]:
        """Everything as typed, as JSON lines that `restore` takes."""
        return carrying.journal_lines(self.name, self._hearing.book().notes)

    def restore(self, lines: Iterable[str]) -> int | Problem:
        """A journal taken into an empty book, all of it or nothing. How many notes it had."""
        notes = carrying.notes_of(lines)
        if isinstance(notes, Problem):
            return notes
        with self._hearing.turn() as turn:
            if turn.book.notes:
                return Problem("not_empty", "This book has notes already.", remedy="Restore into a new one: --book FILE.")
            for note in notes:
                turn.write(note)
        return len(notes)

    def restore_file(self, path: Path, spare: Path | None = None) -> int | Problem:
        """The same from a file: a journal, or a backup of a whole book, with the photos beside it. `spare`: where photos lie of a book in no file."""
        from core.app.daily_copies import PHOTOS  # noqa: PLC0415 - few restore
        from core.app.opening import held_in  # noqa: PLC0415 - opening knows this class

        held = held_in(path, self.name)
        if isinstance(held, Problem):
            return held
        lines, rows = held
        done = self.restore(lines)
        if not isinstance(done, Problem) and rows:
            beside = Path(f"{path}.photos")  # of a backup; a day's copy has the other
            self.take_photos(rows, (beside, path.with_name(PHOTOS)), self.photo_folder(spare or beside))
        return done

    # looking after

    def backup(self, path: Path) -> Problem | None:
        """A copy of the whole book at `path`; None once it is there and found whole."""
        return looking_after.backup(self._engine, path)

    def copy_of_the_day(self, now: datetime) -> Problem | None:
        """Today's copy beside the book, made by the first call of the day; None where it is there, or why it is not."""
        from core.app import daily_copies  # noqa: PLC0415 - only a server makes them

        return daily_copies.copy_of_the_day(self._engine, now.astimezone(self.timezone()).date())

    def check(self) -> tuple[Problem, ...]:
        """What is wrong with the book; empty where it is sound."""
        with self._engine.connect() as connection:  # without a commit: a damaged file refuses one
            found = looking_after.soundness(connection, self._farm)
        return found or self.harmed_photos()

    @property
    def place(self) -> str:
        """Where this farm's book is, to tell it from others: the book's address without its password, and the farm's name."""
        return f"{looking_after.place(self._engine.url)} {self.name}"

    def serving(self, bot: str) -> AbstractContextManager[bool]:
        """Hold this farm and the bot for one server, wherever it runs; False while another holds either."""
        from core.store.serving import serving  # noqa: PLC0415 - only a server asks

        return serving(self._engine, self._farm, bot)

    def status(self) -> dict[str, Any]:
        """The book in numbers."""
        with self._engine.begin() as connection:
            return looking_after.status(connection, self._farm, self.name)
