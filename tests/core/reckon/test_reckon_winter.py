"""The winter's choice against a look at every set, in 300 random small herds."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from core.reckon.winter.choose import best
from core.reckon.winter.types import Choice, Kin, Unfit
from tests.core.reckon.every_winter import EverySet, Kinships, some_herd

HERDS = 300
PARTS = 10
SEEDS = [range(part, HERDS, PARTS) for part in range(PARTS)]


@cache
def herd_of(seed: int) -> tuple[EverySet, Choice | Unfit]:
    """Every set of a random herd, and what is chosen of it."""
    animals, limits, kinships = some_herd(np.random.default_rng(seed))
    return EverySet(animals, limits, kinships), best(animals, limits, kin_of(kinships))


def kin_of(kinships: Kinships) -> Kin:
    """Kinship asked of a buck and a doe."""
    return lambda buck, doe: kinships[buck, doe]


@pytest.mark.parametrize("seeds", SEEDS)
def test_the_choice_is_worth_as_much_as_the_best_of_all_sets(seeds: range) -> None:
    """No set within limits and pins that lets down as few breeds is worth more; what is told of its worth is so."""
    for seed in seeds:
        every, found = herd_of(seed)
        choice = found if isinstance(found, Choice) else found.choice
        limits = every.limits if isinstance(found, Choice) else found.limits
        fitting = every.within(limits) & every.as_pinned()
        by_hand, told = every.best(fitting), every.place(choice.kept)
        assert by_hand is not None, seed
        assert fitting[told], seed
        assert every.unable[told] == every.unable[by_hand], seed
        assert len(choice.lacking) == every.unable[told], seed
        assert every.worth[told] == pytest.approx(every.worth[by_hand], abs=0.02), seed
        assert choice.worth == pytest.approx(every.worth[told], abs=1e-6), seed


@pytest.mark.parametrize("seeds", SEEDS)
def test_nothing_fits_is_said_only_where_nothing_fits(seeds: range) -> None:
    """A choice where some set fits, `Unfit` where none does."""
    for seed in seeds:
        every, found = herd_of(seed)
        assert isinstance(found, Choice) == bool((every.within() & every.as_pinned()).any()), seed


@pytest.mark.parametrize("seeds", SEEDS)
def test_those_flip_whose_place_another_set_takes(seeds: range) -> None:
    """Exactly those flip without whom, or with whom, some set comes within `one_more`."""
    for seed in seeds:
        every, found = herd_of(seed)
        if isinstance(found, Choice):
            assert list(found.flips) == every.flips(), seed


@pytest.mark.parametrize("seeds", SEEDS)
def test_a_pin_costs_the_best_set_without_it(seeds: range) -> None:
    """Each pin's price is the gap to the best set that need not heed it; a pin that changes nothing has none."""
    for seed in seeds:
        every, found = herd_of(seed)
        if not isinstance(found, Choice):
            continue
        for one in every.animals:
            free = every.best(every.within() & every.as_pinned(without=one.key)) if one.pin else None
            if free is None or (one.key in found.kept) == (one.key in every.kept(free)):
                assert one.key not in found.price_of_pin, seed
                continue
            price = found.price_of_pin[one.key]
            here = every.place(found.kept)
            feed = every.sums("feed_g")
            assert price.worth == pytest.approx(every.worth[free] - every.worth[here], abs=0.05), seed
            assert price.more_feed_g == pytest.approx(feed[here] - feed[free]), seed
            assert set(price.go) == set(every.kept(free)) - set(found.kept) - {one.key}, seed
            assert set(price.stay) == set(found.kept) - set(every.kept(free)) - {one.key}, seed
