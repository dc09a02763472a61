"""What can be printed or carried off, as plain values: the shells draw them. The forms stand here for the shells to name."""

from __future__ import annotations

from datetime import datetime

from core.notes.replay import Book
from core.reports.papers.calendar import ChoreCalendar, Entry, chore_calendar
from core.reports.papers.wanted import Wanted, wanted

__all__ = ["ChoreCalendar", "Entry", "Wanted", "calendar", "wanted"]


def calendar(known: Book, farm: str, now: datetime, asked: Wanted) -> ChoreCalendar:
    """The chores of the coming days."""
    return chore_calendar(known.herd, farm, now, asked)
