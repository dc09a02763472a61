"""One server a farm, and one a bot, on a database that several machines reach: a lock that the database itself keeps."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager
from hashlib import sha256

from sqlalchemy import Connection, Engine, text

TRY = text("select pg_try_advisory_lock(:key)")


def lock_key(what: str) -> int:
    """The lock's number, of 64 bits with a sign, as PostgreSQL wants it: the same in every process and on every machine."""
    return int.from_bytes(sha256(f"haynote serve {what}".encode()).digest()[:8], "big", signed=True)


@contextmanager
def serving(engine: Engine, farm: int, bot: str) -> Iterator[bool]:
    """Hold the farm and the bot for one server; False where another holds either.

    PostgreSQL lets go when the connection ends, however it ends. A book in a file knows no such lock and is always free here: its
    server holds a lock beside the file.
    """
    if engine.dialect.name != "postgresql":
        yield True
        return
    with engine.connect() as pooled:
        connection = pooled.execution_options(isolation_level="AUTOCOMMIT")
        connection.detach()  # closed for good at the end: a connection that went back to the pool would keep its locks
        yield all(_held(connection, what) for what in (f"farm {farm}", f"bot {bot}"))


def _held(connection: Connection, what: str) -> bool:
    return bool(connection.execute(TRY, {"key": lock_key(what)}).scalar_one())
