"""Putting a row in unless it is there already, on either database."""

from __future__ import annotations

from typing import Any

from sqlalchemy import Connection, Table


def put_once(connection: Connection, table: Table, **values: Any) -> bool:
    """Whether the row was new."""
    # each engine has a way of its own, which takes a while to load: a book in a file needs nothing of the other
    if connection.dialect.name == "postgresql":
        from sqlalchemy.dialects import postgresql as dialect  # noqa: PLC0415
    else:
        from sqlalchemy.dialects import sqlite as dialect  # type: ignore[no-redef] # noqa: PLC0415
    put = dialect.insert(table).values(**values).on_conflict_do_nothing().returning(*table.primary_key)
    return connection.execute(put).first() is not None
