"""Kinship and inbreeding: the quick table against the definition, and what follows from it."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given

from core.reckon.kinship import coi, inbreeding, kinship
from core.reckon.pedigree import Pedigree, Row, pedigree
from tests.strategies import pedigree_rows


def book(*rows: Row) -> Pedigree:
    found = pedigree(rows)
    assert isinstance(found, Pedigree)
    return found


def by_definition(told: Pedigree, one: str, other: str) -> float:
    """f(i, i) = (1 + f(sire, dam)) / 2; else the mean of the younger's parents with the elder."""
    younger, elder = sorted((one, other), key=lambda animal: told.place[animal], reverse=True)
    sire, dam = told.parents(younger)
    if younger == elder:
        return 0.5 * (1 + (by_definition(told, sire, dam) if sire and dam else 0))
    return 0.5 * sum(by_definition(told, parent, elder) for parent in (sire, dam) if parent)


@given(rows=pedigree_rows())
def test_the_table_is_what_the_definition_gives(rows: list[Row]) -> None:
    """Two methods agree on every pair of every small book."""
    told = book(*rows)
    found = kinship(told, told.ids)
    assert found.table == pytest.approx(np.array([[by_definition(told, one, other) for other in told.ids] for one in told.ids]), abs=1e-12)


@given(rows=pedigree_rows())
def test_inbreeding_is_the_kinship_of_the_parents(rows: list[Row]) -> None:
    """F of a kit is the COI of the mating it came from; 0 where a parent is unknown."""
    told = book(*rows)
    for animal, share in inbreeding(told).items():
        sire, dam = told.parents(animal)
        assert share == pytest.approx(coi(told, sire, dam) if sire and dam else 0)


@given(rows=pedigree_rows())
def test_asking_fewer_gives_the_same_answers(rows: list[Row]) -> None:
    """Rows given up early never change what is left."""
    told = book(*rows)
    everyone, some = kinship(told, told.ids), kinship(told, told.ids[::3])
    assert all(some.of(one, other) == pytest.approx(everyone.of(one, other)) for one in some.among for other in some.among)


def test_more_breeders_than_the_table_begins_with_make_it_grow() -> None:
    """200 unrelated pairs, one kit each: every kit half its parents, none inbred."""
    rows: list[Row] = [(f"k{at}", f"b{at}", f"d{at}") for at in range(200)]
    founders: list[Row] = [(f"{sex}{at}", None, None) for at in range(200) for sex in "bd"]
    told = kinship(book(*founders, *rows), ["k0", "b0", "k199", "d199"])
    assert (told.of("k0", "b0"), told.of("k199", "d199"), told.of("k0", "d199")) == (0.25, 0.25, 0.0)


def test_means_of_an_empty_or_single_group_are_plain() -> None:
    """Nobody: 0; one alone: its kinship to itself, and nothing between."""
    told = book(("a", None, None))
    assert (kinship(told, []).mean(), kinship(told, []).mean_between()) == (0.0, 0.0)
    assert (kinship(told, ["a"]).mean(), kinship(told, ["a"]).mean_between()) == (0.5, 0.0)


def test_an_empty_book_has_no_inbreeding() -> None:
    """No animals, no answers, no error."""
    assert inbreeding(book()) == {}


def test_an_animal_asked_twice_stands_once() -> None:
    """Repeats don't weigh a group's mean."""
    told = book(("k", "s", "d"))
    assert kinship(told, ["k", "s", "k"]).among == ("k", "s")
