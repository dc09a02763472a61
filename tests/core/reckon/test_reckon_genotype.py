"""Hidden genes: the quick sums against listing every possibility, and impossible families."""

from __future__ import annotations

from collections.abc import Sequence
from functools import cache
from itertools import product

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.reckon import elimination
from core.reckon.colour import genotypes, spelled
from core.reckon.genotype import Founders, Impossible, TooTangled, conflicts, genotype_chances, joint_chances
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
    assert genotype_chances(told, "A", allowed, ask=["s"]) == Impossible(("s", "d", "k"))
    assert isinstance(genotype_chances(told, "A", allowed, error=0.01), dict)


def test_a_family_too_tangled_says_how_large_it_would_get(monkeypatch: pytest.MonkeyPatch) -> None:
    """Rather than filling the memory."""
    monkeypatch.setattr(elimination, "MOST_CELLS", 20)
    assert genotype_chances(book(("k", "s", "d")), "D", {}) == TooTangled(27)


POOLS = {"here": {"A": {"A": 0.6, "a": 0.4}, "E": {"Ed": 0.3, "E": 0.7}}, "own": {"A": {"A": 0.1, "a": 0.9}, "E": {"Ed": 0.05, "E": 0.95}}}
#: A black (self by a/a, or by Ed whatever A is), a chestnut, and either of them in doubt.
TIED_COATS = {
    "black": [(a, e) for a in ("A/A", "A/a", "a/a") for e in ("Ed/Ed", "Ed/E", "E/E") if a == "a/a" or e != "E/E"],
    "chestnut": [("A/A", "E/E"), ("A/a", "E/E")],
    "all black": [("a/a", "E/E")],
}


@cache
def chance_at(locus: str, kit: str, sire: str | None, dam: str | None, pool: str) -> float:
    """Mendel's rule at a locus, an unknown parent's gametes from that pool."""

    def gametes(parent: str | None) -> list[tuple[str, float]]:
        return [(allele, 0.5) for allele in parent.split("/")] if parent else list(POOLS[pool][locus].items())

    return sum(p * q for (a, p), (b, q) in product(gametes(sire), gametes(dam)) if spelled(locus, f"{a}/{b}") == kit)


def listed_jointly(told: Pedigree, coats: dict[str, str], own: list[str], error: float) -> dict[str, dict[tuple[str, ...], float]]:
    """Everybody's chances over A and E by listing all the genotypes of the family; empty where nothing is possible."""
    states = [(a, e) for a in genotypes("A", "Aa") for e in genotypes("E", ["Ed", "E"])]
    found: dict[str, dict[tuple[str, ...], float]] = {animal: {} for animal in told.ids}
    for state in product(states, repeat=len(told)):
        of = dict(zip(told.ids, state, strict=True))
        chance = 1.0
        for animal, genes in of.items():
            sire, dam = told.parents(animal)
            pool = "own" if animal in own else "here"
            for at, locus in enumerate(("A", "E")):
                chance *= chance_at(locus, genes[at], of[sire][at] if sire else None, of[dam][at] if dam else None, pool)
            chance *= error if animal in coats and genes not in TIED_COATS[coats[animal]] else 1.0
        if chance:
            for animal, genes in of.items():
                found[animal][genes] = found[animal].get(genes, 0.0) + chance
    total = sum(found[told.ids[0]].values())
    return {animal: {genes: p / total for genes, p in each.items()} for animal, each in found.items()} if total else {}


@settings(deadline=None, max_examples=25)  # listing is slow on purpose
@given(rows=pedigree_rows(most=4), data=st.data(), error=st.sampled_from([0.0, 0.01]))
def test_two_loci_that_a_colour_ties_are_summed_together(rows: list[Row], data: st.DataObject, error: float) -> None:
    """Against listing everything: colours that tie A and E, founders of another kind, only some asked, errors and impossible families."""
    told = book(*rows)
    coats = data.draw(st.dictionaries(st.sampled_from(told.ids), st.sampled_from(sorted(TIED_COATS))))
    own, asked = (data.draw(st.lists(st.sampled_from(told.ids), unique=True)) for _ in range(2))
    founders = Founders(POOLS["here"], dict.fromkeys(own, POOLS["own"]))
    wanted = listed_jointly(told, coats, own, error)
    allowed = {animal: TIED_COATS[coat] for animal, coat in coats.items()}
    found = joint_chances(told, ("A", "E"), allowed, founders, error)
    doubts = conflicts(told, ("A", "E"), allowed, founders)
    if not wanted:
        assert isinstance(found, Impossible)
        assert found.animals in doubts
        return
    assert isinstance(found, dict)
    assert bool(doubts) is (error > 0 and not listed_jointly(told, coats, own, 0.0))
    assert all(found[animal] == pytest.approx(wanted[animal], abs=1e-12) for animal in told.ids)
    some = joint_chances(told, ("A", "E"), allowed, founders, error, asked)
    assert isinstance(some, dict)
    assert some == {animal: pytest.approx(wanted[animal], abs=1e-12) for animal in asked}


def test_litter_mates_that_look_alike_are_counted() -> None:
    """Five agouti kits of a self mate: the doe is pure 16 times in 17; ten more make it 1 in 2^15 beside it (worked by hand)."""
    for kits in (5, 15):
        told = book(*((f"k{at}", "buck", "doe") for at in range(kits)))
        allowed: dict[str, Sequence[str]] = {"doe": COLOURS[0], "buck": COLOURS[2]} | {f"k{at}": COLOURS[0] for at in range(kits)}
        found = genotype_chances(told, "A", allowed, {"A": 0.5, "a": 0.5}, ask=["doe"])
        assert isinstance(found, dict)
        assert found["doe"]["A/A"] == pytest.approx(2**kits / (2**kits + 2))


def test_every_impossible_family_is_named_once_and_as_small_as_can_be() -> None:
    """Two litters that can't be, one over an unknown parent; a kit against one parent alone; the rest is not blamed."""
    told = book(("k", "s", "d"), ("l", "s", "d"), ("u", "s", "d"), ("m", "a", "b"), ("w", "m", "x"), ("z", "y", None))
    black, red = [("a/a",)], [("A/A",), ("A/a",)]
    allowed = {**dict.fromkeys("sdabxuz", black), **dict.fromkeys("klw", red), "y": [("A/A",)]}
    found = conflicts(told, ("A",), allowed, Founders({}))
    assert sorted("".join(sorted(each)) for each in found) == ["abwx", "dks", "dls", "yz"]


def test_a_book_without_colours_has_no_conflict() -> None:
    """Nor one where everybody may be alike."""
    assert conflicts(book(("k", "s", "d")), ("A",), {}, Founders({})) == ()
    assert conflicts(book(("k", "s", "d")), ("A",), {"k": [("a/a",)], "s": [("a/a",), ("A/a",)]}, Founders({})) == ()
