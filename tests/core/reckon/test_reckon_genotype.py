"""Hidden genes: the quick sums against listing every possibility, and impossible families."""

from __future__ import annotations

from functools import cache
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.reckon import elimination
from core.reckon.colour import genotypes, spelled
from core.reckon.genotype import Impossible, TooTangled, genotype_chances
from core.reckon.pedigree import Pedigree, Row, pedigree
from tests.strategies import pedigree_rows

SHARES = {"A": 0.5, "at": 0.2, "a": 0.3}
COLOURS = [("A/A", "A/at", "A/a"), ("at/at", "at/a"), ("a/a",)]


def book(*rows: Row) -> Pedigree:
    found = pedigree(rows)
    assert isinstance(found, Pedigree)
    return found


@cache
def chance_of_kit(kit: str, sire: str | None, dam: str | None) -> float:
    """Mendel's rule by listing gametes; an unknown parent's come from the pool."""

    def pool(parent: str | None) -> list[tuple[str, float]]:
        return [(allele, 0.5) for allele in parent.split("/")] if parent else list(SHARES.items())

    return sum(p * q for (a, p), (b, q) in product(pool(sire), pool(dam)) if spelled("A", f"{a}/{b}") == kit)


def listed(told: Pedigree, allowed: dict[str, tuple[str, ...]], error: float) -> dict[str, dict[str, float]]:
    """Everybody's chances by listing all the genotypes of the family; empty where nothing is possible."""
    marginals: dict[str, dict[str, float]] = {animal: {} for animal in told.ids}
    for state in product(genotypes("A"), repeat=len(told)):
        of = dict(zip(told.ids, state, strict=True))
        chance = 1.0
        for animal in told.ids:
            sire, dam = told.parents(animal)
            chance *= chance_of_kit(of[animal], sire and of[sire], dam and of[dam])
            chance *= 1.0 if animal not in allowed or of[animal] in allowed[animal] else error
        for animal in told.ids:
            marginals[animal][of[animal]] = marginals[animal].get(of[animal], 0) + chance
    total = sum(marginals[told.ids[0]].values())
    return {animal: {one: p / total for one, p in found.items() if p > 0} for animal, found in marginals.items()} if total else {}


@settings(deadline=None, max_examples=60)  # listing is slow on purpose
@given(rows=pedigree_rows(most=4), data=st.data(), error=st.sampled_from([0.0, 0.01]))
def test_the_chances_are_those_of_listing_everything(rows: list[Row], data: st.DataObject, error: float) -> None:
    """Elimination and enumeration agree for everybody, on impossible families too."""
    told = book(*rows)
    allowed = data.draw(st.dictionaries(st.sampled_from(told.ids), st.sampled_from(COLOURS)))
    expected, found = listed(told, allowed, error), genotype_chances(told, "A", allowed, SHARES, error)
    if not expected:
        assert isinstance(found, Impossible)
        return
    assert isinstance(found, dict)
    assert all(found[animal] == pytest.approx(expected[animal], abs=1e-12) for animal in told.ids)


def test_a_buck_with_a_hundred_kits_is_summed() -> None:
    """More kits than an array product would take at once; one self kit makes him a carrier for sure."""
    rows: list[Row] = [(f"k{at}", "buck", f"doe{at % 7}") for at in range(100)]
    found = genotype_chances(book(*rows), "A", {"buck": COLOURS[0], "k3": COLOURS[2]}, {"A": 0.5, "a": 0.5})
    assert isinstance(found, dict)
    assert found["buck"] == pytest.approx({"A/a": 1.0})


def test_without_frequencies_all_alleles_of_the_locus_are_alike() -> None:
    """A founder of two alleles: 1/4, 1/2, 1/4."""
    found = genotype_chances(book(("x", None, None)), "D", {})
    assert found == {"x": pytest.approx({"D/D": 0.25, "D/d": 0.5, "d/d": 0.25})}


def test_animals_off_the_book_say_nothing() -> None:
    """A colour of nobody's relative is passed over."""
    found = genotype_chances(book(("x", None, None)), "D", {"stranger": ("d/d",)})
    assert isinstance(found, dict)
    assert set(found) == {"x"}


def test_a_conflict_over_generations_names_those_that_cannot_stand_together() -> None:
    """Self grandparents and an agouti grandkit, the parents' colours unknown; an honest sib is left out."""
    told = book(("s", "gs", "gd"), ("d", "hs", "hd"), ("k", "s", "d"), ("u", "s", "d"))
    allowed = {**dict.fromkeys(("gs", "gd", "hs", "hd"), COLOURS[2]), "k": COLOURS[0], "u": COLOURS[2]}
    found = genotype_chances(told, "A", allowed)
    assert isinstance(found, Impossible)
    assert set(found.animals) == {"gs", "gd", "hs", "hd", "k"}


def test_a_colour_that_no_known_allele_makes_is_impossible() -> None:
    """An otter where founders carry no tan."""
    assert genotype_chances(book(("x", None, None)), "A", {"x": ("at/at",)}, {"A": 0.5, "a": 0.5}) == Impossible(("x",))


def test_an_error_rate_lets_an_impossible_family_stand() -> None:
    """With some doubt in every colour there are chances again."""
    told = book(("k", "s", "d"))
    allowed = {"s": COLOURS[2], "d": COLOURS[2], "k": COLOURS[0]}
    assert isinstance(genotype_chances(told, "A", allowed), Impossible)
    assert isinstance(genotype_chances(told, "A", allowed, error=0.01), dict)


def test_a_family_too_tangled_says_how_large_it_would_get(monkeypatch: pytest.MonkeyPatch) -> None:
    """Rather than filling the memory."""
    monkeypatch.setattr(elimination, "MOST_CELLS", 20)
    assert genotype_chances(book(("k", "s", "d")), "D", {}) == TooTangled(27)
