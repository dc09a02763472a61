"""Kinship and inbreeding against textbook values; each case of cases.json names its source (kinds inbreeding, pedigree_error, scale)."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from core.reckon.kinship import coi, frontier, inbreeding, inbreeding_array, kinship
from core.reckon.mixed_model import mendelian, relationship_inverse
from core.reckon.pedigree import Pedigree, PedigreeProblem, pedigree
from tests.published import invented_pedigrees
from tests.published.worked_cases import named, of_kind, rows

CLOSE = 1e-9


def book_of(case: dict[str, Any]) -> Pedigree:
    book = pedigree(rows(case))
    assert isinstance(book, Pedigree)
    return book


def cases_with(key: str) -> list[dict[str, Any]]:
    return [case for case in of_kind("inbreeding") if key in case["expected"]]


@pytest.mark.parametrize("case", of_kind("inbreeding"), ids=named)
def test_inbreeding_is_the_published_value(case: dict[str, Any]) -> None:
    """F of every animal equals the source's."""
    found = inbreeding(book_of(case))
    assert {animal: found[animal] for animal in case["expected"]["F"]} == pytest.approx(case["expected"]["F"], abs=CLOSE)


@pytest.mark.parametrize("case", cases_with("kinship"), ids=named)
def test_kinship_of_pairs_is_the_published_value(case: dict[str, Any]) -> None:
    """f of each pair equals the source's."""
    book = book_of(case)
    assert [kinship(book, pair).of(*pair) for pair in case["input"]["pairs"]] == pytest.approx(case["expected"]["kinship"], abs=CLOSE)


@pytest.mark.parametrize("case", cases_with("coi_of_mating"), ids=named)
def test_the_coi_of_a_mating_is_the_published_value(case: dict[str, Any]) -> None:
    """Kits of a mating would have the source's F."""
    book = book_of(case)
    assert [coi(book, *mates) for mates in case["input"]["matings"]] == pytest.approx(case["expected"]["coi_of_mating"], abs=CLOSE)


@pytest.mark.parametrize("case", cases_with("A"), ids=named)
def test_the_relationship_matrix_is_the_published_one(case: dict[str, Any]) -> None:
    """A, twice the kinship, equals the source's."""
    found = 2 * kinship(book_of(case), case["input"]["order"]).table
    assert found == pytest.approx(np.array(case["expected"]["A"]), abs=CLOSE)


@pytest.mark.parametrize("case", cases_with("Ainv"), ids=named)
def test_the_inverse_relationship_matrix_is_the_published_one(case: dict[str, Any]) -> None:
    """The inverse of A, built directly with inbreeding, equals the source's."""
    book = book_of(case)
    order = [book.place[animal] for animal in case["input"]["order"]]
    found = relationship_inverse(book, inbreeding_array(book)).toarray()[np.ix_(order, order)]
    assert found == pytest.approx(np.array(case["expected"]["Ainv"]), abs=CLOSE)


@pytest.mark.parametrize("case", cases_with("D"), ids=named)
def test_mendelian_sampling_is_the_published_share(case: dict[str, Any]) -> None:
    """D of each animal equals the source's."""
    book = book_of(case)
    order = [book.place[animal] for animal in case["input"]["order"]]
    assert mendelian(book, inbreeding_array(book))[order] == pytest.approx(case["expected"]["D"], abs=CLOSE)


@pytest.mark.parametrize("case", cases_with("group_mean_kinship"), ids=named)
def test_mean_kinship_of_a_group_is_the_worked_value(case: dict[str, Any]) -> None:
    """Mean kinship of each animal and of the group, with and without self."""
    expected, group = case["expected"], kinship(book_of(case), case["input"]["group"])
    assert {animal: group.mean_of(animal) for animal in group.among} == pytest.approx(expected["mean_kinship"], abs=CLOSE)
    assert group.mean() == pytest.approx(expected["group_mean_kinship"], abs=CLOSE)
    assert group.mean_between() == pytest.approx(expected["group_mean_kinship_excl_self"], abs=CLOSE)


@pytest.mark.parametrize("case", of_kind("pedigree_error"), ids=named)
def test_an_impossible_pedigree_is_told_with_the_animal(case: dict[str, Any]) -> None:
    """Loops and own parents are refused, a sire that is also a dam is flagged; an animal concerned is named."""
    found = pedigree(rows(case))
    problem = found if isinstance(found, PedigreeProblem) else found.warnings[0]
    assert case["expected"].get("animal", "a") in problem.ids


@pytest.mark.parametrize("case", of_kind("scale"), ids=named)
def test_large_invented_pedigrees_give_the_worked_sums(case: dict[str, Any]) -> None:
    """Up to 100,000 animals: the sum, the largest and the last F."""
    expected = case["expected"]
    sires, dams = getattr(invented_pedigrees, case["input"]["generator"])(case["input"]["n"], case["input"]["seed"])
    assert (int(sires.sum()), int(dams.sum())) == (expected["sum_sire"], expected["sum_dam"])
    found, _ = frontier(sires, dams, np.empty(0, dtype=np.int64))
    assert found.sum() == pytest.approx(expected["sum_F"], rel=case["tol"]["rel"])
    half_a_digit = 5.1e-11  # the case tells these two to ten decimals
    assert (found.max(), found[-1]) == pytest.approx((expected["max_F"], expected["F_last"]), abs=half_a_digit)
