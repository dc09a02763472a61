"""The copies that a server makes by itself."""

from __future__ import annotations

import shutil
from datetime import date, timedelta
from pathlib import Path

import pytest
from sqlalchemy import make_url

from core.app.book import App
from core.app.daily_copies import days_of, folder_of, worth_keeping
from core.store.copying import troubles
from tests.core.app.conftest import AT, Say, opened

FIRST = date(2025, 1, 1)


def test_a_copy_a_day(app: App, small_farm: Say, place: Path) -> None:
    """The first call of a day makes it, whole; the next ones do nothing. It can be restored."""
    assert app.status()["last_copy"] is None
    assert app.copy_of_the_day(AT) is None
    (copy,) = Path(f"{place}.copies").iterdir()
    before = copy.read_bytes()
    small_farm("14 weighed 3-2")
    assert app.copy_of_the_day(AT + timedelta(hours=2)) is None
    assert copy.read_bytes() == before
    assert troubles(copy) == ()
    assert app.status()["last_copy"] == copy.stem == "2026-03-04"
    again = opened(place.with_name("again.sqlite"))
    assert again.restore_file(copy) == 3
    again.close()


def test_old_copies_go(app: App, small_farm: Say) -> None:
    """Over two years what stays is the last days, weeks and months."""
    for day in range(730):
        assert app.copy_of_the_day(AT + timedelta(days=day)) is None if day > 700 else True
    assert len(days_of(app._engine.url)) == len(worth_keeping(days_of(app._engine.url)))


def test_what_is_worth_keeping() -> None:
    """Seven days, and the newest of each of eight weeks and twelve months; of few days all."""
    days = [FIRST + timedelta(days=each) for each in range(730)]
    kept = sorted(worth_keeping(days), reverse=True)
    last = days[-1]
    assert set(days[-7:]) <= set(kept)
    assert len({day.isocalendar()[:2] for day in kept if (last - day).days < 56}) == 8
    assert len({(day.year, day.month) for day in kept}) == 12
    assert len(kept) <= 7 + 8 + 12
    assert worth_keeping(days[:5]) == frozenset(days[:5])
    assert worth_keeping([]) == frozenset()


def test_day_after_day_nothing_is_lost_that_the_rule_keeps() -> None:
    """Thinning each day leaves the same copies as thinning once at the end would, for the days and weeks."""
    there: frozenset[date] = frozenset()
    for each in range(400):
        there = worth_keeping({*there, FIRST + timedelta(days=each)})
    at_once = worth_keeping(FIRST + timedelta(days=each) for each in range(400))
    assert there == at_once


def test_a_place_that_takes_no_copy_says_so(app: App, place: Path) -> None:
    """In plain words, and the book goes on."""
    Path(f"{place}.copies").write_text("in the way", encoding="utf-8")
    problem = app.copy_of_the_day(AT)
    assert problem is not None
    assert problem.text.startswith("The copy could not be made")
    Path(f"{place}.copies").unlink()
    shutil.rmtree(f"{place}.copies", ignore_errors=True)
    assert app.copy_of_the_day(AT) is None


@pytest.mark.parametrize("url", ["sqlite://", "sqlite:///:memory:", "postgresql+psycopg://host/barn"])
def test_a_book_in_no_file_has_no_copies(url: str) -> None:
    """Its own machine looks after it."""
    assert folder_of(make_url(url)) is None
    assert days_of(make_url(url)) == ()
