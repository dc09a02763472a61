"""Colour words, what a mating throws, and what a word says of the genes."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given

from core.reckon.colour import PLAIN, allowed_genotypes, genotypes, likely_colours, litter_colours, named, spelled
from tests.strategies import colour_genotypes

GENOTYPES = colour_genotypes()


@pytest.mark.parametrize(
    ("genotype", "word"),
    [
        ({}, "chestnut"),
        ({"D": "d/d"}, "opal"),
        ({"B": "b/b", "D": "d/d"}, "lynx"),
        ({"A": "at/a", "B": "b/b"}, "chocolate otter"),
        ({"A": "a/a", "D": "d/d"}, "blue"),
        ({"A": "a/a", "C": "cchl/cchl"}, "black seal"),
        ({"A": "a/a", "C": "c/cchl", "D": "d/d"}, "siamese smoke pearl"),
        ({"C": "cchd/c", "D": "d/d"}, "squirrel"),
        ({"A": "at/at", "C": "cchd/cchd"}, "black silver marten"),
        ({"C": "ch/c"}, "black himalayan"),
        ({"C": "cchl/c"}, "sable agouti"),
        ({"E": "e/e"}, "orange"),
        ({"E": "e/e", "D": "d/d"}, "cream"),
        ({"A": "a/a", "E": "e/e", "C": "cchl/c"}, "sable point"),
        ({"A": "at/a", "E": "e/e"}, "black tortoise otter"),
        ({"E": "ej/e"}, "black harlequin"),
        ({"E": "ej/e", "C": "cchd/c"}, "black magpie"),
        ({"E": "Es/E"}, "black steel"),
        ({"E": "Es/Es"}, "black"),
        ({"E": "Es/E", "A": "a/a"}, "black"),
        ({"E": "Ed/E"}, "black"),
        ({"A": "a/a", "En": "En/en"}, "broken black"),
        ({"C": "c/c", "En": "En/En", "V": "v/v"}, "REW"),
        ({"V": "v/v", "En": "En/En"}, "BEW"),
    ],
    ids=lambda told: told if isinstance(told, str) else None,
)
def test_a_genotype_has_its_word(genotype: dict[str, str], word: str) -> None:
    """Albino before Vienna before everything; then base, pattern, C and spotting."""
    assert named(genotype) == word


@given(genotype=GENOTYPES)
def test_every_genotype_has_a_word_that_allows_it(genotype: dict[str, str]) -> None:
    """Naming and reading a word back agree at every locus."""
    allowed = allowed_genotypes(named(genotype), also=("Ed", "Es"))
    assert allowed is not None
    assert all(told in allowed[locus] for locus, told in genotype.items())


def test_rare_alleles_count_only_where_the_herd_has_them() -> None:
    """A black is a self at A unless dominant black or steel is about."""
    plain, dominant = allowed_genotypes("black"), allowed_genotypes("black", also=("Ed",))
    assert plain is not None
    assert dominant is not None
    assert (plain["A"], plain["E"]) == (("a/a",), ("E/E", "E/ej", "E/e"))
    assert "A/A" in dominant["A"]
    assert "Ed/E" in dominant["E"]


def test_a_spotted_rabbits_word_tells_its_spotting() -> None:
    """Broken: one gene; charlie: two; a bare word: none; white hides it."""
    spots = {word: (allowed_genotypes(word) or {})["En"] for word in ("broken blue", "charlie blue", "blue", "REW")}
    assert spots == {"broken blue": ("En/en",), "charlie blue": ("En/En",), "blue": ("en/en",), "REW": ("En/En", "En/en", "en/en")}


def test_a_word_that_is_no_colour_allows_nothing() -> None:
    """None, so that nobody reasons from it."""
    assert allowed_genotypes("sparkly") is None


def test_an_unknown_allele_is_refused() -> None:
    """Rather than named wrongly."""
    with pytest.raises(ValueError, match="tuple"):
        spelled("A", "A/q")


def test_genotypes_can_be_kept_to_some_alleles() -> None:
    """In order of dominance, whatever order they were told in."""
    assert genotypes("A", ["a", "A"]) == ("A/A", "A/a", "a/a")


@given(sire=GENOTYPES, dam=GENOTYPES)
def test_a_litters_shares_add_up_to_one(sire: dict[str, str], dam: dict[str, str]) -> None:
    """Exactly, as fractions."""
    assert sum(litter_colours(sire, dam).values()) == 1


def test_a_litter_is_what_counting_every_gamete_gives() -> None:
    """The product of loci against listing all the sires' and dams' gametes at once."""
    sire, dam = {"A": "A/a", "C": "cchd/c", "E": "E/e"}, {"A": "at/a", "C": "C/cchl", "E": "E/e"}

    def gametes(parent: dict[str, str]) -> list[tuple[str, ...]]:
        return list(product(*(parent.get(locus, plain).split("/") for locus, plain in PLAIN.items())))

    counted: dict[str, int] = {}
    for one, other in product(gametes(sire), gametes(dam)):
        word = named({locus: f"{a}/{b}" for locus, a, b in zip(PLAIN, one, other, strict=True)})
        counted[word] = counted.get(word, 0) + 1
    total = sum(counted.values())
    assert litter_colours(sire, dam) == {word: Fraction(count, total) for word, count in counted.items()}


def test_uncertain_parents_mix_their_likely_litters() -> None:
    """A doe that is Aa or AA with even chances, by a self buck: three in four kits agouti."""
    found = likely_colours({"A": {"a/a": 1.0}}, {"A": {"A/A": 0.5, "A/a": 0.5, "a/a": 0.0}, "C": {"C/C": 1.0, "c/c": 0.0}})
    assert found == pytest.approx({"chestnut": 0.75, "black": 0.25})
