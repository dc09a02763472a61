"""Does of one herd reckoned together: the herd's own word, what it takes from each doe, and what stays unsure."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.special import betaincinv

from core.reckon.does_together import Belief, does_together

BELIEF = Belief(mean=0.82, mean_weight=10, weight=10, weight_spread=0.7, likeness=0.08, likeness_spread=0.8)
#: A belief so firm that nothing but her own litters can move a doe.
FIRM = Belief(mean=0.8, mean_weight=1e7, weight=10, weight_spread=1e-6, likeness=1e-7, likeness_spread=1e-6)


def test_an_empty_herd_has_the_beliefs_own_numbers() -> None:
    """With no litter the answer is the belief."""
    found = does_together({}, BELIEF)
    assert found.does == {}
    assert (found.mean, found.weight, found.likeness) == (pytest.approx(0.82, abs=0.01), pytest.approx(10), pytest.approx(0.08, abs=0.03))
    assert found.stranger.estimate == pytest.approx(0.82, abs=0.01)


@pytest.mark.parametrize("litters", [[(8, 6)], [(8, 8), (9, 2), (7, 7)], [(0, 0), (5, 0)]])
def test_with_a_firm_belief_a_doe_is_the_plain_beta(litters: list[tuple[int, int]]) -> None:
    """Herd numbers known and kits that fare each for itself: Beta(alpha + kept, beta + lost), the textbook's own case."""
    found = does_together({"14": litters}, FIRM).does["14"]
    kept, lost = sum(kept for _, kept in litters), sum(alive - kept for alive, kept in litters)
    assert (found.alpha, found.beta) == pytest.approx((8 + kept, 2 + lost), rel=0.01)
    assert (found.low, found.high) == pytest.approx(tuple(betaincinv(8 + kept, 2 + lost, [0.1, 0.9])), abs=0.002)


def test_a_doe_leans_on_her_herd_mates() -> None:
    """The same litter tells less of a doe among good ones than among bad ones."""
    good = does_together({str(at): [(8, 8), (8, 7)] for at in range(12)} | {"x": [(8, 4)]}, BELIEF).does["x"]
    bad = does_together({str(at): [(8, 4), (8, 3)] for at in range(12)} | {"x": [(8, 4)]}, BELIEF).does["x"]
    assert bad.estimate < good.estimate - 0.1
    assert 0.5 < good.estimate < 0.95


def test_litters_that_live_or_die_whole_tell_less() -> None:
    """Where litters fail whole, their likeness rises, and a doe's two litters leave more doubt than where kits fail one by one."""
    whole = {str(at): [(8, 8), (8, 8), (8, 8), (8, 0)] for at in range(12)}
    apart = {str(at): [(8, 6)] * 4 for at in range(12)}
    one, other = does_together(whole, BELIEF), does_together(apart, BELIEF)
    assert one.likeness > 0.3
    assert other.likeness < 0.05
    assert one.does["0"].high - one.does["0"].low > other.does["0"].high - other.does["0"].low


def test_alike_does_make_the_herds_word_heavy_and_unlike_ones_light() -> None:
    """The weight follows how far does differ."""
    alike = does_together({str(at): [(8, 6)] * 6 for at in range(20)}, BELIEF)
    unlike = does_together({str(at): [(8, 8 if at % 2 else 3)] * 6 for at in range(20)}, BELIEF)
    assert alike.weight > 15
    assert unlike.weight < 6


def test_intervals_hold_the_truth_four_times_in_five() -> None:
    """Sixty herds of ten does, each drawn from the belief with litters that share their fate: 75 to 85 % are inside. The long run is tests/bench/coverage.py."""
    rng = np.random.default_rng(7)
    inside = []
    for _ in range(60):
        mean, weight = rng.beta(8.2, 1.8), np.exp(np.log(10) + 0.7 * rng.standard_normal())
        firm = np.exp(-(np.log(0.08 / 0.92) + 0.8 * rng.standard_normal()))
        truth = rng.beta(mean * weight, (1 - mean) * weight, 10).clip(1e-6, 1 - 1e-6)
        herd = {}
        for doe, chance in enumerate(truth):
            born = rng.integers(3, 12, rng.integers(1, 6))
            herd[str(doe)] = [(int(n), int(rng.binomial(n, rng.beta(chance * firm, (1 - chance) * firm)))) for n in born]
        found = does_together(herd, BELIEF).does
        inside += [found[str(doe)].low <= chance <= found[str(doe)].high for doe, chance in enumerate(truth)]
    assert 0.75 <= np.mean(inside) <= 0.85
