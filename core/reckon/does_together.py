"""All does of a herd reckoned together: each one's share of kits raised, leaning on her herd mates as far as these prove alike.

Three layers. Kits of one litter share its fate: kept of n is beta-binomial around the doe's own chance p, with the likeness
rho within a litter. Does differ: p ~ Beta(mu w, (1 - mu) w), mu the herd's mean, w how many kits the herd's word counts for.
And mu, w and rho are themselves not known: each has a belief from the handbook, weighed anew by the herd's own litters. A
herd of two does so keeps the handbook's word, a herd of forty makes its own, and the interval holds that doubt too.

Solved by summing over a grid, not by drawing numbers: the same litters always give the same answer.
Reference: Gelman et al., Bayesian Data Analysis, ch. 5, for the model of binomial groups with unknown mean and spread.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from math import log

import numpy as np
import numpy.typing as npt
from scipy.special import betainc, betaincinv, expit, logit, ndtr

from core.reckon.interval import LEVEL
from core.reckon.survival import Counts, Survival

Floats = npt.NDArray[np.float64]

CELLS = 128  # not a figure: how finely a doe's chance is cut
_MEANS, _WEIGHTS, _LIKENESSES = 31, 9, 9  # not a figure: how finely the three herd numbers are cut
_FAR = 2.4  # not a figure: how many standard deviations of a belief the grid reaches


@dataclass(frozen=True, slots=True, kw_only=True)
class Belief:
    """What is believed of a herd before its litters tell.

    mean, mean_weight              the herd's mean [share], and how many kits that word counts for
    weight, weight_spread          how alike its does are [kits], and the standard deviation of its logarithm
    likeness, likeness_spread      correlation of kits within a litter, and the standard deviation of its log-odds
    """

    mean: float
    mean_weight: float
    weight: float
    weight_spread: float
    likeness: float
    likeness_spread: float


@dataclass(frozen=True, slots=True)
class Together:
    """The herd's does. `mean`, `weight`, `likeness` are what the litters make of the belief; `stranger` a doe yet without a litter."""

    mean: float
    weight: float
    likeness: float
    stranger: Survival
    does: Mapping[str, Survival]


def does_together(does: Mapping[str, Sequence[Counts]], belief: Belief, level: float = LEVEL) -> Together:
    """Every doe's chance to bring a kit to weaning from all does' litters (alive, kept).

    Each posterior is told as the Beta of the same mean and variance.
    """
    grid = _grid(belief)
    seen = _seen([list(litters) for litters in does.values()] + [[]], grid.likenesses)
    weights, chances = _weighed(seen, grid)
    told = [*does.values(), ()]
    found = [_survival(litters, share, grid, weights, level) for litters, share in zip(told, chances, strict=True)]
    return Together(
        mean=float(weights.sum(axis=0) @ grid.means),
        weight=float(np.exp(weights.sum(axis=0) @ np.log(grid.weights))),
        likeness=float(weights.sum(axis=1) @ grid.likenesses),
        stranger=found[-1],
        does=dict(zip(does, found[:-1], strict=True)),
    )


@dataclass(frozen=True, slots=True, eq=False)
class _Grid:
    """The points that are summed over. `means` and `weights` are one row a pair (mu, w).

    prior   chance of a cell of p [pair, cell];  log_hyper  log-belief in a point [likeness, pair]
    """

    means: Floats
    weights: Floats
    likenesses: Floats
    prior: Floats
    log_hyper: Floats


@lru_cache(maxsize=8)
def _grid(belief: Belief) -> _Grid:
    at_mean, at_weight, at_likeness = (np.linspace(-_FAR, _FAR, many) for many in (_MEANS, _WEIGHTS, _LIKENESSES))
    alpha, beta = belief.mean * belief.mean_weight, (1 - belief.mean) * belief.mean_weight
    mean = betaincinv(alpha, beta, ndtr(at_mean))
    weight = np.exp(log(belief.weight) + belief.weight_spread * at_weight)
    means, weights = (each.ravel() for each in np.meshgrid(mean, weight, indexing="ij"))
    edges = _chances(np.arange(CELLS + 1))
    upto = betainc((means * weights)[:, None], ((1 - means) * weights)[:, None], edges[None, :])
    normal = [-(at**2) / 2 for at in (at_mean, at_weight, at_likeness)]
    return _Grid(
        means=means,
        weights=weights,
        likenesses=np.asarray(expit(logit(belief.likeness) + belief.likeness_spread * at_likeness)),
        prior=np.maximum(np.diff(upto, axis=1), np.finfo(float).tiny),
        log_hyper=normal[2][:, None] + (normal[0][:, None] + normal[1][None, :]).ravel()[None, :],
    )


def _chances(cell: npt.NDArray[np.int64] | Floats) -> Floats:
    """The chance p at these edges (or middles) of cells: closer together towards none and all."""
    return np.asarray(np.sin(np.pi / 2 * cell / CELLS) ** 2)


def _seen(does: list[list[Counts]], likenesses: Floats) -> Floats:
    """How well each likeness and each p explain a doe's litters: likelihood [doe, likeness, cell], the best 1 a doe and likeness pair's log apart."""
    pairs = sorted({litter for litters in does for litter in litters if litter[0] > 0})
    place = {pair: at for at, pair in enumerate(pairs)}
    times = np.zeros((len(does), len(pairs)))
    for doe, litters in enumerate(does):
        for litter in litters:
            if litter[0] > 0:
                times[doe, place[litter]] += 1
    table = _litter_logs(pairs, likenesses)
    return np.asarray(np.tensordot(times, table, axes=1))


def _litter_logs(pairs: list[Counts], likenesses: Floats) -> Floats:
    """Log-likelihood of litters (alive, kept) [pair, likeness, cell], up to what hangs on neither p nor likeness.

    Beta-binomial with alpha = p t, beta = (1 - p) t, t = (1 - rho)/rho: sums of log(alpha + r), log(beta + r), log(t + r).
    """
    most = max((alive for alive, _ in pairs), default=0)
    total = ((1 - likenesses) / likenesses)[:, None, None]
    chance, step = _chances(np.arange(CELLS, dtype=np.float64) + 0.5)[None, :, None], np.arange(most)[None, None, :]

    def summed(start: Floats) -> Floats:
        logs = np.log(start + step)
        return np.concatenate([np.zeros((*logs.shape[:2], 1)), np.cumsum(logs, axis=2)], axis=2)

    lived, died, every = summed(chance * total), summed((1 - chance) * total), summed(total)
    rows = [lived[:, :, kept] + died[:, :, alive - kept] - every[:, :, alive] for alive, kept in pairs]
    return np.stack(rows) if rows else np.zeros((0, len(likenesses), CELLS))


def _weighed(seen: Floats, grid: _Grid) -> tuple[Floats, Floats]:
    """The herd numbers' weights [likeness, pair] and every doe's chances [doe, cell]."""
    top = seen.max(axis=(1, 2), keepdims=True)
    likely = np.exp(seen - top)
    explained = likely @ grid.prior.T
    logs = grid.log_hyper + np.log(explained).sum(axis=0)
    weights = np.exp(logs - logs.max())
    weights = weights / weights.sum()
    chances = ((weights / explained) @ grid.prior * likely).sum(axis=1)
    return weights, chances / chances.sum(axis=1, keepdims=True)


def _survival(litters: Sequence[Counts], share: Floats, grid: _Grid, weights: Floats, level: float) -> Survival:
    """One doe's chances as the Beta with their mean and variance."""
    middle = _chances(np.arange(CELLS, dtype=np.float64) + 0.5)
    mean = float(share @ middle)
    weight = mean * (1 - mean) / float(share @ (middle - mean) ** 2) - 1
    return Survival(
        alive=sum(alive for alive, _ in litters),
        kept=sum(kept for _, kept in litters),
        litters=len(litters),
        alpha=mean * weight,
        beta=(1 - mean) * weight,
        level=level,
        likeness=float(weights.sum(axis=1) @ grid.likenesses),
    )
