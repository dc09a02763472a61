"""The moment from which a farm has to be looked at again: until then no reminder and no digest falls due unless somebody writes.

It follows from the same herd and the same rules as the reminders themselves, and is worked out anew whenever the journal grows. Too early costs a
look for nothing, too late would be a reminder missed: where in doubt it is early.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import UTC, date, datetime, time, timedelta, tzinfo

from core.app.ticking import CATCH_UP_DAYS, digest_due, is_time
from core.herd import settings
from core.herd.chore import Chore
from core.herd.state import Herd
from core.notes.replay import zone

#: The digest comes once in so many days.
WEEK = 7

#: Clocks are put forward and back at such steps of an hour.
QUARTER = timedelta(minutes=15)


def next_look(herd: Herd, now: datetime) -> datetime | None:
    """When something may fall due next, what is due by now being out already; None where nothing is to come."""
    from core.herd.calendar import all_chores  # noqa: PLC0415 - the calendar is loaded when it is wanted

    today = now.astimezone(zone(herd.settings.timezone)).date()
    moments = [_ripe(chore, herd, now) for chore in all_chores(herd, today)]
    return min((moment for moment in (*moments, _digest(herd, now)) if moment is not None), default=None)


def _ripe(chore: Chore, herd: Herd, now: datetime) -> datetime | None:
    """When it is time for the chore's reminder; None where that has come, or is past for good."""
    local = now.astimezone(zone(herd.settings.timezone))
    if chore.on <= local.date() and is_time(chore, herd, local):
        return None
    days = (max(chore.on, local.date()), chore.on + timedelta(days=CATCH_UP_DAYS))
    return _first(herd, now, days, chore.time, lambda then: is_time(chore, herd, then))


def _digest(herd: Herd, now: datetime) -> datetime | None:
    """When the next digest is due; None for a farm without animals."""
    if not herd.animals:
        return None
    local = now.astimezone(zone(herd.settings.timezone))
    out = digest_due(herd, local)
    days = (local.date(), local.date() + timedelta(days=WEEK))
    return _first(herd, now, days, None, lambda then: digest_due(herd, then) not in {None, out})


def _first(herd: Herd, now: datetime, days: tuple[date, date], clock: str | None, true: Callable[[datetime], bool]) -> datetime | None:
    """The first moment after now at which it is true, of those days' times at which it may become so."""
    at = zone(herd.settings.timezone)
    clocks = {"00:00", settings.reminder_time(herd.settings), settings.quiet_hours(herd.settings)[1], clock or "00:00"}
    for day in range((days[1] - days[0]).days + 1):
        for moment in _moments(days[0] + timedelta(days=day), sorted(clocks), at):
            if moment > now and true(moment.astimezone(at)):
                return moment
    return None


def _moments(day: date, clocks: list[str], at: tzinfo) -> Iterator[datetime]:
    """Those times of the day in UTC. One that is left out or comes twice in a night when the clocks change: all that it might be."""
    for clock in clocks:
        said = datetime.combine(day, time.fromisoformat(clock))
        first, last = sorted(said.replace(tzinfo=at, fold=fold).astimezone(UTC) for fold in (0, 1))
        while first <= last:
            yield first
            first += QUARTER
