"""Copies of the book are whole, and a check finds what was done to it by other hands."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import UTC, date, datetime
from pathlib import Path

import pytest
from sqlalchemy import Connection, Engine, text

from core.notes.journal import Note, Target
from core.notes.kinds.mating import Bred
from core.store import checking, copying, journal
from core.store.engine import engine
from core.store.people import add_farm

AT = datetime(2026, 3, 4, 7, 15, tzinfo=UTC)


def filled(connection: Connection) -> None:
    """Three notes with two facts each; the third takes the first back."""
    add_farm(connection, "home")
    fact = Bred(doe="14", buck="3", on=date(2026, 3, 4))
    for number in (1, 2, 3):
        journal.append(connection, 1, Note(number, "x", AT, "ann", facts=(fact, fact), reverses=(Target(1),) if number == 3 else ()))


@pytest.fixture
def kept(opened: Engine) -> Engine:
    """A book with notes, on each engine."""
    with opened.begin() as connection:
        filled(connection)
    return opened


def harmed(made: Engine, *statements: str) -> tuple[str, ...]:
    """What the check finds after a person with a database tool did this, foreign keys or not."""
    free = engine(made.url.render_as_string(hide_password=False), foreign_keys=False)
    try:
        with free.begin() as connection:
            if connection.dialect.name == "postgresql":
                connection.execute(text("set session_replication_role = replica"))
            for statement in statements:
                connection.execute(text(statement))
        with made.begin() as connection:
            return checking.troubles(connection, 1)
    finally:
        free.dispose()


def test_a_sound_book_has_no_troubles(kept: Engine) -> None:
    """Nothing is found where nothing is wrong."""
    assert harmed(kept) == ()


@pytest.mark.parametrize(
    ("statements", "finding"),
    [
        (["delete from fact_bred where note_id = 2 and fact_index = 0"], "Fact 0 of note 2 (bred) has lost what it says."),
        (["update facts set kind = 'moved' where note_id = 2"], "Table fact_bred holds fact 0 of note 2, which is not listed."),
        (["update facts set kind = 'flown' where note_id = 2"], "There are facts of the kind flown, which this program doesn't know."),
        (["delete from notes where id = 2"], "2 notes are there, but they are numbered 1 to 3: some are missing."),
        (["delete from notes where id = 2"], "Fact 1 of note 2 has no note."),
        (
            ["delete from fact_bred where note_id = 2", "delete from facts where note_id = 2 and fact_index = 0"],
            "Note 2 has lost some of its facts.",
        ),
        (["update reversals set target_note = 3"], "Note 3 takes back note 3, which came later."),
    ],
)
def test_the_check_names_what_was_done(kept: Engine, statements: list[str], finding: str) -> None:
    """Each harm is found and told by its place."""
    assert finding in harmed(kept, *statements)


def test_a_row_that_points_nowhere(tmp_path: Path, kept: Engine) -> None:
    """SQLite's own keys are looked through; PostgreSQL can't have such rows."""
    found = harmed(kept, "delete from facts where note_id = 2", "delete from reversals")
    assert ("Row" in found[0]) is (kept.dialect.name == "sqlite")
    assert found


def test_another_farms_harm_is_not_this_farms(kept: Engine) -> None:
    """The check looks at one farm."""
    with kept.begin() as connection:
        other = add_farm(connection, "other")
        journal.append(connection, other, Note(5, "x", AT, "ann"))
        assert checking.troubles(connection, 1) == ()
        assert checking.troubles(connection, other) == ("1 notes are there, but they are numbered 5 to 5: some are missing.",)


@pytest.fixture
def sqlite_book(tmp_path: Path) -> Engine:
    """A SQLite book with notes, all of it in the file itself."""
    from core.store.migrate import bring_up

    url = f"sqlite:///{tmp_path}/book.sqlite"
    bring_up(url)
    made = engine(url)
    with made.begin() as connection:
        filled(connection)
    return made


def damage(path: Path) -> None:
    """Overwrite the middle of a page that holds rows, as a bad disk would."""
    with closing(sqlite3.connect(path)) as file:
        (page,) = file.execute("select rootpage from sqlite_master where name = 'notes'").fetchone()
        (size,) = file.execute("pragma page_size").fetchone()
    with path.open("rb+") as raw:
        raw.seek((page - 1) * size)
        raw.write(b"\x7f" * size)


def test_a_copy_is_the_book(sqlite_book: Engine, tmp_path: Path) -> None:
    """It opens by itself and has the same notes; no half-made file is left beside it."""
    target = tmp_path / "copies" / "copy.sqlite"
    target.parent.mkdir()
    copying.copy_book(sqlite_book, target)
    made = engine(f"sqlite:///{target}")
    with made.begin() as connection, sqlite_book.begin() as original:
        assert journal.load(connection, 1) == journal.load(original, 1)
    made.dispose()
    assert copying.is_book(target)
    assert copying.troubles(target) == ()
    assert [path.name for path in target.parent.iterdir() if "part" in path.name] == []


def test_a_damaged_book_makes_no_copy(sqlite_book: Engine, tmp_path: Path) -> None:
    """The old copy stays as it was rather than being replaced by a broken one."""
    sqlite_book.dispose()
    damage(tmp_path / "book.sqlite")
    target = tmp_path / "copy.sqlite"
    target.write_text("the old copy")
    with pytest.raises(copying.BadCopyError):
        copying.copy_book(sqlite_book, target)
    assert target.read_text() == "the old copy"
    assert not (tmp_path / "copy.sqlite.part").exists()


def test_the_check_finds_damaged_pages(sqlite_book: Engine, tmp_path: Path) -> None:
    """Then nothing else is looked at: what such a file says can't be trusted."""
    sqlite_book.dispose()
    damage(tmp_path / "book.sqlite")
    with sqlite_book.connect() as connection:
        found = checking.troubles(connection, 1)
    assert found
    assert all(line.startswith("The file is damaged") for line in found)


def test_the_check_finds_an_index_that_lost_its_rows(sqlite_book: Engine, tmp_path: Path) -> None:
    """Such a file can be read, and would answer wrongly."""
    sqlite_book.dispose()
    path = tmp_path / "book.sqlite"
    with closing(sqlite3.connect(path)) as file:
        (page,) = file.execute("select rootpage from sqlite_master where name = 'sqlite_autoindex_notes_1'").fetchone()
        (size,) = file.execute("pragma page_size").fetchone()
    with path.open("rb+") as raw:
        raw.seek((page - 1) * size)
        raw.write(b"\x0a\x00\x00\x00\x00" + size.to_bytes(2, "big") + b"\x00")  # a leaf of an index without a cell
    with sqlite_book.connect() as connection:
        found = checking.troubles(connection, 1)
    assert found
    assert all(line.startswith("The file is damaged") for line in found)


def test_a_file_that_is_no_book(tmp_path: Path) -> None:
    """It is told from one that is, and looking through it does not fail."""
    path = tmp_path / "shopping.txt"
    path.write_text("hay, straw, pellets" * 100)
    assert not copying.is_book(path)
    assert copying.troubles(path) == ("file is not a database",)


def test_stray_rows_of_a_copy_are_told(sqlite_book: Engine, tmp_path: Path) -> None:
    """A copy whose rows belong to nothing is not whole."""
    sqlite_book.dispose()
    with closing(sqlite3.connect(tmp_path / "book.sqlite")) as file:
        file.execute("delete from facts where note_id = 2")
        file.commit()
    assert "a row of fact_bred points nowhere" in copying.troubles(tmp_path / "book.sqlite")
