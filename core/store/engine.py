"""The way to the database: SQLite as a careful clerk would use it, PostgreSQL by its address, the same code on both."""

from __future__ import annotations

import sqlite3
from time import monotonic
from typing import Any

from sqlalchemy import Connection, Engine, create_engine, event, make_url
from sqlalchemy.exc import DisconnectionError
from sqlalchemy.pool import NullPool

WRITE_AHEAD = "PRAGMA journal_mode=WAL"

#: How often a new file is asked to write ahead while others open it too.
ASKED = 20

#: From when on a connection to PostgreSQL is tried before it is used again [s].
IDLE_S = 5.0

#: How long a SQLite writer waits for another one [ms].
WAIT_MS = 10_000


def engine(url: str, *, foreign_keys: bool = True) -> Engine:
    """An engine for the address. `foreign_keys` off is for migrations alone, which may have to make a table anew.

    Raises sqlalchemy.exc.ArgumentError or NoSuchModuleError for an address that is none.
    """
    parsed = make_url(url)
    if parsed.get_backend_name() != "sqlite":
        made = create_engine(parsed, pool_use_lifo=True)
        _try_what_lay_idle(made)
        return made
    made = create_engine(parsed, poolclass=NullPool if not foreign_keys else None)
    _take_care(made, foreign_keys=foreign_keys)
    return made


def _try_what_lay_idle(made: Engine) -> None:
    """A connection that was not used for a while may have been cut: it is tried first. To try each one each time doubles the way to the server."""

    @event.listens_for(made, "checkin")
    def _used(_connection: Any, record: Any) -> None:
        record.info["used"] = monotonic()

    @event.listens_for(made, "checkout")
    def _try(connection: Any, record: Any, _proxy: Any) -> None:
        if monotonic() - record.info.get("used", monotonic()) < IDLE_S:
            return
        try:
            connection.execute("select 1")
            connection.rollback()
        except connection.Error as error:
            raise DisconnectionError from error


def _take_care(made: Engine, *, foreign_keys: bool) -> None:
    """SQLite's settings are a connection's own, and its driver begins no transaction before a read unless it is told to."""

    @event.listens_for(made, "connect")
    def _settle(connection: Any, _record: Any) -> None:
        connection.isolation_level = None
        connection.execute(f"PRAGMA busy_timeout={WAIT_MS}")
        write_ahead(connection)
        for pragma in ("synchronous=FULL", f"foreign_keys={int(foreign_keys)}"):
            connection.execute(f"PRAGMA {pragma}")

    @event.listens_for(made, "begin")
    def _begin(connection: Connection) -> None:
        connection.exec_driver_sql("BEGIN IMMEDIATE")


def write_ahead(connection: Any) -> None:
    """Let a SQLite file keep a log to write ahead, which it then does for good.

    While another program opens the same new file, SQLite refuses this at once, whatever its time to wait. It does wait for the right to
    write: once that was had, the other is done. sqlite3.OperationalError where the file stays locked, or can't be written.
    """
    for _ in range(ASKED - 1):
        try:
            connection.execute(WRITE_AHEAD)
        except sqlite3.OperationalError as error:
            if error.sqlite_errorcode != sqlite3.SQLITE_BUSY:
                raise
            connection.execute("BEGIN IMMEDIATE")
            connection.execute("COMMIT")
        else:
            return
    connection.execute(WRITE_AHEAD)
