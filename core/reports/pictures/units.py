"""The farm's units along an axis, and its days."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta

from core.herd.settings import Settings
from core.words import OUNCE_G, POUND_G

WEEK = 7  # not a figure: days in a week
G_IN_KG = 1000  # not a figure: grams in a kilogram


def heavy(settings: Settings) -> tuple[str, float]:
    """What an animal is weighed in: its name, and grams in one."""
    return ("lb", float(POUND_G)) if settings.weight_units == "lb" else ("kg", float(G_IN_KG))


def light(settings: Settings) -> tuple[str, float]:
    """What a difference between animals is told in: its name, and grams in one."""
    return ("oz", float(OUNCE_G)) if settings.weight_units == "lb" else ("g", 1.0)


def months(first: date, last: date) -> Iterator[date]:
    """The first of each month within these days."""
    day = first if first.day == 1 else _next_month(first)
    while day <= last:
        yield day
        day = _next_month(day)


def _next_month(day: date) -> date:
    return (day.replace(day=1) + timedelta(days=31)).replace(day=1)  # not a figure: the longest month


def day_marks(first: date, last: date, most: int = 7) -> tuple[tuple[float, str], ...]:
    """Marks for an axis of days counted from the first: months; where the time is short, Mondays; at most so many.

    Where the days run over a new year, the first mark and the first of each year have the year under them.
    """
    by_month = list(months(first, last))
    found = by_month if len(by_month) > 1 else _weeks(first, last)
    shown = found[:: -(-len(found) // most)]
    told: list[tuple[float, str]] = []
    year = first.year if first.year == last.year else None
    for day in shown:
        name = f"{day:%b}" if found is by_month else f"{day.day} {day:%b}"
        told.append((float((day - first).days), name if day.year == year else f"{name}\n{day.year}"))
        year = day.year
    return tuple(told)


def _weeks(first: date, last: date) -> list[date]:
    """The Mondays within these days; where there is none, the first day."""
    start = first + timedelta(days=-first.weekday() % WEEK)
    return [start + timedelta(days=step) for step in range(0, (last - start).days + 1, WEEK)] or [first]


def week_marks(weeks: int) -> tuple[tuple[float, str], ...]:
    """Marks for an axis of weeks of age: every second one, or every fourth where they are many."""
    step = 2 if weeks <= 16 else 4  # not a figure: what fits beside each other
    return tuple((float(at), str(at)) for at in range(0, weeks + 1, step))
