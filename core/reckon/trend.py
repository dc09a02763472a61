"""Whether a doe really raises her litters worse and worse: the chance of a true fall in survival, over her litters in order.

Two or three litters prove nothing by themselves, and a doe that lost none and then all has an infinite slope, so the
chance of a fall always leans on a prior that trends are small: slope a litter ~ Normal(0, prior_sd^2).
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import sqrt

import numpy as np
import numpy.typing as npt
from scipy.special import expit, ndtr

Floats = npt.NDArray[np.float64]
Counts = tuple[int, int]  # kits alive, of them kept

_LOOSE = 10.0  # not a figure: how far off the middle log-odds may be; next to no opinion


@dataclass(frozen=True, slots=True)
class LogitFit:
    """Maximum likelihood line: log-odds of survival = intercept + slope x litter number (first is 1). z = slope / se."""

    intercept: float
    slope: float
    se_slope: float

    @property
    def z(self) -> float:
        """Slope in its own standard errors."""
        return self.slope / self.se_slope

    @property
    def p_two_sided(self) -> float:
        """Wald test of no trend."""
        return float(2 * ndtr(-abs(self.z)))


@dataclass(frozen=True, slots=True)
class SurvivalTrend:
    """How survival moves from litter to litter [log-odds a litter], leaning on the prior.

    chance_of_fall  that the true slope is below zero
    fitted          the line without the prior; None where it has no finite slope (litters lost whole on one side only)
    """

    litters: int
    slope: float
    deviation: float
    chance_of_fall: float
    fitted: LogitFit | None


def survival_trend(litters: Sequence[Counts], prior_sd: float) -> SurvivalTrend | None:
    """The trend of survival over litters (alive, kept) in order; None with fewer than two litters that had kits.

    Binomial logistic regression on the litter number; the prior Normal(0, prior_sd^2) is on the slope alone, its posterior
    taken as normal around the mode. A weak prior on the middle (_LOOSE log-odds) keeps that finite when all kits lived.
    """
    told = [(number, alive, kept) for number, (alive, kept) in enumerate(litters, start=1) if alive > 0]
    if len(told) < 2:
        return None
    number, alive, kept = np.array(told, dtype=float).T
    middle = float(number.mean())
    centred = np.column_stack([np.ones_like(number), number - middle])
    (_, slope), covariance = _newton(centred, alive, kept, np.diag([_LOOSE**-2, prior_sd**-2]))
    deviation = sqrt(covariance[1, 1])
    fitted = _line(centred, alive, kept, middle) if _overlap(number, alive, kept) else None
    return SurvivalTrend(len(told), float(slope), deviation, float(ndtr(-slope / deviation)), fitted)


def _line(centred: Floats, alive: Floats, kept: Floats, middle: float) -> LogitFit:
    (height, slope), covariance = _newton(centred, alive, kept, np.zeros((2, 2)))
    return LogitFit(float(height - slope * middle), float(slope), sqrt(covariance[1, 1]))


def _newton(x: Floats, alive: Floats, kept: Floats, precision: Floats) -> tuple[Floats, Floats]:
    """The mode of a binomial log-likelihood with a normal prior around zero, and its inverse curvature.

    Newton's steps, halved until they climb: the height is concave, so they arrive.
    """

    def height(at: Floats) -> float:
        line = x @ at
        return float(kept @ line - alive @ np.logaddexp(0, line) - at @ precision @ at / 2)

    at = np.zeros(x.shape[1])
    while True:
        share = expit(x @ at)
        curvature = x.T @ (x * (alive * share * (1 - share))[:, None]) + precision
        step = np.linalg.solve(curvature, x.T @ (kept - alive * share) - precision @ at)
        while height(at + step) < height(at) - 1e-12:
            step = step / 2
        at = at + step
        if np.abs(step).max() < 1e-10:
            return at, np.asarray(np.linalg.inv(curvature), dtype=np.float64)


def _overlap(number: Floats, alive: Floats, kept: Floats) -> bool:
    """Whether kept and lost kits overlap in time, so that a finite slope fits best (Albert & Anderson 1984, from memory)."""
    lived, died = number[kept > 0], number[alive > kept]
    return bool(len(lived) and len(died) and lived.min() < died.max() and died.min() < lived.max())
