"""What the pictures of does and bucks beside each other show."""

from __future__ import annotations

import pytest

from core.problem import Problem
from core.reckon.interval import LEVEL, reach
from core.reports.bucks import grams_scale, growth_merit
from core.reports.flags import low_survival
from core.reports.pictures.ranks import ROWS_SHOWN, bucks, dams
from core.reports.pictures.values import Ranks
from core.words import OUNCE_G
from tests.herds import Barn, two_sires


def raised(*shares: int) -> Barn:
    """Does D0, D1, ... with two litters of eight each, of which they weaned so many."""
    barn = Barn().buck("3")
    for at, kept in enumerate(shares):
        barn.doe(f"D{at:02}")
        for born_ago in (300, 150):
            barn.litter(f"D{at:02}", "3", born_ago, 8, weaned=kept)
    return barn


def of_dams(barn: Barn, breed: str | None = None) -> Ranks:
    """The picture of the does."""
    found = dams(barn.seen, breed)
    assert isinstance(found, Ranks)
    return found


def of_bucks(barn: Barn, breed: str | None = None) -> Ranks:
    """The picture of the bucks."""
    found = bucks(barn.seen, breed)
    assert isinstance(found, Ranks)
    return found


def test_does_stand_by_what_they_raise() -> None:
    """The lowest first, each with its interval and what it stands on: the numbers of the herd."""
    barn = raised(8, 2, 7)
    told = of_dams(barn)
    rows = told.groups[0].rows
    assert [row.name for row in rows] == ["D01", "D02", "D00"]
    share = barn.seen.dams[barn.find("D01").key].share
    assert (rows[0].value, rows[0].low, rows[0].high) == pytest.approx((share.estimate * 100, share.low * 100, share.high * 100))
    assert rows[0].stands_on == "4 of 16, 2 litters"
    assert (told.line, told.line_said) == (70, "your line 70 %")


def test_a_mark_is_a_flag() -> None:
    """Exactly those that the flags name; the words name them too."""
    barn = raised(8, 2, 3, 7)
    told = of_dams(barn)
    marked = [row.name for row in told.groups[0].rows if row.marked]
    assert marked == [one.tag for one in barn.seen.living if low_survival(barn.seen, one)] == ["D01", "D02"]
    assert told.marked_said
    assert "Below your line of 70 %, more likely than not: D01 and D02." in told.alt
    assert not of_dams(raised(8)).marked_said


def test_one_doe_is_both_ends() -> None:
    """She is not named twice."""
    assert of_dams(raised(8)).alt.split("\n")[1].startswith("D00 9")


def test_many_flagged_does_are_counted() -> None:
    """Three by name."""
    assert "D00, D01, D02 and 2 more." in of_dams(raised(1, 1, 1, 1, 1, 8, 8, 8)).alt


def test_of_many_does_both_ends_are_shown() -> None:
    """And how many stand between."""
    group = of_dams(raised(*([8] * 20))).groups[0]
    assert len(group.rows) == ROWS_SHOWN
    assert (group.left_out, group.upper) == (4, 8)


def test_a_breed_of_does() -> None:
    """Only hers; where there is none, how to begin."""
    assert of_dams(raised(8), "New Zealand").title == "New Zealand does by kits raised"
    assert isinstance(dams(raised(8).seen, "Rex"), Problem)


def test_bucks_stand_by_the_growth_that_they_pass_on() -> None:
    """The best first: breeding values in the farm's small weights, with the middle 80 %."""
    barn = two_sires()
    told = of_bucks(barn)
    rows = told.groups[0].rows
    assert [row.name for row in rows] == ["7 Rowan", "3 Flint"]
    rowan = barn.find("7")
    value, _, kits = growth_merit(barn.seen, rowan)
    assert value is not None
    assert rows[0].value == pytest.approx(value / float(OUNCE_G))
    trait = barn.seen.growth
    assert trait is not None
    half = reach(LEVEL) * trait.solved.asked[rowan.key].standard_error * grams_scale(rowan) / float(OUNCE_G)
    assert (rows[0].low, rows[0].high) == pytest.approx((rows[0].value - half, rows[0].value + half))
    assert rows[0].stands_on == f"{kits} kits weighed"
    assert told.along.start <= min(row.low for row in rows)
    assert told.along.end >= max(row.high for row in rows)
    assert "New Zealand: 7 Rowan" in told.alt


def test_bucks_of_several_breeds_stand_apart() -> None:
    """Values are told against the breed's own mean, so breeds don't mix; a young one without kits stands on its own weight."""
    barn = two_sires().buck("5", age=200, breed=None).weigh("5", 1800, 130).set("weight_units", "kg")
    told = of_bucks(barn)
    assert [group.heading for group in told.groups] == ["New Zealand", "Breed unknown"]
    assert told.groups[1].rows[0].stands_on == "no kit weighed"
    assert told.note.startswith("g passed on")
    assert of_bucks(barn, "New Zealand").title == "New Zealand bucks by their kits' growth"


def test_bucks_of_whom_nothing_tells_are_left_out() -> None:
    """Without a weight there is no picture at all."""
    assert "9" not in [row.name for row in of_bucks(two_sires().buck("9")).groups[0].rows]
    found = bucks(Barn().buck("9").seen)
    assert isinstance(found, Problem)
    assert found.text.startswith("Nothing tells yet")


def test_of_many_bucks_those_with_weighed_kits_are_shown() -> None:
    """Young ones of whose kits nothing is known give way; where there is room they are shown too."""
    barn = two_sires()
    for number in range(ROWS_SHOWN):
        barn.buck(f"Y{number}", age=200).weigh(f"Y{number}", 1500 + number, 130)
    assert [row.name for row in of_bucks(barn).groups[0].rows] == ["7 Rowan", "3 Flint"]
