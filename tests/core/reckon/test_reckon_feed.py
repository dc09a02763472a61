"""What the barn eats; the figures here are round numbers of the test's own."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.reckon.curve import weight_at_age
from core.reckon.feed import (
    FeedFigures,
    Holding,
    HoldingFigures,
    Mouth,
    daily_need,
    eaten_growing,
    need_to_hold,
    stops_paying,
)

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
BUCK = Mouth(state="dry", weight_g=4000)


@pytest.mark.parametrize(
    ("mouth", "grams"),
    [
        (BUCK, 120),
        (Mouth(state="pregnant", weight_g=4000), 160),
        (Mouth(state="lactating", weight_g=4000, kits=8, kits_age_days=20), 280),
        (Mouth(state="lactating", weight_g=4000, kits=8, kits_age_days=21), 520),
        (Mouth(state="both", weight_g=4000, kits=2, kits_age_days=30), 340),
        (Mouth(state="dry", weight_g=4000, kits=8, kits_age_days=30), 120),
        (Mouth(state="dry", weight_g=4000, count=3), 360),
        (Mouth(state="dry"), 0),
    ],
    ids=[
        "buck",
        "pregnant",
        "kits still in the nest",
        "kits at the dish",
        "both",
        "dry doe's kits eat elsewhere",
        "three",
        "weight unknown",
    ],
)
def test_a_grown_rabbit_eats_a_share_of_its_weight(mouth: Mouth, grams: float) -> None:
    """And a nursing doe's kits eat beside her from their day on."""
    assert daily_need(mouth, FIGURES) == pytest.approx(grams)


def test_cold_raises_the_need_and_warmth_does_not() -> None:
    """One percent a degree below 15 C: at -10 C a quarter more."""
    assert daily_need(BUCK, FIGURES, -10) == pytest.approx(150)
    assert daily_need(BUCK, FIGURES, 30) == pytest.approx(120)


@pytest.mark.parametrize(("weight", "grams"), [(1000, 80), (2000, 80 * 2**0.75), (500, 80 * 0.5**0.75)])
def test_a_grower_eats_by_its_metabolic_weight(weight: float, grams: float) -> None:
    """Eighty grams at a kilogram, half the weight half to the power three quarters."""
    assert daily_need(Mouth(state="growing", age_days=60, weight_g=weight), FIGURES) == pytest.approx(grams)


def test_a_grower_that_nobody_weighed_weighs_what_its_curve_gives() -> None:
    """At seventy days towards four kilograms."""
    weight = weight_at_age(70, 4000, 4.0, 0.03)
    assert daily_need(Mouth(state="growing", age_days=70, adult_g=4000), FIGURES) == pytest.approx(80 * (weight / 1000) ** 0.75)


def test_from_its_day_on_a_grower_eats_no_more() -> None:
    """At twelve weeks and at twenty the same, though it goes on growing."""
    needs = [daily_need(Mouth(state="growing", age_days=age, adult_g=4000), FIGURES) for age in (77, 84, 100, 140)]
    assert needs[0] < needs[1]
    assert needs[1:] == pytest.approx([needs[1]] * 3)


def test_figures_are_taken_from_the_argument() -> None:
    """Another farm's shares give another need."""
    assert daily_need(BUCK, replace(FIGURES, dry_share=0.05)) == pytest.approx(200)


HOLDING = HoldingFigures(need_cv=0.15, ration_cv=0.10, point_share=0.08, feed_a_gram=3.0)


def held(told: float, points: float, days: int) -> Holding:
    """A buck of 4.5 kg that should need 150 g a day."""
    return need_to_hold(150, told, 4500, points=points, points_sd=0.5, days=days, figures=HOLDING)


def test_a_buck_that_holds_on_a_quarter_needs_little() -> None:
    """Held long on 40 g: the need is near 40, far below the expectation."""
    found = held(40, 0.0, 200)
    assert found.need == pytest.approx(43, abs=8)
    assert found.high < 75
    assert found.learned > 0.9


def test_a_few_days_tell_little() -> None:
    """After two weeks a score is no finer than its error: the expectation stays."""
    found = held(40, 0.0, 14)
    assert 110 < found.need < 150
    assert found.low < 120 < found.high


def test_what_went_on_its_back_was_more_than_it_needs_and_what_came_off_was_lacking() -> None:
    """A point gained on the ration means less is needed, a point lost more."""
    assert held(150, 1.0, 60).need < held(150, 0.0, 60).need < held(150, -1.0, 60).need


def test_a_need_is_never_below_nothing() -> None:
    """A wild score can't make it negative, nor its interval."""
    found = held(5, 3.0, 20)
    assert found.low >= 0
    assert found.need >= found.low


def test_a_grower_eats_day_by_day_along_its_curve() -> None:
    """Two days are those two days' needs."""
    each = [daily_need(Mouth(state="growing", weight_g=on_curve(age), age_days=age), FIGURES) for age in (70, 71)]
    assert eaten_growing(on_curve, range(70, 72), FIGURES) == pytest.approx(sum(each))
    assert eaten_growing(on_curve, range(70, 70), FIGURES) == 0


def test_feed_stops_paying_sooner_when_it_is_dear_and_never_when_it_is_free() -> None:
    """By the price of feed against that of a live gram."""

    def week(cents: float) -> int | None:
        return stops_paying(on_curve, range(60, 200), FIGURES, feed_cents_a_g=cents, live_cents_a_g=0.485)

    cheap, dear = week(0.088), week(0.12)
    assert cheap is not None
    assert dear is not None
    assert dear < cheap
    assert week(0.0) is None


def on_curve(age: float) -> float:
    """A medium grower's weight."""
    return weight_at_age(age, 3300, 3.9, 0.0264)
