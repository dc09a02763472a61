"""Questions about weights."""

from __future__ import annotations

import pytest

from core.herd import weights as asked
from core.herd.state import Animal, Herd, Weight
from tests.farm import TODAY, ago, tell

GROWING = Animal(key="31", tag="31", breed="New Zealand", born=ago(84), weights=(Weight(ago(28), 1500),))
ADULT = Animal(key="3", tag="3", breed="New Zealand", born=ago(800), weights=(Weight(ago(200), 4500),))


def test_expected_weight_of_an_adult_is_its_last() -> None:
    """A grown rabbit stays what it was; so does one whose age nobody knows."""
    assert asked.expected_weight(ADULT, TODAY) == 4500
    assert asked.expected_weight(Animal(key="3", tag="3", weights=(Weight(ago(9), 900),)), TODAY) == 900


def test_expected_weight_of_a_growing_one_is_carried() -> None:
    """A kit of eight weeks and 1500 g is heavier four weeks on, and not yet grown."""
    expected = asked.expected_weight(GROWING, TODAY)

    assert expected is not None
    assert 1900 < expected < 2700


def test_no_weight_before() -> None:
    """Without a weight by that day nothing is expected."""
    assert asked.expected_weight(GROWING, ago(29)) is None
    assert asked.odd_weight(GROWING, 9000, ago(29)) is None
    assert asked.last_weight(GROWING, ago(29)) is None


@pytest.mark.parametrize(("grams", "odd"), [(4500, False), (3001, False), (2999, True), (5999, False), (6001, True)])
def test_over_a_third_off_is_odd(grams: int, odd: bool) -> None:
    """A weight over a third from what the last one leads to is odd, either way."""
    assert (asked.odd_weight(ADULT, grams, TODAY) is not None) is odd


def test_gain_since() -> None:
    """The gain is counted between the last two weights by that day."""
    herd = tell(Herd(), "animal", tag="1", born=ago(90))
    herd = tell(herd, "weighed", who="1", grams=1500, on=ago(20))
    assert asked.gain_since(herd.animals["1"], TODAY) is None
    herd = tell(herd, "weighed", who="1", grams=1900, on=ago(6))
    herd = tell(herd, "weighed", who="1", grams=1000, on=ago(40))
    assert asked.gain_since(herd.animals["1"], TODAY) == (400, 14)
    assert asked.last_weight(herd.animals["1"]) == Weight(ago(6), 1900)
