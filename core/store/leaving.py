"""A farm that is to be deleted: from when on it may be, and how every row of it goes."""

from __future__ import annotations

from datetime import datetime

from sqlalchemy import Connection, delete, select

import core.store.fact_tables  # noqa: F401 - the tables of the facts join the others when this is loaded
from core.store.once import put_once
from core.store.tables import farms, leaving, metadata, photos


def goes_at(connection: Connection, farm: int) -> datetime | None:
    """From when on the farm may be deleted; None where nobody wants that."""
    found: datetime | None = connection.scalar(select(leaving.c.goes_at).where(leaving.c.farm_id == farm))
    return found


def wants_to_go(connection: Connection, farm: int, at: datetime) -> None:
    """Let the farm be deleted from that moment on; one that was told before stays."""
    put_once(connection, leaving, farm_id=farm, goes_at=at)


def stays(connection: Connection, farm: int) -> bool:
    """Take that back; whether there was something to take back."""
    return connection.execute(delete(leaving).where(leaving.c.farm_id == farm)).rowcount > 0


def delete_farm(connection: Connection, farm: int) -> tuple[str, ...]:
    """Delete every row of the farm, and the farm. The files of photos that no farm shows any more."""
    mine = set(connection.scalars(select(photos.c.file).where(photos.c.farm_id == farm)))
    for table in reversed(metadata.sorted_tables):
        if table is not farms:
            connection.execute(delete(table).where(table.c.farm_id == farm))
    connection.execute(delete(farms).where(farms.c.id == farm))
    return tuple(sorted(mine - set(connection.scalars(select(photos.c.file)))))
