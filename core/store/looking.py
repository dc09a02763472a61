"""When each farm has to be looked at again: of thousands, the clock touches only those where something may fall due."""

from __future__ import annotations

from datetime import UTC, datetime

from sqlalchemy import Connection, select, update

from core.store.once import put_once
from core.store.tables import looks

#: Before any moment of a book: look at the next occasion.
AT_ONCE = datetime(1970, 1, 1, tzinfo=UTC)

#: After any: nothing will fall due unless somebody writes.
NEVER = datetime(9999, 1, 1, tzinfo=UTC)


def begin(connection: Connection, farm: int) -> None:
    """A new farm is looked at."""
    put_once(connection, looks, farm_id=farm, at=AT_ONCE)


def look_at(connection: Connection, farm: int) -> None:
    """Something changed on the farm, so that anything may be due: it is looked at at the next occasion."""
    connection.execute(update(looks).where(looks.c.farm_id == farm, looks.c.at != AT_ONCE).values(at=AT_ONCE))


def ripe(connection: Connection, now: datetime, most: int) -> tuple[int, ...]:
    """Farms that it is time to look at, those that wait longest first."""
    return tuple(connection.scalars(select(looks.c.farm_id).where(looks.c.at <= now).order_by(looks.c.at, looks.c.farm_id).limit(most)))


def counted(connection: Connection, now: datetime) -> int:
    """How many farms it is time to look at."""
    return len(ripe(connection, now, 1_000_000))


def taken(connection: Connection, farm: int, now: datetime) -> bool:
    """Whether it is still time to look at the farm; nobody else does, or puts the moment forward, until the transaction ends."""
    mine = select(looks.c.farm_id).where(looks.c.farm_id == farm, looks.c.at <= now)
    return connection.execute(mine.with_for_update(skip_locked=True)).first() is not None


def look_again(connection: Connection, farm: int, at: datetime | None) -> None:
    """Nothing falls due on the farm before that moment; None: nor ever."""
    connection.execute(update(looks).where(looks.c.farm_id == farm).values(at=at or NEVER))
