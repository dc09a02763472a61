"""Colors and the genes they hide."""

from __future__ import annotations

import pytest

from core.reckon.genotype import TooTangled
from core.reckon.pedigree import Pedigree, pedigree
from core.reports import coat
from core.reports.coat import frequencies, gene_word, genotype_document, posterior, said_as


def book(*rows: tuple[str, str | None, str | None]) -> Pedigree:
    """A family book."""
    made = pedigree(rows)
    assert isinstance(made, Pedigree)
    return made


@pytest.mark.parametrize(
    ("color", "word"),
    [("castor", "chestnut"), ("broken castor", "broken chestnut"), ("black", "black"), ("White", "REW"), ("palomino", None), (None, None)],
)
def test_trade_words_become_the_reckoning_s(color: str | None, word: str | None) -> None:
    """Known coats have a word, others none."""
    assert gene_word(color) == word


def test_colors_seen_make_alleles_common() -> None:
    """A blue makes d as common as D; where none is seen, hidden alleles are rare."""
    assert frequencies("D", [{"d/d"}, {"D/D", "D/d"}], ()) == {"D": 0.5, "d": 0.5}
    assert frequencies("D", [{"d/d"}], ())["d"] > 0.9
    assert frequencies("D", [], ())["d"] < 0.05


def test_steel_brings_the_rare_alleles() -> None:
    """A steel on the book puts steel's alleles in account."""
    chances = posterior(book(("1", None, None)), {"1": "steel"}, ["1"])["1"]
    assert any("Es" in genotype for genotype in chances["E"])
    plain = posterior(book(("1", None, None)), {"1": "black"}, ["1"])["1"]
    assert not any("Es" in genotype for genotype in plain["E"])


def test_animals_outside_the_book_are_left_out() -> None:
    """Nothing is said of an animal that the family book doesn't have."""
    assert posterior(book(("1", None, None)), {"2": "black"}, ["2"]) == {}


def test_document_of_nothing_is_null() -> None:
    """No chances, no genotype."""
    assert genotype_document({}) is None


def test_farm_s_words() -> None:
    """The reckoning's words in the farm's: those it uses itself."""
    assert said_as(["castor", None, "palomino"]) == {"chestnut": "castor"}


def test_tangled_locus_is_left_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """Where a family is too tangled to sum, that locus is not told."""
    monkeypatch.setattr(coat, "genotype_chances", lambda *_told: TooTangled(1))
    assert coat.posterior(book(("1", None, None)), {"1": "black"}, ["1"]) == {"1": {}}
