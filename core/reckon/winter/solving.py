"""The programme solved: whole (branch and bound) or not (a bound on what any choice can reach, with what each column costs to move)."""

from __future__ import annotations

import ctypes
import os
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from threading import Lock
from typing import Any

import numpy as np
import numpy.typing as npt
from scipy.optimize import Bounds, LinearConstraint, linprog, milp

from core.reckon.winter.programme import Numbers, Programme

#: A gain below this is the solver's own error.
TINY = 1e-4
_ONE_AT_A_TIME = Lock()
#: Where `fflush` is found: with the process, but on Windows by its name.
C_LIBRARY = "ucrtbase" if os.name == "nt" else None
OUTPUT = 1  # not a figure: the number of standard output
NEVER = 2  # how HiGHS says that nothing fits


@contextmanager
def unheard() -> Iterator[None]:
    """Nothing written to standard output meanwhile; one at a time, for it is the whole process's.

    The solver has a line of its own that no option turns off, written past Python; it would stand in the middle of an answer. What
    the C library holds back is let out before standard output is put back.
    """
    with _ONE_AT_A_TIME:
        try:
            heard = os.dup(OUTPUT)
        except OSError:  # no standard output at all
            yield
            return
        nowhere = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nowhere, OUTPUT)
        try:
            yield
        finally:
            ctypes.CDLL(C_LIBRARY).fflush(None)
            os.dup2(heard, OUTPUT)
            os.close(heard)
            os.close(nowhere)


@dataclass(frozen=True)
class Solved:
    """A choice: its objective, and which animals it keeps."""

    objective: float
    kept: npt.NDArray[np.bool_]


def solved(of: Programme, low: Numbers, high: Numbers, *, gains: Numbers | None = None, near: float = 0.0) -> Solved | None:
    """The best whole choice between these bounds, or one within `near` of it [share]; None where nothing fits.

    Other `gains` than the programme's may be asked for.
    """
    wanted = of.gains if gains is None else gains
    if not of.columns:
        return Solved(0.0, np.zeros(0, dtype=np.bool_))
    with unheard():
        found = milp(
            -wanted,
            integrality=np.ones(of.columns, dtype=np.int64),
            bounds=Bounds(low, high),
            constraints=_rows(of),
            options={"mip_rel_gap": near},
        )
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


def ceiling(of: Programme, low: Numbers, high: Numbers) -> Ceiling | None:
    """The bound that the programme has with animals in part; None where even so nothing fits."""
    if not of.columns:
        return Ceiling(0.0, np.zeros(0), np.zeros(0))
    rows: dict[str, Any] = {"A_ub": of.matrix, "b_ub": of.most} if len(of.rows) else {}
    rows["bounds"] = np.column_stack([low, high])
    found = linprog(-of.gains, method="highs", **rows)
    if found.x is None:
        return None
    slope = -(np.asarray(found.lower.marginals) + np.asarray(found.upper.marginals))
    at = np.asarray(found.x)
    return Ceiling(float(of.gains @ at), at, slope)
