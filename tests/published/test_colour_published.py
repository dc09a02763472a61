"""Coat colours against exact ratios and posteriors; each case of cases.json names its source (kinds colour_*)."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest

from core.reckon.colour import at_least_one, litter_colours
from core.reckon.colour import named as named_coat
from core.reckon.genotype import Impossible, genotype_chances
from core.reckon.pedigree import Pedigree, pedigree
from tests.published.worked_cases import named, of_kind, rows


def chances(case: dict[str, Any]) -> object:
    told = case["input"]
    book = pedigree(rows(case))
    assert isinstance(book, Pedigree)
    frequencies = {allele: float(Fraction(share)) for allele, share in told.get("founder_allele_freq", {}).items()}
    return genotype_chances(book, told["locus"], told["allowed_genotypes"], frequencies or None)


@pytest.mark.parametrize("case", of_kind("colour_litter"), ids=named)
def test_a_litters_colours_have_the_exact_shares(case: dict[str, Any]) -> None:
    """Every colour's share as a fraction, and the chance to see one in a litter."""
    told, expected = case["input"], case["expected"]
    found = litter_colours(told["sire"], told["dam"])
    assert found == {word: Fraction(share) for word, share in expected["distribution"].items()}
    if "colour" in told:
        assert at_least_one(found[told["colour"]], told["litter_size"]) == pytest.approx(expected["p_at_least_one"], abs=1e-9)


@pytest.mark.parametrize("case", of_kind("colour_posterior"), ids=named)
def test_hidden_genes_have_the_exact_chances(case: dict[str, Any]) -> None:
    """The posterior over the genotypes of the animal asked about."""
    found = chances(case)
    assert isinstance(found, dict)
    expected = {genotype: float(Fraction(share)) for genotype, share in case["expected"]["posterior"].items()}
    assert found[case["input"]["target"]] == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("case", of_kind("colour_error"), ids=named)
def test_impossible_colours_are_told_with_the_family(case: dict[str, Any]) -> None:
    """No posterior is made up; the animals that can't stand together are named."""
    found = chances(case)
    assert isinstance(found, Impossible)
    assert set(found.animals) == {"s", "d", "k"}


@pytest.mark.parametrize(
    ("sire", "dam", "expected"),
    [
        ({"A": "a/a", "B": "B/b", "D": "D/d"}, {"A": "a/a", "B": "B/b", "D": "D/d"}, "black 9/16 blue 3/16 chocolate 3/16 lilac 1/16"),
        ({"A": "A/a", "C": "C/c"}, {"A": "A/a", "C": "C/c"}, "chestnut 9/16 black 3/16 REW 1/4"),
        ({"A": "a/a", "En": "En/En"}, {"A": "a/a"}, "broken_black 1"),
    ],
    ids=["two recessives 9:3:3:1", "albino epistasis 9:3:4", "charlie by solid"],
)
def test_classical_ratios_come_out(sire: dict[str, str], dam: dict[str, str], expected: str) -> None:
    """Mendel's ratios; En as a single incompletely dominant gene: Fontanesi et al. 2014 (OMIA 001597-9986)."""
    words = expected.split()
    told = dict(zip((word.replace("_", " ") for word in words[::2]), map(Fraction, words[1::2]), strict=True))
    assert litter_colours(sire, dam) == told


#: Onslow 1922, Journal of Genetics 12:91-99, abstract, points 2 to 4: one X makes an agouti a steel, two make it a black; such a black
#: by an agouti, by a normal black or by a chocolate gives nothing but steel; a steel by an agouti gives as many steels as agoutis.
STEEL, EXTRACTED_BLACK = {"E": "Es/E"}, {"E": "Es/Es"}


@pytest.mark.parametrize(
    ("one", "other", "expected"),
    [
        (EXTRACTED_BLACK, {}, {"black steel": Fraction(1)}),
        (EXTRACTED_BLACK, {"A": "a/a"}, {"black steel": Fraction(1)}),
        (EXTRACTED_BLACK, {"A": "a/a", "B": "b/b"}, {"black steel": Fraction(1)}),
        (STEEL, {}, {"black steel": Fraction(1, 2), "chestnut": Fraction(1, 2)}),
    ],
    ids=["black from steels by agouti", "by black", "by chocolate", "steel by agouti"],
)
def test_steel_falls_as_onslow_saw(one: dict[str, str], other: dict[str, str], expected: dict[str, Fraction]) -> None:
    """And the black that steels throw looks black."""
    assert named_coat(EXTRACTED_BLACK) == "black"
    assert litter_colours(one, other) == litter_colours(other, one) == expected


def test_yellow_dutch_by_himalayan_as_punnett_tells() -> None:
    """Punnett 1911, Mendelism, 3rd edition: the first cross is coloured like the wild rabbit; of its kits those that are neither Himalayan
    nor Dutch are 9 agouti : 3 black : 3 yellow : 1 tortoise, and Himalayan and Dutch are recessive, a quarter each."""
    himalayan, yellow_dutch = {"A": "a/a", "C": "ch/ch"}, {"E": "e/e", "Du": "du/du"}
    assert litter_colours(himalayan, yellow_dutch) == {"chestnut": Fraction(1)}
    first = {"A": "A/a", "C": "C/ch", "E": "E/e", "Du": "Du/du"}
    found = litter_colours(first, first)
    coloured = {word: found[word] / Fraction(9, 16) for word in ("chestnut", "black", "orange", "black tortoise")}
    assert coloured == {word: Fraction(part, 16) for word, part in zip(coloured, (9, 3, 3, 1), strict=True)}
    assert sum(share for word, share in found.items() if "himalayan" in word) == Fraction(1, 4)
    assert sum(share for word, share in found.items() if "dutch-marked" in word) == Fraction(1, 4)
