"""What the book tells when it is asked: as an object for programs, and as a reply for people."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from typing import Any

from core.herd.state import Herd
from core.notes.fact import to_json
from core.notes.journal import Note
from core.notes.listen import Heard, printed
from core.notes.reading import Reading
from core.notes.replay import Book, book, local_day
from core.notes.talk.doubt import is_timed
from core.problem import Problem
from core.reply import Reply

NOON = timedelta(hours=12)  # not a figure: half a day


@dataclass(frozen=True, slots=True)
class Told:
    """An answer in both its forms: `document` as `--json` prints it, `reply` for a person."""

    document: dict[str, Any]
    reply: Reply


def as_of(whole: Book, now: datetime) -> Book:
    """The book as it was known then: notes sent later don't count, nor what they took back."""
    told = tuple(note for note in whole.notes if _begins(note) <= now)
    return whole if len(told) == len(whole.notes) else book(whole.start, told)


def _begins(note: Note) -> datetime:
    """From when the note counts: a line of a file that names no time is written down as of noon, and counts for its whole day."""
    return note.at if is_timed(note.chat, note.number) else note.at - NOON


def reading_document(reading: Reading) -> dict[str, Any]:
    """What a message was read as, as the contract prints it."""
    ask = reading.ask
    return {
        "facts": [to_json(fact) for fact in reading.facts],
        "ask": None if ask is None else {"why": ask.why, "text": ask.text, "choices": list(ask.choices)},
        "unread": reading.unread,
    }


def said(heard: Heard, before: Herd) -> Told:
    """What came of one message: its facts, the question, the reply, and the chores that were not there before."""
    from core.reports.due import chore_document  # noqa: PLC0415 - the reports are loaded when they are wanted

    today = local_day(heard.note.at, heard.herd)
    read = reading_document(printed(heard.note))
    chores = [chore_document(chore, today) for chore in _new_chores(before, heard.herd, today)]
    document = {"facts": read["facts"], "ask": read["ask"], "reply": heard.reply.text, "chores": chores}
    return Told(document, heard.reply)


def _new_chores(before: Herd, after: Herd, today: date) -> Iterable[Any]:
    """The chores of today or later that the message caused or moved, the nearest first."""
    from core.herd.calendar import all_chores  # noqa: PLC0415

    known = {(chore.key, chore.on) for chore in all_chores(before, today)}
    new = {chore.key: chore for chore in all_chores(after, today) if (chore.key, chore.on) not in known}
    return sorted(new.values(), key=lambda chore: (chore.on, chore.key))


def due(herd: Herd, today: date, days: int | None) -> Told:
    """The chores of the coming days, all of them."""
    from core.reports.due import due as due_chores  # noqa: PLC0415

    found = due_chores(herd, today, days)
    return Told(found.document(), found.reply(whole=True))


def digest(herd: Herd, today: date) -> Told:
    """The week's digest."""
    from core.reports.digest import digest as week  # noqa: PLC0415

    found = week(herd, today)
    return Told(found.document(), found.reply())


def keep(herd: Herd, today: date) -> Told:
    """Who to keep, sell or cull."""
    from core.reports.keep_or_cull import keep_or_cull  # noqa: PLC0415

    found = keep_or_cull(herd, today)
    return Told(found.document(), found.reply())


def herd(known: Herd, today: date) -> Told:
    """Every living animal."""
    from core.reports.herd_document import herd_document  # noqa: PLC0415

    found = herd_document(known, today)
    return Told(found.document(), found.reply())


def card(known: Book, tag: str, now: datetime) -> Told | Problem:
    """One animal, living or gone, by its tag or name."""
    from core.reports.answers import found as animal_of  # noqa: PLC0415 - loads the reckoning
    from core.reports.card import card as card_of  # noqa: PLC0415

    animal = animal_of(known.herd, tag)
    if animal is None:
        text = f"There is no animal {tag} on the book."
        return Problem("no_animal", text, remedy="'haynote herd' lists the tags. To add one: new doe 40 mini rex born 3/4")
    found = card_of(known.herd, local_day(now, known.herd), animal, known.standing())
    return Told(found.document(), found.reply())
