"""The sums behind a fair comparison: Henderson's mixed model equations, set up from records and solved sparse.

y = X b (fixed) + Z u (random) + e. Divided through by the residual variance the equations are
[[X'WX, X'WZ], [Z'WX, Z'WZ + G^-1 s2e]] with W each record's weight. The random block is factored sparse; the few fixed effects are
eliminated last (Schur complement, with a pseudo-inverse where they are confounded).
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

import numpy as np
import numpy.typing as npt
from scipy import sparse
from scipy.sparse.linalg import splu

from core.reckon.pedigree import Pedigree

Floats = npt.NDArray[np.float64]
Column = tuple[str, str]  # a factor and its level, or a covariate and ""

MEAN: Column = ("mean", "")
#: Right-hand sides that are solved at once: bounds the room that many animals take.
AT_ONCE = 32  # not a figure: columns of a matrix


@dataclass(frozen=True, slots=True)
class Record:
    """One measured value of an animal, or of a litter of hers.

    fixed       its level of each fixed factor: sex, season ...
    random      its level of each further random effect; for permanent environment the animal itself
    covariates  what it goes up or down with in a straight line: size of its litter ...
    weight      how many single records it is worth: the residual variance is divided by it
    nurse       whose milk it had, for the maternal effect; its dam unless told

    All records of a model name the same factors, effects and covariates.
    """

    animal: str
    value: float
    fixed: Mapping[str, str] = field(default_factory=dict)
    random: Mapping[str, str] = field(default_factory=dict)
    covariates: Mapping[str, float] = field(default_factory=dict)
    weight: float = 1.0
    nurse: str | None = None


@dataclass(frozen=True, slots=True)
class Layout:
    """Where each unknown stands: the animals, their maternal values if there are any, then each further effect's levels."""

    animals: int
    maternal: bool
    levels: Mapping[str, Mapping[str, int]]


@dataclass(frozen=True, slots=True)
class Equations:
    """Records summed up, once for every set of variances that is tried.

    x        fixed effects' design, one row a record, unweighted; `columns` tells what each column is
    zz, zx, zy, xx, xy, yy   the weighted cross products
    """

    layout: Layout
    columns: Mapping[Column, int]
    x: Floats
    zz: sparse.csc_matrix
    zx: Floats
    zy: Floats
    xx: Floats
    xy: Floats
    yy: float

    def solved(self, penalty: sparse.csc_matrix) -> Solution:
        """The solution with G^-1 s2e as `penalty`."""
        solver = splu(
            sparse.csc_matrix(self.zz + penalty), permc_spec="MMD_AT_PLUS_A", diag_pivot_thresh=0.0, options={"SymmetricMode": True}
        )
        crossed = solver.solve(self.zx)
        schur = self.xx - self.zx.T @ crossed
        inverse = np.asarray(np.linalg.pinv(schur, rcond=1e-10, hermitian=True), dtype=np.float64)
        fixed = inverse @ (self.xy - crossed.T @ self.zy)
        random = solver.solve(self.zy - self.zx @ fixed)
        return Solution(self, solver, crossed, schur, inverse, fixed, random)


@dataclass(frozen=True, slots=True)
class Solution:
    """The equations solved for one set of variances. Errors are over the residual variance."""

    equations: Equations
    solver: Any
    crossed: Floats
    schur: Floats
    inverse: Floats
    fixed: Floats
    random: Floats

    @property
    def rank(self) -> int:
        """How many fixed effects the records can tell apart."""
        return round(float(np.trace(self.inverse @ self.schur)))

    @property
    def misfit(self) -> float:
        """y'Py times the residual variance: what is left of the squares when all effects are taken off."""
        sums = self.equations
        return max(float(sums.yy - self.fixed @ sums.xy - self.random @ sums.zy), 0.0)

    def errors(self, places: Sequence[int]) -> Floats:
        """Joint error (co)variance of the unknowns at `places`: C^ij = (C_rr^-1)_ij + b_i S^- b_j'."""
        told = np.array(places, dtype=np.int64)
        block = np.empty((len(told), len(told)))
        for begin in range(0, len(told), AT_ONCE):
            some = told[begin : begin + AT_ONCE]
            units = np.zeros((len(self.random), len(some)))
            units[some, np.arange(len(some))] = 1.0
            block[:, begin : begin + len(some)] = self.solver.solve(units)[told]
        rows = self.crossed[told]
        return np.asarray(block + rows @ self.inverse @ rows.T)

    def log_determinant(self) -> float:
        """Of the equations: of the random block, and of what the records tell of the fixed effects."""
        told = np.linalg.eigvalsh(self.schur)
        largest = max(float(told[-1]), 0.0) if len(told) else 0.0
        of_fixed = np.log(told[told > largest * 1e-10]).sum()
        return float(np.log(np.abs(self.solver.U.diagonal())).sum() + of_fixed)


def equations(pedigree: Pedigree, records: Sequence[Record], effects: Sequence[str], *, maternal: bool = False) -> Equations:
    """The sums of these records, with those further random effects and, if wanted, maternal values."""
    layout = Layout(len(pedigree), maternal, {effect: _numbered(record.random[effect] for record in records) for effect in effects})
    columns = _columns(records)
    weight = np.array([record.weight for record in records])
    x, y = _design(records, columns), np.array([record.value for record in records])
    z = _incidence(pedigree, records, layout)
    heavy = sparse.csr_matrix(sparse.diags_array(weight) @ z)
    weighted = weight[:, None] * x
    return Equations(
        layout, columns, x, sparse.csc_matrix(z.T @ heavy), heavy.T @ x, heavy.T @ y, x.T @ weighted, weighted.T @ y, float(weight @ y**2)
    )


def _numbered(levels: Any) -> dict[str, int]:
    return {level: at for at, level in enumerate(dict.fromkeys(levels))}


def _incidence(pedigree: Pedigree, records: Sequence[Record], layout: Layout) -> sparse.csr_matrix:
    """Which animal, which nurse and which levels each record belongs to: one row a record."""
    n, everyone = len(pedigree), np.arange(len(records))
    rows, columns = [everyone], [np.array([pedigree.place[record.animal] for record in records], dtype=np.int64)]
    width = n
    if layout.maternal:
        nurses = np.array([_nurse(pedigree, record) for record in records], dtype=np.int64)
        rows.append(np.flatnonzero(nurses >= 0))
        columns.append(width + nurses[nurses >= 0])
        width += n
    for effect, found in layout.levels.items():
        rows.append(everyone)
        columns.append(np.array([width + found[record.random[effect]] for record in records], dtype=np.int64))
        width += len(found)
    at, of = np.concatenate(rows), np.concatenate(columns)
    return sparse.csr_matrix((np.ones(len(at)), (at, of)), shape=(len(records), width))


def _nurse(pedigree: Pedigree, record: Record) -> int:
    return pedigree.dams[pedigree.place[record.animal]] if record.nurse is None else pedigree.place[record.nurse]


def _columns(records: Sequence[Record]) -> dict[Column, int]:
    """A column for each level of each fixed factor, or one for the mean when there is none; then one for each covariate."""
    seen = dict.fromkeys(pair for record in records for pair in record.fixed.items()) or {MEAN: None}
    lines = dict.fromkeys((name, "") for record in records for name in record.covariates)
    return {pair: at for at, pair in enumerate((*seen, *lines))}


def _design(records: Sequence[Record], columns: Mapping[Column, int]) -> Floats:
    x = np.zeros((len(records), len(columns)))
    for at, record in enumerate(records):
        for pair in record.fixed.items() or (MEAN,):
            x[at, columns[pair]] = 1.0
        for name, value in record.covariates.items():
            x[at, columns[name, ""]] = value
    return x
