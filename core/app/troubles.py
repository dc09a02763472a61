"""What a machine does to a book: a disk that is full or takes nothing, a file that is damaged or held by another program. Each in plain words.

A transaction holds whole or not at all, so whatever these stop, nothing is half done.
"""

from __future__ import annotations

import errno
import sqlite3
from typing import Final

from core.problem import Problem

#: The code of each, what it is, and what to do.
TROUBLES: Final[dict[str, tuple[str, str]]] = {
    "disk_full": ("The disk is full.", "Nothing is half done. Make room on it, then do it again."),
    "read_only": (
        "The book can't be written to.",
        "Nothing was changed. Look whether the file, its folder and the disk are yours to write, then do it again.",
    ),
    "busy": (
        "Another program holds the book.",
        "Nothing was changed. Close what else has the file open, such as a tool for databases or a sync program, then do it again.",
    ),
    "damaged": (
        "The file of the book is damaged.",
        "Copy the file before anything else. Then restore the last copy into a new book: haynote restore COPY --book NEW.sqlite.",
    ),
    "disk_trouble": (
        "The disk does not read or write as it should.",
        "Nothing is half done. Look after the disk, and copy the newest backup elsewhere.",
    ),
    "out_of_reach": (
        "The database can't be reached.",
        "Nothing is half done. Look whether it runs and the network is there, then do it again.",
    ),
}
_SQLITE: Final = {
    sqlite3.SQLITE_FULL: "disk_full",
    sqlite3.SQLITE_READONLY: "read_only",
    sqlite3.SQLITE_BUSY: "busy",
    sqlite3.SQLITE_LOCKED: "busy",
    sqlite3.SQLITE_CORRUPT: "damaged",
    sqlite3.SQLITE_IOERR: "disk_trouble",
}
_SYSTEM: Final = {errno.ENOSPC: "disk_full", errno.EROFS: "read_only", errno.EIO: "disk_trouble"}
#: By PostgreSQL's own codes for errors [D: PostgreSQL documentation, appendix A].
_POSTGRES: Final = {"53100": "disk_full", "25006": "read_only"}
#: The last eight bits of SQLite's long code are the short one.
_SHORT: Final = 0xFF


def trouble(error: BaseException) -> Problem | None:
    """What the machine did to the book, in plain words; None for a mistake of ours or of the person's."""
    code = _code(getattr(error, "orig", None) or error)
    return None if code is None else Problem(code, TROUBLES[code][0], remedy=TROUBLES[code][1])


def _code(cause: BaseException) -> str | None:
    """Which trouble it is, by the driver's or the system's own number."""
    if isinstance(cause, sqlite3.Error):
        return _SQLITE.get(getattr(cause, "sqlite_errorcode", 0) & _SHORT)
    if isinstance(cause, OSError):
        return _SYSTEM.get(cause.errno or 0)
    if type(cause).__name__ == "OperationalError" and getattr(cause, "sqlstate", None) is None:
        return "out_of_reach"  # psycopg's, which has no number where the server did not answer
    return _POSTGRES.get(getattr(cause, "sqlstate", None) or "")
