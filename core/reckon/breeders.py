"""Which bucks and does to keep so that the kept ones are worth most, fit the feed, and are not all cousins.

Maximise the sum of value x_i over kept animals (x is 0 or 1) with so many bucks and does, feed within its limit, and mean
kinship x'Kx / N^2 (self included) within a cap. K is positive definite, and as x is 0 or 1 and N fixed, x'Kx is
x'(K - dI)x + dN with d the smallest eigenvalue: still convex, but tighter where x is a fraction. The cap then becomes tangent
cuts 2 (Qz)'x <= c + z'Qz, laid first on the relaxation and then on each whole choice that breaks it (outer approximation:
Kelley 1960, from memory). HiGHS solves each step, so the answer is the best there is and not a good guess.
"""

from __future__ import annotations

from collections.abc import Collection, Sequence
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
from scipy.optimize import Bounds, LinearConstraint, milp

Floats = npt.NDArray[np.float64]

_CLOSE = 1e-9  # not a figure: how far a sum may be over its limit before it counts as over
_STEPS = 400  # not a figure: cuts after which the search would be stuck; each one removes a choice


@dataclass(frozen=True, slots=True)
class Candidate:
    """An animal that may be kept. `sex` is `buck` or `doe`; `feed` in any unit, the limit's."""

    animal: str
    sex: str
    value: float
    feed: float = 0.0


@dataclass(frozen=True, slots=True)
class Wanted:
    """What the kept ones must be: so many bucks and does, mean kinship (self included) and feed within limits (None: no limit)."""

    bucks: int
    does: int
    most_kinship: float | None = None
    most_feed: float | None = None


@dataclass(frozen=True, slots=True)
class Kept:
    """The best set: its animals in the order told, their value, mean kinship and feed."""

    animals: tuple[str, ...]
    value: float
    kinship: float
    feed: float


@dataclass(frozen=True, slots=True)
class NothingFits:
    """No set keeps to the limits. `least_kinship`: the lowest mean kinship within the feed; None where not even numbers and feed fit."""

    least_kinship: float | None


def best_kept(
    candidates: Sequence[Candidate], kinship: Floats, wanted: Wanted, without: Collection[Collection[str]] = ()
) -> Kept | NothingFits:
    """The set of the greatest value. `kinship`: f among the candidates, in their order. `without`: sets that are not to be given again."""
    barn = _Barn(candidates, kinship, wanted, [_place(candidates, told) for told in without])
    chosen = barn.best()
    return barn.told(chosen) if chosen is not None else NothingFits(barn.least_kinship())


def _place(candidates: Sequence[Candidate], told: Collection[str]) -> Floats:
    return np.array([float(one.animal in told) for one in candidates])


class _Barn:
    """The choice as rows of a linear programme, which grows by a row for each cut."""

    def __init__(self, candidates: Sequence[Candidate], kinship: Floats, wanted: Wanted, without: Sequence[Floats]) -> None:
        self.candidates, self.kinship, self.wanted = candidates, kinship, wanted
        self.number = wanted.bucks + wanted.does
        self.values = np.array([one.value for one in candidates])
        self.feeds = np.array([one.feed for one in candidates])
        self.tight = float(np.linalg.eigvalsh(kinship)[0]) if len(kinship) else 0.0
        self.convex = kinship - self.tight * np.eye(len(kinship))
        self.rows: list[tuple[Floats, float, float]] = [
            (np.array([float(one.sex == sex) for one in candidates]), number, number)
            for sex, number in (("buck", wanted.bucks), ("doe", wanted.does))
        ]
        if wanted.most_feed is not None:
            self.rows.append((self.feeds, -np.inf, wanted.most_feed + _CLOSE))
        self.rows += [(told, -np.inf, float(told.sum()) - 1) for told in without]

    def told(self, chosen: Floats) -> Kept:
        """The choice as an answer."""
        animals = tuple(one.animal for one, kept in zip(self.candidates, chosen, strict=True) if kept)
        return Kept(animals, float(chosen @ self.values), self.mean(chosen), float(chosen @ self.feeds))

    def mean(self, chosen: Floats) -> float:
        """Mean kinship of a choice, each to itself included."""
        return float(chosen @ self.kinship @ chosen) / self.number**2 if self.number else 0.0

    def best(self) -> Floats | None:
        """The choice of the greatest value; None where nothing fits."""
        if not self.candidates:
            return None
        if self.wanted.most_kinship is None:
            return self._solved(-self.values, whole=True)
        limit = self.wanted.most_kinship * self.number**2 - self.tight * self.number
        for whole in (False, True):
            for _ in range(_STEPS):  # pragma: no branch - each cut removes a choice: the search ends long before
                found = self._solved(-self.values, whole=whole)
                if found is None:
                    return None
                if found @ self.convex @ found <= limit + _CLOSE:
                    break
                self.rows.append((2 * self.convex @ found, -np.inf, limit + float(found @ self.convex @ found)))
        return found

    def least_kinship(self) -> float | None:
        """The lowest mean kinship that numbers and feed allow: tangents from below until they touch."""
        limited = _Barn(self.candidates, self.kinship, Wanted(self.wanted.bucks, self.wanted.does, None, self.wanted.most_feed), ())
        found = limited.best()
        if found is None:
            return None
        cuts: list[tuple[Floats, float]] = []
        lowest = limited.mean(found)
        for _ in range(_STEPS):  # pragma: no branch - as above
            cuts.append((2 * self.convex @ found, float(found @ self.convex @ found)))
            found, floor = limited.lowest_under(cuts)
            lowest = min(lowest, limited.mean(found))
            if (floor + self.tight * self.number) / self.number**2 >= lowest - _CLOSE:
                break
        return lowest

    def lowest_under(self, cuts: Sequence[tuple[Floats, float]]) -> tuple[Floats, float]:
        """The choice whose highest tangent is lowest, and that height."""
        n = len(self.candidates)
        rows = [(np.append(row, 0.0), low, high) for row, low, high in self.rows]
        rows += [(np.append(slope, -1.0), -np.inf, height) for slope, height in cuts]
        cost = np.append(np.zeros(n), 1.0)
        bounds = Bounds(np.append(np.zeros(n), -np.inf), np.append(np.ones(n), np.inf))
        found = milp(cost, constraints=_constraint(rows), integrality=np.append(np.ones(n), 0.0), bounds=bounds)
        solved = np.asarray(found.x, dtype=np.float64)
        return np.round(solved[:n]), float(solved[n])

    def _solved(self, cost: Floats, *, whole: bool) -> Floats | None:
        n = len(self.candidates)
        found = milp(cost, constraints=_constraint(self.rows), integrality=np.full(n, float(whole)), bounds=Bounds(0, 1))
        if found.x is None:
            return None
        return np.round(found.x) if whole else np.asarray(found.x, dtype=np.float64)


def _constraint(rows: Sequence[tuple[Floats, float, float]]) -> LinearConstraint:
    matrix, low, high = zip(*rows, strict=True)
    return LinearConstraint(np.vstack(matrix), np.array(low), np.array(high))
