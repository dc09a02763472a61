"""A message on its way out: its lines, its buttons, and the chores that it speaks of, so that an answer to it is understood."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from datetime import datetime

from sqlalchemy import Connection

from core.notes.reading import ReplyTo
from core.reply import Choice, Reply
from core.store import buttons, outgoing
from core.store.buttons import Button
from core.store.outgoing import Parcel


@dataclass(frozen=True, slots=True)
class Offer:
    """A choice to put under a letter; `reply_to` is the chore that choosing it answers. Offers about the same chore are spent together."""

    choice: Choice
    reply_to: ReplyTo | None = None


@dataclass(frozen=True, slots=True)
class Letter:
    """A message to send. `key` is its own for ever: it goes out once. `answers` is the number of the message that it replies to."""

    key: str
    chat: str
    lines: tuple[str, ...]
    offers: tuple[Offer, ...] = ()
    answers: str = ""
    chores: tuple[ReplyTo, ...] = ()


def offers_of(reply: Reply) -> tuple[Offer, ...]:
    """The choices of a reply, to be put under it."""
    return tuple(Offer(choice) for choice in reply.choices)


def put(connection: Connection, farm: int, letter: Letter, now: datetime) -> bool:
    """Put a letter into the outbox with its buttons; False, and nothing done, if it was ever there."""
    if outgoing.known(connection, farm, letter.key):
        return False
    choices = [{"label": offer.choice.label, "key": _button(connection, farm, letter, offer, now)} for offer in letter.offers]
    payload = {
        "lines": list(letter.lines),
        "choices": choices,
        "answers": letter.answers,
        "chores": [asdict(each) for each in letter.chores],
    }
    return outgoing.put(connection, farm, Parcel(letter.key, letter.chat, payload, now))


def _button(connection: Connection, farm: int, letter: Letter, offer: Offer, now: datetime) -> str:
    """The key of the offer's button."""
    bundle = letter.key if offer.reply_to is None else f"{letter.key}#{offer.reply_to.key}"
    button = Button(bundle, letter.chat, offer.choice.label, offer.choice.says, reply_to=offer.reply_to)
    return buttons.offer(connection, farm, button, now)
