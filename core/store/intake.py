"""The inbox: what a chat service handed over, kept before it is confirmed, and worked off in each chat's order."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from datetime import datetime, timedelta
from functools import cache
from typing import Any

from sqlalchemy import Connection, Integer, Select, bindparam, func, or_, select, update
from sqlalchemy.sql.dml import Update as UpdateRows

from core.store.columns import Moment
from core.store.once import put_once
from core.store.tables import PENDING, inbox

#: After so many failures an update is set aside, or it would hold up its chat for ever.
TRIES = 3

#: Where the program itself dies on an update, no failure is ever told: this often it is handed out at most.
HANDED_OUT = 10

#: How long a worker may keep what it has claimed before another takes over.
LEASE = timedelta(minutes=5)


@dataclass(frozen=True, slots=True)
class Came:
    """An update as the chat service handed it over: `raw` is its JSON text."""

    bot_id: str
    update_id: int
    chat: str
    raw: str


@dataclass(frozen=True, slots=True)
class Update:
    """An update of the inbox of a `farm`, after so many failed `tries`."""

    id: int
    bot_id: str
    update_id: int
    chat: str
    raw: str
    tries: int = 0
    farm: int = 0


def take(connection: Connection, farm: int, came: Came) -> bool:
    """Keep an update; False if it was there already."""
    return put_once(connection, inbox, farm_id=farm, state="pending", tries=0, handed_out=0, **asdict(came))


def next_update(connection: Connection, farm: int | None, worker: str, now: datetime) -> Update | None:
    """The next update to work on, of the farm or of all: the first of a chat none of whose updates is being worked on.

    A row that another worker is just taking is passed over; the rest of its chat then waits for it, since it is still pending.
    """
    row = connection.execute(_first_free(of_all=farm is None), {"farm": farm, "now": now}).one_or_none()
    if row is None:
        return None
    claim = {"claimed_by": worker, "claimed_until": now + LEASE, "handed_out": row.handed_out + 1}
    connection.execute(_this(row.farm_id, row.id).values(**claim))
    tries = TRIES if row.handed_out >= HANDED_OUT else row.tries
    return Update(row.id, row.bot_id, row.update_id, row.chat, row.raw, tries, row.farm_id)


@cache
def _first_free(*, of_all: bool) -> Select[Any]:
    """The query for it; made once, since that takes longer than the database takes to answer."""
    waits = inbox.c.state == PENDING
    mine = waits if of_all else waits & (inbox.c.farm_id == bindparam("farm", type_=Integer))
    earlier = inbox.alias()
    before = (earlier.c.bot_id == inbox.c.bot_id) & (earlier.c.chat == inbox.c.chat) & (earlier.c.update_id < inbox.c.update_id)
    of_its_chat = select(earlier.c.farm_id).where(before, earlier.c.state == PENDING)
    free = or_(inbox.c.claimed_until.is_(None), inbox.c.claimed_until <= bindparam("now", type_=Moment))
    those = select(inbox).where(mine, free, ~of_its_chat.exists()).order_by(inbox.c.update_id)
    return those.limit(1).with_for_update(of=inbox, skip_locked=True)


def mark(connection: Connection, farm: int, number: int, state: str) -> None:
    """`done`, or `parked` where it can't be worked off."""
    connection.execute(_this(farm, number).values(state=state, claimed_by=None, claimed_until=None))


def forget(connection: Connection, farm: int, number: int) -> None:
    """What the update said is nobody's business any more: its number alone is kept, so that it is not taken in again."""
    connection.execute(_this(farm, number).values(raw="{}"))


def failed(connection: Connection, farm: int, number: int) -> bool:
    """Note a failure and let it be tried again. Whether that was the last try: then it is set aside."""
    connection.execute(_this(farm, number).values(tries=inbox.c.tries + 1, claimed_by=None, claimed_until=None))
    tries: int = connection.execute(select(inbox.c.tries).where(inbox.c.farm_id == farm, inbox.c.id == number)).scalar_one()
    if tries < TRIES:
        return False
    mark(connection, farm, number, "parked")
    return True


def release(connection: Connection, farm: int | None, worker: str) -> None:
    """Let go of what this worker held of the farm, or of all, when it last went down."""
    held = (inbox.c.state == PENDING) & (inbox.c.claimed_by == worker)
    mine = held if farm is None else held & (inbox.c.farm_id == farm)
    connection.execute(update(inbox).where(mine).values(claimed_by=None, claimed_until=None))


def waiting(connection: Connection, farm: int | None) -> dict[str, int]:
    """How many updates of the farm, or of all, are in each state."""
    counted = select(inbox.c.state, func.count()).group_by(inbox.c.state)
    mine = counted if farm is None else counted.where(inbox.c.farm_id == farm)
    return {row[0]: row[1] for row in connection.execute(mine)}


def held(connection: Connection) -> dict[str, int]:
    """How many updates each worker holds, on whatever farm."""
    claimed = (inbox.c.state == PENDING) & inbox.c.claimed_by.is_not(None)
    counted = select(inbox.c.claimed_by, func.count()).where(claimed).group_by(inbox.c.claimed_by).order_by(inbox.c.claimed_by)
    return {row[0]: row[1] for row in connection.execute(counted)}


def _this(farm: int, number: int) -> UpdateRows:
    return update(inbox).where(inbox.c.farm_id == farm, inbox.c.id == number)
