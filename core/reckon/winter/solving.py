"""The programme solved: whole (branch and bound) or not (a bound on what any choice can reach, with what each column costs to move)."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
import numpy.typing as npt
from scipy.optimize import Bounds, LinearConstraint, linprog, milp

from core.reckon.winter.programme import Numbers, Programme

#: A gain below this is the solver's own error.
TINY = 1e-4
NEVER = 2  # how HiGHS says that nothing fits


@dataclass(frozen=True)
class Solved:
    """A choice: its objective, and which animals it keeps."""

    objective: float
    kept: npt.NDArray[np.bool_]


def solved(of: Programme, low: Numbers, high: Numbers, *, gains: Numbers | None = None) -> Solved | None:
    """The best whole choice between these bounds; None where nothing fits. Other `gains` than the programme's may be asked for."""
    wanted = of.gains if gains is None else gains
    if not of.columns:
        return Solved(0.0, np.zeros(0, dtype=np.bool_))
    found = milp(-wanted, integrality=of.whole, bounds=Bounds(low, high), constraints=_rows(of), options={"mip_rel_gap": 0.0})
    if found.x is None:
        if found.status != NEVER:  # pragma: no cover - bounded on all sides and given all the time it needs, it ends
            raise ArithmeticError(found.message)
        return None
    return Solved(-float(found.fun), np.asarray(found.x)[: len(of.asked.animals)] > 1 / 2)


def _rows(of: Programme) -> list[LinearConstraint]:
    return [LinearConstraint(of.matrix, -np.inf, of.most)] if len(of.rows) else []


@dataclass(frozen=True)
class Ceiling:
    """What no choice can go over.

    height    the objective with animals in part
    at        each column's amount there
    slope     what a column's rise by a whole adds at most; negative where it costs
    """

    height: float
    at: Numbers
    slope: Numbers

    @property
    def to_move(self) -> Numbers:
        """What it costs at least to move a column from where it is to its other end; 0 where it is in between."""
        return np.where(self.at < 1 / 2, np.maximum(-self.slope, 0.0), np.maximum(self.slope, 0.0))

    def fixed_for(self, floor: float, low: Numbers, high: Numbers) -> tuple[Numbers, Numbers]:
        """Bounds with each column fixed that no choice above `floor` can have otherwise."""
        settled = (self.height - self.to_move < floor - TINY) & (np.abs(self.at - np.round(self.at)) < TINY)
        ends = np.round(self.at)
        return np.where(settled, np.maximum(low, ends), low), np.where(settled, np.minimum(high, ends), high)


def ceiling(of: Programme, low: Numbers, high: Numbers) -> Ceiling:
    """The bound that the programme has with animals in part, between bounds within which something fits."""
    rows: dict[str, Any] = {"A_ub": of.matrix, "b_ub": of.most} if len(of.rows) else {}
    rows["bounds"] = np.column_stack([low, high])
    found = linprog(-of.gains, method="highs", **rows)
    slope = -(np.asarray(found.lower.marginals) + np.asarray(found.upper.marginals))
    at = np.asarray(found.x)
    return Ceiling(float(of.gains @ at), at, slope)
