"""A week's chores, day by day, what is late first."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import timedelta

from core.herd.chore import Chore
from core.reports.due import due
from core.reports.evidence import Evidence
from core.reports.pictures.units import WEEK
from core.reports.pictures.values import DayRow, Week
from core.reports.wording import when
from core.words import count, day

#: Lines of chores that fit on the strip, and those that a day gets at least.
LINES = 22
LEAST = 2


def week(barn: Evidence, _key: str | None = None) -> Week:
    """The picture of today and the six days after it."""
    found = due(barn.herd, barn.today, WEEK - 1)
    late = list(found.overdue)
    ahead = [barn.today + timedelta(days=step) for step in range(WEEK)]
    of_day = {on: [one for one in found.chores if one.on == on] for on in ahead}
    room = _shared([len(late), *(len(each) for each in of_day.values())], LINES)
    rows = [_row("late", late[-room[0] :] if room[0] else [], len(late) - room[0], late=True)] if late else []
    for (on, chores), lines in zip(of_day.items(), room[1:], strict=True):
        rows.append(_row(day(on), chores[:lines], len(chores) - lines, today=on == barn.today))
    until = when(ahead[-1], barn.today)
    told = f"{count(len(found.chores), 'chore')} until {until}" + (f", {len(late)} late" if late else "")
    return Week(
        title="The week's chores",
        note=told if found.chores else f"nothing until {until}",
        alt="\n".join(found.reply(whole=len(found.chores) <= LINES).lines),
        days=tuple(rows),
    )


def _row(name: str, chores: Sequence[Chore], more: int, *, today: bool = False, late: bool = False) -> DayRow:
    return DayRow(name, tuple(_line(one) for one in chores), more, today, late)


def _line(one: Chore) -> str:
    return f"{one.time} {one.text}" if one.time else one.text


def _shared(wanted: Sequence[int], lines: int) -> list[int]:
    """How many lines each gets, so that all together have no more than that: the longest are shortened first, down to a few each."""
    given = list(wanted)
    while sum(given) > lines and max(given) > LEAST:
        given[given.index(max(given))] -= 1
    return given
