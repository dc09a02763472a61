"""Fair comparison of breeding animals: what each passes on, once litter, season, sex and relatives are allowed for.

The animal model: y = X b (fixed: sex, season, parity ...) + Z a (breeding values, related through the pedigree) + Z m (the nurse's
maternal values, where they are wanted) + W c (litter, or permanent environment) + e. Best linear unbiased prediction by
Henderson's mixed model equations (`core.reckon.equations`).

The errors of prediction are solved only for animals that are asked about, jointly, so that two bucks can be compared by the error
of their difference.
Checked against Mrode, Linear Models for the Prediction of Animal Breeding Values, 2014, examples 3.1, 4.1, 4.2.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from math import sqrt

import numpy as np
import numpy.typing as npt
from scipy import sparse
from scipy.special import ndtr

from core.reckon.equations import Layout, Record, Solution, equations
from core.reckon.interval import LEVEL, reach
from core.reckon.kinship import inbreeding_array
from core.reckon.pedigree import Pedigree
from core.reckon.relationship import mendelian, relationship_inverse

__all__ = [
    "BreedingValue",
    "BreedingValues",
    "Contrast",
    "Record",
    "Variances",
    "breeding_values",
    "mendelian",
    "penalty",
    "relationship_inverse",
]

Floats = npt.NDArray[np.float64]


@dataclass(frozen=True, slots=True)
class Variances:
    """Variance components [unit of the trait squared]: additive genetic, residual, each further random effect's.

    animal, residual   above zero
    others             an effect whose variance is zero is left out
    maternal           of the genes that a nurse gives her kits milk by; zero: no such effect
    covariance         between an animal's own genes and its maternal ones
    """

    animal: float
    residual: float
    others: Mapping[str, float] = field(default_factory=dict)
    maternal: float = 0.0
    covariance: float = 0.0

    @property
    def total(self) -> float:
        """The whole variance of a record."""
        return self.animal + self.maternal + self.covariance + self.residual + sum(self.others.values())

    def times(self, factor: float) -> Variances:
        """The same shares of another total."""
        others = {effect: size * factor for effect, size in self.others.items()}
        return replace(
            self,
            animal=self.animal * factor,
            residual=self.residual * factor,
            others=others,
            maternal=self.maternal * factor,
            covariance=self.covariance * factor,
        )


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
    maternal animals asked about -> what they give as nurses; empty without a maternal effect
    fitted   X b for each record: what the fixed effects say of it, whatever their coding
    variances  the variances that the errors were reckoned with
    """

    values: Mapping[str, float]
    asked: Mapping[str, BreedingValue]
    effects: Mapping[str, Mapping[str, float]]
    fitted: tuple[float, ...]
    maternal: Mapping[str, BreedingValue]
    variances: Variances
    error: Floats = field(repr=False, compare=False)
    place: Mapping[str, int] = field(repr=False, compare=False)
    solution: Solution = field(repr=False, compare=False)

    def of(self, animal: str) -> BreedingValue:
        """The breeding value of an animal that was asked about."""
        return self.asked[animal]

    def covariance(self, one: str, other: str) -> float:
        """Covariance of two animals' errors of prediction."""
        return float(self.error[self.place[one], self.place[other]])

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
        columns = self.solution.equations.columns
        if (factor, one) not in columns or (factor, other) not in columns:
            return None
        row = np.zeros(len(columns))
        row[columns[factor, one]] += 1
        row[columns[factor, other]] -= 1
        return self._estimated(row)

    def slope(self, covariate: str) -> Contrast | None:
        """What one more of a covariate makes; None where the records can't tell."""
        columns = self.solution.equations.columns
        if (covariate, "") not in columns:
            return None
        return self._estimated(np.eye(len(columns))[columns[covariate, ""]])

    def _estimated(self, row: Floats) -> Contrast | None:
        solved = self.solution
        if not np.allclose(row @ solved.inverse @ solved.schur, row, atol=1e-6):
            return None
        return Contrast(float(row @ solved.fixed), sqrt(max(float(row @ solved.inverse @ row), 0.0) * self.variances.residual))


def breeding_values(
    pedigree: Pedigree, records: Sequence[Record], variances: Variances, ask: Iterable[str] | None = None, worth: float | None = None
) -> BreedingValues:
    """Predict the breeding value of every animal of the pedigree, and the errors for those in `ask` (all when None).

    `worth`: the variances' shares are taken as told but their total is weighed against the records': it counts as much as so many
    records. None: the variances hold as they are.
    """
    asked = tuple(dict.fromkeys(pedigree.ids if ask is None else ask))
    inbred = inbreeding_array(pedigree)
    effects = [effect for effect, size in variances.others.items() if size > 0]
    sums = equations(pedigree, records, effects, maternal=variances.maternal > 0)
    solved = sums.solved(penalty(sums.layout, variances, relationship_inverse(pedigree, inbred)))
    if worth is not None:
        variances = variances.times(_spread(solved, variances, len(records), worth))
    n, layout, told = len(pedigree), sums.layout, solved.random.tolist()
    places = [pedigree.place[animal] for animal in asked]
    maternal = [n + place for place in places] if layout.maternal else []
    errors = solved.errors([*places, *maternal]) * variances.residual
    direct = _valued(asked, [told[at] for at in places], np.diagonal(errors), variances.animal, inbred[places])
    nursing = _valued(asked, [told[at] for at in maternal], np.diagonal(errors)[len(asked) :], variances.maternal, inbred[places])
    return BreedingValues(
        values=dict(zip(pedigree.ids, told[:n], strict=True)),
        asked=direct,
        effects=_effects(layout, variances, records, told),
        fitted=tuple((sums.x @ solved.fixed).tolist()),
        maternal=nursing if layout.maternal else {},
        variances=variances,
        error=errors[: len(asked), : len(asked)],
        place={animal: at for at, animal in enumerate(asked)},
        solution=solved,
    )


def penalty(layout: Layout, variances: Variances, inverse: sparse.csc_matrix) -> sparse.csc_matrix:
    """G^-1 times the residual variance: what holds the random effects back. `inverse`: of the relationship matrix."""
    genes = np.array([[variances.animal]])
    if layout.maternal:
        genes = np.array([[variances.animal, variances.covariance], [variances.covariance, variances.maternal]])
    free = [np.full(len(found), variances.residual / variances.others[effect]) for effect, found in layout.levels.items()]
    related = sparse.kron(np.linalg.inv(genes) * variances.residual, inverse)
    return sparse.csc_matrix(sparse.block_diag([related, sparse.diags_array(np.concatenate([np.empty(0), *free]))]))


def _spread(solved: Solution, variances: Variances, records: int, worth: float) -> float:
    """How much more the records vary than told, the told counting as so many records."""
    free = max(records - solved.rank, 0)
    return (worth + solved.misfit / variances.residual) / (worth + free)


def _valued(asked: Sequence[str], values: Sequence[float], pev: Floats, variance: float, inbred: Floats) -> dict[str, BreedingValue]:
    return {
        animal: BreedingValue(animal, value, float(error), 1 - float(error) / variance, 1 - float(error) / ((1 + float(close)) * variance))
        for animal, value, error, close in zip(asked, values, pev, inbred, strict=False)
    }


def _effects(layout: Layout, variances: Variances, records: Sequence[Record], told: Sequence[float]) -> dict[str, dict[str, float]]:
    """Each further effect's levels; all zero for one that does not vary."""
    answers: dict[str, dict[str, float]] = {}
    at = layout.animals * (1 + layout.maternal)
    for effect in variances.others:
        found = layout.levels.get(effect)
        if found is None:
            answers[effect] = {record.random[effect]: 0.0 for record in records}
            continue
        answers[effect] = dict(zip(found, told[at : at + len(found)], strict=True))
        at += len(found)
    return answers
