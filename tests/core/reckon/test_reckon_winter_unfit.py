"""Limits that contradict each other: the change that is named, against a look at every set of 400 random small herds."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from core.reckon.choose import Guess
from core.reckon.winter.choose import best
from core.reckon.winter.types import Candidate, Change, Limits, Unfit
from tests.core.reckon.every_winter import EverySet, alone, some_herd

PARTS = [range(1000 + part, 1400, 8) for part in range(8)]


@cache
def unfit_of(seeds: range) -> list[tuple[EverySet, Unfit]]:
    """The herds among these where nothing fits, with what is said."""
    told = []
    for seed in seeds:
        animals, limits, kinships = some_herd(np.random.default_rng(seed))
        found = best(animals, limits, lambda buck, doe, of=kinships: of[buck, doe])  # type: ignore[misc]
        if isinstance(found, Unfit):
            told.append((EverySet(animals, limits, kinships), found))
    assert len(told) > len(seeds) / 10, "these herds hardly ever contradict themselves: nothing is tested"
    return told


@pytest.mark.parametrize("seeds", PARTS)
def test_the_named_change_makes_it_fit(seeds: range) -> None:
    """Under the changed limits some set fits, and the one named is among them."""
    for every, found in unfit_of(seeds):
        fitting = every.within(found.limits) & every.as_pinned()
        assert fitting.any()
        assert fitting[every.place(found.choice.kept)]


@pytest.mark.parametrize("seeds", PARTS)
def test_no_smaller_change_would_do(seeds: range) -> None:
    """Where one limit alone could give, one is named, and none could give less against what was set; a gram of feed apart."""
    for every, found in unfit_of(seeds):
        least = alone(every)
        assert (len(found.changes) == 1) == bool(least)
        if least:
            named = least[found.change.limit, found.change.breed]
            assert named == pytest.approx(min(least.values()), abs=1e-6)
            moved = abs(found.change.to - found.change.was)
            size = named * max(abs(found.change.was), 1000 if found.change.limit == "feed_g" else 1)
            assert 0 <= moved - size < 1 + 1e-6 if found.change.limit == "feed_g" else moved == pytest.approx(size)


@pytest.mark.parametrize("seeds", PARTS)
def test_a_pin_is_named_that_alone_stands_in_the_way(seeds: range) -> None:
    """Exactly the pins without which some set fits."""
    for every, found in unfit_of(seeds):
        fits = every.within()
        pins = [one.key for one in every.animals if one.pin is not None]
        assert list(found.or_lift) == [key for key in pins if (fits & every.as_pinned(without=key)).any()]


def doe(key: str, pin: str | None = None, feed_g: float = 10000.0) -> Candidate:
    """A grown doe worth keeping."""
    return Candidate(key, "doe", "A", Guess(5000.0, 0.0), grown=True, feed_g=feed_g, pin=pin)  # type: ignore[arg-type]


def no_kin(_buck: str, _doe: str) -> float:
    """Nobody is related."""
    return 0.0


def test_three_pinned_into_two_cages() -> None:
    """Three that a person keeps need a third cage, or one of them let go; only one change is told."""
    found = best([doe("1", "keep"), doe("2", "keep"), doe("3", "keep")], Limits(cages=2), no_kin)
    assert isinstance(found, Unfit)
    assert found.changes == (Change("cages", None, 2.0, 3.0),)
    assert found.limits.cages == 3
    assert found.or_lift == ("1", "2", "3")
    assert found.choice.kept == ("1", "2", "3")


def test_litters_are_wanted_with_no_buck() -> None:
    """Litters that nobody can sire: as many as can be."""
    found = best([doe("1"), doe("2")], Limits(litters={"A": 2}), no_kin)
    assert isinstance(found, Unfit)
    assert found.change == Change("litters", "A", 2.0, 0.0)


def test_two_limits_that_both_must_give() -> None:
    """Pinned animals over cages and over feed: both changes are told, feed in whole grams."""
    found = best([doe("1", "keep", 800.5), doe("2", "keep", 800.25)], Limits(cages=1, feed_g=1000.0), no_kin)
    assert isinstance(found, Unfit)
    assert found.changes == (Change("cages", None, 1.0, 2.0), Change("feed_g", None, 1000.0, 1601.0))
    assert found.or_lift == ("1", "2")


def test_a_limit_of_a_breed_that_gives() -> None:
    """One doe of the breed allowed, two pinned."""
    found = best([doe("1", "keep"), doe("2", "keep")], Limits(does={"A": 1}), no_kin)
    assert isinstance(found, Unfit)
    assert found.change == Change("does", "A", 1.0, 2.0)
    assert found.limits.does == {"A": 2}
