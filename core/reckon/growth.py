"""A rabbit's own growth curve from its weighings, the day it will make its weight, and its weight at a standard age.

Gompertz (see `core.reckon.curve`), fitted on ln A, ln b, ln k so that all stay positive. The adult weight is badly
determined by young weights alone: `core.reckon.growing_together` lets the breed hold it; a date always comes with its interval.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta
from math import ceil, exp, log, sqrt

import numpy as np
import numpy.typing as npt
from scipy.optimize import least_squares
from scipy.special import ndtr

from core.reckon import curve
from core.reckon.interval import LEVEL, reach

Floats = npt.NDArray[np.float64]
Weighing = tuple[float, float]  # age [days], weight [g]

_PATIENCE = 2000  # not a figure: steps of the search before it gives up
_FLOATING = 50.0  # not a figure: logarithms beyond this are nonsense that the search may wander into
_FIRST_GUESS = 1.5  # not a figure: where the search for the adult weight starts, over the heaviest weighing


@dataclass(frozen=True, slots=True)
class GrowthFit:
    """A rabbit's curve. `spread` is the covariance of (ln A, ln b, ln k); `rss` the residual sum of squares [g^2]."""

    adult_g: float
    b: float
    k: float
    rss: float
    weighings: int
    spread: Floats = field(repr=False, compare=False)

    @property
    def inflection_age(self) -> float:
        """Age of fastest growth [days]."""
        return curve.inflection_age(self.b, self.k)

    @property
    def greatest_gain(self) -> float:
        """Fastest gain [g/day]."""
        return curve.greatest_gain(self.adult_g, self.k)

    def weight_at(self, age_days: float) -> float:
        """Weight [g] at an age [days]."""
        return curve.weight_at_age(age_days, self.adult_g, self.b, self.k)

    def age_at(self, weight_g: float) -> float | None:
        """Age [days] at a weight [g]; None when it never gets there."""
        return curve.age_at_weight(weight_g, self.adult_g, self.b, self.k)

    def age_interval(self, weight_g: float, level: float = LEVEL) -> tuple[float, float] | None:
        """Bounds of that age [days], by the delta method; None when it never gets there.

        With L = ln(A/W): d age/d ln A = -1/(k L), d age/d ln b = 1/k, d age/d ln k = -age.
        """
        age = self.age_at(weight_g)
        if age is None:
            return None
        slope = np.array([-1 / (self.k * log(self.adult_g / weight_g)), 1 / self.k, -age])
        width = reach(level) * sqrt(float(slope @ self.spread @ slope))
        return age - width, age + width

    def chance_by(self, age_days: float, weight_g: float) -> float:
        """The chance that at this age [days] it weighs so much or more [g]: ln W is taken as normal around the curve.

        With x = b exp(-k t): d ln W/d ln A = 1, d/d ln b = -x, d/d ln k = x k t.
        """
        short = self.b * exp(-self.k * age_days)
        slope = np.array([1.0, -short, short * self.k * age_days])
        return self._chance(log(self.weight_at(age_days) / weight_g), float(slope @ self.spread @ slope))

    def chance_ever(self, weight_g: float) -> float:
        """The chance that it ever weighs so much [g]: that its adult weight is above it."""
        return self._chance(log(self.adult_g / weight_g), float(self.spread[0, 0]))

    @staticmethod
    def _chance(over: float, variance: float) -> float:
        return float(ndtr(over / sqrt(variance))) if variance > 0 else float(over >= 0)

    def ages_when(self, weight_g: float, chances: Sequence[float], *, until: int) -> tuple[float | None, ...]:
        """The ages [days] by which it weighs so much with each chance; None where that is not so by `until`."""
        age = np.arange(until + 1, dtype=float)
        short = self.b * np.exp(-self.k * age)
        slope = np.stack([np.ones_like(short), -short, short * self.k * age])
        over = log(self.adult_g / weight_g) - short
        wide = np.sqrt(np.maximum(np.einsum("ia,ij,ja->a", slope, self.spread, slope), np.finfo(float).tiny))
        sure = np.maximum.accumulate(ndtr(over / wide))
        return tuple(float(np.interp(chance, sure, age)) if sure[-1] >= chance else None for chance in chances)

    def date_of(self, born: date, weight_g: float) -> date | None:
        """The first day on which it weighs that much; None when it never does."""
        age = self.age_at(weight_g)
        return None if age is None else born + timedelta(days=ceil(age))

    def dates_of(self, born: date, weight_g: float, level: float = LEVEL) -> tuple[date, date] | None:
        """Earliest and latest likely day; None when it never gets there."""
        ages = self.age_interval(weight_g, level)
        return None if ages is None else (born + timedelta(days=ceil(ages[0])), born + timedelta(days=ceil(ages[1])))


def fitted(weighings: Sequence[Weighing]) -> GrowthFit | None:
    """The curve through these weighings (age [days], weight [g]) alone, by ordinary least squares.

    None with fewer than three different ages, or with weights that don't grow.
    """
    ages, weights = np.array(sorted(weighings), dtype=float).reshape(-1, 2).T
    guess = _guess(ages, weights)
    if guess is None:
        return None

    def off(at: Floats) -> Floats:
        return np.asarray(np.subtract(_gompertz(ages, at), weights), dtype=np.float64)

    found = least_squares(off, guess, x_scale="jac", xtol=1e-14, ftol=1e-14, gtol=1e-14, max_nfev=_PATIENCE)
    rss = float(((_gompertz(ages, found.x) - weights) ** 2).sum())
    slopes = np.asarray(found.jac)
    spread = np.linalg.pinv(slopes.T @ slopes) * rss / max(len(ages) - 3, 1)
    adult, b, k = (exp(float(one)) for one in found.x)
    return GrowthFit(adult, b, k, rss, len(ages), spread)


def standard_weight(
    weighings: Sequence[Weighing], age_days: float, adult_b_k: tuple[float, float, float], within_days: float
) -> float | None:
    """The weight [g] brought to a standard age [days]; None when no weighing is within `within_days` of it.

    adult_b_k: the curve (A, b, k). Each weighing is taken as a ratio to the curve; between two weighings the ratio runs
    straight from one to the other, outside them the nearest one's ratio holds.
    """
    if not any(abs(age - age_days) <= within_days for age, _ in weighings):
        return None
    ordered = sorted(weighings)
    ages = [age for age, _ in ordered]
    ratios = [weight / curve.weight_at_age(age, *adult_b_k) for age, weight in ordered]
    return float(np.interp(age_days, ages, ratios)) * curve.weight_at_age(age_days, *adult_b_k)


def _gompertz(ages: Floats, at: Floats) -> Floats:
    """Weights [g] at these ages with ln A, ln b, ln k; exponents held within floating range while the search wanders."""
    adult, b, k = np.exp(np.clip(at, -_FLOATING, _FLOATING))
    return np.asarray(adult * np.exp(-np.minimum(b * np.exp(-k * ages), 700)))


def _guess(ages: Floats, weights: Floats) -> Floats | None:
    """ln A, ln b, ln k to start from: A somewhat above the heaviest, then the straight line ln ln(A/W) = ln b - k t."""
    if len(set(ages.tolist())) < 3 or weights.min() <= 0:
        return None
    adult = _FIRST_GUESS * float(weights.max())
    slope, height = np.polyfit(ages, np.log(np.log(adult / weights)), 1)
    return np.array([log(adult), float(height), log(-float(slope))]) if slope < 0 else None
