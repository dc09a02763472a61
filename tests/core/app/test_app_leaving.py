"""A farm that goes for good, and the others that stay."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import timedelta
from pathlib import Path

from core.app import Message, Sent
from core.app.leaving import WAITING
from core.app.photos import lay_down
from core.problem import Problem
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
