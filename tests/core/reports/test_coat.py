"""Colors and the genes they hide."""

from __future__ import annotations

import pytest

from core.reckon.genotype import TooTangled
from core.reckon.pedigree import Pedigree, pedigree
from core.reports import coat
from core.reports.coat import Coats, gene_word, genotype_document, said_as


def book(*rows: tuple[str, str | None, str | None]) -> Pedigree:
    """A family book."""
    made = pedigree(rows)
    assert isinstance(made, Pedigree)
    return made


@pytest.mark.parametrize(
    ("color", "word"),
    [
        ("castor", "chestnut"),
        ("broken castor", "broken chestnut"),
        ("black", "black"),
        ("White", "REW"),
        ("silvered fawn", None),
        ("purple", None),
        (None, None),
    ],
)
def test_trade_words_become_the_reckoning_s(color: str | None, word: str | None) -> None:
    """Known coats have a word, loose ones and others none."""
    assert gene_word(color) == word


def test_steel_brings_the_rare_alleles() -> None:
    """A steel on the book puts steel's alleles in account."""
    chances = Coats(book(("1", None, None)), {"1": "steel"}).genes(["1"])["1"]
    assert any("Es" in genotype for genotype in chances["E"])
    plain = Coats(book(("1", None, None)), {"1": "black"}).genes(["1"])["1"]
    assert not any("Es" in genotype for genotype in plain["E"])


def test_animals_outside_the_book_are_left_out() -> None:
    """Nothing is said of an animal that the family book doesn't have."""
    assert Coats(book(("1", None, None)), {"2": "black"}).genes(["2"]) == {}


def test_document_of_nothing_is_null() -> None:
    """No chances, no genotype."""
    assert genotype_document({}) is None


def test_farm_s_words() -> None:
    """The reckoning's words in the farm's: those it uses itself."""
    assert said_as(["castor", None, "purple"]) == {"chestnut": "castor"}


def test_tangled_locus_is_left_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where a family is too tangled to sum, that locus is not told."""
    monkeypatch.setattr(coat, "joint_chances", lambda *_told: TooTangled(1))
    assert Coats(book(("1", None, None)), {"1": "black"}).genes(["1"]) == {"1": {}}
