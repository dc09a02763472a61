"""How a breed's young grow on this farm, and each one's own departure: all weighings of all animals used at their real ages.

Every animal has its own Gompertz curve (see `core.reckon.curve`), told as ln A, ln b, ln k. These are the handbook's for its breed
plus what the farm's feed and strain do to the breed, plus what its sex does, plus its own departure; each part is believed to be
near nothing until weighings say otherwise. One weighing at an odd age thus moves an animal a little, five move it far, and a
breed with many weighings has its own curve. Weighings scatter by a share of the weight, so the reckoning is in logarithms.

Solved by Gauss-Newton steps, each an ordinary linear mixed model with 3 numbers an animal (Lindstrom and Bates 1990, Nonlinear
mixed effects models for repeated measures data, Biometrics 46: from memory).
How far animals differ, and how far weighings scatter, are scaled to what the breed's own weighings show.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from math import log

import numpy as np
import numpy.typing as npt

from core.reckon.growth import GrowthFit, Weighing

Floats = npt.NDArray[np.float64]
Curve = tuple[float, float, float]

_STEPS = 12  # not a figure: steps towards the best curves; they settle in four or five
_SETTLED = 1e-6
_SCALES = np.exp(np.linspace(-0.9, 0.9, 7))  # not a figure: how many times the believed spread and scatter are tried
_SCALE_SD = 0.35  # not a figure: how firmly they are believed, as a standard deviation of the logarithm
_LONGEST_STEP = 0.5  # not a figure: a step of a logarithm longer than this is cut


@dataclass(frozen=True, slots=True)
class Young:
    """One animal's weighings (age [days], weight [g]). `kind` is its sex, or whatever else its breed mates are told apart by."""

    key: str
    kind: str
    weighings: tuple[Weighing, ...]


@dataclass(frozen=True, slots=True, kw_only=True)
class GrowthBelief:
    """Standard deviations of ln A, ln b, ln k.

    herd, kind, own   how far a farm's breed strays from the handbook's, a sex from the breed, an animal from its sex
    weighing          scatter of a weighing, as a share of the weight
    """

    herd: Curve
    kind: Curve
    own: Curve
    weighing: float


@dataclass(frozen=True, slots=True)
class GrowingTogether:
    """A breed on this farm.

    kinds       each kind's curve, with the doubt about it and the spread of its animals both in `spread`
    animals     each animal's own curve
    spread, scatter   how many times the believed spread of animals and scatter of weighings they show
    """

    kinds: Mapping[str, GrowthFit]
    animals: Mapping[str, GrowthFit]
    spread: float
    scatter: float


def growing_together(animals: Sequence[Young], handbook: Mapping[str, Curve], belief: GrowthBelief) -> GrowingTogether:
    """The curves of one breed's animals. `handbook`: each kind's curve (A, b, k), its keys all kinds that are to be told."""
    data = _laid_out([one for one in animals if one.weighings], handbook)
    held = _Held(np.square(np.concatenate([belief.herd, *([belief.kind] * len(handbook))])), np.square(belief.own), belief.weighing**2)
    best, scale = _best(data, held)
    return _told(data, held, best, scale, handbook)


@dataclass(frozen=True, slots=True, eq=False)
class _Data:
    """All weighings in a row. owner: which animal; parts: an animal's [3, parameters] pick of the breed's and its kind's numbers."""

    young: Sequence[Young]
    ages: Floats
    logs: Floats
    owner: npt.NDArray[np.intp]
    base: Floats
    parts: Floats


@dataclass(frozen=True, slots=True, eq=False)
class _Held:
    """Variances believed: of the breed's and kinds' numbers, of an animal's departure, of a weighing."""

    shared: Floats
    own: Floats
    weighing: float


@dataclass(frozen=True, slots=True, eq=False)
class _Solved:
    """Shared numbers with their covariance; each animal's logs and their covariance."""

    shared: Floats
    covariance: Floats
    own: Floats
    spread: Floats


@dataclass(frozen=True, slots=True, eq=False)
class _Weighed:
    """An animal's sums and the inverse of what they and the belief say of it, what it would be alone; the shared numbers with their
    precision; log-likelihood of the weighings."""

    inner: Floats
    middle: Floats
    alone: Floats
    precision: Floats
    shared: Floats
    height: float


@dataclass(frozen=True, slots=True, eq=False)
class _Sums:
    """Each animal's weighings around its curve: products of the slopes, of slopes and what is left, its squares, and how many."""

    inner: Floats
    right: Floats
    square: Floats
    many: Floats


def _laid_out(young: Sequence[Young], handbook: Mapping[str, Curve]) -> _Data:
    told = [(at, age, weight) for at, one in enumerate(young) for age, weight in one.weighings]
    owner, ages, weights = (np.array([each[side] for each in told]) for side in range(3))
    kinds = list(handbook)
    return _Data(
        young=young,
        ages=ages.astype(float),
        logs=np.log(weights.astype(float)),
        owner=owner.astype(np.intp),
        base=np.log([handbook[one.kind] for one in young]).reshape(-1, 3),
        parts=np.stack([_part(kinds.index(one.kind), len(kinds)) for one in young]) if young else np.zeros((0, 3, 3 * (len(kinds) + 1))),
    )


def _part(kind: int, kinds: int) -> Floats:
    """The breed's three numbers and that kind's."""
    part = np.zeros((3, 3 * (kinds + 1)))
    part[:, :3] = np.eye(3)
    part[:, 3 * (kind + 1) : 3 * (kind + 2)] = np.eye(3)
    return part


def _best(data: _Data, held: _Held) -> tuple[_Solved, tuple[float, float]]:
    """The likeliest curves, and the scales of spread and scatter that explain the weighings best."""
    at = data.base
    scale = (1.0, 1.0)
    found = _settled(data, held, at, scale)
    sums = _sums(data, found.own)
    tried = {(spread, scatter): _height(data, held, sums, (spread, scatter)) for spread in _SCALES for scatter in _SCALES}
    scale = max(tried, key=lambda each: tried[each])
    return _settled(data, held, found.own, scale), scale


def _height(data: _Data, held: _Held, sums: _Sums, scale: tuple[float, float]) -> float:
    """Log-likelihood with the belief in the scales."""
    return _weighed(data, held, sums, scale).height - sum(log(one) ** 2 for one in scale) / (2 * _SCALE_SD**2)


def _settled(data: _Data, held: _Held, at: Floats, scale: tuple[float, float]) -> _Solved:
    """Steps until the curves stay where they are."""
    for _ in range(_STEPS):
        found = _step(data, held, _sums(data, at), scale)
        moved = np.clip(found.own - at, -_LONGEST_STEP, _LONGEST_STEP)
        at = at + moved
        if not moved.size or np.abs(moved).max() < _SETTLED:
            break
    return _step(data, held, _sums(data, at), scale)


def _sums(data: _Data, at: Floats) -> _Sums:
    """The weighings of each animal summed up around the curves `at` [animal, 3]."""
    curve, slope = _curve(data.ages, at[data.owner])
    left = data.logs - curve + np.einsum("wi,wi->w", slope, (at - data.base)[data.owner])
    animals = len(data.young)
    sums = _Sums(np.zeros((animals, 3, 3)), np.zeros((animals, 3)), np.zeros(animals), np.zeros(animals))
    np.add.at(sums.inner, data.owner, slope[:, :, None] * slope[:, None, :])
    np.add.at(sums.right, data.owner, slope * left[:, None])
    np.add.at(sums.square, data.owner, left**2)
    np.add.at(sums.many, data.owner, 1.0)
    return sums


def _weighed(data: _Data, held: _Held, sums: _Sums, scale: tuple[float, float]) -> _Weighed:
    """What the weighings say under one pair of scales: of the shared numbers, and how likely they are."""
    own, noise = held.own * scale[0] ** 2, held.weighing * scale[1] ** 2
    inner, right = sums.inner / noise, sums.right / noise
    middle = np.asarray(np.linalg.inv(np.diag(1 / own) + inner), dtype=np.float64)
    alone = _times(middle, right)
    flat = data.parts.reshape(-1, data.parts.shape[-1])  # animals below each other: sums over them are one product
    held_back = inner - inner @ middle @ inner
    precision = np.diag(1 / held.shared) + flat.T @ (held_back @ data.parts).reshape(flat.shape)
    pull = flat.T @ (right - _times(inner, alone)).ravel()
    shared = np.asarray(np.linalg.solve(precision, pull), dtype=np.float64)
    height = -0.5 * float(
        sums.square.sum() / noise
        - (right * alone).sum()
        - pull @ shared
        + (sums.many * log(noise)).sum()
        - np.log(np.linalg.det(middle / own)).sum()
        + np.linalg.slogdet(held.shared[:, None] * precision)[1]
    )
    return _Weighed(inner, middle, alone, precision, shared, height)


def _step(data: _Data, held: _Held, sums: _Sums, scale: tuple[float, float]) -> _Solved:
    """One linear mixed model around the curves that the sums were taken at."""
    found = _weighed(data, held, sums, scale)
    covariance = np.asarray(np.linalg.inv(found.precision), dtype=np.float64)
    of_shared = data.parts @ found.shared
    departed = found.alone - _times(found.middle, _times(found.inner, of_shared))
    carried = (np.eye(3) - found.middle @ found.inner) @ data.parts
    spread = found.middle + carried @ covariance @ carried.transpose(0, 2, 1)
    return _Solved(found.shared, covariance, data.base + of_shared + departed, spread)


def _times(tables: Floats, rows: Floats) -> Floats:
    """Each animal's table times its row."""
    return np.asarray((tables @ rows[:, :, None])[:, :, 0])


def _curve(ages: Floats, at: Floats) -> tuple[Floats, Floats]:
    """ln W of the curve at these ages, and its slopes by ln A, ln b, ln k [weighing, 3]: 1, -b e^(-kt), b k t e^(-kt)."""
    b, k = np.exp(at[:, 1]), np.exp(at[:, 2])
    short = b * np.exp(-k * ages)
    return at[:, 0] - short, np.stack([np.ones_like(ages), -short, short * k * ages], axis=1)


def _told(data: _Data, held: _Held, best: _Solved, scale: tuple[float, float], handbook: Mapping[str, Curve]) -> GrowingTogether:
    own = np.diag(held.own) * scale[0] ** 2
    kinds = {}
    for at, (kind, curve) in enumerate(handbook.items()):
        part = _part(at, len(handbook))
        many = sum(len(one.weighings) for one in data.young if one.kind == kind)
        kinds[kind] = _fit(np.log(curve) + part @ best.shared, part @ best.covariance @ part.T + own, (), many)
    animals = {one.key: _fit(best.own[at], best.spread[at], one.weighings, len(one.weighings)) for at, one in enumerate(data.young)}
    return GrowingTogether(kinds, animals, float(scale[0]), float(scale[1]))


def _fit(logs: Floats, spread: Floats, weighings: Sequence[Weighing], many: int) -> GrowthFit:
    adult, b, k = (float(one) for one in np.exp(logs))
    empty = GrowthFit(adult, b, k, 0.0, many, spread)
    return GrowthFit(adult, b, k, sum((empty.weight_at(age) - weight) ** 2 for age, weight in weighings), many, spread)
