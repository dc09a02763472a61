"""Breeding values against worked examples; each case of cases.json names its source (kinds blup, sire_model)."""

from __future__ import annotations

from typing import Any

import pytest

from core.reckon.mixed_model import BreedingValues, Record, Variances, breeding_values
from core.reckon.pedigree import Pedigree, pedigree
from tests.published.worked_cases import named, of_kind, rows

CLOSE = 1e-6


def solved(case: dict[str, Any]) -> BreedingValues:
    told = case["input"]
    book = pedigree(rows(case))
    assert isinstance(book, Pedigree)
    others = {effect: size for effect, size in told["var"].items() if effect not in ("animal", "residual")}
    records = [
        Record(
            record["animal"],
            record["y"],
            {factor: record[factor] for factor in told["fixed_factors"]},
            {effect: record.get(effect, record["animal"]) for effect in others},
        )
        for record in told["records"]
    ]
    return breeding_values(book, records, Variances(told["var"]["animal"], told["var"]["residual"], others))


@pytest.mark.parametrize("case", of_kind("blup"), ids=named)
def test_breeding_values_are_the_worked_ones(case: dict[str, Any]) -> None:
    """The prediction of every animal."""
    assert dict(solved(case).values) == pytest.approx(case["expected"]["ebv"], abs=CLOSE)


@pytest.mark.parametrize("case", of_kind("blup"), ids=named)
def test_errors_of_prediction_are_the_worked_ones(case: dict[str, Any]) -> None:
    """PEV and both conventions of reliability."""
    expected, found = case["expected"], solved(case).asked
    assert {animal: one.pev for animal, one in found.items()} == pytest.approx(expected["pev"], abs=CLOSE)
    assert {animal: one.reliability for animal, one in found.items()} == pytest.approx(expected["reliability"], abs=CLOSE)
    assert {animal: one.reliability_inbred for animal, one in found.items()} == pytest.approx(expected["reliability_F"], abs=CLOSE)


@pytest.mark.parametrize("case", of_kind("blup"), ids=named)
def test_litter_and_permanent_effects_are_the_worked_ones(case: dict[str, Any]) -> None:
    """Every further random effect's levels, and what the fixed effects say of each record."""
    found = solved(case)
    for effect, levels in found.effects.items():
        assert dict(levels) == pytest.approx(case["expected"][effect], abs=CLOSE)
    assert found.fitted == pytest.approx(case["expected"]["fitted_fixed"], abs=CLOSE)


@pytest.mark.parametrize("case", [case for case in of_kind("blup") if "published" in case["expected"]], ids=named)
def test_breeding_values_are_those_printed_in_the_book(case: dict[str, Any]) -> None:
    """Mrode's printed three decimals."""
    printed = case["expected"]["published"]
    assert dict(solved(case).values) == pytest.approx(printed["ebv"], abs=case["tol"]["published_abs"])


def test_the_books_season_contrasts_hold_where_records_can_tell_them() -> None:
    """Mrode 2014, example 4.1: HYS2 - HYS1 = 44.065, HYS4 - HYS3 = 0.013; HYS2 and HYS3 share no parity, so no contrast is given."""
    found = solved(next(case for case in of_kind("blup") if case["id"] == "blup-02"))
    second, fourth = found.contrast("hys", "2", "1"), found.contrast("hys", "4", "3")
    assert second is not None
    assert fourth is not None
    assert (second.difference, fourth.difference) == pytest.approx((44.065, 0.013), abs=0.0006)
    assert found.contrast("hys", "2", "3") is None


def test_standard_errors_of_prediction_are_those_printed_in_the_book() -> None:
    """Mrode 2014, example 3.1: standard error of prediction and accuracy of animals 1 and 8."""
    found = solved(next(case for case in of_kind("blup") if case["id"] == "blup-01"))
    assert (found.of("1").standard_error, found.of("8").standard_error) == pytest.approx((4.3409, 4.1103), abs=5e-5)
    assert (found.of("1").accuracy, found.of("8").accuracy) == pytest.approx((0.240, 0.394), abs=5e-4)


@pytest.mark.parametrize("case", of_kind("sire_model"), ids=named)
def test_the_sire_model_gives_the_worked_values(case: dict[str, Any]) -> None:
    """Unrelated bucks compared by their kits: values, errors, and the contrast of the sexes."""
    told, expected = case["input"], case["expected"]
    book = pedigree([(row[0], row[1], row[2]) for row in told["sires"]])
    assert isinstance(book, Pedigree)
    records = [Record(record["sire"], record["y"], {"sex": record["sex"]}) for record in told["records"]]
    found = breeding_values(book, records, Variances(told["var"]["sire"], told["var"]["residual"]))
    sexes = found.contrast("sex", "M", "F")
    assert dict(found.values) == pytest.approx(expected["sire"], abs=CLOSE)
    assert {buck: one.pev for buck, one in found.asked.items()} == pytest.approx(expected["pev"], abs=CLOSE)
    assert sexes is not None
    assert sexes.difference == pytest.approx(expected["sex"]["M"] - expected["sex"]["F"], abs=CLOSE)
