"""The family book: parents first, and what can't be."""

from __future__ import annotations

import pytest
from hypothesis import given

from core.reckon.pedigree import Pedigree, PedigreeProblem, Row, pedigree, sound_pedigree
from tests.strategies import pedigree_rows


def book(*rows: Row) -> Pedigree:
    found = pedigree(rows)
    assert isinstance(found, Pedigree)
    return found


@given(rows=pedigree_rows())
def test_parents_stand_before_their_kits(rows: list[Row]) -> None:
    """Whatever the order of the rows; and nobody's parents change."""
    found = book(*rows)
    assert all(max(sire, dam) < at for at, (sire, dam) in enumerate(zip(found.sires, found.dams, strict=True)))
    assert {(one, *found.parents(one)) for one in found.ids} == set(rows)


def test_a_parent_without_a_row_is_a_founder() -> None:
    """It joins the book with unknown parents."""
    found = book(("k", "s", "d"))
    assert set(found.ids) == {"k", "s", "d"}
    assert found.parents("s") == (None, None)
    assert len(found) == 3
    assert "d" in found
    assert "x" not in found


def test_a_row_told_twice_alike_is_one() -> None:
    """The same parents again change nothing."""
    assert len(book(("k", "s", "d"), ("k", "s", "d"))) == 3


@pytest.mark.parametrize(
    ("rows", "problem"),
    [
        ([("k", "s", "d"), ("k", "t", "d")], PedigreeProblem("two_rows", ("k",))),
        ([("k", "k", "d")], PedigreeProblem("own_parent", ("k",))),
        ([("a", "b", None), ("b", "c", None), ("c", "a", None)], PedigreeProblem("loop", ("a", "b", "c"))),
        ([("z", "a", None), ("a", "b", None), ("b", "a", None)], PedigreeProblem("loop", ("a", "b"))),
    ],
    ids=["two rows", "own parent", "own great-grandparent", "loop above an animal"],
)
def test_what_cannot_be_comes_back_with_the_animals(rows: list[Row], problem: PedigreeProblem) -> None:
    """As a value, naming only those concerned."""
    assert pedigree(rows) == problem


def test_a_sire_that_is_also_a_dam_is_flagged_beside_the_book() -> None:
    """The sums still hold, so the book is given."""
    assert book(("a", "p", "q"), ("b", "q", "r")).warnings == (PedigreeProblem("two_sexes", ("q",)),)
    assert book(("a", "p", "q")).warnings == ()


def test_a_deep_line_sorts_without_running_out_of_stack() -> None:
    """A thousand generations told youngest first."""
    rows: list[Row] = [(f"r{at}", f"r{at - 1}", None) for at in range(3000, 0, -1)]
    assert book(*rows).ids[0] == "r0"


def test_complete_generations_stop_at_the_first_unknown_parent() -> None:
    """Two full generations, and a third with a gap, count two."""
    found = book(("k", "s", "d"), ("s", "ss", "sd"), ("d", "ds", "dd"), ("ss", "sss", None))
    assert (found.generations("k"), found.generations("s"), found.generations("ss"), found.generations("dd")) == (2, 1, 0, 0)


def test_a_book_cut_down_holds_only_ancestors() -> None:
    """Those asked about and all before them."""
    found = book(("k", "s", "d"), ("s", "x", "y"), ("u", "s", "z"))
    assert set(found.only(["k"]).ids) == {"k", "s", "d", "x", "y"}
    assert found.ancestors(["u", "z"]) == {"u", "s", "z", "x", "y"}


@given(rows=pedigree_rows())
def test_a_sound_book_stays_as_it_is(rows: list[Row]) -> None:
    """Nothing is left out and nothing is told."""
    assert sound_pedigree(rows) == (book(*rows), ())


@pytest.mark.parametrize(
    ("rows", "problem", "left"),
    [
        ([("k", "k", "d")], PedigreeProblem("own_parent", ("k",)), (None, "d")),
        ([("k", "s", "s")], PedigreeProblem("one_parent_twice", ("s", "k")), (None, None)),
        ([("k", "s", "d"), ("k", "t", "d")], PedigreeProblem("two_rows", ("k",)), ("s", "d")),
        ([("k", "s", "d"), ("s", "k", "x")], PedigreeProblem("loop", ("k", "s")), (None, "d")),
    ],
    ids=["own parent", "one parent twice", "two rows", "loop"],
)
def test_what_cannot_be_is_left_out_and_told(rows: list[Row], problem: PedigreeProblem, left: tuple[str | None, str | None]) -> None:
    """The parent in doubt counts as unknown; the other one stays."""
    found, problems = sound_pedigree(rows)
    assert problems == (problem,)
    assert found.parents("k") == left


def test_two_loops_are_both_told_and_the_rest_stays() -> None:
    """Each loop by its own animals, and a family beside them is untouched."""
    found, problems = sound_pedigree([("a", "b", None), ("b", "a", None), ("c", None, "e"), ("e", None, "c"), ("k", "s", "d")])
    assert {frozenset(one.ids) for one in problems} == {frozenset("ab"), frozenset("ce")}
    assert found.parents("k") == ("s", "d")


def test_a_parent_younger_than_its_child_is_told_and_stays() -> None:
    """The birthday may be the slip; one born the same day as far as anybody knows is let be."""
    found, problems = sound_pedigree([("k", "s", "d")], born={"k": 100, "s": 160, "d": 100})
    assert problems == (PedigreeProblem("younger_parent", ("s", "k")),)
    assert found.parents("k") == ("s", "d")


def test_a_parent_of_the_wrong_sex_is_told_once_and_stays() -> None:
    """A doe as sire, a buck as dam; one that is also told as the other parent elsewhere isn't told again for that."""
    found, problems = sound_pedigree([("k", "s", "d"), ("m", "x", "s")], sexes={"s": "doe", "d": "buck", "x": "buck"})
    assert problems == (PedigreeProblem("wrong_sex", ("s", "k")), PedigreeProblem("wrong_sex", ("d", "k")))
    assert found.parents("k") == ("s", "d")
    assert sound_pedigree([("k", "s", "d"), ("m", "x", "s")])[1] == (PedigreeProblem("two_sexes", ("s",)),)


def test_kits_join_at_the_end_of_the_book() -> None:
    """A parent that the book doesn't have is unknown."""
    found = book(("a", None, None), ("b", None, None)).with_kits([("k", "a", "b"), ("l", "stranger", "b")])
    assert found.ids[-2:] == ("k", "l")
    assert (found.parents("k"), found.parents("l")) == (("a", "b"), (None, "b"))


def test_near_relatives_are_those_within_some_steps() -> None:
    """Parents and kits are a step away, mates and grandparents two; parents beyond are unknown."""
    told = book(("s", "gs", None), ("k", "s", "d"), ("h", "s", "e"), ("g", "k", None))
    assert set(told.near(["s"], 1).ids) == {"s", "gs", "k", "h"}
    assert told.near(["s"], 1).parents("k") == ("s", None)
    assert set(told.near(["d"], 2).ids) == {"d", "k", "s", "g"}
    assert told.near(["s"], 0).ids == ("s",)
