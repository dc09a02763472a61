"""A rabbit's own curve, its target date and its weight at a standard age."""

from __future__ import annotations

from datetime import date

import numpy as np
import pytest

from core.reckon.curve import weight_at_age
from core.reckon.growth import GrowthFit, fitted, standard_weight

CURVE = (4000.0, 4.0, 0.03)
BORN = date(2026, 3, 1)
WEIGHED = [(age, weight_at_age(age, *CURVE) * (1.01 if at % 2 else 0.99)) for at, age in enumerate(range(21, 78, 7))]


def test_more_weighings_narrow_the_interval() -> None:
    """The age at 2,000 g is surer after nine weighings than after four."""
    few, many = fitted(WEIGHED[2:6]), fitted(WEIGHED)
    assert few is not None
    assert many is not None
    (low, high), (later_low, later_high) = few.age_interval(2000) or (0, 0), many.age_interval(2000) or (0, 0)
    assert low < later_low < (many.age_at(2000) or 0) < later_high < high


def test_a_target_date_comes_with_its_earliest_and_latest_day() -> None:
    """In order, around the date itself."""
    found = fitted(WEIGHED)
    assert found is not None
    early, late = found.dates_of(BORN, 2800) or (BORN, BORN)
    assert early <= (found.date_of(BORN, 2800) or BORN) <= late


def test_a_target_above_the_adult_weight_has_no_date() -> None:
    """Said as None, not as a far day."""
    found = fitted(WEIGHED)
    assert found is not None
    assert (found.date_of(BORN, 9000), found.dates_of(BORN, 9000), found.age_interval(9000)) == (None, None, None)
    assert found.ages_when(9000, (0.5,), until=300) == (None,)
    assert found.chance_ever(9000) < 0.01


def test_chances_of_a_weight_rise_with_age_and_pass_half_on_the_curve() -> None:
    """By its own date even; early unlikely, late likely."""
    found = fitted(WEIGHED)
    assert found is not None
    age = found.age_at(2000) or 0
    assert found.chance_by(age - 3, 2000) < found.chance_by(age, 2000) < found.chance_by(age + 3, 2000)
    assert found.chance_by(age, 2000) == pytest.approx(0.5)
    early, middle, late = (day or 0 for day in found.ages_when(2000, (0.1, 0.5, 0.9), until=300))
    assert early <= middle <= late
    assert middle == pytest.approx(age, abs=1)


def test_a_curve_without_doubt_reaches_a_weight_or_not() -> None:
    """No spread: chances are none or all."""
    sure = GrowthFit(*CURVE, 0.0, 0, np.zeros((3, 3)))
    assert (sure.chance_by(20, 2000), sure.chance_by(100, 2000), sure.chance_ever(3900), sure.chance_ever(4100)) == (0, 1, 1, 0)


@pytest.mark.parametrize(
    "weighings",
    [[], [(30, 600), (60, 1500)], [(30, 600), (30, 620), (60, 1500)], [(30, 900), (60, 600), (90, 300)], [(30, 0), (60, 500), (90, 900)]],
    ids=["none", "two", "two ages", "shrinking", "a weight of nothing"],
)
def test_too_little_gives_no_curve(weighings: list[tuple[float, float]]) -> None:
    """Three different ages and growing weights are needed."""
    assert fitted(weighings) is None


def test_a_weighing_near_the_standard_age_keeps_its_ratio_to_the_curve() -> None:
    """Ten percent light at 67 days is ten percent light at 70."""
    light = 0.9 * weight_at_age(67, *CURVE)
    assert standard_weight([(67, light)], 70, CURVE, within_days=7) == pytest.approx(0.9 * weight_at_age(70, *CURVE))


def test_between_two_weighings_the_ratio_runs_straight() -> None:
    """Light at 60, on the curve at 80: halfway light at 70."""
    told = [(80, weight_at_age(80, *CURVE)), (60, 0.8 * weight_at_age(60, *CURVE))]
    assert standard_weight(told, 70, CURVE, within_days=14) == pytest.approx(0.9 * weight_at_age(70, *CURVE))


def test_weighings_too_far_from_the_standard_age_tell_nothing() -> None:
    """None rather than a guess."""
    assert standard_weight([(30, 600), (120, 3000)], 70, CURVE, within_days=14) is None
    assert standard_weight([], 70, CURVE, within_days=14) is None
