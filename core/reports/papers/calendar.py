"""The chores as entries of a calendar (RFC 5545): the same as `due` tells, each with a name that stays its own for ever.

An entry taken in twice replaces itself: its name is made of the farm and the chore's key, which no day and no wording changes.
"""

from __future__ import annotations

import unicodedata
from dataclasses import dataclass
from datetime import date, datetime, time, timedelta, tzinfo
from uuid import NAMESPACE_URL, uuid5

from core.herd.chore import Chore
from core.herd.settings import reminders_from
from core.herd.state import Herd
from core.notes.replay import local_day, zone
from core.reports.due import Due, due
from core.reports.papers.wanted import Wanted
from core.reports.wording import when
from core.words import count

#: The space of names in which entries have theirs: any name of ours will do, as long as it never changes.
NAMES = uuid5(NAMESPACE_URL, "haynote:chores")

#: The whole farm's chores.
ALL = Wanted()


@dataclass(frozen=True, slots=True)
class Entry:
    """One chore in a calendar.

    uid    its name for ever
    key    the chore's key
    start  the day, for a chore of the whole day; the moment (aware), where a person named an hour
    text   what is to be done, on one line
    alarm  how long after the start a calendar should ring
    """

    uid: str
    key: str
    start: date | datetime
    text: str
    alarm: timedelta


@dataclass(frozen=True, slots=True)
class ChoreCalendar:
    """The chores of the coming days, overdue ones first. `name` is the farm's; `made_at` is aware; `alt` says it in words."""

    name: str
    made_at: datetime
    entries: tuple[Entry, ...]
    alt: str


def chore_calendar(herd: Herd, farm: str, now: datetime, asked: Wanted = ALL) -> ChoreCalendar:
    """What `due` tells of that farm, or of one animal on it, for so many days: as a calendar made at that moment."""
    today = local_day(now, herd)
    found = due(herd, today, asked.days)
    found = found.of(asked.who) if asked.who else found
    ring = _clock(reminders_from(herd.settings))
    at_home = zone(herd.settings.timezone)
    entries = tuple(_entry(chore, farm, ring, at_home) for chore in found.chores)
    return ChoreCalendar(farm, now, entries, alt_of(found))


def alt_of(found: Due) -> str:
    """The calendar in words."""
    return f"{count(len(found.chores), 'chore')} until {when(found.until, found.today)}, for your calendar."


def uid_of(farm: str, key: str) -> str:
    """The name of a chore's entry: the same for the same farm and chore wherever and whenever it is made."""
    return str(uuid5(NAMES, f"{farm}\n{key}"))


def _entry(chore: Chore, farm: str, ring: time, at_home: tzinfo) -> Entry:
    """A chore with an hour rings at that hour, any other on its day when the farm's reminders go out."""
    if chore.time is None:
        after = timedelta(hours=ring.hour, minutes=ring.minute)
        return Entry(uid_of(farm, chore.key), chore.key, chore.on, on_one_line(chore.text), after)
    start = datetime.combine(chore.on, _clock(chore.time), at_home)
    return Entry(uid_of(farm, chore.key), chore.key, start, on_one_line(chore.text), timedelta())


def _clock(said: str) -> time:
    return time.fromisoformat(said)


def on_one_line(text: str) -> str:
    """Text as it can stand in a calendar or on paper: one line, no control characters."""
    return " ".join("".join(" " if unicodedata.category(letter) == "Cc" else letter for letter in text).split())
