"""What a barn eats day by day; the figures here are round numbers of the test's own."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.reckon.curve import carried
from core.reckon.eating import Diner, Nursing, Spell, eaten
from core.reckon.feed import FeedFigures, Mouth, daily_need

FIGURES = FeedFigures(
    dry_share=0.03,
    pregnant_share=0.04,
    lactating_share=0.07,
    kit_g=30,
    kits_eat_from_day=21,
    grower_g=80,
    metabolic_power=0.75,
    level_from_day=84,
    curve_b=4.0,
    curve_k=0.03,
    cold_below_c=15,
    cold_share=0.01,
)
BUCK = Diner(key="3", weight_g=4000)


def grams(one: Diner, days: int = 6, celsius: tuple[float | None, ...] = ()) -> list[float]:
    """What it eats on each day [g]."""
    return [float(each) for each in eaten([one], days, FIGURES, celsius).grams[0]]


def test_a_dry_adult_eats_its_share_every_day() -> None:
    """Nothing changes for a grown buck."""
    assert grams(BUCK) == pytest.approx([120] * 6)


def test_an_own_ration_goes_before_the_need() -> None:
    """Whatever the weight, the state and the cold; several alike eat it each."""
    one = Diner(key="9", weight_g=4000, heads=3, told=100, told_grown=100, nursing=(Nursing(Spell(0, 6), 8, 30),))
    assert grams(one, celsius=(-10.0,) * 6) == pytest.approx([300] * 6)


def test_a_doe_carries_nurses_and_dries_off() -> None:
    """Pregnant for two days, then at the nest with the kits at her dish from their 21st day, then dry."""
    one = Diner(key="9", weight_g=4000, pregnant=(Spell(0, 2),), nursing=(Nursing(Spell(2, 5), 8, 19),))
    assert grams(one) == pytest.approx([160, 160, 280, 280, 520, 120])


def test_kits_already_at_the_dish_eat_from_the_first_day() -> None:
    """A litter of 25 days today."""
    assert grams(Diner(key="9", weight_g=4000, nursing=(Nursing(Spell(0, 1), 2, 25),)), 2) == pytest.approx([340, 120])


def test_kits_weaned_before_they_eat_never_come_to_her_dish() -> None:
    """Twenty days old when they go: her milk only."""
    assert grams(Diner(key="9", weight_g=4000, nursing=(Nursing(Spell(0, 2), 8, 18),)), 4) == pytest.approx([280, 280, 120, 120])


def test_a_litter_that_may_come_counts_by_its_chance() -> None:
    """Half a chance is half way from dry to nursing, and half the kits."""
    one = Diner(key="9", weight_g=4000, nursing=(Nursing(Spell(0, 6, 0.5), 8, 25),))
    assert grams(one) == pytest.approx([(120 + 520) / 2] * 6)


def test_a_doe_both_nursing_and_pregnant_eats_as_a_nursing_one() -> None:
    """As the need of one day has it."""
    one = Diner(key="9", weight_g=4000, pregnant=(Spell(0, 6),), nursing=(Nursing(Spell(0, 6), 0, 2),))
    assert grams(one) == pytest.approx([280] * 6)


def test_a_thin_one_eats_more_until_it_is_well() -> None:
    """Twenty grams a day beside its need, for three days."""
    assert grams(Diner(key="3", weight_g=4000, gains=((Spell(0, 3), 20.0),))) == pytest.approx([140, 140, 140, 120, 120, 120])


def test_cold_days_count_for_themselves() -> None:
    """A quarter more at -10 C; a day that nobody told and the days beyond the list none."""
    assert grams(BUCK, 4, (-10.0, None, 15.0)) == pytest.approx([150, 120, 120, 120])


def test_nobody_eats_before_it_comes_or_after_it_goes() -> None:
    """Kits come to the dish when they are weaned, the sold ones leave it."""
    assert grams(Diner(key="3", weight_g=4000, first=2, end=4)) == pytest.approx([0, 0, 120, 120, 0, 0])
    assert eaten([Diner(key="9@x", weight_g=400, heads=5.5, first=2)], 4, FIGURES).heads[0] == pytest.approx([0, 0, 5.5, 5.5])


@given(st.floats(20, 200), st.floats(300, 4500), st.floats(500, 6000), st.integers(0, 60))
def test_a_grower_eats_each_day_as_the_need_of_that_day(age: float, weight: float, heading: float, day: int) -> None:
    """The table agrees with the day's own reckoning, the grower carried there along its curve."""
    one = Diner(key="31", weight_g=weight, age_days=age, heading_g=heading, rate=0.03, grown_from=400)
    then = carried(weight, age, age + day, heading, 4.0, 0.03)
    assert eaten([one], day + 1, FIGURES).weights[0, day] == pytest.approx(then)
    assert grams(one, day + 1)[day] == pytest.approx(daily_need(Mouth(state="growing", weight_g=then, age_days=age + day), FIGURES))


def test_a_grower_becomes_an_adult() -> None:
    """From its day on it eats an adult's share of what it weighs, by an adult's ration where one was told."""
    one = Diner(key="31", weight_g=3000, age_days=150, heading_g=4000, rate=0.03, grown_from=2, told=90)
    weights = eaten([one], 4, FIGURES).weights[0]
    assert grams(one, 4) == pytest.approx([90, 90, 0.03 * weights[2], 0.03 * weights[3]])


def test_weight_stays_from_its_day_on() -> None:
    """One that has filled out grows no more; one of no weight has none."""
    weights = eaten([Diner(key="31", weight_g=3000, age_days=240, heading_g=4000, rate=0.03, stays_from=2)], 5, FIGURES).weights[0]
    assert weights[1] > weights[0]
    assert weights[2:] == pytest.approx([weights[2]] * 3)
    assert eaten([Diner(key="0", weight_g=0.0)], 2, FIGURES).grams[0] == pytest.approx([0, 0])


def test_an_empty_barn_eats_nothing() -> None:
    """No rows, no grams."""
    table = eaten([], 3, FIGURES)
    assert table.keys == ()
    assert np.sum(table.grams) == 0
    assert table.grams.shape == (0, 3)
