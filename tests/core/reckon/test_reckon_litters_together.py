"""Litter sizes of a breed's does together: the farm's number, each doe's level, a fall told from noise, the next litter."""

from __future__ import annotations

import numpy as np
import pytest

from core.reckon.litters_together import LittersTold, SizeBelief, chance_larger, litters_together

BELIEF = SizeBelief(usual=7.5, farm_sd=1.3, level_sd=1.1, slope_sd=0.7, litter_sd=2.35)


def told(*sizes: float, expected: tuple[float, ...] = ()) -> LittersTold:
    """A doe whose expected litters are all alike unless told."""
    return LittersTold(sizes, expected or (1.0,) * (len(sizes) + 1))


def test_a_doe_yet_without_a_litter_is_expected_to_have_what_is_usual() -> None:
    """Her first is smaller by what first litters are; nothing leans one way."""
    found = litters_together({"a": told(expected=(0.88,))}, BELIEF)
    doe = found.does["a"]
    assert (found.breed, found.breed_sd) == (pytest.approx(7.5), pytest.approx(1.3))
    assert (doe.litters, doe.level, doe.slope, doe.chance_of_fall) == (0, 0, 0, pytest.approx(0.5))
    assert doe.following == pytest.approx(0.88 * 7.5)
    assert doe.following_sd > 2.35


def test_without_does_the_breed_is_as_believed() -> None:
    """An empty barn."""
    found = litters_together({}, BELIEF)
    assert (found.breed, found.does) == (pytest.approx(7.5), {})


def test_it_agrees_with_the_whole_linear_model_solved_at_once() -> None:
    """Breed, levels and slopes in one dense system, spread and scatter held: means and deviations alike."""
    does = {"a": told(9, 8, 6, expected=(0.88, 0.96, 1.0, 1.0)), "b": told(5), "c": told(7, 9)}
    held = SizeBelief(usual=7.5, farm_sd=1.3, level_sd=1.1, slope_sd=0.7, litter_sd=2.35)
    rows, sizes = [], []
    for at, one in enumerate(does.values()):
        for number, (size, share) in enumerate(zip(one.sizes, one.expected, strict=False)):
            row = np.zeros(7)
            row[0], row[1 + 2 * at], row[2 + 2 * at] = share, 1, number - (len(one.sizes) - 1) / 2
            rows.append(row)
            sizes.append(size)
    design, prior = np.array(rows), np.array([1.3, *(1.1, 0.7) * 3]) ** 2
    precision = design.T @ design / 2.35**2 + np.diag(1 / prior)
    start = np.array([7.5 / 1.3**2, *[0.0] * 6])
    answer, covariance = np.linalg.solve(precision, design.T @ sizes / 2.35**2 + start), np.linalg.inv(precision)
    found = litters_together(does, held, scaled=False)
    assert (found.breed, found.breed_sd) == pytest.approx((answer[0], covariance[0, 0] ** 0.5))
    doe = found.does["a"]
    assert (doe.level, doe.slope) == pytest.approx((answer[1], answer[2]))
    assert (doe.level_sd, doe.slope_sd) == pytest.approx((covariance[1, 1] ** 0.5, covariance[2, 2] ** 0.5))
    ahead = np.array([1.0, 1.0, 2.0, *[0.0] * 4])
    assert doe.following == pytest.approx(ahead @ answer)
    assert doe.following_sd == pytest.approx((ahead @ covariance @ ahead + 2.35**2) ** 0.5)
    best = np.array([1.0, 1.0, *[0.0] * 5])
    assert (doe.at_best, doe.at_best_sd) == pytest.approx((best @ answer, (best @ covariance @ best) ** 0.5))


def test_one_litter_tells_little_and_six_tell_more() -> None:
    """A doe of one litter of three leans on her mates; one of six such litters hardly."""
    mates = {str(at): told(8, 8, 7, 9) for at in range(6)}
    one, six = (litters_together(mates | {"x": told(*[3.0] * many)}, BELIEF).does["x"] for many in (1, 6))
    assert one.at_best > six.at_best
    assert one.level_sd > six.level_sd
    assert six.at_best < 5


def test_a_farm_of_small_litters_has_its_own_number() -> None:
    """Eight does of five: the breed here is near five, and none of them is far below it."""
    found = litters_together({str(at): told(5, 5, 4, 6) for at in range(8)}, BELIEF)
    assert 4.8 < found.breed < 5.6
    assert all(abs(one.level) < 0.5 for one in found.does.values())


def test_alike_litters_are_believed_alike_and_wild_ones_wild() -> None:
    """The interval of the next litter follows how litters scatter here."""
    even = litters_together({str(at): told(7, 7, 8, 7) for at in range(8)}, BELIEF).does["0"]
    wild = litters_together({str(at): told(2, 12, 4, 13) for at in range(8)}, BELIEF).does["0"]
    assert even.following_sd < 2.35 < wild.following_sd


def test_a_fall_is_told_from_noise() -> None:
    """Eleven, nine, six, three is one; eight, six, eight, seven is none; nor is one that is expected of an old doe, nor a rise that failed to come."""
    mates = {"m": told(8, 8, 8)}
    falling, level = (litters_together(mates | {"x": told(*sizes)}, BELIEF).does["x"] for sizes in ((11, 9, 6, 3), (8, 6, 8, 7)))
    assert falling.chance_of_fall > 0.9
    assert 0.4 < level.chance_of_fall < 0.65
    old = told(8, 7.7, 7.4, expected=(1.0, 0.96, 0.92, 0.92))
    aging = litters_together(mates | {"x": old}, BELIEF).does["x"]
    assert aging.slope == pytest.approx(0, abs=0.03)
    assert aging.chance_of_fall == pytest.approx(0.5, abs=0.03)
    young = litters_together(mates | {"x": told(7.5, 7.5, 7.5, expected=(0.88, 0.96, 1.0, 1.0))}, BELIEF).does["x"]
    assert young.slope < -0.1
    assert young.chance_of_fall < 0.55


def test_a_litter_less_than_none_is_none() -> None:
    """However steep the fall, the next litter is not below nothing."""
    steep = SizeBelief(usual=5, farm_sd=1, level_sd=10, slope_sd=10, litter_sd=0.1)
    assert litters_together({"x": told(4, 2, 0)}, steep).does["x"].following == 0


def test_the_chance_that_one_has_the_larger_litters() -> None:
    """Alike is half the time; nine against six is likely, and surer over more litters."""
    few = litters_together({"a": told(9, 9), "b": told(6, 6), "c": told(6, 6)}, BELIEF).does
    many = litters_together({"a": told(*[9.0] * 6), "b": told(*[6.0] * 6)}, BELIEF).does
    assert chance_larger(few["b"], few["c"]) == pytest.approx(0.5)
    assert 0.5 < chance_larger(few["a"], few["b"]) < chance_larger(many["a"], many["b"])
    assert chance_larger(few["a"], few["b"]) == pytest.approx(1 - chance_larger(few["b"], few["a"]))
