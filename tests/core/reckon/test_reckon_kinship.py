"""Kinship and inbreeding: the quick table against the definition, and what follows from it."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given

from core.reckon.kinship import coi, frontier, inbreeding, kinship
from core.reckon.pedigree import Pedigree, Row, pedigree
from core.reckon.tracing import inbreeding_by_tracing
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


def places(told: Pedigree) -> tuple[np.ndarray, np.ndarray]:
    return np.array(told.sires, dtype=np.int64), np.array(told.dams, dtype=np.int64)


@given(rows=pedigree_rows())
def test_tracing_gives_the_same_inbreeding(rows: list[Row]) -> None:
    """The method for books too wide for a table agrees with the table."""
    told = book(*rows)
    assert list(inbreeding_by_tracing(*places(told))) == pytest.approx(list(inbreeding(told).values()), abs=1e-12)


@given(rows=pedigree_rows())
def test_a_book_too_wide_for_the_table_is_traced(rows: list[Row]) -> None:
    """The same F and the same relationship of the pair asked about, which is cut to its ancestors."""
    told = book(*rows, ("stray", None, None), *((f"w{at}", "stray", None) for at in range(3)))
    pair = np.array([0, len(told) - 1], dtype=np.int64)
    wide, narrow = frontier(*places(told), pair), frontier(*places(told), pair, largest=len(told))
    assert narrow[0] == pytest.approx(wide[0], abs=1e-12)
    assert narrow[1] == pytest.approx(wide[1], abs=1e-12)


def test_a_wide_book_is_traced_and_a_pair_of_it_still_has_its_table() -> None:
    """Forty families kept side by side need forty rows and more; a pair needs but its own ancestors'."""
    founders: list[Row] = [(f"{sex}{at}", None, None) for at in range(40) for sex in "bd"]
    kits: list[Row] = [(f"k{at}", f"b{at}", f"d{at}") for at in range(40)]
    told = book(*founders, *kits, ("x", "b0", "k0"))
    pair = np.array([told.place["b0"], told.place["k0"]], dtype=np.int64)
    inbred, related = frontier(*places(told), pair, largest=8)
    assert inbred[told.place["x"]] == 0.25
    assert related.tolist() == [[1.0, 0.5], [0.5, 1.0]]


def test_more_animals_asked_than_a_table_holds_is_refused_with_the_numbers() -> None:
    """Rather than filling the machine's memory."""
    told = book(*((f"f{at}", None, None) for at in range(9)))
    with pytest.raises(MemoryError, match="among 9 animals"):
        frontier(*places(told), np.arange(9), largest=8)
    line = book(("c", "a", "b"), ("e", "c", "d"), ("g", "e", "f"), ("h", "g", "c"))
    with pytest.raises(MemoryError, match="needs a table"):
        frontier(*places(line), np.array([len(line) - 1]), largest=2)


def test_mates_that_share_one_known_line_are_as_close_as_that_line() -> None:
    """Half sibs through the sire with nothing known of the dams: 12.5 %, the unknown counting as unrelated."""
    assert coi(book(("a", "s", None), ("b", "s", None)), "a", "b") == 0.125
