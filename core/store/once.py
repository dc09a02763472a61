"""Putting a row in unless it is there already, on either database."""

from __future__ import annotations

from typing import Any

from sqlalchemy import Connection, Table
from sqlalchemy.dialects import postgresql, sqlite


def put_once(connection: Connection, table: Table, **values: Any) -> bool:
    """Whether the row was new."""
    if connection.dialect.name == "postgresql":
        return connection.execute(postgresql.insert(table).values(**values).on_conflict_do_nothing()).rowcount == 1
    return connection.execute(sqlite.insert(table).values(**values).on_conflict_do_nothing()).rowcount == 1
