"""Opening a new file while another program opens it too."""

from __future__ import annotations

import sqlite3
from pathlib import Path

import pytest

from core.store.engine import ASKED, write_ahead

WAL, BEGIN, COMMIT = "PRAGMA journal_mode=WAL", "BEGIN IMMEDIATE", "COMMIT"


class Busy:
    """A connection to a file that is refused the log so many times."""

    def __init__(self, times: int, code: int = sqlite3.SQLITE_BUSY) -> None:
        self.times = times
        self.code = code
        self.asked: list[str] = []

    def execute(self, what: str) -> None:
        self.asked.append(what)
        if what == WAL and self.asked.count(WAL) <= self.times:
            error = sqlite3.OperationalError("database is locked")
            error.sqlite_errorcode = self.code
            raise error


def test_it_waits_for_the_other_program_and_asks_again() -> None:
    """By asking for the right to write, for which SQLite does wait, and giving it back."""
    file = Busy(2)
    write_ahead(file)
    assert file.asked == [WAL, BEGIN, COMMIT, WAL, BEGIN, COMMIT, WAL]


def test_a_file_that_stays_locked_is_told() -> None:
    """It does not ask for ever."""
    file = Busy(ASKED)
    with pytest.raises(sqlite3.OperationalError):
        write_ahead(file)
    assert file.asked.count(WAL) == ASKED


def test_any_other_trouble_is_told_at_once() -> None:
    """A disk that can't be written gets no better by waiting."""
    file = Busy(1, sqlite3.SQLITE_READONLY)
    with pytest.raises(sqlite3.OperationalError):
        write_ahead(file)
    assert file.asked == [WAL]


def test_a_real_file_writes_ahead(tmp_path: Path) -> None:
    """From then on, whoever opens it."""
    made = sqlite3.connect(tmp_path / "book.sqlite", isolation_level=None)
    write_ahead(made)
    made.close()
    again = sqlite3.connect(tmp_path / "book.sqlite")
    assert again.execute("PRAGMA journal_mode").fetchone() == ("wal",)
    again.close()
