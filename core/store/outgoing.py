"""The outbox: every message that goes out, kept until the chat service has taken it; and what was ever put there, once."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from functools import cache
from typing import Any

from sqlalchemy import Connection, Integer, Select, Update, bindparam, func, or_, select, update

from core.store.columns import Moment
from core.store.intake import LEASE
from core.store.once import put_once
from core.store.tables import WAITING, outbox, sent

#: So many messages of a chat are looked at for one that is known by its words only.
LOOKED_BACK = 60
#: A letter longer than this reaches the chat in pieces [characters].
LONGEST = 1000


@dataclass(frozen=True, slots=True)
class Outgoing:
    """A message of a `farm` to send. `payload` is what the app put there; `tries` so far."""

    id: int
    key: str
    chat: str
    payload: dict[str, Any]
    tries: int
    farm: int = 0


@dataclass(frozen=True, slots=True)
class Parcel:
    """A message to put in: its own key, where it goes, what stands in it, and from when on."""

    key: str
    chat: str
    payload: dict[str, Any]
    not_before: datetime


def put(connection: Connection, farm: int, parcel: Parcel) -> bool:
    """Put a message in; False if one of that key was ever there."""
    told = {"key": parcel.key, "chat": parcel.chat, "payload": parcel.payload, "not_before": parcel.not_before}
    return put_once(connection, outbox, farm_id=farm, state="waiting", tries=0, **told)


def known(connection: Connection, farm: int, key: str) -> bool:
    """Whether a message of that key was ever put in."""
    return connection.scalar(select(outbox.c.id).where(outbox.c.farm_id == farm, outbox.c.key == key)) is not None


def first_time(connection: Connection, farm: int, key: str, day: date, now: datetime) -> bool:
    """Whether this is the first time that this reminder or digest goes out for that day; it is written down as gone."""
    return put_once(connection, sent, farm_id=farm, key=key, day=day, put_at=now)


def claim(connection: Connection, farm: int | None, worker: str, now: datetime) -> Outgoing | None:
    """The next message to send, of the farm or of all: always a chat's oldest, so that answers keep their order; None where there is none."""
    row = connection.execute(_first_free(of_all=farm is None), {"farm": farm, "now": now}).one_or_none()
    if row is None:
        return None
    connection.execute(_this(row.farm_id, row.id).values(claimed_by=worker, claimed_until=now + LEASE))
    return Outgoing(row.id, row.key, row.chat, row.payload, row.tries, row.farm_id)


@cache
def _first_free(*, of_all: bool) -> Select[Any]:
    """The query for it; made once, since that takes longer than the database takes to answer."""
    earlier, moment = outbox.alias(), bindparam("now", type_=Moment)
    mine, before = (
        outbox.c.state == WAITING,
        (earlier.c.chat == outbox.c.chat) & (earlier.c.id < outbox.c.id) & (earlier.c.state == WAITING),
    )
    if not of_all:
        mine &= outbox.c.farm_id == bindparam("farm", type_=Integer)
        before &= earlier.c.farm_id == outbox.c.farm_id
    free = or_(outbox.c.claimed_until.is_(None), outbox.c.claimed_until <= moment)
    those = select(outbox).where(mine, free, outbox.c.not_before <= moment, ~select(earlier.c.farm_id).where(before).exists())
    return those.order_by(outbox.c.id).limit(1).with_for_update(of=outbox, skip_locked=True)


def mark_sent(connection: Connection, farm: int, number: int, message: str | None) -> None:
    """The service has it; `message` is the number it gave, so that an answer to it can be understood."""
    connection.execute(_this(farm, number).values(state="sent", number=message, claimed_by=None, claimed_until=None))


def retry(connection: Connection, farm: int, number: int, when: datetime) -> None:
    """Try again, not before that moment."""
    again = {"tries": outbox.c.tries + 1, "not_before": when, "claimed_by": None, "claimed_until": None}
    connection.execute(_this(farm, number).values(**again))


def drop(connection: Connection, farm: int, number: int) -> None:
    """It can never be delivered."""
    connection.execute(_this(farm, number).values(state="dropped", claimed_by=None, claimed_until=None))


def release(connection: Connection, farm: int | None, worker: str) -> None:
    """Let go of what this worker held of the farm, or of all, when it last went down: rather sent twice than never."""
    held = (outbox.c.state == WAITING) & (outbox.c.claimed_by == worker)
    mine = held if farm is None else held & (outbox.c.farm_id == farm)
    connection.execute(update(outbox).where(mine).values(claimed_by=None, claimed_until=None))


def payload_of(connection: Connection, farm: int, chat: str, message: str) -> dict[str, Any] | None:
    """What stood in the message of that number, as the service counts them in that chat."""
    this = (outbox.c.farm_id == farm) & (outbox.c.chat == chat) & (outbox.c.number == message)
    found: dict[str, Any] | None = connection.scalar(select(outbox.c.payload).where(this).order_by(outbox.c.id.desc()).limit(1))
    return found


def payload_said(connection: Connection, farm: int, chat: str, text: str) -> dict[str, Any] | None:
    """What stood in the newest message of that chat that said so: for one that reached it before its number was written down here."""
    newest = select(outbox.c.payload).where(outbox.c.farm_id == farm, outbox.c.chat == chat).order_by(outbox.c.id.desc()).limit(LOOKED_BACK)
    told = [(dict(payload), "\n".join(payload.get("lines", ()))) for payload in connection.scalars(newest)]
    whole = (payload for payload, said in told if said.strip() == text.strip())
    pieces = (payload for payload, said in told if len(said) > LONGEST and text in said)
    return next(whole, None) or next(pieces, None)


def waiting(connection: Connection, farm: int | None) -> dict[str, int]:
    """How many messages of the farm, or of all, are in each state."""
    counted = select(outbox.c.state, func.count()).group_by(outbox.c.state)
    mine = counted if farm is None else counted.where(outbox.c.farm_id == farm)
    return {row[0]: row[1] for row in connection.execute(mine)}


def _this(farm: int, number: int) -> Update:
    return update(outbox).where(outbox.c.farm_id == farm, outbox.c.id == number)
