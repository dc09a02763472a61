"""How much of a trait is bred in, in this herd: variances estimated from its own records, held back by the published ones.

Restricted maximum likelihood (REML) over the shares of variance, the whole variance profiled out. A backyard herd tells little of
these shares, so what is published stays in the scale: each share is pulled to the published one as if that were a measurement with
its published spread. Many records outweigh it, few hardly move it. Where even that does not settle, the published ones serve.

Reference: Patterson & Thompson 1971, Biometrika 58:545 (the likelihood, from memory). Checked against the analysis of variance of
balanced groups, where REML is known in closed form.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import exp, log

import numpy as np
import numpy.typing as npt
from scipy import sparse
from scipy.optimize import minimize

from core.reckon.equations import Equations, Record, Solution, equations
from core.reckon.kinship import inbreeding_array
from core.reckon.mixed_model import Variances, penalty
from core.reckon.pedigree import Pedigree
from core.reckon.relationship import relationship_inverse

#: Bounds of a variance over the residual one, on the log scale: outside them an effect is nothing, or everything.
LEAST, MOST = -9.0, 5.0
#: How near to a bound the likelihood has run away.
AT_THE_EDGE = 0.5
#: What is left of the records' squares when nothing is left, but for the computer's own rounding.
NOTHING = 1e-10


@dataclass(frozen=True, slots=True)
class Published:
    """A share of variance as it is told elsewhere, and how far herds stray from it (standard deviation)."""

    share: float
    spread: float


@dataclass(frozen=True, slots=True)
class Estimated:
    """Variances of one herd.

    records   how many they were estimated from
    settled   whether the search ended inside its bounds; otherwise don't use them
    shares    effect (`animal` first) -> its share of the whole variance
    """

    variances: Variances
    records: int
    settled: bool

    @property
    def shares(self) -> Mapping[str, float]:
        """Each effect's part of the whole variance."""
        told = {"animal": self.variances.animal, **self.variances.others}
        return {effect: size / self.variances.total for effect, size in told.items()}


@dataclass(frozen=True, slots=True)
class _Search:
    """One herd's likelihood as a function of the log ratios of each effect's variance to the residual one."""

    sums: Equations
    inverse: sparse.csc_matrix
    records: int
    published: Mapping[str, Published]

    @property
    def effects(self) -> tuple[str, ...]:
        return tuple(self.sums.layout.levels)

    def variances(self, ratios: npt.NDArray[np.float64], residual: float = 1.0) -> Variances:
        animal, *others = (exp(ratio) * residual for ratio in ratios)
        return Variances(animal, residual, dict(zip(self.effects, others, strict=True)))

    def solved(self, ratios: npt.NDArray[np.float64]) -> Solution:
        return self.sums.solved(penalty(self.sums.layout, self.variances(ratios), self.inverse))

    def unlikeliness(self, ratios: npt.NDArray[np.float64]) -> float:
        """-2 log of the restricted likelihood, but for a constant, and of the published shares."""
        solved = self.solved(ratios)
        free = self.records - solved.rank
        sizes = (self.sums.layout.animals, *(len(found) for found in self.sums.layout.levels.values()))
        told = free * log(solved.misfit / free) + solved.log_determinant() + float(np.dot(sizes, ratios))
        return told + self._strangeness(ratios)

    def _strangeness(self, ratios: npt.NDArray[np.float64]) -> float:
        """How far the shares are from the published ones, in squared spreads."""
        each = self.variances(ratios)
        sizes = {"animal": each.animal, **each.others}
        off = ((sizes[effect] / each.total - told.share) / told.spread for effect, told in self.published.items())
        return sum(one * one for one in off)


def estimated(
    pedigree: Pedigree, records: Sequence[Record], start: Variances, published: Mapping[str, Published] | None = None
) -> Estimated:
    """The variances of these records, begun at `start` (which also names the further effects).

    `published`: effect (`animal` for what is bred in) -> what holds its share back; without it plain REML. Where the fixed effects leave
    nothing to share out (every litter of ten kits) it is not settled, and `start` stands.
    ValueError where there are no more records than fixed effects.
    """
    book = pedigree.only(record.animal for record in records)
    sums = equations(book, records, tuple(start.others))
    search = _Search(sums, relationship_inverse(book, inbreeding_array(book)), len(records), dict(published or {}))
    begin = np.array([log(size / start.residual) for size in (start.animal, *start.others.values())])
    if len(records) <= search.solved(begin).rank:
        raise ValueError(f"{len(records)} records can't tell more than the fixed effects")
    if search.solved(begin).misfit <= NOTHING * sum(record.value**2 for record in records):
        return Estimated(start, len(records), settled=False)
    bounds = [(LEAST, MOST)] * len(begin)
    found = minimize(search.unlikeliness, begin, method="L-BFGS-B", jac="3-point", bounds=bounds, options={"ftol": 1e-11, "gtol": 1e-5})
    inside = bool(np.all((found.x > LEAST + AT_THE_EDGE) & (found.x < MOST - AT_THE_EDGE)))
    solved = search.solved(found.x)
    return Estimated(search.variances(found.x, solved.misfit / (len(records) - solved.rank)), len(records), bool(found.success) and inside)
