"""Whom to keep: the best set against trying every set, and what is said when none fits."""

from __future__ import annotations

from itertools import combinations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.reckon.breeders import Candidate, Kept, NothingFits, Wanted, best_kept
from core.reckon.kinship import kinship
from core.reckon.pedigree import Pedigree, pedigree
from tests.strategies import pedigree_rows


def every_set(candidates: list[Candidate], table: np.ndarray, wanted: Wanted) -> dict[frozenset[str], tuple[float, float, float]]:
    """Each set of the right numbers: value, mean kinship, feed."""
    bucks, does = ([at for at, one in enumerate(candidates) if one.sex == sex] for sex in ("buck", "doe"))
    sets = [(*one, *other) for one in combinations(bucks, wanted.bucks) for other in combinations(does, wanted.does)]
    return {
        frozenset(candidates[at].animal for at in kept): (
            sum(candidates[at].value for at in kept),
            float(table[np.ix_(kept, kept)].mean()),
            sum(candidates[at].feed for at in kept),
        )
        for kept in sets
    }


@settings(deadline=None, max_examples=60)  # each example solves an integer programme
@given(rows=pedigree_rows(most=9), data=st.data())
def test_the_set_is_the_best_of_all_sets(rows: list[tuple[str, str | None, str | None]], data: st.DataObject) -> None:
    """Value, kinship and feed of the best that exists; where none fits, the least kinship there is."""
    book = pedigree(rows)
    assert isinstance(book, Pedigree)
    small = st.integers(-20, 20).map(lambda told: told / 10)
    candidates = [
        Candidate(animal, data.draw(st.sampled_from(["buck", "doe"])), data.draw(small), data.draw(st.integers(1, 5)) / 10)
        for animal in book.ids
    ]
    table = kinship(book, book.ids).table
    limits = st.none() | st.sampled_from([0.2, 0.3, 0.4, 0.5])
    wanted = Wanted(data.draw(st.integers(0, 2)), data.draw(st.integers(1, 3)), data.draw(limits), data.draw(st.none() | st.just(0.9)))
    sets = every_set(candidates, table, wanted)
    fed = {kept: told for kept, told in sets.items() if wanted.most_feed is None or told[2] <= wanted.most_feed + 1e-9}
    fit = {kept: told for kept, told in fed.items() if wanted.most_kinship is None or told[1] <= wanted.most_kinship + 1e-9}
    found = best_kept(candidates, table, wanted)
    if not fit:
        least = min((told[1] for told in fed.values()), default=None)
        assert isinstance(found, NothingFits)
        assert found.least_kinship == (least and pytest.approx(least, abs=1e-6))
        return
    assert isinstance(found, Kept)
    assert found.value == pytest.approx(max(told[0] for told in fit.values()), abs=1e-6)
    assert (found.value, found.kinship, found.feed) == pytest.approx(fit[frozenset(found.animals)])


def test_a_set_that_was_given_is_not_given_again() -> None:
    """The next best comes after it, and at last nothing."""
    two = [Candidate("a", "doe", 2.0), Candidate("b", "doe", 1.0)]
    table = np.eye(2) / 2
    again = best_kept(two, table, Wanted(0, 1), [["a"]])
    assert isinstance(again, Kept)
    assert again.animals == ("b",)
    assert best_kept(two, table, Wanted(0, 1), [["a"], ["b"]]) == NothingFits(0.5)


def test_an_empty_barn_keeps_nobody() -> None:
    """No candidate, no set, no kinship."""
    assert best_kept([], np.empty((0, 0)), Wanted(1, 1)) == NothingFits(None)
