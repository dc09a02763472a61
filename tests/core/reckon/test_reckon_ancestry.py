"""Where closeness comes from: common ancestors and founders."""

from __future__ import annotations

import pytest
from hypothesis import given

from core.reckon.ancestry import CommonAncestor, common_ancestors, founders
from core.reckon.kinship import coi, kinship
from core.reckon.pedigree import Pedigree, Row, pedigree
from tests.strategies import pedigree_rows


def book(*rows: Row) -> Pedigree:
    found = pedigree(rows)
    assert isinstance(found, Pedigree)
    return found


@given(rows=pedigree_rows())
def test_what_each_ancestor_adds_is_the_whole_kinship(rows: list[Row]) -> None:
    """Wright's sum over common ancestors is what the table gives, for every pair."""
    told = book(*rows)
    for one in told.ids[::2]:
        for other in told.ids[::3]:
            assert sum(each.through for each in common_ancestors(told, one, other)) == pytest.approx(coi(told, one, other), abs=1e-12)


def test_half_sibs_meet_in_their_sire() -> None:
    """One ancestor, one eighth, half of the blood of each."""
    assert common_ancestors(book(("a", "s", "d"), ("b", "s", "e")), "a", "b") == (CommonAncestor("s", 0.125, 0.5, 0.5),)


def test_an_inbred_ancestor_counts_once_with_its_own_inbreeding() -> None:
    """(1/2)^3 (1 + F) with F = .25 all through it, and nothing through its own parents (Wright 1922, from memory: .15625)."""
    told = book(("u", "p", "q"), ("v", "p", "q"), ("A", "u", "v"), ("m", "A", "y"), ("n", "A", "z"))
    assert common_ancestors(told, "m", "n") == (CommonAncestor("A", 0.15625, 0.5, 0.5),)


def test_a_parent_is_an_ancestor_in_common_with_its_child() -> None:
    """A daughter back to her sire: one quarter, through him."""
    assert common_ancestors(book(("k", "s", "d")), "s", "k") == (CommonAncestor("s", 0.25, 1.0, 0.5),)


def test_strangers_have_nobody_in_common() -> None:
    """No ancestor, no share."""
    assert common_ancestors(book(("a", None, None), ("b", None, None)), "a", "b") == ()


def test_full_sibs_meet_in_both_parents_and_the_weightiest_comes_first() -> None:
    """Equal shares by name; a third cousinship behind them comes last."""
    told = book(("g", "f", None), ("p", "f", "h"), ("a", "p", "q"), ("b", "p", "q"), ("k", "a", "g"))
    found = common_ancestors(told, "k", "b")
    assert [each.animal for each in found] == ["p", "q", "f"]
    assert sum(each.through for each in found) == pytest.approx(coi(told, "k", "b"))


def test_equal_founders_are_as_many_as_they_are() -> None:
    """Two pairs, a kit each: four effective founders, each a quarter, and as many genomes as chance left."""
    told = founders(book(("k", "a", "b"), ("m", "c", "d")), ["k", "m"])
    assert told is not None
    assert told.shares == dict.fromkeys("abcd", 0.25)
    assert (told.effective, told.genomes, told.unknown) == (pytest.approx(4), pytest.approx(2), 0)


def test_a_favourite_sire_makes_the_founders_fewer() -> None:
    """Half of everybody's blood is his: 1 / (1/4 + 4/64) = 3.2 of five founders."""
    told = founders(book(*((f"k{at}", "s", f"d{at}") for at in range(4))), [f"k{at}" for at in range(4)])
    assert told is not None
    assert next(iter(told.shares.items())) == ("s", 0.5)
    assert told.effective == pytest.approx(3.2)


def test_an_unknown_parent_is_a_founder_of_its_own() -> None:
    """Half of the kit's blood is nobody's that is known."""
    told = founders(book(("k", "s", None)), ["k", "k"])
    assert told is not None
    assert (told.shares, told.unknown, told.effective) == ({"s": 0.5}, 0.5, pytest.approx(2))


@given(rows=pedigree_rows())
def test_founders_shares_add_up_and_genomes_are_never_more_than_founders(rows: list[Row]) -> None:
    """All blood comes from somewhere; drift only loses."""
    told = book(*rows)
    found = founders(told, told.ids)
    assert found is not None
    assert sum(found.shares.values()) + found.unknown == pytest.approx(1)
    assert found.genomes == pytest.approx(1 / (2 * kinship(told, told.ids).mean()))
    assert found.genomes <= found.effective + 1e-9


def test_nobody_has_no_founders() -> None:
    """An empty group has none."""
    assert founders(book(("a", None, None)), []) is None
