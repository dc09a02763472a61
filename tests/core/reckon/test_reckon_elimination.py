"""Sums over things that hang together, against listing every state of the whole."""

from __future__ import annotations

from itertools import product

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from core.reckon.elimination import Factor, Floats, TooLarge, marginals


@st.composite
def webs(draw: st.DrawFn) -> tuple[list[Factor], list[int]]:
    """Up to six variables of one to three states, and tables over some of them; now and then a table has zeros only."""
    sizes = draw(st.lists(st.integers(1, 3), min_size=1, max_size=6))
    scopes = draw(st.lists(st.lists(st.sampled_from(range(len(sizes))), min_size=1, max_size=3, unique=True), max_size=7))
    cells = st.sampled_from([0.0, 0.25, 1.0, 3.0])
    factors = []
    for scope in scopes:
        shape = [sizes[at] for at in scope]
        many = int(np.prod(shape))
        factors.append((tuple(scope), np.array(draw(st.lists(cells, min_size=many, max_size=many))).reshape(shape)))
    return factors, sizes


def listed(factors: list[Factor], sizes: list[int]) -> Floats:
    """The chance of every state of the whole, unnormed."""
    whole = np.ones(sizes)
    for state in product(*(range(size) for size in sizes)):
        for scope, table in factors:
            whole[state] *= table[tuple(state[at] for at in scope)]
    return whole


@settings(deadline=None)
@given(web=webs(), data=st.data())
def test_sums_are_those_of_listing_every_state(web: tuple[list[Factor], list[int]], data: st.DataObject) -> None:
    """One variable alone and some together; settled ones, unconnected ones and impossible webs included."""
    factors, sizes = web
    asked = data.draw(st.lists(st.lists(st.sampled_from(range(len(sizes))), min_size=1, max_size=3, unique=True).map(tuple), max_size=3))
    whole = listed(factors, sizes)
    found = marginals(factors, sizes, asked)
    if whole.sum() == 0:
        assert found is None
        return
    assert isinstance(found, list)
    for scope, table in zip(asked, found, strict=True):
        others = tuple(at for at in range(len(sizes)) if at not in scope)
        left = sorted(scope)
        wanted = np.transpose(whole.sum(axis=others), [left.index(at) for at in scope]) / whole.sum()
        assert table / table.sum() == pytest.approx(wanted, abs=1e-12)


def test_hundreds_of_settled_variables_take_no_axes() -> None:
    """A table over more variables than an array has axes, all but one settled."""
    one: Factor = (tuple(range(60)), np.array([1.0, 3.0]).reshape([1] * 59 + [2]))
    other: Factor = ((59, *range(60, 100)), np.array([1.0, 1.0]).reshape([2] + [1] * 40))
    found = marginals([one, other], [1] * 59 + [2] + [1] * 40, [(59,), (0,)])
    assert isinstance(found, list)
    assert found[0].tolist() == pytest.approx([0.25, 0.75])
    assert found[1].tolist() == [1.0]


def test_a_table_too_large_is_told_with_its_size() -> None:
    """Rather than filling the memory."""
    assert marginals([((0, 1), np.ones((3, 3)))], [3, 3], [(0,)], most=8) == TooLarge(9)
