"""SQLite as a careful clerk would use it: no lost updates between two writers, and settings on every connection."""

from __future__ import annotations

import threading
from datetime import UTC, datetime
from pathlib import Path

import pytest
from sqlalchemy import Connection, Engine, event, text
from sqlalchemy.exc import ArgumentError, NoSuchModuleError

from core.notes.journal import Note
from core.store import intake, journal, outgoing
from core.store.engine import engine
from core.store.migrate import bring_up
from core.store.people import add_farm

AT = datetime(2026, 3, 4, 7, 15, tzinfo=UTC)
WRITERS = 4
NOTES = 12


@pytest.mark.parametrize(("pragma", "value"), [("journal_mode", "wal"), ("synchronous", 2), ("foreign_keys", 1), ("busy_timeout", 10_000)])
def test_every_connection_is_settled(tmp_path: Path, pragma: str, value: object) -> None:
    """What SQLite forgets from connection to connection is said each time."""
    made = engine(f"sqlite:///{tmp_path}/book.sqlite")
    with made.begin() as connection:
        assert connection.execute(text(f"PRAGMA {pragma}")).scalar() == value
    made.dispose()


def test_every_transaction_begins_at_once(tmp_path: Path) -> None:
    """A reader that will write must not find its page changed: BEGIN IMMEDIATE, always."""
    made = engine(f"sqlite:///{tmp_path}/book.sqlite")
    told: list[str] = []
    event.listen(made, "before_cursor_execute", lambda _c, _k, statement, *_: told.append(statement))
    with made.begin() as connection:
        connection.execute(text("select 1"))
    assert told == ["BEGIN IMMEDIATE", "select 1"]
    made.dispose()


@pytest.mark.parametrize(("url", "error"), [("nonsense", ArgumentError), ("nosuch://x/y", NoSuchModuleError)])
def test_an_address_that_is_none(url: str, error: type[Exception]) -> None:
    """It is refused where it is given."""
    with pytest.raises(error):
        engine(url)


def write(url: str, writer: int, troubles: list[BaseException]) -> None:
    """Take notes as one of several programs on the same book."""
    made = engine(url)
    try:
        for number in range(NOTES):
            with made.begin() as connection:
                journal.take_farm(connection, 1)
                place = journal.last_id(connection, 1) + 1
                journal.append(connection, 1, Note(place, "x", AT, "ann", f"c{writer}", str(number)))
    except BaseException as error:  # noqa: BLE001 - handed to the test
        troubles.append(error)
    finally:
        made.dispose()


def test_several_writers_number_their_notes_without_a_clash(book_url: str, opened: Engine) -> None:
    """Read the last number, write the next: four at once, none lost, none twice, on both engines."""
    with opened.begin() as connection:
        add_farm(connection, "home")
    troubles: list[BaseException] = []
    threads = [threading.Thread(target=write, args=(book_url, writer, troubles)) for writer in range(WRITERS)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert troubles == []
    with opened.begin() as connection:
        kept = journal.load(connection, 1)
    assert [note.id for note in kept] == list(range(1, WRITERS * NOTES + 1))
    assert len({(note.chat, note.number) for note in kept}) == WRITERS * NOTES


def test_two_workers_never_get_the_same_message(postgres_url: str) -> None:
    """While one has claimed but not yet committed, the other is handed the next chat's, and waits for nobody."""
    made = engine(postgres_url)
    with made.begin() as connection:
        add_farm(connection, "home")
        for key, chat in (("1", "a"), ("2", "b")):
            outgoing.put(connection, 1, outgoing.Parcel(key, chat, {}, AT))
            intake.take(connection, 1, intake.Came("bot", int(key), chat, "{}"))
    with made.begin() as one, made.begin() as other:
        assert _keys(one) == ("1", 1)
        assert _keys(other) == ("2", 2)
        assert _keys(one) == (None, None)
    made.dispose()


def _keys(connection: Connection) -> tuple[str | None, int | None]:
    out = outgoing.claim(connection, 1, "w", AT)
    update = intake.next_update(connection, 1, "w", AT)
    return out and out.key, update and update.update_id


def test_two_programs_open_a_new_book_at_once(empty_url: str) -> None:
    """One makes the tables, the other waits and finds them."""
    troubles: list[BaseException] = []

    def come() -> None:
        try:
            bring_up(empty_url)
        except BaseException as error:  # noqa: BLE001 - handed to the test
            troubles.append(error)

    threads = [threading.Thread(target=come) for _ in range(2)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    assert troubles == []


def test_a_connection_that_was_cut_while_it_lay_idle_is_replaced(postgres_url: str, monkeypatch: pytest.MonkeyPatch) -> None:
    """One that is in use all the time is not tried: that would double the way to the server."""
    monkeypatch.setattr("core.store.engine.IDLE_S", 0.0)
    made, other = engine(postgres_url), engine(postgres_url)
    with made.begin() as connection:
        number = connection.execute(text("select pg_backend_pid()")).scalar_one()
    with other.begin() as connection:
        connection.execute(text("select pg_terminate_backend(:number, 5000)"), {"number": number})
    with made.begin() as connection:
        fresh = connection.execute(text("select pg_backend_pid()")).scalar_one()
    assert fresh != number
    with made.begin() as connection:  # tried, and found sound
        assert connection.execute(text("select pg_backend_pid()")).scalar_one() == fresh
    monkeypatch.setattr("core.store.engine.IDLE_S", 3600.0)
    with made.begin() as connection:
        same = connection.execute(text("select pg_backend_pid()")).scalar_one()
    with made.begin() as connection:
        assert connection.execute(text("select pg_backend_pid()")).scalar_one() == same
    made.dispose()
    other.dispose()
