"""How large does' litters are, all does of a breed reckoned together: the farm's own number, each doe's level, and whether she falls.

A litter has what the breed has here at its best, times what is usual at that number of litter, plus the doe's own level, plus her
own slope from litter to litter, plus chance. The breed's number, the levels and the slopes are each believed to be near what is
usual until litters say otherwise, so a doe of one litter of four leans on her herd mates and one of six does not.

    size = breed x expected share + level + slope x (number - middle) + chance

A linear mixed model: given the breed's number level and slope come apart, for numbers are taken around their middle, and all is a
formula. How far does differ and how far litters scatter are scaled to what the litters show, summed over a grid of scales.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, fields
from math import hypot

import numpy as np
import numpy.typing as npt
from scipy.special import ndtr

Floats = npt.NDArray[np.float64]

#: How far does differ and how far litters scatter, over what is believed: logarithms that are tried, and how firmly 0 is believed.
_SPREADS, _SPREAD_SD = np.linspace(-1.6, 1.6, 9), 0.7  # not a figure: little is known of it, so it may be a half or the double
_SCATTERS, _SCATTER_SD = np.linspace(-1.2, 1.2, 7), 0.5  # not a figure: a herd's litters tell it soon


@dataclass(frozen=True, slots=True)
class LittersTold:
    """One doe's live-born in order; `expected`: the share of the breed's best at each and at the next litter, one longer."""

    sizes: tuple[float, ...]
    expected: tuple[float, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class SizeBelief:
    """What is believed before litters tell [kits]: the breed's best litters and how far a farm strays from that; standard deviations
    of does' levels, of their slopes [kits a litter], and of one doe's litters."""

    usual: float
    farm_sd: float
    level_sd: float
    slope_sd: float
    litter_sd: float


@dataclass(frozen=True, slots=True)
class LitterSize:
    """How large one doe's litters are, and how sure that is.

    level           her litters against what is expected of the breed's here [kits], at the middle of her litters
    slope           kits a litter beyond what is expected of her number of litter;  `slope_sd` its doubt
    chance_of_fall  that her litters truly get smaller, beyond what is expected of older does; a rise that failed to come is no fall
    at_best         what she has in her best litters [kits]
    following       kits to expect of her next litter;  `following_sd` how far off one litter may be
    """

    litters: int
    level: float
    level_sd: float
    slope: float
    slope_sd: float
    chance_of_fall: float
    at_best: float
    at_best_sd: float
    following: float
    following_sd: float


@dataclass(frozen=True, slots=True)
class LittersTogether:
    """A breed's does on this farm. `breed`: its best litters here [kits], `breed_sd` its doubt."""

    breed: float
    breed_sd: float
    does: Mapping[str, LitterSize]


def litters_together(does: Mapping[str, LittersTold], belief: SizeBelief, *, scaled: bool = True) -> LittersTogether:
    """Every doe's litter size from all does' litters. Not `scaled`: spread and scatter stay as believed."""
    sums = _sums(list(does.values()))
    scales = [(spread, scatter) for spread in _SPREADS for scatter in _SCATTERS] if scaled else [(0.0, 0.0)]
    solved = [_solved(sums, belief, float(np.exp(spread)), float(np.exp(scatter))) for spread, scatter in scales]
    believed = [(spread / _SPREAD_SD) ** 2 / 2 + (scatter / _SCATTER_SD) ** 2 / 2 for spread, scatter in scales]
    logs = np.array([one.height for one in solved]) - np.array(believed)
    weights = np.exp(logs - logs.max())
    weights = weights / weights.sum()
    told = [_mixed(weights, [each.told[name] for each in solved]) for name in range(len(_NAMES))]
    falls = np.tensordot(weights, [one.fall for one in solved], axes=1)
    breed, breed_sd = _mixed(weights, [(np.array(one.breed), np.array(one.breed_variance)) for one in solved])
    return LittersTogether(float(breed), float(breed_sd), {key: _of(at, one, told, falls) for at, (key, one) in enumerate(does.items())})


def chance_larger(one: LitterSize, other: LitterSize) -> float:
    """The chance that the first doe's litters are truly larger than the second's; their doubts are taken as apart."""
    return float(ndtr((one.at_best - other.at_best) / hypot(one.at_best_sd, other.at_best_sd)))


_NAMES = ("level", "slope", "at_best", "following")


@dataclass(frozen=True, slots=True, eq=False)
class _Sums:
    """A doe's sums, one number a doe: of sizes y, expected shares c, and numbers x around their middle; `ahead` x of the next litter, `after`
    its expected share, `rise` the slope of the expected shares as far as these rise."""

    many: Floats
    y: Floats
    c: Floats
    xx: Floats
    xy: Floats
    xc: Floats
    cc: Floats
    cy: Floats
    yy: Floats
    ahead: Floats
    after: Floats
    rise: Floats


@dataclass(frozen=True, slots=True, eq=False)
class _Solved:
    """Means and variances of what is told, in the order of _NAMES; chance of a fall; the breed's number; log-likelihood."""

    told: Sequence[tuple[Floats, Floats]]
    fall: Floats
    breed: float
    breed_variance: float
    height: float


def _sums(does: Sequence[LittersTold]) -> _Sums:
    rows = np.array([_row(one) for one in does], dtype=float).reshape(-1, len(fields(_Sums)))
    return _Sums(*rows.T)


def _row(one: LittersTold) -> tuple[float, ...]:
    """The sums in the order of _Sums."""
    y, c = np.array(one.sizes, dtype=float), np.array(one.expected, dtype=float)[: len(one.sizes)]
    many = len(y)
    x = np.arange(many, dtype=float) - (many - 1) / 2
    sums = (y.sum(), c.sum(), x @ x, x @ y, x @ c, c @ c, c @ y, y @ y)
    rise = float(x @ np.maximum.accumulate(c) / (x @ x)) if many > 1 else 0.0
    return many, *(float(each) for each in sums), (many + 1) / 2 if many else 0.0, one.expected[many], rise


def _solved(sums: _Sums, belief: SizeBelief, spread: float, scatter: float) -> _Solved:
    """All means and variances with does `spread` times as unlike and litters `scatter` times as scattered as believed.

    Given the breed's number m: level = a - g m with precision pl, slope = u - h m with precision ps; m itself by what is left.
    """
    noise, between, steep = (belief.litter_sd * scatter) ** 2, (belief.level_sd * spread) ** 2, belief.slope_sd**2
    pl, ps = 1 / between + sums.many / noise, 1 / steep + sums.xx / noise
    a, g = sums.y / noise / pl, sums.c / noise / pl
    u, h = sums.xy / noise / ps, sums.xc / noise / ps
    precision = 1 / belief.farm_sd**2 + float((sums.cc / noise - g**2 * pl - h**2 * ps).sum())
    pull = belief.usual / belief.farm_sd**2 + float((sums.cy / noise - a * g * pl - u * h * ps).sum())
    breed, doubt = pull / precision, 1 / precision

    def told(own: Floats, of_breed: Floats, variance: Floats) -> tuple[Floats, Floats]:
        return own + of_breed * breed, variance + of_breed**2 * doubt

    level, slope, seen = told(a, -g, 1 / pl), told(u, -h, 1 / ps), told(u, sums.rise - h, 1 / ps)
    following = told(a + u * sums.ahead, sums.after - g - h * sums.ahead, 1 / pl + sums.ahead**2 / ps + noise)
    left = float((sums.yy / noise - a**2 * pl - u**2 * ps).sum()) + belief.usual**2 / belief.farm_sd**2 - pull * breed
    logs = float((sums.many * np.log(noise) + np.log(between * pl) + np.log(steep * ps)).sum() + np.log(precision))
    return _Solved(
        told=(level, slope, told(a, 1.0 - g, 1 / pl), following),
        fall=np.asarray(ndtr(-seen[0] / np.sqrt(seen[1]))),
        breed=breed,
        breed_variance=doubt,
        height=-(left + logs) / 2,
    )


def _mixed(weights: Floats, parts: Sequence[tuple[Floats, Floats]]) -> tuple[Floats, Floats]:
    """Mean and standard deviation of a mixture."""
    means, variances = (np.array([part[side] for part in parts]) for side in (0, 1))
    mean = np.tensordot(weights, means, axes=1)
    return mean, np.sqrt(np.tensordot(weights, variances + (means - mean) ** 2, axes=1))


def _of(at: int, one: LittersTold, told: Sequence[tuple[Floats, Floats]], falls: Floats) -> LitterSize:
    level, slope, at_best, following = ((float(mean[at]), float(sd[at])) for mean, sd in told)
    return LitterSize(
        len(one.sizes),
        *level,
        *slope,
        float(falls[at]),
        *at_best,
        max(following[0], 0.0),
        following[1],
    )
