"""A rabbit's own curve, its target date and its weight at a standard age."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

import pytest

from core.reckon.curve import weight_at_age
from core.reckon.growth import GrowthPrior, fitted, standard_weight

CURVE = (4000.0, 4.0, 0.03)
PRIOR = GrowthPrior(adult_g=4000, b=4.0, k=0.03, sd_ln_adult=0.1, sd_ln_b=0.05, sd_ln_k=0.1, weight_sd_g=80)
BORN = date(2026, 3, 1)


def test_without_weighings_the_prior_comes_back() -> None:
    """The curve expected of the breed, with the prior's own doubt."""
    found = fitted([], PRIOR)
    assert found is not None
    assert (found.adult_g, found.b, found.k) == pytest.approx(CURVE)
    assert found.spread.diagonal() == pytest.approx([0.1**2, 0.05**2, 0.1**2])


def test_one_light_weighing_lowers_the_curve() -> None:
    """Shrunk: between the weighing and the breed's curve."""
    found = fitted([(56, 1200)], PRIOR)
    assert found is not None
    assert 1200 < found.weight_at(56) < weight_at_age(56, *CURVE)


def test_more_weighings_narrow_the_interval() -> None:
    """The age at 2,000 g is surer after five weighings than after one."""
    ages = (42, 49, 56, 63, 70)
    few, many = fitted([(56, weight_at_age(56, *CURVE))], PRIOR), fitted([(age, weight_at_age(age, *CURVE)) for age in ages], PRIOR)
    assert few is not None
    assert many is not None
    (low, high), (later_low, later_high) = few.age_interval(2000) or (0, 0), many.age_interval(2000) or (0, 0)
    assert low < later_low < (many.age_at(2000) or 0) < later_high < high


def test_a_target_date_comes_with_its_earliest_and_latest_day() -> None:
    """In order, around the date itself."""
    found = fitted([(56, 1500)], PRIOR)
    assert found is not None
    early, late = found.dates_of(BORN, 2300) or (BORN, BORN)
    assert early < (found.date_of(BORN, 2300) or BORN) < late


def test_a_target_above_the_adult_weight_has_no_date() -> None:
    """Said as None, not as a far day."""
    found = fitted([(56, 1500)], PRIOR)
    assert found is not None
    assert (found.date_of(BORN, 9000), found.dates_of(BORN, 9000), found.age_interval(9000)) == (None, None, None)


@pytest.mark.parametrize(
    "weighings",
    [[], [(30, 600), (60, 1500)], [(30, 600), (30, 620), (60, 1500)], [(30, 900), (60, 600), (90, 300)], [(30, 0), (60, 500), (90, 900)]],
    ids=["none", "two", "two ages", "shrinking", "a weight of nothing"],
)
def test_without_a_prior_too_little_gives_no_curve(weighings: list[tuple[float, float]]) -> None:
    """Three different ages and growing weights are needed."""
    assert fitted(weighings) is None


def test_a_loose_prior_gives_the_least_squares_curve() -> None:
    """With next to no opinion the prior doesn't matter."""
    weighings = [(21, 486.0), (28, 723.0), (35, 1030.0), (42, 1310.0), (49, 1547.0), (56, 1905.0), (63, 2171.0), (70, 2478.0), (77, 2632.0)]
    plain, loose = fitted(weighings), fitted(weighings, replace(PRIOR, sd_ln_adult=100, sd_ln_b=100, sd_ln_k=100))
    assert plain is not None
    assert loose is not None
    assert (loose.adult_g, loose.b, loose.k) == pytest.approx((plain.adult_g, plain.b, plain.k), rel=1e-3)


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
