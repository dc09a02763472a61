"""The week's chores for the barn wall: those before today first, then day by day, each with a box to tick and room to write."""

from __future__ import annotations

from datetime import date, timedelta

from core.herd.chore import Chore
from core.herd.state import Herd
from core.reports.due import chore_line, due
from core.reports.papers.calendar import on_one_line
from core.reports.papers.leaf import Leaf, Section
from core.reports.papers.wanted import Wanted
from core.reports.wording import begun
from core.words import day

#: Days after today on a sheet, where none are named.
AHEAD = 6  # not a figure: with today a week
#: What is written beside a chore, by hand.
SEEN = ("", "What you saw")


def chores_sheet(herd: Herd, today: date, wish: Wanted) -> Leaf:
    """The chores of the herd, or of one animal. A week has each of its days; of a longer time only those with chores are told."""
    ahead = AHEAD if wish.days is None else wish.days
    found = due(herd, today, ahead)
    found = found.of(wish.who) if wish.who else found
    late = tuple((on_one_line(chore_line(chore, today)), "") for chore in found.overdue)
    before = (Section("Before today", columns=SEEN, rows=late, to_tick=True),) if late else ()
    coming: dict[date, list[Chore]] = {today + timedelta(away): [] for away in range(ahead + 1)} if ahead <= AHEAD else {}
    for chore in found.chores[len(late) :]:
        coming.setdefault(chore.on, []).append(chore)
    whose = f" for {wish.who}" if wish.who else ""
    title = f"Chores{whose}, {_long(today)}" + (f" to {_long(found.until)}" if ahead else "")
    return Leaf(title, (*before, *(_day(on, chores) for on, chores in sorted(coming.items()))), foot=found.cautions())


def _long(on: date) -> str:
    return f"{day(on)} {on.year}"


def _day(on: date, chores: list[Chore]) -> Section:
    if not chores:
        return Section(day(on), lines=("Nothing is due.",))
    rows = tuple((on_one_line(begun(f"{chore.time} {chore.text}" if chore.time else chore.text)), "") for chore in chores)
    return Section(day(on), columns=SEEN, rows=rows, to_tick=True)
