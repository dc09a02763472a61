"""A message on its way out: its lines, its buttons, and the chores that it speaks of, so that an answer to it is understood."""

from __future__ import annotations

from dataclasses import asdict, dataclass
from datetime import datetime

from sqlalchemy import Connection

from core.notes.reading import ReplyTo
from core.reply import Attached, Choice, Reply
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
    """A message to send. `key` is its own for ever: it goes out once. `answers` is the number of the message that it replies to.

    Of a file only what it is to show is kept: it is made when the letter goes out, as the book stood when the letter was put here.
    """

    key: str
    chat: str
    lines: tuple[str, ...]
    offers: tuple[Offer, ...] = ()
    answers: str = ""
    chores: tuple[ReplyTo, ...] = ()
    attached: tuple[Attached, ...] = ()


def letter_of(key: str, chat: str, reply: Reply, answers: str = "") -> Letter:
    """A reply as a letter: its lines, its choices under them, its files with them."""
    return Letter(key, chat, reply.lines, tuple(Offer(choice) for choice in reply.choices), answers, attached=reply.attached)


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
        "attached": [asdict(each) for each in letter.attached],
        "at": now.isoformat(),
    }
    return outgoing.put(connection, farm, Parcel(letter.key, letter.chat, payload, now))


def _button(connection: Connection, farm: int, letter: Letter, offer: Offer, now: datetime) -> str:
    """The key of the offer's button."""
    bundle = letter.key if offer.reply_to is None else f"{letter.key}#{offer.reply_to.key}"
    button = Button(bundle, letter.chat, offer.choice.label, offer.choice.says, reply_to=offer.reply_to)
    return buttons.offer(connection, farm, button, now)
