"""When no choice fits: the smallest change of the limits that makes one fit, and the pins that alone stand in the way.

As few limits as can be are changed; among these ways the one that changes them least, each measured against what was set.
"""

from __future__ import annotations

from dataclasses import dataclass, replace
from math import ceil, inf
from typing import Any, Literal, get_args

import numpy as np
from scipy import sparse
from scipy.optimize import Bounds, LinearConstraint, linprog, milp

from core.reckon.winter.programme import Asked, Numbers, Programme, programme
from core.reckon.winter.solving import TINY, solved, unheard
from core.reckon.winter.types import Change, Limits

Limit = Literal["cages", "mouths", "feed_g", "bucks", "does", "litters"]
#: A part of a head or of a gram that is only the solver's error.
NEAR = 1e-4
#: In a large herd a change so near to the smallest will do [share of it].
NEARLY = 0.02  # not a figure: how exact


@dataclass(frozen=True)
class _Slack:
    """The limits that may give, by the place of their row: how far [the row's unit] for a change of 1 as measured against what was set."""

    rows: tuple[int, ...]
    was: tuple[float, ...]
    most: tuple[float, ...]


def mended(of: Asked) -> tuple[tuple[Change, ...], Limits]:
    """The smallest change, and the limits so changed."""
    whole = programme(of)
    whole = whole.letting_down(len(whole.let_down))
    slack = _slack(whole)
    given = _given(whole, slack)
    changes = tuple(_change(whole, row, amount) for row, amount in zip(slack.rows, given, strict=True) if amount > NEAR)
    limits = of.limits
    for each in changes:
        limits = changed(limits, each)
    return changes, limits


def _slack(whole: Programme) -> _Slack:
    rows = tuple(at for at, row in enumerate(whole.rows) if row.limit in get_args(Limit))
    was = tuple(max(abs(float(whole.most[at])), 1.0) for at in rows)
    # The whole herd's sum, or all that was asked for, is as far as a limit can ever need to give.
    most = tuple(float(abs(whole.matrix[[at]]).sum() + abs(whole.most[at])) for at in rows)
    return _Slack(rows, was, most)


def _given(whole: Programme, slack: _Slack) -> Numbers:
    """How much each limit gives [the row's unit]: first as few as can be, then as little."""
    many = len(slack.rows)
    switched = np.concatenate([np.zeros(whole.columns + many), np.ones(many)])
    little = np.concatenate([np.zeros(whole.columns), 1 / np.array(slack.was), np.zeros(many)])
    few = _least(whole, slack, switched, inf)
    found = _least(whole, slack, little, round(float(few @ switched)))
    return found[whole.columns : whole.columns + many]


def _least(whole: Programme, slack: _Slack, cost: Numbers, at_most: float) -> Numbers:
    """The columns of the cheapest way to fit: the programme's, then how much each limit gives, then whether it gives."""
    many, columns = len(slack.rows), whole.columns
    rows = sparse.hstack([_giving(whole, slack.rows), sparse.csr_array((len(whole.rows), many))])
    switches = sparse.hstack([sparse.csr_array((many, columns)), sparse.eye_array(many), -sparse.diags_array(np.array(slack.most))])
    number = sparse.csr_array(np.concatenate([np.zeros(columns + many), np.ones(many)])[None, :])
    matrix: sparse.csr_array = sparse.csr_array(sparse.vstack([rows, switches, number]))
    most = np.concatenate([whole.most, np.zeros(many), [at_most]])
    low, high = whole.bounds()
    bounds = Bounds(np.concatenate([low, np.zeros(2 * many)]), np.concatenate([high, slack.most, np.ones(many)]))
    whole_ones = np.concatenate([np.ones(columns), np.zeros(many), np.ones(many)])
    near = NEARLY if whole.large else 0.0
    rows_most = LinearConstraint(matrix, -np.inf, most)
    with unheard():
        found = milp(cost, integrality=whole_ones, bounds=bounds, constraints=rows_most, options={"mip_rel_gap": near})
    if found.x is None:  # pragma: no cover - with every limit given up the pins alone always fit
        raise ArithmeticError(found.message)
    return np.asarray(found.x)


def _giving(whole: Programme, giving: tuple[int, ...]) -> sparse.csr_array:
    """The programme's rows with a column more for each of these: how much it gives."""
    many = len(giving)
    gives = sparse.csr_array((-np.ones(many), (np.array(giving, dtype=int), np.arange(many))), shape=(len(whole.rows), many))
    return sparse.csr_array(sparse.hstack([whole.matrix, gives]))


def _change(whole: Programme, row: int, amount: float) -> Change:
    """A limit's change in its own unit: whole heads, whole grams."""
    told = whole.rows[row]
    if told.limit == "litters":
        return Change("litters", told.breed, -told.most, -told.most - ceil(amount - NEAR))
    more = amount * 1000.0 if told.limit == "feed_g" else amount
    limit: Limit = told.limit  # type: ignore[assignment] # only such rows give
    return Change(limit, told.breed, told.most, told.most + ceil(more - NEAR))


def changed(limits: Limits, change: Change) -> Limits:
    """The limits with that one changed."""
    if change.limit == "feed_g":
        return replace(limits, feed_g=change.to)
    to, breed = round(change.to), change.breed or ""
    match change.limit:
        case "cages":
            return replace(limits, cages=to)
        case "mouths":
            return replace(limits, mouths=to)
        case "bucks":
            return replace(limits, bucks={**limits.bucks, breed: to})
        case "does":
            return replace(limits, does={**limits.does, breed: to})
        case _:
            return replace(limits, litters={**limits.litters, breed: to})


def or_lift(of: Asked) -> frozenset[str]:
    """The pins each of which, were it lifted, would make the limits fit."""
    whole = programme(of)
    whole = whole.letting_down(len(whole.let_down))
    nothing = np.zeros(whole.columns)
    lifted = set()
    for at in _may_fit(whole):
        low, high = whole.bounds()
        low[at], high[at] = 0.0, 1.0
        if solved(whole, low, high, gains=nothing) is not None:
            lifted.add(of.animals[at].key)
    return frozenset(lifted)


def _may_fit(whole: Programme) -> list[int]:
    """The pinned animals without whose pin something may fit: with animals in part, what is over the limits could shrink to nothing.

    A column's slope tells how much at most, so that only these few are tried with whole animals; trying each pin of a large herd takes minutes.
    """
    giving = _slack(whole).rows
    low, high = whole.bounds()
    cost = np.concatenate([np.zeros(whole.columns), np.ones(len(giving))])
    bounds = np.column_stack([np.concatenate([low, np.zeros(len(giving))]), np.concatenate([high, np.full(len(giving), np.inf)])])
    found: Any = linprog(cost, A_ub=_giving(whole, giving), b_ub=whole.most, bounds=bounds, method="highs")  # type: ignore[call-overload]
    slope = np.asarray(found.lower.marginals) + np.asarray(found.upper.marginals)
    told = ((at, one.pin, float(slope[at])) for at, one in enumerate(whole.asked.animals))
    return [at for at, pin, rise in told if pin is not None and found.fun - (rise if pin == "keep" else -rise) < TINY]
