"""Ranking with the doubt left in."""

from __future__ import annotations

from statistics import fmean, pstdev

import pytest

from core.reckon.choose import Guess, ranked


def even(_one: str, _other: str) -> float:
    return 0.5


def sure(one: str, other: str) -> float:
    return float(one < other)


def test_sure_differences_give_plain_places() -> None:
    """First is first, and better than the next for sure."""
    found = ranked({"b": 2.0, "a": 3.0, "c": 1.0}, sure)
    assert [(one.animal, one.expected_rank, one.better_than_next) for one in found] == [("a", 1, 1.0), ("b", 2, 1.0), ("c", 3, None)]


def test_without_knowledge_everyone_is_expected_in_the_middle() -> None:
    """Four that can't be told apart: place two and a half each."""
    assert [one.expected_rank for one in ranked(dict.fromkeys("abcd", 0.0), even)] == pytest.approx([2.5] * 4)


def test_ties_stand_by_name_and_nobody_gives_nobody() -> None:
    """The order never depends on the order told."""
    assert [one.animal for one in ranked({"b": 1.0, "a": 1.0}, even)] == ["a", "b"]
    assert ranked({}, even) == ()


def test_what_only_rounding_sets_apart_is_a_tie() -> None:
    """Two sums that ought to be equal stand by name, whichever way the last digit fell."""
    for noise in (1e-16, -1e-16):
        assert [one.animal for one in ranked({"b": 0.3 + noise, "a": 0.3}, lambda one, other: 0.5)] == ["a", "b"]


def test_a_product_of_two_guesses() -> None:
    """Mean and spread of a product of two that vary apart: against the exact moments of two coins."""
    one, other = Guess(3.0, 1.0), Guess(5.0, 2.0)  # 2 or 4, 3 or 7
    products = [a * b for a in (2, 4) for b in (3, 7)]
    found = one.times(other)
    assert found.value == pytest.approx(fmean(products))
    assert found.deviation == pytest.approx(pstdev(products))


def test_the_chance_to_be_above() -> None:
    """Two standard errors of the difference are 97.7 %; what is known for sure is sure; nothing between them is one half."""
    assert Guess(5.0, 0.3).chance_above(Guess(4.0, 0.4)) == pytest.approx(0.97725, abs=1e-5)
    assert [Guess(one, 0.0).chance_above(Guess(1.0, 0.0)) for one in (2.0, 1.0, 0.0)] == [1.0, 0.5, 0.0]
