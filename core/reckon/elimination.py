"""Sums over many things that hang together, each taking one of a few states: exact chances without listing every possibility.

A factor is a table over some of the variables; the chance of a whole state is the product of all factors. The variables are
summed out one by one, the cheapest first, and the messages then run back, so that one pass each way gives every answer.
Method: Lauritzen & Spiegelhalter 1988, Journal of the Royal Statistical Society B 50 (from memory).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import prod

import numpy as np
import numpy.typing as npt

Floats = npt.NDArray[np.float64]
Scope = tuple[int, ...]
Factor = tuple[Scope, Floats]  # variables, their table with one axis each

#: The largest table [cells] that is worked with: 24 MB.
MOST_CELLS = 3_000_000


@dataclass(frozen=True, slots=True)
class TooLarge:
    """One table would need that many cells."""

    cells: int


@dataclass(frozen=True, slots=True, eq=False)
class _Step:
    """A variable summed out: the joint table of it and those next to it (its own axis first), and what is left of them."""

    variable: int
    rest: Scope
    table: Floats
    message: Floats


def marginals(
    factors: Sequence[Factor], sizes: Sequence[int], ask: Sequence[Scope], most: int | None = None
) -> list[Floats] | TooLarge | None:
    """The joint chances of each asked scope; None where no state of the whole is possible. An empty `ask` only tests that.

    Variables of one state are settled: they take no axis in what is summed, however many there are.
    """
    open_ = [_open(scope, sizes) for scope in ask]
    together = [(scope, np.ones([sizes[at] for at in scope])) for scope in open_ if len(scope) > 1]
    told = [(_open(scope, sizes), table.squeeze()) for scope, table in factors]
    if any(not scope and not table for scope, table in told):
        return None
    steps = _forward([*told, *together], sizes, MOST_CELLS if most is None else most)
    if not isinstance(steps, list):
        return steps
    if not ask:
        return []
    beliefs = _backward(steps)
    when = {step.variable: at for at, step in enumerate(steps)}
    found = [_onto(*beliefs[min(scope, key=when.__getitem__)], scope) if scope else np.ones(()) for scope in open_]
    return [table.reshape([sizes[at] for at in scope]) for scope, table in zip(ask, found, strict=True)]


def _open(scope: Scope, sizes: Sequence[int]) -> Scope:
    return tuple(at for at in scope if sizes[at] > 1)


def _forward(factors: Sequence[Factor], sizes: Sequence[int], most: int) -> list[_Step] | TooLarge | None:
    """Sum the variables out, cheapest first."""
    of_variable: list[list[Factor]] = [[] for _ in sizes]
    near: dict[int, set[int]] = {at: {at} for at, size in enumerate(sizes) if size > 1}
    for factor in factors:
        for at in factor[0]:
            of_variable[at].append(factor)
            near[at].update(factor[0])
    costs = {at: prod(sizes[one] for one in around) for at, around in near.items()}
    steps: list[_Step] = []
    while costs:
        variable = min(costs, key=lambda at: (costs[at], at))
        if costs.pop(variable) > most:
            return TooLarge(prod(sizes[one] for one in near[variable]))
        rest = tuple(sorted(near[variable] - {variable}))
        table = _product(of_variable[variable], (variable, *rest), sizes)
        height = float(table.max())
        if height == 0:
            return None
        table /= height
        message = table.sum(axis=0)
        steps.append(_Step(variable, rest, table, message))
        gone = {id(factor) for factor in of_variable[variable]}
        for one in rest:
            of_variable[one] = [factor for factor in of_variable[one] if id(factor) not in gone]
            near[one] = (near[one] | near[variable]) - {variable}
            costs[one] = prod(sizes[other] for other in near[one])
        passed = (rest, message)
        for one in rest:
            of_variable[one].append(passed)
    return steps


def _backward(steps: Sequence[_Step]) -> dict[int, Factor]:
    """For every variable the chances of it and those that were next to it, from the last one summed out to the first."""
    when = {step.variable: at for at, step in enumerate(steps)}
    beliefs: dict[int, Factor] = {}
    for step in reversed(steps):
        given = np.divide(step.table, step.message, out=np.zeros_like(step.table), where=step.message > 0)
        if step.rest:
            given *= _onto(*beliefs[min(step.rest, key=when.__getitem__)], step.rest)
        beliefs[step.variable] = ((step.variable, *step.rest), given)
    return beliefs


def _product(factors: Sequence[Factor], scope: Scope, sizes: Sequence[int]) -> Floats:
    """The product of tables over a scope. (einsum would take 32 tables at most; a busy buck sends more.)"""
    product = np.ones([sizes[at] for at in scope])
    for places, table in factors:
        ordered = np.transpose(table, sorted(range(len(places)), key=lambda axis: scope.index(places[axis])))
        product *= ordered.reshape([sizes[at] if at in places else 1 for at in scope])
    return product


def _onto(scope: Scope, table: Floats, wanted: Scope) -> Floats:
    """A table summed down to some of its variables, in that order."""
    left = [at for at in scope if at in wanted]
    small = table.sum(axis=tuple(axis for axis, at in enumerate(scope) if at not in wanted))
    return np.transpose(small, [left.index(at) for at in wanted])
