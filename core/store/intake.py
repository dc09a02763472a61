"""The inbox: what a chat service handed over, kept before it is confirmed, and worked off in each chat's order."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from datetime import datetime, timedelta

from sqlalchemy import Connection, func, or_, select, tuple_, update
from sqlalchemy.sql.dml import Update as UpdateRows

from core.store.once import put_once
from core.store.tables import inbox

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
    """An update of the inbox, after so many failed `tries`."""

    id: int
    bot_id: str
    update_id: int
    chat: str
    raw: str
    tries: int = 0


def take(connection: Connection, farm: int, came: Came) -> bool:
    """Keep an update; False if it was there already."""
    return put_once(connection, inbox, farm_id=farm, state="pending", tries=0, handed_out=0, **asdict(came))


def next_update(connection: Connection, farm: int, worker: str, now: datetime) -> Update | None:
    """The next update to work on: the first of a chat none of whose updates is being worked on; None where there is none."""
    waiting = (inbox.c.farm_id == farm) & (inbox.c.state == "pending")
    firsts = select(inbox.c.bot_id, func.min(inbox.c.update_id)).where(waiting).group_by(inbox.c.bot_id, inbox.c.chat)
    free = or_(inbox.c.claimed_until.is_(None), inbox.c.claimed_until <= now)
    first = tuple_(inbox.c.bot_id, inbox.c.update_id).in_(firsts)
    those = select(inbox).where(waiting, free, first).order_by(inbox.c.update_id)
    row = connection.execute(those.limit(1).with_for_update(skip_locked=True)).one_or_none()
    if row is None:
        return None
    claim = {"claimed_by": worker, "claimed_until": now + LEASE, "handed_out": row.handed_out + 1}
    connection.execute(_this(farm, row.id).values(**claim))
    tries = TRIES if row.handed_out >= HANDED_OUT else row.tries
    return Update(row.id, row.bot_id, row.update_id, row.chat, row.raw, tries)


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


def release(connection: Connection, farm: int, worker: str) -> None:
    """Let go of what this worker held when it last went down."""
    mine = (inbox.c.farm_id == farm) & (inbox.c.claimed_by == worker)
    connection.execute(update(inbox).where(mine).values(claimed_by=None, claimed_until=None))


def waiting(connection: Connection, farm: int) -> dict[str, int]:
    """How many updates are in each state."""
    counted = select(inbox.c.state, func.count()).where(inbox.c.farm_id == farm).group_by(inbox.c.state)
    return {row[0]: row[1] for row in connection.execute(counted)}


def _this(farm: int, number: int) -> UpdateRows:
    return update(inbox).where(inbox.c.farm_id == farm, inbox.c.id == number)
