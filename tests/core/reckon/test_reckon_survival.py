"""Kit survival: small numbers lean on the herd, litters share their fate."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.reckon.survival import Prior, chance_better, herd_prior, likeness, litters_to_be_sure, moment_prior, survival
from tests.strategies import kit_counts

PRIOR = Prior(8.0, 2.0)
COUNTS = kit_counts()


@given(litters=st.lists(COUNTS, max_size=8))
def test_the_estimate_lies_between_the_doe_and_the_herd(litters: list[tuple[int, int]]) -> None:
    """Shrunk: never outside her raw share and the herd's mean."""
    found = survival(litters, PRIOR)
    raw = found.kept / found.alive if found.alive else PRIOR.mean
    assert min(raw, PRIOR.mean) - 1e-12 <= found.estimate <= max(raw, PRIOR.mean) + 1e-12
    assert found.low < found.high


@given(litters=st.lists(COUNTS, max_size=8), born=st.integers(0, 12))
def test_the_chances_of_the_next_litter_add_up(litters: list[tuple[int, int]], born: int) -> None:
    """None or more is sure; more than born is not possible; the tail sums to the mean."""
    found = survival(litters, PRIOR)
    assert found.chance_at_least(born, 0) == pytest.approx(1)
    assert found.chance_at_least(born, born + 1) == 0
    assert sum(found.chance_at_least(born, kept) for kept in range(1, born + 1)) == pytest.approx(found.expected(born))


def test_the_chance_to_be_below_a_line_rises_with_the_line() -> None:
    """Half of it lies below somewhere inside the interval."""
    found = survival([(8, 5), (9, 6)], PRIOR)
    assert found.chance_below(0.3) < found.chance_below(0.7) < found.chance_below(0.9)
    assert found.chance_below(found.low) == pytest.approx(0.1)
    assert found.chance_below(found.high) == pytest.approx(0.9)


def test_kits_that_share_their_litters_fate_count_for_less() -> None:
    """Likeness 1: each litter is one kit; 0: all kits count."""
    assert survival([(9, 0)], PRIOR, likeness=1.0).beta == pytest.approx(PRIOR.beta + 1)
    assert survival([(9, 0)], PRIOR, likeness=0.0).beta == PRIOR.beta + 9
    assert survival([(0, 0)], PRIOR, likeness=0.5).beta == PRIOR.beta


def test_equal_does_are_even_and_chances_add_up() -> None:
    """P(a > b) + P(b > a) = 1."""
    one, other = survival([(8, 3)], PRIOR), survival([(8, 8)], PRIOR)
    assert chance_better(one, one) == pytest.approx(0.5)
    assert chance_better(one, other) + chance_better(other, one) == pytest.approx(1)
    assert chance_better(other, one) > 0.5


@pytest.mark.parametrize(
    "does",
    [[], [(20, 15)] * 7, [(20, 20)] * 9, [(20, 0)] * 9, [(0, 0)] * 20],
    ids=["none", "too few", "all kept", "all lost", "no kits"],
)
def test_a_herd_that_tells_too_little_gets_the_default(does: list[tuple[int, int]]) -> None:
    """The default prior as it was given."""
    assert herd_prior(does, PRIOR) is PRIOR


def test_does_that_differ_widely_make_a_light_prior() -> None:
    """Half lose most, half keep most: the herd's word weighs little."""
    found = herd_prior([(20, 4)] * 5 + [(20, 17)] * 5, PRIOR)
    assert found.source == "herd"
    assert found.weight < 6


def test_does_too_alike_to_tell_give_the_herds_mean_with_the_defaults_weight() -> None:
    """A few litters each, all near the same share: the data can't say how much does differ."""
    found = herd_prior([(8, 6), (7, 5), (9, 7), (8, 6), (6, 5), (8, 6), (7, 5), (9, 7)], PRIOR)
    assert found.source == "herd mean"
    assert found.weight == PRIOR.weight
    assert found.mean == pytest.approx(47 / 62)


def test_many_does_proven_alike_make_a_heavy_prior() -> None:
    """Thirty does with 100 kits each, all the same: no doe is special."""
    found = herd_prior([(100, 80)] * 30, PRIOR)
    assert (found.source, found.mean) == ("herd", pytest.approx(0.8))
    assert found.weight == pytest.approx(200)


@pytest.mark.parametrize("does", [[], [(9, 4)], [(9, 4), (9, 4)], [(9, 0), (9, 9)]], ids=["none", "one", "alike", "all or nothing"])
def test_moments_need_does_that_differ_but_not_wholly(does: list[tuple[int, int]]) -> None:
    """No variance, or all that is possible: no fit."""
    assert moment_prior(does) is None


def test_likeness_is_high_when_litters_live_or_die_whole() -> None:
    """All or nothing within each doe: 1. Every litter the same share: 0."""
    assert likeness([[(8, 8), (8, 0)]] * 12, 0.1) == pytest.approx(1)
    assert likeness([[(8, 6), (8, 6)]] * 12, 0.1) == 0


def test_likeness_of_few_or_sure_litters_is_the_default() -> None:
    """Too few beyond one a doe, single kits only, or nothing that varies."""
    assert likeness([[(8, 8), (8, 0)]] * 3 + [[], [(0, 0)]], 0.1) == 0.1
    assert likeness([[(1, 1), (1, 0)]] * 12, 0.1) == 0.1
    assert likeness([[(8, 8), (8, 8)]] * 12, 0.1) == 0.1


def test_a_litter_that_shares_its_fate_is_less_sure_to_keep_most() -> None:
    """Likeness widens the next litter, and leaves its mean."""
    apart, together = survival([(8, 7)], PRIOR), replace(survival([(8, 7)], PRIOR), likeness=0.3)
    assert together.chance_at_least(8, 0) == pytest.approx(1)
    assert sum(together.chance_at_least(8, kept) for kept in range(1, 9)) == pytest.approx(apart.expected(8), rel=1e-4)
    assert together.chance_at_least(8, 3) < apart.chance_at_least(8, 3)
    assert together.chance_at_least(8, 8) > apart.chance_at_least(8, 8)


def test_as_good_as_no_likeness_is_none() -> None:
    """The sum over chances meets the closed form."""
    apart = survival([(8, 7), (9, 5)], PRIOR)
    assert replace(apart, likeness=1e-7).chance_at_least(8, 6) == pytest.approx(apart.chance_at_least(8, 6), abs=1e-5)


def test_litters_to_be_sure_are_none_when_it_is_sure_and_untold_when_she_is_on_the_line() -> None:
    """A doe far below the line is sure at once; one a little below takes litters; one on it takes more than anybody waits for."""
    told = {"born": 8, "sure": 0.9, "at_most": 8}
    assert litters_to_be_sure(survival([(40, 12)], PRIOR), 0.7, **told) == 0
    needed = litters_to_be_sure(survival([(8, 3)], PRIOR), 0.7, **told)
    assert needed is not None
    assert 1 <= needed <= 8
    one = survival([(40, 27)], PRIOR)
    assert litters_to_be_sure(one, one.estimate, **told) is None


def test_a_litter_more_counts_for_less_where_kits_share_its_fate() -> None:
    """Eight kits with a likeness of one seventh count for four."""
    more = replace(survival([], PRIOR), likeness=1 / 7).with_litter(8, 8)
    assert (more.alpha, more.beta) == pytest.approx((12, 2))
