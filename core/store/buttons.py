"""Buttons under a message: each a short random key here, and what pressing it says."""

from __future__ import annotations

import secrets
from collections.abc import Collection, Sequence
from dataclasses import dataclass
from datetime import datetime, timedelta
from typing import Any

from sqlalchemy import Connection, insert, select, update

from core.notes.reading import ReplyTo
from core.store.tables import buttons

#: A question older than this is asked anew rather than answered by its buttons.
LASTS = timedelta(days=30)


@dataclass(frozen=True, slots=True)
class Button:
    """A button to put under a message.

    bundle    buttons of one bundle belong together: once one is pressed, the others are spent
    person    the account that may press it; None for anyone on the farm
    reply_to  the chore that pressing it answers
    """

    bundle: str
    chat: str
    label: str
    says: str
    person: str | None = None
    reply_to: ReplyTo | None = None


@dataclass(frozen=True, slots=True)
class Pressed:
    """What pressing a button comes to. `state`: `ok`, `used`, `expired`, `elsewhere` (another chat's), `not_yours` (another person's), or `unknown` (then the rest is empty)."""

    state: str
    says: str = ""
    label: str = ""
    reply_to: ReplyTo | None = None


def offer(connection: Connection, farm: int, button: Button, now: datetime) -> str:
    """The key of a new button: what travels through the chat service, and tells nobody anything."""
    return offer_all(connection, farm, [button], now)[0]


def offer_all(connection: Connection, farm: int, offered: Sequence[Button], now: datetime) -> list[str]:
    """The keys of new buttons, put in together: a pad has more than a dozen."""
    rows = [_row(farm, button, now) for button in offered]
    if rows:
        connection.execute(insert(buttons), rows)
    return [row["key"] for row in rows]


def _row(farm: int, button: Button, now: datetime) -> dict[str, Any]:
    """A button's columns, with a key that nobody can guess."""
    answers = button.reply_to
    return {
        "farm_id": farm,
        "key": secrets.token_urlsafe(12),
        "bundle": button.bundle,
        "chat": button.chat,
        "person": button.person,
        "label": button.label,
        "says": button.says,
        "reply_to": None if answers is None else {"chore": answers.chore, "who": answers.who, "key": answers.key},
        "expires_at": now + LASTS,
    }


@dataclass(frozen=True, slots=True)
class Press:
    """A button pressed: by its key, in a chat, by a person's account, at a moment."""

    key: str
    chat: str
    person: str
    at: datetime


def look(connection: Connection, farm: int, press: Press) -> Pressed:
    """What the button says, and whether it may be pressed there, by them, now. Nothing is changed."""
    row = connection.execute(select(buttons).where(buttons.c.farm_id == farm, buttons.c.key == press.key)).one_or_none()
    if row is None:
        return Pressed("unknown")
    state = "ok"
    if row.chat != press.chat:
        state = "elsewhere"
    elif row.person not in {None, press.person}:
        state = "not_yours"
    elif row.used_at is not None:
        state = "used"
    elif row.expires_at <= press.at:
        state = "expired"
    return Pressed(state, row.says, row.label, None if row.reply_to is None else ReplyTo(**row.reply_to))


def unspent(connection: Connection, farm: int, keys: Collection[str]) -> set[str]:
    """Those of the buttons that nobody has pressed, nor one that came with them."""
    fresh = (buttons.c.farm_id == farm) & buttons.c.key.in_(keys) & buttons.c.used_at.is_(None)
    return set(connection.scalars(select(buttons.c.key).where(fresh)))


def spend(connection: Connection, farm: int, key: str, now: datetime) -> None:
    """The button, and those that came with it, can't be pressed again."""
    bundle = select(buttons.c.bundle).where(buttons.c.farm_id == farm, buttons.c.key == key).scalar_subquery()
    fresh = (buttons.c.farm_id == farm) & (buttons.c.bundle == bundle) & buttons.c.used_at.is_(None)
    connection.execute(update(buttons).where(fresh).values(used_at=now))
