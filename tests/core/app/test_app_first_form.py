"""A book that the first form of the program wrote, with all that was under way in it, opened by today's.

`first_form.sql` is the dump of such a book: seven notes and a question said at the terminal to the last version that wrote form 0001,
an owner let in, a message that waits to be read and two that wait to be sent.
"""

from __future__ import annotations

import shutil
import sqlite3
from collections.abc import Iterator
from contextlib import closing
from datetime import UTC, datetime
from pathlib import Path

import pytest

from core.app import App, House, Message, open_book, open_house
from core.herd.settings import reminder_time
from core.store.migrate import HEAD

AT = datetime(2026, 11, 28, 15, 0, tzinfo=UTC)
DUMP = Path(__file__).with_name("first_form.sql")


def form_of(book: Path) -> str:
    """The form that is written in the file."""
    with closing(sqlite3.connect(book)) as connection:
        return str(connection.execute("select version_num from alembic_version").fetchone()[0])


@pytest.fixture
def book(tmp_path: Path) -> Path:
    """The file as it was."""
    file = tmp_path / "book.sqlite"
    with closing(sqlite3.connect(file)) as connection:
        connection.executescript(DUMP.read_text())
    assert form_of(file) == "0001"
    return file


@pytest.fixture
def app(book: Path) -> Iterator[App]:
    """The same, opened."""
    app = open_book(str(book))
    assert isinstance(app, App), app
    yield app
    app.close()


def test_every_note_is_still_there_and_means_the_same(app: App, book: Path) -> None:
    """The check replays the journal and compares; what was recorded can be asked for."""
    assert form_of(book) == HEAD
    assert app.check() == ()
    assert app.status()["notes"] == 8
    herd = app._hearing.book().herd
    assert (herd.animals["14"].breed, herd.animals["14"].color) == ("Mini Rex", "castor")
    assert [(litter.born, litter.alive, litter.dead) for litter in herd.litters.values()] == [(8, 6, 2)]
    assert reminder_time(herd.settings) == "08:00"
    assert "14" in app.card("14", AT).reply.text


def test_what_was_under_way_goes_on(app: App) -> None:
    """The message that waited is read, both letters go out, the button under one still says its words, and Ann is the owner."""
    waiting = app.next_update("w", AT)
    assert waiting is not None
    assert (waiting.update_id, waiting.raw) == (2, '{"a":2}')
    letters = [app.claim_outgoing("w", AT)]
    assert letters[0] is not None
    app.mark_sent(letters[0], "5")
    letters.append(app.claim_outgoing("w", AT))
    assert letters[1] is not None
    assert letters[1].payload["lines"] == ["Which doe?"]
    key = letters[1].payload["choices"][0]["key"]
    assert app.press(key, "1001", "telegram:1001", AT).says == "14 weighed 8-2"
    assert [(member.name, member.role) for member in app.members()] == [("Ann", "owner")]


def test_new_notes_join_the_old(app: App) -> None:
    """With the next number, and an undo reaches back to one of before."""
    assert app.say(Message("14 weighed 4 lb 6 oz", AT, "ann", "c", "1")).reply.text.startswith("Doe 14: 4 lb 6 oz.")
    assert app.status()["notes"] == 9
    assert app.check() == ()


def test_the_clock_looks_at_it_at_once(book: Path) -> None:
    """Reminders are not lost: a farm of the first form is looked at the first time that the clock strikes."""
    house = open_house(str(book))
    assert isinstance(house, House)
    with closing(house):
        assert house.status(AT)["to_look_at"] == 1


def test_the_copy_from_before_the_update_leads_back(book: Path, tmp_path: Path) -> None:
    """A copy that was put aside is left in its own form, and can be taken into a new book."""
    before = tmp_path / "before.sqlite"
    shutil.copy(book, before)
    again = open_book(str(tmp_path / "again.sqlite"))
    assert isinstance(again, App)
    with closing(again):
        assert again.restore_file(before, tmp_path / "photos") == 8
        assert again.check() == ()
    assert form_of(before) == "0001"
