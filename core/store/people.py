"""Who may speak to the bot, and where it speaks to them: farms, members, set-up codes and chats."""

from __future__ import annotations

import hashlib
import secrets
from dataclasses import dataclass
from datetime import datetime, timedelta

from sqlalchemy import Connection, delete, func, insert, select, update

from core.store import looking
from core.store.once import put_once
from core.store.tables import chats, farms, members, setup_codes

#: No letters or digits that a person could take for another.
LETTERS = "23456789ABCDEFGHJKMNPQRSTVWXYZ"
CODE_LETTERS = 12
CODE_LASTS = timedelta(hours=24)


@dataclass(frozen=True, slots=True)
class Member:
    """A person of the farm. `account` is how a chat service knows them (`telegram:1234`); `role` is `owner`, `helper` or `looker`."""

    account: str
    name: str
    role: str


def farm_names(connection: Connection) -> tuple[str, ...]:
    """The farms of the book, the oldest first."""
    return tuple(connection.scalars(select(farms.c.name).order_by(farms.c.id)))


def farm_name(connection: Connection, farm: int) -> str:
    """What the farm of that number is called. NoResultFound where it is gone."""
    name: str = connection.execute(select(farms.c.name).where(farms.c.id == farm)).scalar_one()
    return name


def counted(connection: Connection) -> int:
    """How many farms the book holds."""
    return connection.execute(select(func.count()).select_from(farms)).scalar_one()


def farm_number(connection: Connection, name: str) -> int | None:
    """The farm of that name."""
    found: int | None = connection.scalar(select(farms.c.id).where(farms.c.name == name))
    return found


def add_farm(connection: Connection, name: str) -> int:
    """A new farm's number. Two programs that open a new book at once make one farm."""
    put_once(connection, farms, name=name)
    number: int = connection.execute(select(farms.c.id).where(farms.c.name == name)).scalar_one()
    looking.begin(connection, number)
    return number


def new_code(connection: Connection, farm: int, role: str, now: datetime, *, ends_others: bool = True) -> str:
    """A fresh code that lets one person in; with `ends_others` earlier ones for the role end. Only its hash is kept, so it can be shown this once."""
    letters = "".join(secrets.choice(LETTERS) for _ in range(CODE_LETTERS))
    if ends_others:
        unused = (setup_codes.c.farm_id == farm) & (setup_codes.c.role == role) & setup_codes.c.used_at.is_(None)
        connection.execute(delete(setup_codes).where(unused))
    kept = {"hash": hash_of(letters), "role": role, "expires_at": now + CODE_LASTS}
    connection.execute(insert(setup_codes).values(farm_id=farm, **kept))
    return "-".join(letters[at : at + 4] for at in range(0, CODE_LETTERS, 4))


def use_code(connection: Connection, farm: int, text: str, now: datetime) -> str | None:
    """The role that the code in the text gives, once; None for words that are no code, or an old one."""
    this = (setup_codes.c.farm_id == farm) & (setup_codes.c.hash == hash_of(text))
    fresh = setup_codes.c.used_at.is_(None) & (setup_codes.c.expires_at > now)
    role: str | None = connection.scalar(select(setup_codes.c.role).where(this, fresh))
    if role is not None:
        connection.execute(update(setup_codes).where(this).values(used_at=now))
    return role


def hash_of(text: str) -> str:
    """A code as it is kept. Dashes, spaces and case don't matter: people copy it by hand."""
    bare = text.replace("-", "").replace(" ", "").upper()
    return hashlib.sha256(bare.encode()).hexdigest()


def add_member(connection: Connection, farm: int, member: Member, now: datetime) -> None:
    """Put a person on the farm; one who is there keeps their role."""
    put_once(connection, members, farm_id=farm, account=member.account, name=member.name, role=member.role, joined_at=now)


def member_of(connection: Connection, farm: int, account: str) -> Member | None:
    """The person of that account, if they belong to the farm."""
    mine = select(members).where(members.c.farm_id == farm, members.c.account == account)
    row = connection.execute(mine).one_or_none()
    return None if row is None else Member(row.account, row.name, row.role)


def members_of(connection: Connection, farm: int) -> tuple[Member, ...]:
    """Everyone on the farm, in the order they came."""
    mine = select(members).where(members.c.farm_id == farm).order_by(members.c.joined_at, members.c.account)
    return tuple(Member(row.account, row.name, row.role) for row in connection.execute(mine))


def remove_member(connection: Connection, farm: int, account: str) -> None:
    """The person is on the farm no more; what they told stays."""
    connection.execute(delete(members).where(members.c.farm_id == farm, members.c.account == account))


def know_chat(connection: Connection, farm: int, chat: str) -> None:
    """Reminders go to this chat from now on; one that had gone quiet is back."""
    known = connection.scalar(select(chats.c.active).where(chats.c.farm_id == farm, chats.c.chat == chat))
    if known:
        return
    if put_once(connection, chats, farm_id=farm, chat=chat, active=True):
        looking.look_at(connection, farm)
    else:
        mark_chat(connection, farm, chat, active=True)


def mark_chat(connection: Connection, farm: int, chat: str, *, active: bool) -> None:
    """Whether the chat can be written to: false once the person has blocked the bot."""
    this = (chats.c.farm_id == farm) & (chats.c.chat == chat) & (chats.c.active != active)
    if connection.execute(update(chats).where(this).values(active=active)).rowcount:
        looking.look_at(connection, farm)


def knows_chat(connection: Connection, farm: int | None, chat: str) -> bool:
    """Whether reminders of the farm, or of any, go to the chat."""
    mine = (chats.c.chat == chat) & chats.c.active
    here = mine if farm is None else mine & (chats.c.farm_id == farm)
    return connection.scalar(select(chats.c.farm_id).where(here).limit(1)) is not None


def active_chats(connection: Connection, farm: int) -> tuple[str, ...]:
    """The chats that reminders go to."""
    mine = select(chats.c.chat).where(chats.c.farm_id == farm, chats.c.active).order_by(chats.c.chat)
    return tuple(connection.scalars(mine))
