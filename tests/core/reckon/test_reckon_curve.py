"""The growth curve: weight at an age, age at a weight, a weighing carried on."""

from __future__ import annotations

import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.reckon.curve import age_at_weight, carried, gain_at_age, greatest_gain, inflection_age, weight_at_age

CURVE = (4000.0, 4.0, 0.03)


@given(age=st.floats(min_value=5, max_value=150))
def test_age_at_weight_undoes_weight_at_age(age: float) -> None:
    """The curve read backwards gives the age it was read at."""
    assert age_at_weight(weight_at_age(age, *CURVE), *CURVE) == pytest.approx(age, abs=1e-6)


@pytest.mark.parametrize("weight", [0.0, -5.0, 4000.0, 4500.0])
def test_a_weight_off_the_curve_has_no_age(weight: float) -> None:
    """Nothing, or the adult weight and more, is never passed."""
    assert age_at_weight(weight, *CURVE) is None


def test_the_gain_is_the_slope_of_the_curve() -> None:
    """dW/dt by the formula equals a small difference."""
    step = 1e-4
    slope = (weight_at_age(60 + step, *CURVE) - weight_at_age(60 - step, *CURVE)) / (2 * step)
    assert gain_at_age(60, *CURVE) == pytest.approx(slope, rel=1e-6)


def test_the_gain_is_greatest_at_the_inflection() -> None:
    """A k / e at ln(b)/k, and less a day before and after."""
    at = inflection_age(4.0, 0.03)
    assert gain_at_age(at, *CURVE) == pytest.approx(greatest_gain(4000, 0.03))
    assert gain_at_age(at, *CURVE) > max(gain_at_age(at - 1, *CURVE), gain_at_age(at + 1, *CURVE))


def test_a_rabbit_on_the_curve_stays_on_it() -> None:
    """Carrying a weight of the curve forward or back gives the curve."""
    for to in (30, 60, 120):
        assert carried(weight_at_age(60, *CURVE), 60, to, *CURVE) == pytest.approx(weight_at_age(to, *CURVE))


def test_a_light_kit_catches_up_but_never_overtakes() -> None:
    """Its ratio to the curve rises towards one."""
    ratios = [carried(500, 42, to, *CURVE) / weight_at_age(to, *CURVE) for to in (42, 70, 112, 365)]
    assert ratios == sorted(ratios)
    assert ratios[-1] == pytest.approx(1.0, abs=0.01)
    assert max(ratios) < 1


def test_a_heavy_kit_ends_at_the_adult_weight() -> None:
    """However heavy it was early."""
    assert carried(3000, 60, 600, *CURVE) == pytest.approx(4000, rel=1e-3)


def test_carried_back_a_rabbit_keeps_its_ratio_to_the_curve() -> None:
    """Half the curve's weight at 84 days was half of it at 70."""
    half = weight_at_age(84, *CURVE) / 2
    assert carried(half, 84, 70, *CURVE) == pytest.approx(weight_at_age(70, *CURVE) / 2)


def test_odd_weighings_are_carried_without_trouble() -> None:
    """Nothing stays nothing; days before birth are the day of birth."""
    assert carried(0, 30, 60, *CURVE) == 0
    assert carried(500, -9000, -99999, *CURVE) == pytest.approx(500)
    assert carried(500, 40, -9000, *CURVE) == pytest.approx(carried(500, 40, 0, *CURVE))


def test_the_curve_loads_no_heavy_library() -> None:
    """Reading a note must not pay for numpy or scipy."""
    told = "import sys, core.reckon.curve; print([m for m in ('numpy', 'scipy') if m in sys.modules])"
    assert subprocess.run([sys.executable, "-c", told], capture_output=True, text=True, check=True).stdout.strip() == "[]"
