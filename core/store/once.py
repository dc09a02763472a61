"""Putting a row in unless it is there already, on either database."""

from __future__ import annotations

from typing import Any

from sqlalchemy import Connection, Table
from sqlalchemy.dialects import postgresql, sqlite


def put_once(connection: Connection, table: Table, **values: Any) -> bool:
    """Whether the row was new."""
    dialect = postgresql if connection.dialect.name == "postgresql" else sqlite
    put = dialect.insert(table).values(**values).on_conflict_do_nothing().returning(*table.primary_key)
    return connection.execute(put).first() is not None
