"""Disks that do not do as they should, and what holds a file: real ones as SQLite meets them, without a real disk."""

from __future__ import annotations

import sqlite3
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path

from sqlalchemy import Connection, Engine, event

#: A note that does not fit into what is left of the file's pages.
LONG_NOTE = "remark:" + " it rained on the hay again and the roof leaks over the third cage" * 60

PAGE = 4096


@contextmanager
def full_disk() -> Iterator[None]:
    """No book can grow by a page: SQLite says what it says of a full disk."""

    met: set[Engine] = set()

    def full(connection: Connection) -> None:
        met.add(connection.engine)
        connection.exec_driver_sql("PRAGMA max_page_count = 1")  # the file's own size, where that is more

    event.listen(Engine, "begin", full)
    try:
        yield
    finally:
        event.remove(Engine, "begin", full)
        for engine in met:
            engine.dispose()  # a connection goes on believing in a full disk


def read_only(book: Path) -> str:
    """The address of the book on a disk that takes nothing."""
    return f"sqlite:///file:{book}?mode=ro&uri=true"


@contextmanager
def held(book: Path) -> Iterator[None]:
    """Another program is writing in the book, and takes its time."""
    with closing(sqlite3.connect(book, isolation_level=None)) as other:
        other.execute("BEGIN IMMEDIATE")
        yield
        other.execute("ROLLBACK")


def damage(book: Path) -> None:
    """Most of the pages lost, as on a card that was pulled out."""
    with book.open("r+b") as file:
        size = file.seek(0, 2)
        file.seek(PAGE * 8)
        file.write(b"\xff" * (size - PAGE * 8))
