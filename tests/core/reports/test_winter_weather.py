"""How cold the winter is likely to be: by setting, by the farm's notes, or not known."""

from __future__ import annotations

from datetime import date

import pytest

from core.reports.winter.weather import Air, air
from tests.farm import TODAY, ago
from tests.herds import Barn


def told(barn: Barn, days: int = 10, today: date = TODAY) -> Air:
    """The air of the days to come."""
    return air(barn.herd, today, days)


def nights(low: float) -> Barn:
    """A farm that told how cold its winter nights are."""
    return Barn().set("winter_low", low)


def test_nothing_told_is_not_known() -> None:
    """No cold is counted then, and heat or snow tell nothing of it."""
    barn = Barn().say("weather", what="heat", celsius=35.0).say("weather", what="other")
    assert told(barn) == Air((None,) * 10, None)
    assert told(barn).cold_days == 0


def test_a_set_low_holds_from_winter_to_spring() -> None:
    """The night's low, five degrees warmer over night and day; from the first of December on."""
    one = told(nights(-10.0))
    assert one == Air((None,) * 6 + (-5.0,) * 4, "setting")
    assert one.cold_days == 4


def test_in_winter_it_holds_from_today() -> None:
    """In January the next December is beyond spring."""
    assert told(nights(0.0), 90, date(2027, 1, 10)).celsius == (5.0,) * 81 + (None,) * 9


def test_last_winter_s_notes_tell_of_their_weeks() -> None:
    """A note of 28 November a year ago: three days before and after it; notes of one week are averaged."""
    barn = Barn().say("weather", what="cold", celsius=-12.0, on=ago(362)).say("weather", what="cold", celsius=-8.0, on=ago(362))
    assert told(barn) == Air((-5.0,) * 7 + (None,) * 3, "notes")


@pytest.mark.parametrize(("what", "low"), [("frost", 0.0), ("cold", 5.0)])
def test_a_word_stands_for_its_degrees(what: str, low: float) -> None:
    """Frost is freezing point, cold is where cold begins."""
    assert told(Barn().say("weather", what=what, on=ago(2))).celsius[:3] == (low + 5, low + 5, None)


def test_what_is_older_than_some_winters_tells_nothing() -> None:
    """Three winters back counts, four do not."""
    assert told(Barn().say("weather", what="frost", on=ago(1096))).by == "notes"
    assert told(Barn().say("weather", what="frost", on=ago(1461))).by is None
