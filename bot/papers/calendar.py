"""A calendar file (RFC 5545): an event a chore, each with an alarm."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from icalendar import Alarm, Event

    from core.app.papers import ChoreCalendar, Entry

#: How long a chore with an hour blocks in a calendar. A choice of ours: most take less.
LASTS = timedelta(minutes=15)
WRITER = "-//Haynote//Chores//EN"


def ics(told: ChoreCalendar) -> bytes:
    """The file. Made again later it replaces what it made before: same names, a higher sequence."""
    from icalendar import Calendar  # noqa: PLC0415 - loaded by the first calendar

    calendar = Calendar()
    calendar.add("prodid", WRITER)
    calendar.add("version", "2.0")
    calendar.add("name", f"Chores: {told.name}")
    calendar.add("x-wr-calname", f"Chores: {told.name}")
    for entry in told.entries:
        calendar.add_component(_event(entry, told.made_at))
    content: bytes = calendar.to_ical()
    return content


def _event(entry: Entry, made_at: datetime) -> Event:
    from icalendar import Event  # noqa: PLC0415

    event = Event()
    event.add("uid", entry.uid)
    event.add("dtstamp", made_at.astimezone(UTC))
    event.add("sequence", int(made_at.timestamp()) // 60)
    event.add("summary", entry.text)
    event.add("categories", ["Rabbits"])
    event.add("transp", "TRANSPARENT")
    for name, value in _times(entry.start):
        event.add(name, value)
    event.add_component(_alarm(entry))
    return event


def _times(start: date | datetime) -> tuple[tuple[str, date | datetime], tuple[str, date | datetime]]:
    """When it begins and ends: a whole day, or a moment in universal time, which needs no timezone told."""
    if isinstance(start, datetime):
        return ("dtstart", start.astimezone(UTC)), ("dtend", start.astimezone(UTC) + LASTS)
    return ("dtstart", start), ("dtend", start + timedelta(days=1))


def _alarm(entry: Entry) -> Alarm:
    from icalendar import Alarm  # noqa: PLC0415

    alarm = Alarm()
    alarm.add("action", "DISPLAY")
    alarm.add("description", entry.text)
    alarm.add("trigger", entry.alarm)
    return alarm
