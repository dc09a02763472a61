"""One server a farm, and one a bot, on a database that several machines reach: locks that the database itself keeps. Workers have their names by them."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from contextlib import contextmanager, suppress
from hashlib import sha256
from itertools import count

from sqlalchemy import Connection, Engine, TextClause, text
from sqlalchemy.exc import DBAPIError

TRY = text("select pg_try_advisory_lock(:key)")
TRY_SHARED = text("select pg_try_advisory_lock_shared(:key)")
GIVE_BACK = text("select pg_advisory_unlock_all()")
TRY_FOR_NOW = text("select pg_try_advisory_xact_lock(:key)")

#: What a worker is called before its number.
WORKER = "work-"


def lock_key(what: str) -> int:
    """The lock's number, of 64 bits with a sign, as PostgreSQL wants it: the same in every process and on every machine."""
    return int.from_bytes(sha256(f"haynote serve {what}".encode()).digest()[:8], "big", signed=True)


@contextmanager
def serving(engine: Engine, farm: int | None, bot: str) -> Iterator[bool]:
    """Hold the farm, or the whole book (None), and the bot for one server; False where another holds any of it.

    PostgreSQL lets go when the connection ends, however it ends. A book in a file knows no such lock and is always free here: its
    server holds a lock beside the file.
    """
    if engine.dialect.name != "postgresql":
        yield True
        return
    with _apart(engine) as connection:
        whose = [(TRY, "book")] if farm is None else [(TRY, f"farm {farm}"), (TRY_SHARED, "book")]
        yield all(_held(connection, how, what) for how, what in [*whose, (TRY, f"bot {bot}")])


@contextmanager
def working(engine: Engine) -> Iterator[str]:
    """A worker's name that nobody else has as long as this lasts: the first free one, so that who comes after a dead one has its name."""
    with _apart(engine) as connection:
        yield next(name for number in count(1) if _held(connection, TRY, name := f"{WORKER}{number}"))


def gone(connection: Connection, workers: Iterable[str]) -> tuple[str, ...]:
    """Those of the workers that are no more. Until the transaction ends nobody can take their names."""
    return tuple(name for name in workers if name.startswith(WORKER) and _held(connection, TRY_FOR_NOW, name))


@contextmanager
def _apart(engine: Engine) -> Iterator[Connection]:
    """A connection that is closed for good at the end: one that went back to the pool would keep its locks. No transaction is left open.

    The locks are given back before: the database notices only some time later that a connection has ended, and whoever serves next need not wait.
    """
    with engine.connect() as pooled:
        connection = pooled.execution_options(isolation_level="AUTOCOMMIT")
        connection.detach()
        try:
            yield connection
        finally:
            with suppress(DBAPIError):  # the database is gone, and its locks with it
                connection.execute(GIVE_BACK)


def _held(connection: Connection, how: TextClause, what: str) -> bool:
    return bool(connection.execute(how, {"key": lock_key(what)}).scalar_one())
