"""How many of a doe's kits live to weaning: her share, shrunk towards the herd's, with its uncertainty.

Kits kept of kits alive are binomial with the doe's own chance p; does' chances follow Beta(alpha, beta) over the herd.
So her chance given her litters is Beta(alpha + kept, beta + lost), and small numbers lean on the herd.
Reference: Gelman et al., Bayesian Data Analysis, ch. 5 (rat tumours, table 5.1) for the hierarchical model.

Kits of one litter share its fate (a chill, a scattered nest), so a litter of n tells less than n kits apart:
with likeness rho within litters each counts as n / (1 + (n - 1) rho) kits.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache
from math import exp, log

import numpy as np
import numpy.typing as npt
from scipy.optimize import minimize
from scipy.special import betainc, betaincinv, betaln, expit, logit, psi

from core.reckon.interval import LEVEL

Floats = npt.NDArray[np.float64]
Counts = tuple[int, int]  # kits alive, of them kept

MOST_WEIGHT = 200.0  # not a figure: the weight [kits] where the search stops; more only says that does can't be told apart
_INSIDE = 1e-9  # not a figure: how near to none or all a chance may come, so that its logarithm exists
_REACHED = 0.99  # not a figure: a search that gets this near its bound has run to it
#: Half the 99 % point of chi-squared with one degree of freedom: a smaller difference of log-likelihoods tells nothing.
_TELLING = 3.32


@dataclass(frozen=True, slots=True)
class Prior:
    """The herd's spread of survival: Beta(alpha, beta).

    source  `default` (too few does, or nothing to learn), `herd` (fitted), `herd mean` (the herd's mean with the default's
            weight, where the herd's likelihood can't tell how much its does differ)
    """

    alpha: float
    beta: float
    source: str = "default"

    @property
    def mean(self) -> float:
        """Mean survival [share]."""
        return self.alpha / (self.alpha + self.beta)

    @property
    def weight(self) -> float:
        """How many kits the herd's word counts for."""
        return self.alpha + self.beta


@dataclass(frozen=True, slots=True)
class Survival:
    """A doe's chance to bring a kit to weaning [share], as Beta(alpha, beta). `low` and `high` bound the middle `level`.

    likeness   correlation of kits within her next litter, 0 where each fares for itself
    """

    alive: int
    kept: int
    litters: int
    alpha: float
    beta: float
    level: float = LEVEL
    likeness: float = 0.0

    @property
    def estimate(self) -> float:
        """The mean."""
        return self.alpha / (self.alpha + self.beta)

    @property
    def deviation(self) -> float:
        """Standard deviation."""
        total = self.alpha + self.beta
        return float(np.sqrt(self.alpha * self.beta / (total + 1))) / total

    @property
    def low(self) -> float:
        """Lower end of the interval."""
        return float(betaincinv(self.alpha, self.beta, (1 - self.level) / 2))

    @property
    def high(self) -> float:
        """Upper end of the interval."""
        return float(betaincinv(self.alpha, self.beta, (1 + self.level) / 2))

    def chance_below(self, line: float) -> float:
        """The chance that her true survival is below a line."""
        return float(betainc(self.alpha, self.beta, line))

    def expected(self, born: int) -> float:
        """Kits expected to be kept of `born` alive."""
        return born * self.estimate

    def chance_at_least(self, born: int, kept: int) -> float:
        """The chance that the next litter of `born` keeps `kept` or more: beta-binomial around a chance that is itself not known."""
        counts = np.arange(max(kept, 0), born + 1)
        if self.likeness <= 0:
            return float(np.exp(_log_litter(born, counts, self.alpha, self.beta)).sum())
        chance, weight = self._points()
        firm = (1 - self.likeness) / self.likeness
        logs = _log_litter(born, counts[None, :], (chance * firm)[:, None], ((1 - chance) * firm)[:, None])
        return float(weight @ np.exp(logs).sum(axis=1))

    def _points(self) -> tuple[Floats, Floats]:
        """Chances p with their weights, evenly over her posterior: spread over its distribution function."""
        points, weights = _between_0_and_1()
        return np.clip(betaincinv(self.alpha, self.beta, points), _INSIDE, 1 - _INSIDE), weights

    def with_litter(self, alive: float, kept: float) -> Survival:
        """The same after one more litter, whose kits count for less as they share its fate."""
        share = 1 / (1 + max(alive - 1, 0) * self.likeness)
        return replace(self, alpha=self.alpha + kept * share, beta=self.beta + (alive - kept) * share)


def litters_to_be_sure(one: Survival, line: float, *, born: float, sure: float, at_most: int) -> int | None:
    """How many more litters of `born`, raised as hers were so far, until it is `sure` on which side of the line she is.

    0 where it is so already; None where `at_most` litters would not do: she is too near the line to tell.
    """
    rate = one.estimate
    for litters in range(at_most + 1):
        below = one.chance_below(line)
        if max(below, 1 - below) >= sure:
            return litters
        one = one.with_litter(born, born * rate)
    return None


def survival(litters: Iterable[Counts], prior: Prior, likeness: float = 0.0, level: float = LEVEL) -> Survival:
    """A doe's survival from her litters (alive, kept) and the herd's prior."""
    told = list(litters)
    counted = [(alive, kept, 1 / (1 + max(alive - 1, 0) * likeness)) for alive, kept in told]
    return Survival(
        alive=sum(alive for alive, _ in told),
        kept=sum(kept for _, kept in told),
        litters=len(told),
        alpha=prior.alpha + sum(kept * share for _, kept, share in counted),
        beta=prior.beta + sum((alive - kept) * share for alive, kept, share in counted),
        level=level,
    )


def chance_better(one: Survival, other: Survival) -> float:
    """The chance that the first doe's true survival is above the second's: the integral of F2(F1^-1(u)) over u in 0 to 1."""
    points, weights = _between_0_and_1()
    return float(weights @ betainc(other.alpha, other.beta, betaincinv(one.alpha, one.beta, points)))


@lru_cache(maxsize=1)
def _between_0_and_1() -> tuple[Floats, Floats]:
    """Points of 0 to 1, crowded at both ends where quantiles bend sharply, with their weights (Takahasi & Mori 1974, from memory)."""
    steps = np.linspace(-3.2, 3.2, 321)  # not a figure: beyond lies less than 1e-16
    points = 1 / (1 + np.exp(-np.pi * np.sinh(steps)))
    return points, np.pi * np.cosh(steps) * points * (1 - points) * (steps[1] - steps[0])


def herd_prior(does: Iterable[Counts], default: Prior, *, least: int = 8, cap: float = MOST_WEIGHT) -> Prior:
    """The herd's prior from its does' totals (alive, kept), by maximum likelihood.

    Fewer than `least` does with kits, or a herd that lost all or none: the default. A fit that runs to `cap` (does as
    alike as chance allows) is kept only when the likelihood really prefers it to the default's weight.
    """
    told = [(alive, kept) for alive, kept in does if alive > 0]
    alive, kept = (np.array([one[side] for one in told], dtype=float) for side in (0, 1))
    if len(told) < least or kept.sum() in (0, alive.sum()):
        return default
    mean, weight, height = _likeliest(alive, kept, cap)
    pooled = float(kept.sum() / alive.sum())
    if weight < cap * _REACHED:
        return Prior(mean * weight, (1 - mean) * weight, "herd")
    flat = height - log_likelihood(alive, kept, pooled * default.weight, (1 - pooled) * default.weight) < _TELLING
    weight = default.weight if flat else cap
    return Prior(pooled * weight, (1 - pooled) * weight, "herd mean" if flat else "herd")


def moment_prior(does: Iterable[Counts]) -> Prior | None:
    """The prior whose mean and variance are those of the does' raw shares; None where they differ too little or too much.

    alpha + beta = m (1 - m) / v - 1. Reference: Gelman et al., Bayesian Data Analysis, ch. 5, the first, quick fit.
    """
    shares = np.array([kept / alive for alive, kept in does if alive > 0])
    if len(shares) < 2:
        return None
    mean, variance = float(shares.mean()), float(shares.var(ddof=1))
    if not 0 < variance < mean * (1 - mean):
        return None
    weight = mean * (1 - mean) / variance - 1
    return Prior(mean * weight, (1 - mean) * weight, "herd")


def log_likelihood(alive: Floats, kept: Floats, alpha: float, beta: float) -> float:
    """Log-likelihood of does' totals under the beta-binomial, with its binomial coefficients."""
    return float((_log_choose(alive, kept) + betaln(alpha + kept, beta + alive - kept) - betaln(alpha, beta)).sum())


def likeness(does: Sequence[Sequence[Counts]], default: float, *, least: int = 10) -> float:
    """How much kits of one litter share its fate [0 to 1]: the correlation within a litter, within a doe.

    The analysis-of-variance estimate for kept or lost kits, litters nested in does:
    rho = (MSB - MSW) / (MSB + (n0 - 1) MSW). `default` when fewer than `least` litters beyond one a doe, or nothing varies.
    """
    told = [[litter for litter in litters if litter[0] > 0] for litters in does]
    told = [litters for litters in told if litters]
    spare = sum(len(litters) for litters in told) - len(told)
    kits = sum(alive for litters in told for alive, _ in litters)
    inside = sum(len(litters) for litters in told)
    if spare < least or kits <= inside:
        return default
    between = within = large = 0.0
    for litters in told:
        of_doe = sum(alive for alive, _ in litters)
        share = sum(kept for _, kept in litters) / of_doe
        between += sum(alive * (kept / alive - share) ** 2 for alive, kept in litters)
        within += sum(kept * (1 - kept / alive) for alive, kept in litters)
        large += sum(alive**2 for alive, _ in litters) / of_doe
    between, within, size = between / spare, within / (kits - inside), (kits - large) / spare
    spread = between + (size - 1) * within
    return min(max((between - within) / spread, 0.0), 1.0) if spread > 0 else default


def _likeliest(alive: Floats, kept: Floats, cap: float) -> tuple[float, float, float]:
    """Mean, weight and log-likelihood of the best Beta, its weight between 1/cap and cap."""

    def against(guess: Floats) -> tuple[float, Floats]:
        """Minus the log-likelihood at (logit of the mean, log of the weight), and its slopes."""
        mean, weight = float(expit(guess[0])), exp(guess[1])
        alpha, beta = mean * weight, (1 - mean) * weight
        shared = psi(weight) - psi(weight + alive)
        by_alpha = float((psi(alpha + kept) - psi(alpha) + shared).sum())
        by_beta = float((psi(beta + alive - kept) - psi(beta) + shared).sum())
        slopes = (by_alpha - by_beta) * weight * mean * (1 - mean), by_alpha * alpha + by_beta * beta
        return -log_likelihood(alive, kept, alpha, beta), -np.array(slopes)

    pooled = float(logit(kept.sum() / alive.sum()))
    bounds = [(pooled - 3, pooled + 3), (-log(cap), log(cap))]
    found = [
        minimize(against, np.array([pooled, start]), jac=True, method="L-BFGS-B", bounds=bounds, options={"ftol": 1e-13, "gtol": 1e-8})
        for start in (1.0, log(cap) / 2)
    ]
    best = min(found, key=lambda one: float(one.fun))
    return float(expit(best.x[0])), exp(float(best.x[1])), -float(best.fun)


def _log_litter(born: int, kept: npt.NDArray[np.int64], alpha: Floats | float, beta: Floats | float) -> Floats:
    """Log-chance of keeping so many of `born`, their chance being Beta(alpha, beta)."""
    return np.asarray(_log_choose(born, kept) + betaln(alpha + kept, beta + born - kept) - betaln(alpha, beta))


def _log_choose(n: Floats | float, k: Floats | npt.NDArray[np.int64]) -> Floats:
    """log of n over k."""
    return np.asarray(-betaln(n - k + 1, k + 1) - np.log(np.asarray(n) + 1.0))
