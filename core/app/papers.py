"""What can be printed or carried off, as plain values: the shells draw them. The forms stand here for the shells to name."""

from __future__ import annotations

from datetime import datetime

from core.notes.replay import Book
from core.problem import Problem
from core.reports.papers.cage_cards import CageCard
from core.reports.papers.calendar import ChoreCalendar, Entry, chore_calendar
from core.reports.papers.leaf import Leaf, Section
from core.reports.papers.paper import PAPERS, SIZES, Paper
from core.reports.papers.tree import Ancestor, PedigreeTree
from core.reports.papers.wanted import Wanted, wanted

__all__ = [
    "PAPERS",
    "SIZES",
    "Ancestor",
    "CageCard",
    "ChoreCalendar",
    "Entry",
    "Leaf",
    "Paper",
    "PedigreeTree",
    "Section",
    "Wanted",
    "calendar",
    "paper",
    "wanted",
]


def calendar(known: Book, farm: str, now: datetime, asked: Wanted) -> ChoreCalendar:
    """The chores of the coming days."""
    return chore_calendar(known.herd, farm, now, asked)


def paper(known: Book, farm: str, about: str, asked: Wanted, now: datetime) -> Paper | Problem:
    """One of PAPERS. KeyError where there is none of that name."""
    from core.reports.papers.press import paper as printed  # noqa: PLC0415 - the reckoning behind it is loaded by the first paper

    return printed(known.herd, farm, about, asked, now)
