"""Falling survival: a real fall or chance."""

from __future__ import annotations

import pytest

from core.reckon.trend import survival_trend


def test_one_litter_has_no_trend() -> None:
    """Nor have litters without kits."""
    assert survival_trend([(8, 6)], prior_sd=0.5) is None
    assert survival_trend([(8, 6), (0, 0)], prior_sd=0.5) is None


@pytest.mark.parametrize(
    ("litters", "sign"),
    [
        ([(8, 8), (8, 0)], -1),
        ([(8, 0), (8, 8)], 1),
        ([(8, 8), (8, 5), (8, 0)], -1),
        ([(8, 8), (8, 5), (8, 7), (8, 0)], 0),
        ([(8, 8), (9, 9), (7, 7)], 0),
        ([(8, 0), (9, 0)], 0),
    ],
    ids=["then all died", "then all lived", "meeting in one litter", "overlapping", "all lived", "all died"],
)
def test_a_slope_without_end_is_held_by_the_prior(litters: list[tuple[int, int]], sign: int) -> None:
    """No finite line is told where there is none, and the trend stays finite."""
    found = survival_trend(litters, prior_sd=0.5)
    assert found is not None
    assert (found.fitted is None) == (len(litters) != 4)
    assert abs(found.slope) < 2
    if sign:
        assert found.slope * sign > 0


def test_the_prior_leaves_many_litters_alone_and_doubts_few() -> None:
    """The same fall is surer over eight litters than over three."""
    many = survival_trend([(10, kept) for kept in (10, 9, 9, 8, 7, 6, 5, 4)], prior_sd=0.5)
    few = survival_trend([(10, kept) for kept in (9, 8, 7)], prior_sd=0.5)
    assert many is not None
    assert few is not None
    assert 0.5 < few.chance_of_fall < 0.95 < many.chance_of_fall


def test_a_level_record_is_as_likely_to_rise_as_to_fall() -> None:
    """Chance of a fall one half."""
    level = survival_trend([(8, 6), (8, 6), (8, 6)], prior_sd=0.5)
    assert level is not None
    assert level.chance_of_fall == pytest.approx(0.5)


def test_a_step_of_the_search_that_overshoots_is_halved() -> None:
    """Very lopsided litters still arrive: hundreds kept, one lost at each end."""
    found = survival_trend([(400, 399), (2, 0), (400, 400), (400, 1)], prior_sd=50.0)
    assert found is not None
    assert found.fitted is not None
    assert found.slope == pytest.approx(found.fitted.slope, rel=1e-2)
