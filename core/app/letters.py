"""A message on its way out: its lines, its buttons, and the chores that it speaks of, so that an answer to it is understood."""

from __future__ import annotations

from dataclasses import asdict, dataclass, replace
from datetime import datetime

from core.herd.settings import plain_notes
from core.notes.listen import Heard
from core.notes.reading import Ask, ReplyTo
from core.notes.talk.about_note import FIX, about, stands
from core.reply import Attached, Choice, Reply
from core.store import buttons, outgoing
from core.store.buttons import Button
from core.store.names import Connection
from core.store.outgoing import Parcel

#: Fields of a fact that count kits or animals; those that may be none; and the largest number to press: more is typed.
COUNTED = frozenset({"born", "alive", "dead", "count", "bucks", "does", "falls"})
MAY_BE_NONE = frozenset({"alive", "dead", "bucks", "does"})
MOST_ON_PAD = 14


@dataclass(frozen=True, slots=True)
class Offer:
    """A choice to put under a letter; `reply_to` is the chore or the note that choosing it answers. Offers about the same are spent together.

    apart  it stands in a row of its own, with others such
    """

    choice: Choice
    reply_to: ReplyTo | None = None
    apart: bool = False


@dataclass(frozen=True, slots=True)
class Letter:
    """A message to send. `key` is its own for ever: it goes out once. `answers` is the number of the message that it replies to.

    `note` is the note of the farm that it answers: what is said in reply to it is about that note.

    `person`: the account whose buttons they are, where the letter answers somebody; None where it is for all who read it.

    `thumb`: a thumb up on the message that it answers says as much, where the chat takes one.

    Of a file only what it is to show is kept: it is made when the letter goes out, as the book stood when the letter was put here.
    """

    key: str
    chat: str
    lines: tuple[str, ...]
    offers: tuple[Offer, ...] = ()
    answers: str = ""
    chores: tuple[ReplyTo, ...] = ()
    attached: tuple[Attached, ...] = ()
    note: int | None = None
    thumb: bool = False
    person: str | None = None


def letter_of(key: str, chat: str, reply: Reply, answers: str = "", *, person: str | None = None) -> Letter:
    """A reply as a letter: its lines, its choices under them, its files with them."""
    offers = tuple(Offer(choice) for choice in reply.choices)
    return Letter(key, chat, reply.lines, offers, answers, attached=reply.attached, person=person)


def answer_of(key: str, chat: str, heard: Heard, answers: str) -> Letter:
    """What a note is answered with: its question's choices, or a pad of numbers; undo and fix where something was recorded."""
    note = heard.note
    offers = [Offer(choice, about(note) if note.ask else None) for choice in heard.reply.choices or number_pad(note.ask)]
    if stands(heard.book, note):
        offers += [Offer(Choice("Undo", "undo"), about(note), apart=True), Offer(Choice("Fix", FIX), about(note), apart=True)]
    thumb = plain_notes(heard.herd.settings) == "thumb" and heard.is_plain
    letter = Letter(key, chat, heard.reply.lines, tuple(offers), answers, attached=heard.reply.attached)
    return replace(letter, note=note.id, thumb=thumb, person=note.author)


def number_pad(ask: Ask | None) -> tuple[Choice, ...]:
    """Numbers to press where a count is asked for."""
    wanted = ask.draft.wanted if ask is not None and ask.draft is not None else ""
    return numbers(0 if wanted in MAY_BE_NONE else 1) if wanted in COUNTED else ()


def numbers(first: int) -> tuple[Choice, ...]:
    """From that number on, as many as a thumb can tell apart."""
    return tuple(Choice(str(each), str(each)) for each in range(first, MOST_ON_PAD + 1))


def put(connection: Connection, farm: int, letter: Letter, now: datetime) -> bool:
    """Put a letter into the outbox with its buttons; False, and nothing done, if it was ever there."""
    if outgoing.known(connection, farm, letter.key):
        return False
    keys = buttons.offer_all(connection, farm, [_button(letter, offer) for offer in letter.offers], now)
    offered = zip(letter.offers, keys, strict=True)
    choices = [{"label": offer.choice.label, "key": key, "apart": offer.apart} for offer, key in offered]
    payload = {
        "lines": list(letter.lines),
        "choices": choices,
        "answers": letter.answers,
        "chores": [asdict(each) for each in letter.chores],
        "attached": [asdict(each) for each in letter.attached],
        "at": now.isoformat(),
        "note": letter.note,
        "thumb": letter.thumb,
    }
    return outgoing.put(connection, farm, Parcel(letter.key, letter.chat, payload, now))


def _button(letter: Letter, offer: Offer) -> Button:
    """The offer as a button under the letter."""
    bundle = letter.key if offer.reply_to is None else f"{letter.key}#{offer.reply_to.key}"
    return Button(bundle, letter.chat, offer.choice.label, offer.choice.says, letter.person, offer.reply_to)
