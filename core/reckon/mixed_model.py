"""Fair comparison of breeding animals: what each passes on, once litter, season, sex and relatives are allowed for.

The animal model: y = X b (fixed: sex, season ...) + Z a (breeding values, related through the pedigree) + W c (litter,
or permanent environment) + e. Best linear unbiased prediction by Henderson's mixed model equations, divided through by
the residual variance: [[X'X, X'Z], [Z'X, Z'Z + G^-1 s2e]].

The animals' and litters' block is factored sparse; the few fixed effects are eliminated last (Schur complement, with a
pseudo-inverse where they are confounded). The errors of prediction are solved only for animals that are asked about,
jointly, so that two bucks can be compared by the error of their difference.
Checked against Mrode, Linear Models for the Prediction of Animal Breeding Values, 2014, examples 3.1, 4.1, 4.2.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field
from math import sqrt

import numpy as np
import numpy.typing as npt
from scipy import sparse
from scipy.sparse.linalg import splu
from scipy.special import ndtr

from core.reckon.interval import LEVEL, reach
from core.reckon.kinship import inbreeding_array
from core.reckon.pedigree import Pedigree

Floats = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Record:
    """One measured value of an animal. `fixed` and `random` name its level of each fixed factor and further random effect.

    All records of a model name the same factors. For permanent environment the level is the animal itself.
    """

    animal: str
    value: float
    fixed: Mapping[str, str] = field(default_factory=dict)
    random: Mapping[str, str] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class Variances:
    """Variance components [unit of the trait squared], all above zero: additive genetic, residual, each further random effect's."""

    animal: float
    residual: float
    others: Mapping[str, float] = field(default_factory=dict)


@dataclass(frozen=True, slots=True)
class BreedingValue:
    """What an animal is estimated to carry [unit of the trait], as a deviation from the base.

    pev                 variance of the error of prediction
    reliability         1 - PEV / animal variance, 0 to 1 (Mrode's; for an inbred animal too low)
    reliability_inbred  1 - PEV / ((1 + F) animal variance), the one to show
    """

    animal: str
    value: float
    pev: float
    reliability: float
    reliability_inbred: float

    @property
    def standard_error(self) -> float:
        """Standard error of prediction [unit of the trait]."""
        return sqrt(self.pev)

    @property
    def accuracy(self) -> float:
        """Correlation with the true value: square root of the reliability."""
        return sqrt(max(self.reliability_inbred, 0.0))

    def interval(self, level: float = LEVEL) -> tuple[float, float]:
        """Bounds that hold the true value with that chance."""
        width = reach(level) * self.standard_error
        return self.value - width, self.value + width


@dataclass(frozen=True, slots=True)
class Contrast:
    """Difference of two levels of a fixed factor, and its standard error."""

    difference: float
    standard_error: float


@dataclass(frozen=True, slots=True)
class BreedingValues:
    """The answer of the model.

    values   every animal of the pedigree -> its breeding value
    asked    animals whose errors were solved for; `error` is their joint error (co)variance, in that order
    effects  further random effect -> level -> its prediction
    fitted   X b for each record: what the fixed effects say of it, whatever their coding
    """

    values: Mapping[str, float]
    asked: Mapping[str, BreedingValue]
    effects: Mapping[str, Mapping[str, float]]
    fitted: tuple[float, ...]
    error: Floats = field(repr=False, compare=False)
    fixed: _Fixed = field(repr=False, compare=False)

    def of(self, animal: str) -> BreedingValue:
        """The breeding value of an animal that was asked about."""
        return self.asked[animal]

    def covariance(self, one: str, other: str) -> float:
        """Covariance of two animals' errors of prediction."""
        places = list(self.asked)
        return float(self.error[places.index(one), places.index(other)])

    def better(self, one: str, other: str) -> float:
        """The chance that the first truly is above the second, from the error of their difference; one half for itself."""
        spread = self.asked[one].pev + self.asked[other].pev - 2 * self.covariance(one, other)
        gap = self.values[one] - self.values[other]
        return float(ndtr(gap / sqrt(spread))) if spread > 0 else 0.5 + 0.5 * float(np.sign(gap))

    def relative_to(self, group: Iterable[str]) -> dict[str, float]:
        """Every animal's value as a deviation from that group's mean (0 for an empty group's)."""
        told = [self.values[animal] for animal in group]
        middle = sum(told) / len(told) if told else 0.0
        return {animal: value - middle for animal, value in self.values.items()}

    def contrast(self, factor: str, one: str, other: str) -> Contrast | None:
        """First level less second; None where the records can't tell them apart (confounded, or a level never seen)."""
        return self.fixed.contrast(factor, one, other)


@dataclass(frozen=True, slots=True)
class _Fixed:
    """Fixed effects: each (factor, level)'s column, the solution, and the Schur complement with its inverse."""

    columns: Mapping[tuple[str, str], int]
    solution: Floats
    schur: Floats
    inverse: Floats
    residual: float

    def contrast(self, factor: str, one: str, other: str) -> Contrast | None:
        row = np.zeros(len(self.solution))
        for level, sign in ((one, 1.0), (other, -1.0)):
            if (factor, level) not in self.columns:
                return None
            row[self.columns[factor, level]] += sign
        if not np.allclose(row @ self.inverse @ self.schur, row, atol=1e-6):
            return None
        return Contrast(float(row @ self.solution), sqrt(max(float(row @ self.inverse @ row), 0.0) * self.residual))


def breeding_values(
    pedigree: Pedigree, records: Sequence[Record], variances: Variances, ask: Iterable[str] | None = None
) -> BreedingValues:
    """Predict the breeding value of every animal of the pedigree, and the errors for those in `ask` (all when None)."""
    asked = tuple(dict.fromkeys(pedigree.ids if ask is None else ask))
    inbred = inbreeding_array(pedigree)
    levels = _levels(records, variances)
    z = _incidence(pedigree, records, levels)
    columns = _columns(records)
    x = _design(records, columns)
    y = np.array([record.value for record in records])
    penalty = sparse.block_diag(
        [relationship_inverse(pedigree, inbred) * (variances.residual / variances.animal)]
        + [sparse.eye_array(len(found)) * (variances.residual / variances.others[effect]) for effect, found in levels.items()]
    )
    solver = splu(sparse.csc_matrix(z.T @ z + penalty), permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True})
    crossed = solver.solve(z.T @ x)
    schur = x.T @ x - (z.T @ x).T @ crossed
    inverse = np.linalg.pinv(schur, rcond=1e-10, hermitian=True)
    fixed = inverse @ (x.T @ y - crossed.T @ (z.T @ y))
    random = solver.solve(z.T @ (y - x @ fixed))
    error = _errors(solver, [pedigree.place[animal] for animal in asked], crossed, inverse) * variances.residual
    return BreedingValues(
        values=dict(zip(pedigree.ids, random[: len(pedigree)].tolist(), strict=True)),
        asked={
            animal: _valued(
                animal, float(random[pedigree.place[animal]]), float(error[at, at]), variances.animal, float(inbred[pedigree.place[animal]])
            )
            for at, animal in enumerate(asked)
        },
        effects=_effects(levels, random[len(pedigree) :].tolist()),
        fitted=tuple((x @ fixed).tolist()),
        error=error,
        fixed=_Fixed(columns, fixed, schur, inverse, variances.residual),
    )


def relationship_inverse(pedigree: Pedigree, inbred: Floats) -> sparse.csc_matrix:
    """The inverse of the relationship matrix A, directly: T' D^-1 T with T = I - half sire - half dam.

    D, the share of variance an animal does not have from its known parents: 1 - (1 + F_sire)/4 - (1 + F_dam)/4.
    Reference: Henderson 1976 and Quaas 1976 (the rules, from memory); Mrode 2014, sec. 2.4 (values).
    """
    n = len(pedigree)
    own = mendelian(pedigree, inbred)
    rows, columns, halves = [np.arange(n)], [np.arange(n)], [np.ones(n)]
    for told in (pedigree.sires, pedigree.dams):
        parents = np.array(told, dtype=np.int64)
        known = np.flatnonzero(parents >= 0)
        rows.append(known)
        columns.append(parents[known])
        halves.append(np.full(len(known), -0.5))
    flow = sparse.csr_matrix((np.concatenate(halves), (np.concatenate(rows), np.concatenate(columns))), shape=(n, n))
    return sparse.csc_matrix(flow.T @ sparse.diags_array(1 / own) @ flow)


def mendelian(pedigree: Pedigree, inbred: Floats) -> Floats:
    """D of each animal [share of the animal variance]: its own sampling of its parents' genes."""
    own = np.ones(len(pedigree))
    for told in (pedigree.sires, pedigree.dams):
        parents = np.array(told, dtype=np.int64)
        known = parents >= 0
        own[known] -= (1 + inbred[parents[known]]) / 4
    return own


def _levels(records: Sequence[Record], variances: Variances) -> dict[str, dict[str, int]]:
    """Each further random effect's levels and their places."""
    return {
        effect: {level: at for at, level in enumerate(dict.fromkeys(record.random[effect] for record in records))}
        for effect in variances.others
    }


def _incidence(pedigree: Pedigree, records: Sequence[Record], levels: Mapping[str, Mapping[str, int]]) -> sparse.csr_matrix:
    """Which animal and which levels each record belongs to: one row a record."""
    rows, columns = list(range(len(records))), [pedigree.place[record.animal] for record in records]
    width = len(pedigree)
    for effect, found in levels.items():
        rows += range(len(records))
        columns += [width + found[record.random[effect]] for record in records]
        width += len(found)
    return sparse.csr_matrix((np.ones(len(rows)), (rows, columns)), shape=(len(records), width))


def _columns(records: Sequence[Record]) -> dict[tuple[str, str], int]:
    """A column for each level of each fixed factor; one for the mean when there is no factor."""
    seen = dict.fromkeys(pair for record in records for pair in record.fixed.items())
    return {pair: at for at, pair in enumerate(seen or {("mean", ""): None})}


def _design(records: Sequence[Record], columns: Mapping[tuple[str, str], int]) -> Floats:
    x = np.zeros((len(records), len(columns)))
    for at, record in enumerate(records):
        for pair in record.fixed.items() or [("mean", "")]:
            x[at, columns[pair]] = 1.0
    return x


def _errors(solver: object, places: list[int], crossed: Floats, inverse: Floats) -> Floats:
    """Joint error (co)variance of the animals at `places`, over the residual variance: C^ij = (C_rr^-1)_ij + b_i S^- b_j'."""
    units = np.zeros((crossed.shape[0], len(places)))
    units[places, np.arange(len(places))] = 1.0
    block = solver.solve(units)[places]  # type: ignore[attr-defined]
    rows = crossed[places]
    return np.asarray(block + rows @ inverse @ rows.T)


def _valued(animal: str, value: float, pev: float, variance: float, inbred: float) -> BreedingValue:
    return BreedingValue(animal, value, pev, 1 - pev / variance, 1 - pev / ((1 + inbred) * variance))


def _effects(levels: Mapping[str, Mapping[str, int]], solved: list[float]) -> dict[str, dict[str, float]]:
    answers = {}
    for effect, found in levels.items():
        answers[effect] = dict(zip(found, solved, strict=False))
        solved = solved[len(found) :]
    return answers
