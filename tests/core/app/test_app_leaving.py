"""A farm that goes for good, and the others that stay."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from core.app import Message, Sent
from core.app.book import App
from core.app.leaving import WAITING, Leave, done_about_leaving, wanted_leaving
from core.app.photos import lay_down
from core.problem import Problem
from core.reply import Reply
from core.store import people, photos
from core.store.people import Member
from core.store.photos import Photo
from tests.core.app.conftest import AT, opened


def test_a_farm_goes_whole_and_the_other_stays(place: Path) -> None:
    """No row of it is left in any table; the other's rows are as they were, and a photo that both show."""
    folder = Path(f"{place}.photos")
    north, south = (opened(place, name, create=True) for name in ("north", "south"))
    for name, app in (("north", north), ("south", south)):
        for number, text in enumerate(("new doe 14 mini rex", "14 weighed 4-2", "undo")):
            app.hear(Message(text, AT, "ann", "c", str(number)))
        with app._engine.begin() as connection:
            people.add_member(connection, app._farm, Member("chat:ann", "ann", "owner"), AT)
            for sent in (Sent(b"both", "jpg"), Sent(name.encode(), "jpg")):
                lay_down(folder, sent.file, sent.content)
                photos.keep(connection, app._farm, Photo("c", sent.file, sent.file, AT, "ann", None, "14"))
        app.setup_code(AT)
    before = south.archive(folder)
    north.want_to_go(AT)
    assert north.delete(AT + WAITING, 3, folder) is None
    assert {file.read_bytes() for file in folder.iterdir()} == {b"both", b"south"}
    assert south.archive(folder) == before
    assert south.check() == ()
    with closing(sqlite3.connect(place)) as book:
        tables = [row[0] for row in book.execute("SELECT name FROM sqlite_master WHERE type = 'table'")]
        owned = [table for table in tables if "farm_id" in {row[1] for row in book.execute(f"PRAGMA table_info({table})")}]
        farms = {row[0] for table in owned for row in book.execute(f"SELECT farm_id FROM {table}")}  # noqa: S608 - names of our own
        assert farms == {south._farm}
        assert book.execute("SELECT name FROM farms").fetchall() == [("south",)]
    for app in (north, south):
        app.close()


def test_it_takes_its_time(place: Path, tmp_path: Path) -> None:
    """Not unasked, not before the day, not after it was taken back, not with a note that the archive lacks."""
    app = opened(place)
    app.hear(Message("new doe 14 mini rex", AT, "ann", "c", "1"))
    refused = [app.delete(AT + WAITING, 1, tmp_path)]
    assert app.want_to_go(AT) == AT + WAITING
    assert app.want_to_go(AT + timedelta(days=1)) == app.goes_at() == AT + WAITING
    refused.append(app.delete(AT + WAITING - timedelta(seconds=1), 1, tmp_path))
    refused.append(app.delete(AT + WAITING, 0, tmp_path))
    assert app.stay()
    assert not app.stay()
    assert app.goes_at() is None
    refused.append(app.delete(AT + WAITING, 1, tmp_path))
    assert [problem.code for problem in refused if isinstance(problem, Problem)] == ["too_early"] * 4
    assert len(app.herd(AT).document["animals"]) == 1
    app.close()


@pytest.mark.parametrize(
    ("said", "wish"),
    [
        ("delete my farm", "ask"),
        ("Please delete the whole farm.", "ask"),
        ("delete everything!", "ask"),
        ("yes, delete my farm", "go"),
        ("keep the farm", "stay"),
        ("delete", None),
        ("delete the last", None),
        ("delete everything on 14", None),
        ("keep 14", None),
        ("delete the farm visit on friday", None),
    ],
)
def test_the_words_for_it_are_the_whole_message(said: str, wish: str | None) -> None:
    """Others stay notes, and take-backs of notes."""
    assert wanted_leaving(said) == wish


def wished(app: App, what: str, at: datetime) -> Reply:
    """What a chat answers an owner."""
    with app._engine.begin() as connection:
        return done_about_leaving(connection, app._farm, Leave(what, at, UTC))


def test_a_chat_asks_for_it_and_the_command_does_it(app: App, tmp_path: Path) -> None:
    """Asking marks nothing; confirming does, once; after the waiting time the chat tells who deletes it, and the command may."""
    asked = wished(app, "ask", AT)
    assert (app.goes_at(), asked.attached) == (None, ())
    assert [wanted_leaving(choice.says) for choice in asked.choices] == ["go", "stay"]
    marked = wished(app, "go", AT)
    assert app.goes_at() == AT + WAITING
    assert "from Wednesday, 11 March 2026, 13:15 on" in marked.text
    assert wished(app, "go", AT + timedelta(days=1)) == wished(app, "ask", AT + timedelta(days=2)) == marked
    over = wished(app, "ask", AT + WAITING)
    assert "while this bot runs nothing is deleted" in over.text
    assert [file.about for file in (*marked.attached, *over.attached)] == ["archive", "archive"]
    assert app.delete(AT + WAITING, 0, tmp_path) is None


def test_a_chat_takes_it_back_as_the_command_does(app: App) -> None:
    """Whichever of them asked for it."""
    assert wished(app, "stay", AT).lines == ("Nobody asked for the farm to be deleted: it stays.",)
    app.want_to_go(AT)
    assert wished(app, "stay", AT).lines == ("The farm stays.",)
    assert not app.stay()
