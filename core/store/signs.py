"""Signs between the programs that work on one PostgreSQL book: there is something in the inbox, or in the outbox.

A sign is a kindness: it is given after the work is written down, outside of any transaction, and whoever misses one looks by himself soon enough.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Any, cast

from sqlalchemy import Engine, text

CHANNEL = "haynote"

#: The signs heard within so many seconds; empty where there was none.
Ear = Callable[[float], tuple[str, ...]]


def give(engine: Engine, what: str) -> None:
    """Let all that listen know."""
    with engine.connect() as pooled:
        pooled.execution_options(isolation_level="AUTOCOMMIT").execute(
            text("select pg_notify(:channel, :what)"), {"channel": CHANNEL, "what": what}
        )


@contextmanager
def listening(engine: Engine) -> Iterator[Ear]:
    """Listen from now on. OperationalError, of the driver or of SQLAlchemy, where the database is out of reach."""
    with engine.connect() as pooled:
        connection = pooled.execution_options(isolation_level="AUTOCOMMIT")
        raw = cast(Any, connection.connection.driver_connection)
        connection.detach()  # closed at the end: one that went back to the pool would listen for ever
        connection.exec_driver_sql(f"listen {CHANNEL}")
        yield lambda seconds: tuple(dict.fromkeys(sign.payload for sign in raw.notifies(timeout=seconds, stop_after=1)))
