"""Whom to keep in simulated herds whose truth is known; `tests/bench/keeping.py` does the same for 200 herds."""

from __future__ import annotations

from itertools import combinations

import pytest
from scipy.stats import wilcoxon

from tests.bench.keeping import Kept, kept_in, may_stay, ours
from tests.keeping_herds import Year, rabbitry, seen


@pytest.fixture(scope="module")
def told() -> Kept:
    """Twenty-five herds."""
    return kept_in(25)


def test_ours_keeps_better_animals_than_raw_averages(told: Kept) -> None:
    """Herd by herd, by a paired test; and than last litters, and than chance."""
    for other in ("raw", "last", "random"):
        ahead = [one - another for one, another in zip(told.gain["ours"], told.gain[other], strict=True)]
        assert wilcoxon(ahead, alternative="greater").pvalue < 0.05, other


def test_the_whole_plan_is_ahead_of_raw_averages_too(told: Kept) -> None:
    """With its flags and holds it loses little of the choice's gain."""
    ahead = [one - another for one, another in zip(told.gain["plan"], told.gain["raw"], strict=True)]
    assert wilcoxon(ahead, alternative="greater").pvalue < 0.05


def test_nobody_is_better_than_the_best(told: Kept) -> None:
    """The best set is the best: no share goes over the whole. The plan may keep another number of bucks, so it is left out."""
    assert all(share <= 1 + 1e-9 for name, shares in told.whole.items() if name != "plan" for share in shares)


def test_the_best_set_is_the_best_of_all_sets_of_a_small_herd() -> None:
    """Looked at one by one: two bucks and three does of nine."""
    farm = rabbitry(3)
    tags = [tag for tag in farm.truth if farm.truth[tag].sex == "buck"][:3] + [tag for tag in farm.truth if farm.truth[tag].sex == "doe"][
        :6
    ]
    year = Year(farm, 2, 5)
    sets = [each for each in combinations(tags, 5) if sum(farm.truth[tag].sex == "buck" for tag in each) == 2]
    assert year.grams(year.best(tags)) == pytest.approx(max(year.grams(each) for each in sets))
    assert year.grams([tags[-1]]) == 0.0


def test_the_kept_set_keeps_to_its_cages() -> None:
    """As many as there are cages, two of them bucks, all of those that may stay."""
    barn = seen(rabbitry(3))
    kept = ours(barn, 12)
    assert len(kept) == len(set(kept)) == 12
    assert set(kept) <= may_stay(barn)
    assert sum(tag.startswith("B") or barn.herd.find(tag).sex == "buck" for tag in kept) == 2  # type: ignore[union-attr]


def test_a_report_of_few_herds_has_its_lines(told: Kept) -> None:
    """What each brings, then the paired tests."""
    lines = list(told.lines())
    assert [line.split()[0] for line in lines[:5]] == ["ours", "plan", "raw", "last", "random"]
    assert all(line.startswith("ours ahead of") and "p = " in line for line in lines[5:])
