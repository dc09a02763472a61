"""The copies of the book that the server makes by itself: one a day, the older ones thinned out to one a week and one a month."""

from __future__ import annotations

from collections.abc import Callable, Hashable, Iterable
from datetime import date
from pathlib import Path

from core.app.looking_after import backup
from core.problem import Problem
from core.store.names import URL, Engine

#: So many copies are kept: of the last days, of the last weeks and of the last months that have one.
DAYS = 7
WEEKS = 8
MONTHS = 12

#: Where the photos of all these copies lie, each once: it is named by what it holds, and never changes.
PHOTOS = "photos"


def worth_keeping(days: Iterable[date]) -> frozenset[date]:
    """Of the days that have a copy, those whose copy stays: the newest ones, and the newest of each week and of each month."""
    newest_first = sorted(days, reverse=True)
    return frozenset(
        (
            *newest_first[:DAYS],
            *_newest_of_each(newest_first, lambda day: day.isocalendar()[:2])[:WEEKS],
            *_newest_of_each(newest_first, lambda day: (day.year, day.month))[:MONTHS],
        )
    )


def _newest_of_each(newest_first: Iterable[date], span: Callable[[date], Hashable]) -> list[date]:
    found: dict[Hashable, date] = {}
    for day in newest_first:
        found.setdefault(span(day), day)
    return list(found.values())


def copy_of_the_day(engine: Engine, today: date) -> Problem | None:
    """Today's copy, if it is not there yet; then those go that are not worth keeping. None where all is well, or there is nothing to do.

    A PostgreSQL book, and one that is in no file, has none: those who run it copy it by its own means.
    """
    folder = folder_of(engine.url)
    if folder is None or (folder / _name(today)).exists():
        return None
    problem = backup(engine, folder / _name(today), folder / PHOTOS)
    if problem is None:
        there = days_of(engine.url)
        for day in set(there) - worth_keeping(there):
            (folder / _name(day)).unlink(missing_ok=True)
    return problem


def folder_of(url: URL) -> Path | None:
    """Where the copies lie: beside the book."""
    in_a_file = url.get_backend_name() == "sqlite" and url.database not in {None, "", ":memory:"}
    return Path(f"{url.database}.copies").absolute() if in_a_file else None


def days_of(url: URL) -> tuple[date, ...]:
    """The days that have a copy, the oldest first."""
    folder = folder_of(url)
    files = sorted(folder.glob("????-??-??.sqlite")) if folder is not None else []
    return tuple(date.fromisoformat(file.stem) for file in files)


def _name(day: date) -> str:
    return f"{day.isoformat()}.sqlite"
