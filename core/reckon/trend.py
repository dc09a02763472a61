"""Whether a doe's litters really get worse: the chance of a true fall in survival or in size, over her litters in order.

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


@dataclass(frozen=True, slots=True)
class SizeTrend:
    """How a doe's litter size moves from litter to litter [kits a litter], and where she stands.

    level           her litters against the usual ones [kits], leaning on the herd, taken at the middle of her litters
    slope           leaning on the prior that trends are small;  `deviation` its doubt
    chance_of_fall  that the true slope is below zero
    following       kits to expect of her next litter, `following_sd` how far off one litter may be
    """

    litters: int
    level: float
    level_sd: float
    slope: float
    deviation: float
    chance_of_fall: float
    following: float
    following_sd: float


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


def size_trend(  # noqa: PLR0913 - three spreads, each of its own kind
    sizes: Sequence[float], usual: Sequence[float], *, within_sd: float, between_sd: float, slope_sd: float
) -> SizeTrend | None:
    """The trend of litter sizes in order; None without a litter.

    sizes        live-born of her litters;  `usual` what does have at each of them and at the next one, one longer
    within_sd, between_sd   spread of one doe's litters, and of does' own levels [kits]
    slope_sd     how steep a trend is believed before it is seen [kits a litter]

    size = usual + level + slope x (number - middle) + chance, level ~ Normal(0, between^2), slope ~ Normal(0, slope_sd^2). Numbers
    are taken around their middle, so level and slope do not disturb each other: level = sum / (n + within^2 / between^2),
    slope = S_xy / (S_xx + within^2 / slope_sd^2).
    """
    if not sizes:
        return None
    left = np.asarray(sizes, dtype=float) - np.asarray(usual[: len(sizes)], dtype=float)
    number = np.arange(len(sizes)) - (len(sizes) - 1) / 2
    held, firmness = len(sizes) + within_sd**2 / between_sd**2, float(number @ number) + within_sd**2 / slope_sd**2
    level, level_sd = float(left.sum()) / held, within_sd / sqrt(held)
    slope, deviation = float(number @ left) / firmness, within_sd / sqrt(firmness)
    ahead = (len(sizes) + 1) / 2
    return SizeTrend(
        litters=len(sizes),
        level=level,
        level_sd=level_sd,
        slope=slope,
        deviation=deviation,
        chance_of_fall=float(ndtr(-slope / deviation)),
        following=max(usual[len(sizes)] + level + slope * ahead, 0.0),
        following_sd=sqrt(level_sd**2 + (deviation * ahead) ** 2 + within_sd**2),
    )


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
