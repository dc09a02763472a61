"""What a machine does to a book, known by the driver's or the system's own number."""

from __future__ import annotations

import errno
import sqlite3

import psycopg
import pytest
from sqlalchemy.exc import OperationalError

from core.app import trouble
from core.app.troubles import TROUBLES


@pytest.mark.parametrize(
    ("error", "code"),
    [
        (OSError(errno.ENOSPC, "No space left on device"), "disk_full"),
        (OSError(errno.EROFS, "Read-only file system"), "read_only"),
        (OSError(errno.ENOENT, "No such file or directory"), None),
        (psycopg.errors.DiskFull(), "disk_full"),
        (psycopg.errors.ReadOnlySqlTransaction(), "read_only"),
        (psycopg.errors.UniqueViolation(), None),
        (OperationalError("select 1", {}, psycopg.OperationalError("connection refused")), "out_of_reach"),
        (sqlite3.ProgrammingError("no such cursor"), None),
        (ValueError("a mistake"), None),
    ],
)
def test_a_trouble_is_told_apart_from_a_mistake(error: Exception, code: str | None) -> None:
    """With what to do; a mistake of ours is none of them."""
    found = trouble(error)
    assert (None if found is None else found.code) == code
    assert found is None or (found.text, found.remedy) == TROUBLES[found.code]
