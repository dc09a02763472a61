"""A breed's young on one farm: its own curve, each animal's departure, and how sure a weight at a later age is."""

from __future__ import annotations

import numpy as np
import pytest

from core.reckon.curve import weight_at_age
from core.reckon.growing_together import GrowthBelief, Young, growing_together

HANDBOOK = {"buck": (3300.0, 3.9, 0.0264), "doe": (3400.0, 3.9, 0.0264)}
BELIEF = GrowthBelief(herd=(0.12, 0.06, 0.10), kind=(0.04, 0.02, 0.03), own=(0.12, 0.06, 0.12), weighing=0.03)


def grown(key: str, kind: str, curve: tuple[float, float, float], *ages: float) -> Young:
    """An animal weighed on its curve at these ages."""
    return Young(key, kind, tuple((age, weight_at_age(age, *curve)) for age in ages))


def test_with_nothing_weighed_each_kind_has_the_handbooks_curve() -> None:
    """And the doubt of a stranger: farm, sex and its own departure."""
    found = growing_together([], HANDBOOK, BELIEF)
    assert found.animals == {}
    buck = found.kinds["buck"]
    assert (buck.adult_g, buck.b, buck.k) == pytest.approx(HANDBOOK["buck"])
    assert buck.spread[0, 0] == pytest.approx(0.12**2 + 0.04**2 + 0.12**2)


def test_animals_on_the_handbooks_curve_stay_there() -> None:
    """Weighings that it foretells move nothing."""
    found = growing_together([grown(str(at), "doe", HANDBOOK["doe"], 41, 63) for at in range(4)], HANDBOOK, BELIEF)
    assert found.animals["0"].weight_at(112) == pytest.approx(weight_at_age(112, *HANDBOOK["doe"]), rel=1e-3)
    assert found.animals["0"].rss == pytest.approx(0, abs=1)


def test_a_slow_farm_has_its_own_curve_and_an_animal_its_departure() -> None:
    """Twelve animals a fifth light move the breed's curve; one that is light among them is lighter still."""
    slow = (3300.0 * 0.8, 3.9, 0.0264)
    told = [grown(str(at), "buck", slow, 35 + at, 60 + at) for at in range(12)] + [grown("x", "buck", (2000.0, 3.9, 0.0264), 50, 71)]
    found = growing_together(told, HANDBOOK, BELIEF)
    usual = weight_at_age(112, *HANDBOOK["buck"])
    assert found.animals["x"].weight_at(112) < found.kinds["buck"].weight_at(112) < 0.9 * usual
    assert found.kinds["doe"].weight_at(112) < 0.95 * weight_at_age(112, *HANDBOOK["doe"])


def test_one_weighing_moves_an_animal_part_of_the_way_and_more_move_it_further() -> None:
    """An animal a quarter light by one weighing is believed half, by four almost."""
    light = (3300.0 * 0.75, 3.9, 0.0264)
    others = [grown(str(at), "buck", HANDBOOK["buck"], 40, 56, 70) for at in range(10)]
    one = growing_together([*others, grown("x", "buck", light, 45)], HANDBOOK, BELIEF).animals["x"]
    four = growing_together([*others, grown("x", "buck", light, 45, 60, 75, 90)], HANDBOOK, BELIEF).animals["x"]
    true, usual = weight_at_age(112, *light), weight_at_age(112, *HANDBOOK["buck"])
    assert true < four.weight_at(112) < one.weight_at(112) < usual
    assert four.weight_at(112) == pytest.approx(true, rel=0.06)
    assert four.spread[0, 0] < one.spread[0, 0]


def test_animals_that_differ_little_are_believed_alike() -> None:
    """Spread and scatter follow the weighings: alike animals narrow both, wild ones widen them."""
    rng = np.random.default_rng(5)

    def herd(own: float, scatter: float) -> list[Young]:
        told = []
        for at in range(30):
            curve = (3300.0 * float(np.exp(0.12 * own * rng.standard_normal())), 3.9, 0.0264)
            weights = (
                (age, weight_at_age(age, *curve) * float(np.exp(0.03 * scatter * rng.standard_normal()))) for age in (35, 50, 65, 80)
            )
            told.append(Young(str(at), "buck", tuple(weights)))
        return told

    alike, wild = growing_together(herd(0.3, 0.4), HANDBOOK, BELIEF), growing_together(herd(2.5, 2.5), HANDBOOK, BELIEF)
    assert alike.spread < 1 < wild.spread
    assert alike.scatter < 1 < wild.scatter


def test_an_animal_without_weighings_is_not_told() -> None:
    """It has its kind's curve."""
    assert growing_together([Young("x", "doe", ())], HANDBOOK, BELIEF).animals == {}


def test_an_absurd_weighing_ends_the_search_all_the_same() -> None:
    """Ten grams at ten weeks: still a curve, however poor."""
    found = growing_together([Young("x", "doe", ((70.0, 10.0), (80.0, 9000.0)))], HANDBOOK, BELIEF)
    assert np.isfinite(found.animals["x"].weight_at(100))
