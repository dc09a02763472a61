"""Colour words, what a mating throws, and what a word says of the genes."""

from __future__ import annotations

from fractions import Fraction
from itertools import product

import pytest
from hypothesis import given

from core.handbook.coat_genes import MARKING_WORDS, RARE_FORMS, TRADE_WORDS
from core.handbook.colors import color_names
from core.reckon.colour import (
    LOCI,
    PLAIN,
    WORDED,
    allowed,
    at_least_one,
    genotypes,
    litter_colours,
    named,
    said_genes,
    spelled,
    words_meant,
)
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
    left = said_genes(named(genotype), also=RARE_FORMS)
    assert left is not None
    assert all(told in left.loci[locus] for locus, told in genotype.items())


@pytest.mark.parametrize("rare", [(), ("Es",), RARE_FORMS], ids=["plain", "steel", "all"])
def test_a_word_leaves_just_the_genotypes_that_look_so(rare: tuple[str, ...]) -> None:
    """Locus by locus, A with E where a colour ties them: listed against every genotype of the five loci that make the word."""
    alleles = {locus: [one for one in LOCI[locus] if one not in RARE_FORMS or one in rare] for locus in WORDED}
    wearing: dict[str, set[tuple[str, ...]]] = {}
    for kit in product(*(genotypes(locus, alleles[locus]) for locus in WORDED)):
        wearing.setdefault(named(dict(zip(WORDED, kit, strict=True))), set()).add(kit)
    for word, kits in wearing.items():
        left = allowed(word, rare)
        assert left is not None
        tied = set(left.tied or product(left.loci["A"], left.loci["E"]))
        told = {kit for kit in product(*(left.loci[locus] for locus in WORDED)) if (kit[0], kit[-1]) in tied}
        assert told == kits, word


def test_rare_alleles_count_only_where_the_herd_has_them() -> None:
    """A black is a self at A unless dominant black or steel is about; then A and E hang together."""
    plain, dominant = allowed("black"), allowed("black", also=("Ed",))
    assert plain is not None
    assert dominant is not None
    assert (plain.loci["A"], plain.loci["E"], plain.tied) == (("a/a",), ("E/E", "E/ej", "E/e"), None)
    assert dominant.tied is not None
    assert {("A/A", "Ed/E"), ("a/a", "E/E")} <= set(dominant.tied)
    assert ("A/A", "E/E") not in dominant.tied


@pytest.mark.parametrize(
    ("said", "locus", "left"),
    [
        ("broken blue", "En", ("En/en",)),
        ("Charlie Blue", "En", ("En/En",)),
        ("blue", "En", ("en/en",)),
        ("REW", "En", ("En/En", "En/en", "en/en")),
        ("broken", "En", ("En/en",)),
        ("broken", "D", ("D/D", "D/d", "d/d")),
        ("broken", "V", ("V/V", "V/v")),
        ("broken vienna marked", "V", ("V/v",)),
        ("broken vienna marked", "En", ("En/en",)),
        ("dutch-marked chocolate", "Du", ("du/du",)),
        ("silvered broken fawn", "D", ("D/D", "D/d", "d/d")),
        ("silvered broken fawn", "Si", ("si/si",)),
        ("charlie tricolor", "En", ("En/En",)),
        ("lilac fox", "C", ("cchd/cchd", "cchd/cchl", "cchd/ch", "cchd/c")),
        ("BEW", "V", ("v/v",)),
    ],
)
def test_marks_and_trade_words_tell_their_genes(said: str, locus: str, left: tuple[str, ...]) -> None:
    """Broken: one gene; charlie: two; a bare word: none; white hides it; a loose word leaves what any of its meanings does."""
    told = said_genes(said)
    assert told is not None
    assert told.loci[locus] == left


def test_a_word_that_is_no_colour_allows_nothing() -> None:
    """None, so that nobody reasons from it."""
    assert said_genes("sparkly") is None
    assert allowed("sparkly") is None


@pytest.mark.parametrize(
    ("said", "words"),
    [
        ("Castor", ("chestnut",)),
        ("broken fawn", ("broken orange", "broken cream")),
        ("blue sable", ("siamese smoke pearl",)),
        ("charlie tricolor", ("charlie black harlequin",)),
        ("silvered broken black", ("broken silvered black",)),
        ("vienna marked", ()),
    ],
)
def test_a_word_of_the_trade_means_words_of_the_table(said: str, words: tuple[str, ...]) -> None:
    """Marks in one order; of two marks for one gene the outer one."""
    assert words_meant(said) == words


def test_every_word_of_the_trade_means_a_colour_of_the_table() -> None:
    """Nothing in the table of words leads nowhere, and the colours that notes are read with have genes, but for the loosest."""
    assert [one.said for one in TRADE_WORDS for word in words_meant(one.said.format(x="blue")) if allowed(word, RARE_FORMS) is None] == []
    assert {mark.strip() for mark in MARKING_WORDS} >= {"broken", "charlie"}
    assert [color for color in color_names() if said_genes(color, RARE_FORMS) is None] == ["gray", "beige"]


def test_a_litter_of_some_size_shows_a_colour_at_least_once() -> None:
    """A quarter blue: 1 - (3/4)^8."""
    assert at_least_one(Fraction(1, 4), 8) == pytest.approx(0.8998870849609375)


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
