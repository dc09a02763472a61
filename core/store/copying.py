"""A copy of the whole book, taken while it is in use, and looked through before anybody relies on it."""

from __future__ import annotations

import os
import sqlite3
from contextlib import closing
from pathlib import Path
from typing import Any, cast

from sqlalchemy import Engine

#: How every SQLite file begins.
MAGIC = b"SQLite format 3\x00"


class BadCopyError(Exception):
    """The copy is not whole; nothing was left behind."""


def copy_book(engine: Engine, path: Path) -> None:
    """A copy of a SQLite book at `path`, put in place only once it is found whole. Raises BadCopyError or OSError."""
    part = path.with_name(path.name + ".part")
    part.unlink(missing_ok=True)
    try:
        _copy(engine, part)
        found = troubles(part)
        if found:
            raise BadCopyError(found[0])
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)


def _copy(engine: Engine, part: Path) -> None:
    """Copy page by page through SQLite's own way, then make sure that it has reached the disk."""
    raw = engine.raw_connection()
    try:
        with closing(sqlite3.connect(part)) as target:
            cast(Any, raw.driver_connection).backup(target)
            target.execute("PRAGMA journal_mode=DELETE")
    finally:
        raw.close()
    with part.open("rb+") as file:
        os.fsync(file.fileno())


def troubles(path: Path) -> tuple[str, ...]:
    """What is broken in a SQLite file; empty where it is whole."""
    try:
        with closing(sqlite3.connect(f"file:{path}?mode=ro", uri=True)) as copy:
            lines = [str(row[0]) for row in copy.execute("PRAGMA integrity_check") if row[0] != "ok"]
            strays = [f"a row of {row[0]} points nowhere" for row in copy.execute("PRAGMA foreign_key_check")]
            return (*lines, *strays)
    except sqlite3.DatabaseError as error:
        return (str(error),)


def is_book(path: Path) -> bool:
    """Whether the file is a SQLite database."""
    with path.open("rb") as file:
        return file.read(len(MAGIC)) == MAGIC
