"""The 80 % intervals hold the truth about 8 times in 10, in simulated herds: the quick form of `python -m tests.bench.coverage`."""

from __future__ import annotations

import numpy as np
import pytest

from tests.bench.coverage import Tally, adults, growing, litter_sizes, survival_as_believed

LEAST, MOST = 0.75, 0.85


def inside(tally: Tally) -> float:
    """The share of truths inside their intervals."""
    return float(np.mean(tally.inside))


def test_does_survival_is_held_and_nearer_than_raw_shares() -> None:
    """Of a hundred herds."""
    tally = survival_as_believed(np.random.default_rng(1), 100)
    assert LEAST <= inside(tally) <= MOST
    assert np.std(tally.off) < 0.8 * np.std(tally.raw_off)


def test_weights_and_days_of_the_target_are_held_and_chances_come_true() -> None:
    """Of forty breeds: the weight at sixteen weeks, the age and day of the target, how likely it is by then and at all."""
    counted = growing(np.random.default_rng(2), 40)
    assert {name: LEAST <= inside(tally) <= MOST for name, tally in (("w", counted.weight), ("a", counted.age), ("d", counted.day))} == {
        "w": True,
        "a": True,
        "d": True,
    }
    assert counted.by_16_weeks.gap() < 0.05
    assert counted.ever.gap() < 0.05


@pytest.mark.parametrize("what", ["level", "best", "slope", "following"])
def test_litter_sizes_are_held(what: str) -> None:
    """Of eighty farms: does' levels, best litters, slopes and next litters."""
    assert LEAST <= inside(getattr(litter_sizes(np.random.default_rng(3), 80), what)) <= MOST


def test_a_fall_said_likely_comes_true_as_often() -> None:
    """Of all does of two litters and more."""
    counted = litter_sizes(np.random.default_rng(3), 80)
    assert counted.falls.gap() < 0.05
    assert np.std(counted.best.off) < 0.8 * np.std(counted.best.raw_off)


def test_an_adults_need_is_held() -> None:
    """Of four hundred adults."""
    assert LEAST <= inside(adults(np.random.default_rng(4), 400)) <= MOST
