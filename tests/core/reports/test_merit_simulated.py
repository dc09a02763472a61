"""Breeding values in simulated herds whose truth is known; `tests/bench/bucks.py` does the same for 1,000 herds."""

from __future__ import annotations

import pytest

from tests.bench.bucks import KINDS, Tally, tally


@pytest.fixture(scope="module")
def told() -> Tally:
    """Sixty herds that stray from the published variances as herds do."""
    return tally(60, KINDS[1])


def test_breeding_values_go_with_the_truth_better_than_raw_averages(told: Tally) -> None:
    """Who judges a buck by the bare weights of his kits is further from what he passes on."""
    value, raw = told.correlations
    assert value > raw + 0.1


def test_the_interval_holds_the_truth_eight_times_in_ten(told: Tally) -> None:
    """75 to 85 % of the 80 % intervals."""
    assert 0.75 <= told.coverage <= 0.85


def test_better_so_many_times_in_ten_is_true_so_often(told: Tally) -> None:
    """Over all pairs of bucks the better one by what is said is as often the better one in truth, give or take five in a hundred."""
    said = sum(chance for chance, _ in told.pairs) / len(told.pairs)
    truly = sum(better for _, better in told.pairs) / len(told.pairs)
    assert abs(said - truly) < 0.05


def test_a_report_of_few_herds_has_its_lines(told: Tally) -> None:
    """Correlations, coverage and how often `better` was true."""
    lines = list(told.lines("sixty"))
    assert lines[0].startswith("sixty: 60 herds of ")
    assert "breeding values go with the truth at" in lines[1]
    assert "80 % intervals hold the truth" in lines[2]
    assert lines[3].startswith("  said to be better")
