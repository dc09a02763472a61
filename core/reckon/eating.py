"""What a barn eats day by day: every dish for all days at once, as numpy reckons it.

The shares and grams are those of `core.reckon.feed`; here they run on: growers grow along their curve and become adults, does kindle,
nurse and wean, a thin one puts flesh back on, cold days ask for more. Day 0 is today. All grams are of pellets as fed.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from core.reckon.feed import FeedFigures, cold_factor

Floats = npt.NDArray[np.float64]
_KG = 1000  # not a figure: grams in a kilogram
_LEAST = 1e-9  # not a figure: a weight of nothing would have no logarithm


@dataclass(frozen=True, slots=True)
class Spell:
    """Days `first` to `end`, the last not counted, in which something is so, with the chance that it is."""

    first: int
    end: int
    chance: float = 1.0


@dataclass(frozen=True, slots=True)
class Nursing:
    """A spell at the nest. `kits` at the dish from their day on [heads, may be an expectation]; `kits_age` of the litter on day `first`."""

    spell: Spell
    kits: float
    kits_age: int


@dataclass(frozen=True, slots=True, kw_only=True)
class Diner:
    """One rabbit, or `heads` alike, and what is known of its days to come.

    heads        how many; of kits to come an expectation
    weight_g     today's live weight; of a grower that is not yet at the dish, the weight on its curve
    age_days     today; below 0 for kits to come, None where it is not known and nothing grows
    heading_g, rate   the weight and the rate [a day] of its curve, W' = rate W ln(heading/W); `heading_g` None: it grows no more
    grown_from   the day on which it eats as an adult; None: it is one today
    stays_from   the day from which it is a grower no more whose weight changes; None where it has no such day
    first, end   the days at the dish: from `first` up to `end` (None: to the last)
    told         its own ration, a head [g a day]; None: what it needs. `told_grown` the same once it is grown
    gains        what a thin one takes beside its need [g a day], over that spell
    """

    key: str
    weight_g: float
    heads: float = 1.0
    age_days: float | None = None
    heading_g: float | None = None
    rate: float = 0.0
    grown_from: int | None = None
    stays_from: int | None = None
    first: int = 0
    end: int | None = None
    told: float | None = None
    told_grown: float | None = None
    pregnant: tuple[Spell, ...] = ()
    nursing: tuple[Nursing, ...] = ()
    gains: tuple[tuple[Spell, float], ...] = ()


@dataclass(frozen=True, slots=True)
class Table:
    """grams, heads, weights: a row a diner, a column a day [g, heads, g live of one]; `keys` name the rows."""

    keys: tuple[str, ...]
    grams: Floats = field(repr=False)
    heads: Floats = field(repr=False)
    weights: Floats = field(repr=False)


def eaten(diners: Sequence[Diner], days: int, figures: FeedFigures, celsius: Sequence[float | None] = ()) -> Table:
    """What these eat on each of so many days. `celsius`: the air of each day; days beyond its end, and None, count as not cold."""
    weights = _weights(diners, days)
    need = _grown(diners, weights, figures)
    growing = _up_to(diners, days, lambda one: one.grown_from or 0)
    need = np.where(growing, _growing(diners, weights, figures), need) * _cold(celsius, days, figures)
    for row, one in enumerate(diners):
        for spell, grams in one.gains:
            need[row, spell.first : spell.end] += grams
    told = np.where(growing, _column(diners, lambda one: one.told), _column(diners, lambda one: one.told_grown))
    heads = _there(diners, days) * _column(diners, lambda one: one.heads)
    return Table(tuple(one.key for one in diners), np.where(np.isnan(told), need, told) * heads, heads, weights)


def _column(diners: Sequence[Diner], of: Callable[[Diner], float | None]) -> Floats:
    """A number a diner, as a column; nan for None."""
    return np.array([of(one) for one in diners], dtype=float).reshape(-1, 1)


def _up_to(diners: Sequence[Diner], days: int, of: Callable[[Diner], int]) -> npt.NDArray[np.bool_]:
    """Which days lie before each diner's day."""
    return np.arange(days) < _column(diners, of)


def _there(diners: Sequence[Diner], days: int) -> Floats:
    """1 on the days at the dish, else 0."""
    came = np.arange(days) >= _column(diners, lambda one: one.first)
    return (came & _up_to(diners, days, lambda one: days if one.end is None else one.end)).astype(float)


def _weights(diners: Sequence[Diner], days: int) -> Floats:
    """Live weights [g]: ln(A/W) shrinks by exp(-k days), as in `core.reckon.curve.carried`; nothing changes from `stays_from` on."""
    now, heading = _column(diners, lambda one: one.weight_g), _column(diners, lambda one: one.heading_g or one.weight_g)
    rate, until = _column(diners, lambda one: one.rate), _column(diners, lambda one: days if one.stays_from is None else one.stays_from)
    passed = np.minimum(np.arange(days), until)
    short = np.log(np.maximum(heading, _LEAST) / np.maximum(now, _LEAST))
    return np.asarray(heading * np.exp(-short * np.exp(-rate * passed)))


def _growing(diners: Sequence[Diner], weights: Floats, figures: FeedFigures) -> Floats:
    """A grower's need [g a day], as `core.reckon.feed` has it: by metabolic weight, from the level day on by that day's."""
    ages = _column(diners, lambda one: one.age_days or 0.0) + np.arange(weights.shape[1])
    since = np.minimum(ages, figures.level_from_day)
    grown = figures.curve_b * (np.exp(-figures.curve_k * ages) - np.exp(-figures.curve_k * since))
    return np.asarray(figures.grower_g * (weights * np.exp(grown) / _KG) ** figures.metabolic_power)


def _grown(diners: Sequence[Diner], weights: Floats, figures: FeedFigures) -> Floats:
    """An adult's need [g a day] by its state, and that of the kits at a doe's dish. Chances are taken as apart from one another."""
    pregnant, nursing, kits = (np.zeros(weights.shape) for _ in range(3))
    for row, one in enumerate(diners):
        for spell in one.pregnant:
            pregnant[row, spell.first : spell.end] = spell.chance
        for each in one.nursing:
            spell = each.spell
            nursing[row, spell.first : spell.end] = spell.chance
            at_dish = max(spell.first, spell.first + figures.kits_eat_from_day - each.kits_age)
            kits[row, at_dish : max(spell.end, at_dish)] += each.kits * spell.chance
    at_rest = figures.dry_share + pregnant * (figures.pregnant_share - figures.dry_share)
    at_nest = max(figures.lactating_share, figures.pregnant_share)
    return np.asarray((at_rest + nursing * (at_nest - at_rest)) * weights + kits * figures.kit_g)


def _cold(celsius: Sequence[float | None], days: int, figures: FeedFigures) -> Floats:
    """How much more is eaten on each day for the cold."""
    told = [cold_factor(figures, one) for one in celsius[:days]]
    return np.array([*told, *[1.0] * (days - len(told))])
