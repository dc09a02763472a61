"""Growth curves against worked fits (kind gompertz of cases.json), and the curve's own landmarks."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from core.reckon.curve import inflection_age
from core.reckon.growth import fitted
from tests.published.worked_cases import named, of_kind


@pytest.mark.parametrize("case", of_kind("gompertz"), ids=named)
def test_a_fitted_curve_is_the_worked_one(case: dict[str, Any]) -> None:
    """A, b, k, residual sum of squares, age and speed of fastest growth."""
    told, expected, rel = case["input"], case["expected"], case["tol"]["rel"]
    found = fitted(list(zip(told["age_days"], told["weight_g"], strict=True)))
    assert found is not None
    assert (found.adult_g, found.b, found.k) == pytest.approx((expected["A"], expected["b"], expected["k"]), rel=rel)
    assert found.rss == pytest.approx(expected["rss"], rel=rel, abs=1e-6)
    assert (found.inflection_age, found.greatest_gain) == pytest.approx((expected["inflection_age"], expected["max_gain_per_day"]), rel=rel)


@pytest.mark.parametrize("case", of_kind("gompertz"), ids=named)
def test_the_day_of_a_target_weight_is_the_worked_one(case: dict[str, Any]) -> None:
    """Age and date at the target; none where the adult weight is below it."""
    told, expected = case["input"], case["expected"]
    found = fitted(list(zip(told["age_days"], told["weight_g"], strict=True)))
    assert found is not None
    age, day = found.age_at(told["target_g"]), found.date_of(date.fromisoformat(told["born"]), told["target_g"])
    assert age == (expected["target_age_days"] and pytest.approx(expected["target_age_days"], abs=case["tol"]["days"]))
    assert (day and day.isoformat()) == expected.get("target_date")


def test_growth_is_fastest_in_weeks_seven_and_eight() -> None:
    """Blasco & Gomez 1993, Animal Production 57 (abstract): greatest gain in weeks 7 to 8.

    For the curve of cases.json gom-01, b 4.1 and k 0.030, close to fits of published New Zealand White weights.
    """
    assert 6 * 7 <= inflection_age(4.1, 0.030) <= 8 * 7
