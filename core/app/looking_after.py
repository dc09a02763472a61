"""Looking after the book: is it sound, what is in it, and a copy of it in a safe place."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import Any

from core.herd.state import Herd
from core.notes.journal import Note
from core.notes.replay import book
from core.problem import Problem
from core.store import checking, copying, intake, journal, outgoing, people, photos
from core.store.names import URL, Connection, Engine

#: A check that found nothing wrong has nothing to say.
ADVICE = "Copy the file before anything else. Then restore the last backup into a new book, or export what can still be read."


def soundness(connection: Connection, farm: int) -> tuple[Problem, ...]:
    """What is wrong with the farm's book; empty where it is sound. The journal is replayed only where it could be read."""
    found = checking.troubles(connection, farm)
    if not found:
        found = _unplayable(journal.load(connection, farm))
    return tuple(Problem("unsound", text, remedy=ADVICE) for text in found)


def _unplayable(notes: tuple[Note, ...]) -> tuple[str, ...]:
    """Whether the notes still add up to a herd, the same each time."""
    try:
        once, again = book(Herd(), notes), _one_by_one(notes)
    except Exception as error:  # noqa: BLE001 - whatever a broken journal does to the replay is what the check is for
        return (f"The notes can't be replayed: {type(error).__name__}: {error}.",)
    return () if once.herd == again else ("The notes add up to another herd when they are taken one by one.",)


def _one_by_one(notes: tuple[Note, ...]) -> Herd:
    """The herd as it grew, note by note."""
    growing = book(Herd())
    for note in notes:
        growing = growing.with_note(note)
    return growing.herd


def backup(engine: Engine, path: Path, photos_to: Path | None = None) -> Problem | None:
    """A copy of the whole book, found whole before it is put in place; None, or why there is none.

    photos_to   the folder for the photos; without one it lies beside the copy, as beside any book
    """
    if engine.dialect.name != "sqlite":
        return Problem(
            "no_backup", "A PostgreSQL book is backed up by PostgreSQL itself.", remedy="Use pg_dump, or 'haynote export --journal'."
        )
    try:
        path.parent.mkdir(parents=True, exist_ok=True)
        copying.copy_book(engine, path)
        _photos_too(engine, photos_to or path.with_name(f"{path.name}.photos"))
    except (OSError, copying.BadCopyError) as error:
        return Problem(
            "no_backup",
            f"The copy could not be made: {getattr(error, 'strerror', None) or error}.",
            remedy="Give a place that you can write to, with room enough.",
        )
    return None


def _photos_too(engine: Engine, target: Path) -> None:
    """The photos of all farms, into that folder. OSError where they can't be written."""
    from core.app.photos import carried, folder_of  # noqa: PLC0415 - photos take notes, which nobody needs here

    source = folder_of(engine.url)
    if source is not None and source.is_dir():
        with engine.begin() as connection:
            carried(source, target, photos.files(connection))


def place(url: URL) -> str:
    """Where the book lies: a file's whole path, or the database's address without its password."""
    return str(Path(url.database or "").absolute()) if url.get_backend_name() == "sqlite" else url.render_as_string(hide_password=True)


def status(connection: Connection, farm: int, name: str) -> dict[str, Any]:
    """The book in numbers."""
    notes = journal.load(connection, farm)
    last: datetime | None = max((note.at for note in notes), default=None)
    return {
        "farm": name,
        "database": connection.dialect.name,
        "book": place(connection.engine.url),
        "notes": len(notes),
        "photos": photos.counted(connection, farm),
        "last_note": None if last is None else last.isoformat(),
        "members": [{"name": member.name, "role": member.role} for member in people.members_of(connection, farm)],
        "chats": len(people.active_chats(connection, farm)),
        "inbox": intake.waiting(connection, farm),
        "outbox": outgoing.waiting(connection, farm),
        "last_copy": last_copy(connection.engine.url),
    }


def last_copy(url: URL) -> str | None:
    """The day of the newest copy that the server made by itself; None where there is none."""
    from core.app.daily_copies import days_of  # noqa: PLC0415 - copies are made by this module

    days = days_of(url)
    return days[-1].isoformat() if days else None
