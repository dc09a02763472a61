"""The chores as entries of a calendar."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, timedelta

from core.herd.settings import changed
from core.herd.state import Herd
from core.reports.due import due
from core.reports.papers.calendar import chore_calendar, on_one_line, uid_of
from core.reports.papers.wanted import Wanted, wanted
from tests.farm import TODAY, small_herd, tell

NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)


def test_its_entries_are_what_is_due() -> None:
    """The same chores in the same order, overdue ones first."""
    herd = small_herd()
    made = chore_calendar(herd, "home", NOW, Wanted(days=60))
    chores = due(herd, TODAY, 60).chores
    assert chores
    assert [(entry.key, entry.start, entry.text) for entry in made.entries] == [(chore.key, chore.on, chore.text) for chore in chores]
    assert made.alt == f"{len(chores)} chores until Sun 24 Jan 2027, for your calendar."


def test_a_chore_keeps_its_name_when_it_moves() -> None:
    """Put off to another day it is still the same entry, so a calendar moves it."""
    herd = small_herd()
    before = chore_calendar(herd, "home", NOW)
    first = before.entries[-1]
    moved = tell(herd, "remind", text=first.text, on=date(2026, 12, 1), key=first.key)
    after = {entry.key: entry for entry in chore_calendar(moved, "home", NOW, Wanted(days=60)).entries}[first.key]
    assert after.start == date(2026, 12, 1) != first.start
    assert after.uid == first.uid


def test_names_are_each_farms_own() -> None:
    """Two farms' does may share a tag; their chores must not replace each other in one calendar."""
    keys = ("wean:14:2026-10-24", "wean:15:2026-10-24")
    names = {uid_of(farm, key) for farm in ("home", "hill") for key in keys}
    assert len(names) == 4
    assert uid_of("home", keys[0]) == uid_of("home", keys[0])


def test_whole_days_ring_when_the_reminders_go_out() -> None:
    """At the farm's hour."""
    herd = replace(small_herd(), settings=changed(Herd().settings, "reminder_time", "06:45"))
    assert {entry.alarm for entry in chore_calendar(small_herd(), "home", NOW).entries} == {timedelta(hours=7)}
    assert {entry.alarm for entry in chore_calendar(herd, "home", NOW).entries} == {timedelta(hours=6, minutes=45)}


def test_an_hour_that_a_person_named_is_kept() -> None:
    """It is a moment at the farm, and rings at once."""
    herd = tell(small_herd(), "remind", text="nails on 9", on=date(2026, 12, 4), time="16:30", who="9")
    herd = replace(herd, matings=(), settings=changed(herd.settings, "timezone", "America/Chicago"))
    (entry,) = chore_calendar(herd, "home", NOW, Wanted("9")).entries
    assert entry.start == datetime(2026, 12, 4, 22, 30, tzinfo=UTC)
    assert entry.alarm == timedelta()


def test_one_animals_chores() -> None:
    """Only hers."""
    entries = chore_calendar(small_herd(), "home", NOW, Wanted("14", days=60)).entries
    assert entries
    assert all(":14:" in entry.key for entry in entries)


def test_text_fits_on_a_line() -> None:
    """Line ends, tabs and control characters become one space."""
    assert on_one_line(" trim\r\nnails\ton\x00 9 ") == "trim nails on 9"


def test_a_wish_is_read_back_from_its_key() -> None:
    """Whatever it holds."""
    for wish in (Wanted(), Wanted("R 2&1=é"), Wanted(scope="does", breed="Mini Rex", days=0)):
        assert wanted(wish.key()) == wish
    assert Wanted().key() is None
