"""The meat of the culls: by weight on their day and dressing share, and none under a withdrawal time."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from core.reports.winter.meat import Meat, meat
from tests.farm import TODAY, ago
from tests.herds import Barn


def on(days: int) -> date:
    """The day so many days from today."""
    return TODAY + timedelta(days)


def of(barn: Barn, **culls: int) -> Meat:
    """The meat of these, culled so many days from today."""
    return meat(barn.seen, {key: on(day) for key, day in culls.items()})


def test_a_grown_one_gives_its_share() -> None:
    """Four kilograms dress to 53 %, between 48 and 56."""
    told = of(Barn().buck("B3").weigh("B3", 4000), B3=0)
    assert (told.grams, told.low, told.high, told.heads) == pytest.approx((2120, 1920, 2240, 1))
    assert told.document()["held"] == []


def test_a_grower_gives_more_later() -> None:
    """What it weighs on its day, not today; a day beyond all counting is the last one counted."""
    barn = Barn().buck("R1", age=80).weigh("R1", 2000)
    today, later, far = (of(barn, R1=day).grams for day in (0, 30, 4000))
    assert today == pytest.approx(1060)
    assert today < later <= far


def test_one_under_a_withdrawal_time_gives_none() -> None:
    """Through its last day; after it, it does. One for which nobody noted a time gives none at all."""
    barn = Barn().buck("R1").weigh("R1", 4000).say("treated", who="R1", withdrawal_days=10, with_="a wormer")
    assert of(barn, R1=10).held == ("R1",)
    assert of(barn, R1=10).grams == 0
    assert of(barn, R1=11).grams > 0
    untold = Barn().buck("R1").say("treated", who="R1", with_="a wormer")
    assert of(untold, R1=300).held == ("R1",)


def test_a_litter_gives_for_each_of_its_kits() -> None:
    """By the weight of the last time that they were weighed together."""
    barn = Barn().buck("3").doe("10").litter("10", "3", 60, 6, weaned=6).say("litter_weighed", doe="10", grams=9000, count=6)
    told = meat(barn.seen, {"10@" + ago(60).isoformat(): TODAY})
    assert told.grams == pytest.approx(9000 * 0.53)
    assert told.heads == 6
    assert list(told.grams_of) == ["10@" + ago(60).isoformat()]


def test_who_has_no_dish_gives_nothing() -> None:
    """A key that nobody knows."""
    assert of(Barn().buck("3"), X9=0) == Meat(0.0, 0.0, 0.0, 0.0, {}, ())
