"""What goes out by itself: the day's reminders at the farm's hour, and the digest on its day. Each once, whatever happens in between.

The clock only asks. What is due is computed from the herd each time; the `sent` table is the only memory, so a restart, an undo or
a changed setting can't leave a stale reminder behind.
"""

from __future__ import annotations

import hashlib
from collections.abc import Sequence
from datetime import date, datetime, timedelta

from core.app.letters import Letter, Offer, numbers, put
from core.app.reckoning import Reckon, here
from core.herd import settings
from core.herd.chore import Chore
from core.herd.state import Herd
from core.herd.wishes import WEEKDAYS
from core.notes.reading import ReplyTo
from core.notes.replay import zone
from core.reply import Choice
from core.store import looking, outgoing, people
from core.store.names import Connection

#: A reminder missed while the machine was off still goes out so many days later; what is older stands in the digest.
CATCH_UP_DAYS = 7

#: The digest may come so many days late.
DIGEST_LATE_DAYS = 2

#: Buttons that fit under one message; the rest can be answered in words.
BUTTONS = 8
LABEL_LETTERS = 40


def put_due(connection: Connection, farm: int, herd: Herd, now: datetime, reckon: Reckon = here) -> int:
    """Put the reminders and the digest that are due now into the outbox. How many messages that made."""
    chats = people.active_chats(connection, farm)
    if not chats:
        return 0
    local = now.astimezone(zone(herd.settings.timezone))
    digest = _digest(connection, farm, herd, local)
    lines = reckon(digest_lines, herd, local.date()) if digest else ()
    digests = (Letter(f"digest:{chat}:{digest}", chat, lines) for chat in chats if digest)
    letters = [*_reminders(connection, farm, herd, chats, local), *digests]
    return sum(put(connection, farm, letter, now) for letter in letters)


def _reminders(connection: Connection, farm: int, herd: Herd, chats: Sequence[str], local: datetime) -> list[Letter]:
    """One letter a chat with all chores that it is time for."""
    from core.reports.due import morning  # noqa: PLC0415 - the reports are loaded when they are wanted

    ripe = [chore for chore in morning(herd, local.date()) if is_time(chore, herd, local)]
    fresh = [chore for chore in ripe if outgoing.first_time(connection, farm, _turn(chore), chore.on, local)]
    return [_letter(chat, fresh, local.date()) for chat in chats] if fresh else []


def _turn(chore: Chore) -> str:
    """What is remembered of a reminder beside its day: one put off to another hour of the same day comes again."""
    return chore.key if chore.time is None else f"{chore.key} {chore.time}"


def is_time(chore: Chore, herd: Herd, local: datetime) -> bool:
    """Whether it is the hour for this chore's reminder: the farm's hour outside the quiet ones, or the time that a person named."""
    if local.date() - chore.on > timedelta(days=CATCH_UP_DAYS):
        return False
    clock = f"{local:%H:%M}"
    if chore.on == local.date() and chore.time is not None:
        return clock >= chore.time
    return _is_hour(herd, clock)


def _is_hour(herd: Herd, clock: str) -> bool:
    """Whether the farm's hour for what goes out by itself has come, and it is not quiet."""
    return clock >= settings.reminders_from(herd.settings) and not settings.is_quiet(herd.settings, clock)


#: What the number that a person presses under a reminder stands for.
HOW_MANY = {
    "kindling": "How many were born, dead ones too? Press, or write “8, 2 dead”.",
    "wean": "How many are weaned? Press, or write “6, 2 bucks”.",
}


def _letter(chat: str, chores: Sequence[Chore], today: date) -> Letter:
    """The reminders of one moment in one message."""
    from core.reports.due import reminder  # noqa: PLC0415

    told = [reminder(chore, today) for chore in chores]
    asks = HOW_MANY.get(chores[0].chore) if len(chores) == 1 else None
    if len(chores) == 1:
        pad = [Offer(choice, _answers(chores[0])) for choice in numbers(1)] if asks else []
        offers = (*pad, *(Offer(choice, _answers(chores[0]), apart=True) for choice in told[0].choices))
    else:
        offers = tuple(Offer(Choice(f"Done: {chore.text}"[:LABEL_LETTERS], "done"), _answers(chore)) for chore in chores[:BUTTONS])
    these = hashlib.sha256("\n".join(f"{_turn(chore)} {chore.on}" for chore in chores).encode()).hexdigest()
    lines = (*(line for reply in told for line in reply.lines), *([asks] if asks else []))
    return Letter(f"reminders:{chat}:{these}", chat, lines, offers, chores=tuple(_answers(chore) for chore in chores))


def _answers(chore: Chore) -> ReplyTo:
    return ReplyTo(chore.chore, chore.tag, chore.key)


def digest_due(herd: Herd, local: datetime) -> date | None:
    """The day whose digest it is time for: its own, at the farm's hour; a machine that was off makes it late rather than lost."""
    late = (local.weekday() - WEEKDAYS.index(settings.digest_day(herd.settings))) % len(WEEKDAYS)
    if late > DIGEST_LATE_DAYS or not _is_hour(herd, f"{local:%H:%M}") or not herd.animals:
        return None
    return local.date() - timedelta(days=late)


def _digest(connection: Connection, farm: int, herd: Herd, local: datetime) -> date | None:
    """The day whose digest it is time for, once."""
    day = digest_due(herd, local)
    return day if day is not None and outgoing.first_time(connection, farm, "digest", day, local) else None


def digest_lines(herd: Herd, today: date) -> tuple[str, ...]:
    """What the digest of that day says."""
    from core.reports.digest import digest  # noqa: PLC0415 - loads the reckoning

    lines: tuple[str, ...] = digest(herd, today).reply().lines
    return lines


def look(connection: Connection, farm: int, herd: Herd, now: datetime, reckon: Reckon = here) -> bool:
    """The same for a farm that it is time to look at, and when it has to be looked at again. False where somebody else looks at it, or did so.

    A farm without a chat waits for one.
    """
    from core.app.next_look import next_look  # noqa: PLC0415 - asks the rules of this module

    if not looking.taken(connection, farm, now):
        return False
    put_due(connection, farm, herd, now, reckon)
    looking.look_again(connection, farm, next_look(herd, now) if people.active_chats(connection, farm) else None)
    return True
