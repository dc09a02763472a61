"""The moment of the next look: a clock that looks only then puts out the same as one that looks all the time, at the same moments."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, date, datetime, time, timedelta

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.app.next_look import next_look
from core.app.ticking import digest_due, is_time
from core.herd.settings import changed
from core.herd.state import Herd
from core.notes.replay import book, zone
from core.reports.due import morning
from tests.farm import TODAY, tell
from tests.strategies import days, journals

QUARTER = timedelta(minutes=15)
DAYS = 12
Due = dict[tuple[str, date], datetime]

clocks = st.builds(lambda quarters: f"{quarters // 4:02d}:{quarters % 4 * 15:02d}", st.integers(0, 95))


def due(herd: Herd, now: datetime, known: Due) -> None:
    """Add what is due now and was not before, with the moment."""
    local = now.astimezone(zone(herd.settings.timezone))
    for chore in morning(herd, local.date()):
        if is_time(chore, herd, local):
            known.setdefault((chore.key, chore.on), now)
    if (day := digest_due(herd, local)) is not None:
        known.setdefault(("digest", day), now)


def always(herd: Herd, start: datetime, end: datetime) -> Due:
    """What a clock finds that looks at every quarter of an hour."""
    found: Due = {}
    while start <= end:
        due(herd, start, found)
        start += QUARTER
    return found


def at_its_time(herd: Herd, start: datetime, end: datetime) -> tuple[Due, int]:
    """What a clock finds that looks now and then only when it has to; and how often it looks."""
    found: Due = {}
    looks = 0
    moment: datetime | None = start
    while moment is not None and moment <= end:
        due(herd, moment, found)
        looks += 1
        moment = next_look(herd, moment)
    return found, looks


@st.composite
def farms(draw: st.DrawFn) -> tuple[Herd, date]:
    """A herd with its own hours, quiet ones and place, with a reminder at a time; and a day of that year."""
    start = draw(days(220))
    herd = tell(
        book(Herd(), draw(journals())).herd, "remind", text="vents", on=start + timedelta(draw(st.integers(-3, 10))), time=draw(clocks)
    )
    settings = herd.settings
    for name in ("reminder_time", "quiet_from", "quiet_to"):
        settings = changed(settings, name, draw(clocks))
    settings = changed(settings, "timezone", draw(st.sampled_from(["America/Chicago", "UTC", "Australia/Lord_Howe"])))
    return replace(herd, settings=changed(settings, "digest_day", draw(st.sampled_from(["monday", "saturday"])))), start


@given(farms())
def test_nothing_is_missed_and_nothing_comes_late(farm: tuple[Herd, date]) -> None:
    """Whatever the farm, also in the nights when the clocks change."""
    herd, day = farm
    start = datetime.combine(day, time(5, 15), UTC)
    end = start + timedelta(days=DAYS)
    assert at_its_time(herd, start, end)[0] == always(herd, start, end)


@pytest.mark.parametrize("day", [date(2026, 3, 7), date(2026, 10, 31)])
@pytest.mark.parametrize("clock", ["01:30", "02:30", "03:00"])
def test_the_nights_when_the_clocks_change(day: date, clock: str) -> None:
    """A time that is left out comes when the clocks go forward; one that comes twice, the first time."""
    herd = replace(Herd(), settings=changed(Herd().settings, "timezone", "America/Chicago"))
    herd = tell(herd, "remind", text="vents", on=day + timedelta(1), time=clock)
    start = datetime.combine(day, time(12), UTC)
    end = start + timedelta(days=2)
    found, looks = at_its_time(herd, start, end)
    assert found == always(herd, start, end)
    assert len(found) == 1
    assert looks == 2


def test_a_farm_is_looked_at_when_something_is_due_and_else_left_alone() -> None:
    """A doe bred today: a look at each day of her chores and at each digest, in weeks of days without."""
    herd = tell(tell(tell(Herd(), "animal", tag="14", sex="doe"), "animal", tag="3", sex="buck"), "bred", doe="14", buck="3")
    start = datetime.combine(TODAY, time(12), UTC)
    found, looks = at_its_time(herd, start, start + timedelta(days=34))
    assert len(found) == 3 + 5
    assert looks == 1 + len(found)


def test_nothing_to_come() -> None:
    """No animal, no chore: nobody has to look."""
    assert next_look(Herd(), datetime.combine(TODAY, time(12), UTC)) is None
