"""Nights that hit the whole barn: more litters lost kits at once than their ages explain, whether or not anybody wrote why.

A frozen pipe of a night, a fan that stopped, a dog at the fence: several nests lose kits together, and each doe alone would
look careless. How often a litter loses kits on a night by itself is learned from the herd's other nights, by the litter's age;
the chance that so many litters are hit together by accident is then an exact sum over the nests at risk.
A night is two calendar days: what dies in the dark is noted that evening or next morning.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

NIGHT = 2  # not a figure: calendar days that one night can be noted on


@dataclass(frozen=True, slots=True)
class Nest:
    """A litter at risk. Days are counted from any one day, all from the same.

    born, until   first day, and the last day on which it had unweaned kits
    losses        days on which it lost kits to no cause that was written down
    """

    key: str
    born: int
    until: int
    losses: frozenset[int]


@dataclass(frozen=True, slots=True)
class Band:
    """Litters up to an age [days, the last one counted]; how often a night takes kits of one [share], and how many nights that word counts for."""

    until_age: int
    usual: float
    weight: float


@dataclass(frozen=True, slots=True)
class BadNight:
    """A night that hit several nests. `day` its first calendar day; `chance` that so many were hit by accident."""

    day: int
    hit: tuple[str, ...]
    at_risk: int
    chance: float


def bad_nights(
    nests: Sequence[Nest], bands: Sequence[Band], *, sure: float, noted: Iterable[int] = (), sure_if_noted: float
) -> tuple[BadNight, ...]:
    """The nights on which two nests or more lost kits together and hardly by accident, the first one first.

    sure            how unlikely by accident a night must be [chance]
    noted           days on which somebody wrote of weather; there `sure_if_noted` will do
    """
    told = frozenset(noted)
    exposed = _exposed(nests, bands)
    days = sorted({day - back for nest in nests for day in nest.losses for back in range(NIGHT)})
    found = (_night(day, nests, bands, exposed) for day in days)
    limit = {day: sure_if_noted if any(day + on in told for on in range(NIGHT)) else sure for day in days}
    return _apart([one for one in found if one is not None and one.chance <= limit[one.day]])


def _night(day: int, nests: Sequence[Nest], bands: Sequence[Band], exposed: Sequence[tuple[int, int]]) -> BadNight | None:
    """What a night did; None where fewer than two nests were hit."""
    days = range(day, day + NIGHT)
    hit = [nest for nest in nests if not nest.losses.isdisjoint(days)]
    if len(hit) < 2:
        return None
    rates = _rates(hit, days, bands, exposed)
    at_risk = [nest for nest in nests if any(nest.born <= on <= nest.until for on in days)]
    chances = []
    for nest in at_risk:
        spared = 1.0
        for on in days:
            if nest.born <= on <= nest.until:
                spared *= 1 - rates[_band(on - nest.born, bands)]
        chances.append(1 - spared)
    return BadNight(day, tuple(nest.key for nest in hit), len(at_risk), so_many(chances, len(hit)))


def so_many(chances: Sequence[float], least: int) -> float:
    """The chance that at least so many of these happen, each with its own chance (Poisson-binomial, summed one by one)."""
    exactly = [1.0]
    for chance in chances:
        longer = [0.0, *exactly]
        exactly = [left * (1 - chance) + came * chance for left, came in zip([*exactly, 0.0], longer, strict=True)]
    return sum(exactly[least:])


def _exposed(nests: Sequence[Nest], bands: Sequence[Band]) -> tuple[tuple[int, int], ...]:
    """A band's litter-nights, and those with a loss."""
    nights, losses = [0] * len(bands), [0] * len(bands)
    for nest in nests:
        for day in range(nest.born, nest.until + 1):
            band = _band(day - nest.born, bands)
            nights[band] += 1
            losses[band] += day in nest.losses
    return tuple(zip(nights, losses, strict=True))


def _rates(hit: Sequence[Nest], days: range, bands: Sequence[Band], exposed: Sequence[tuple[int, int]]) -> list[float]:
    """How often a night takes kits, a band: the herd's other nights and the usual rate together."""
    taken = [0] * len(bands)
    for nest in hit:
        for day in nest.losses:
            taken[_band(day - nest.born, bands)] += day in days
    return [
        (losses - off + band.usual * band.weight) / (nights - off + band.weight)
        for band, off, (nights, losses) in zip(bands, taken, exposed, strict=True)
    ]


def _band(age: int, bands: Sequence[Band]) -> int:
    """Which band an age is of; the last one has no end."""
    return next((at for at, band in enumerate(bands) if age <= band.until_age), len(bands) - 1)


def _apart(nights: Sequence[BadNight]) -> tuple[BadNight, ...]:
    """Of nights that share a day, the one less likely by accident."""
    kept: list[BadNight] = []
    for night in sorted(nights, key=lambda one: (one.chance, one.day)):
        if all(abs(night.day - other.day) >= NIGHT for other in kept):
            kept.append(night)
    return tuple(sorted(kept, key=lambda one: one.day))


def hit_on(nights: Iterable[BadNight], key: str) -> Mapping[int, BadNight]:
    """The bad nights that hit a nest, by each of their calendar days."""
    return {night.day + on: night for night in nights if key in night.hit for on in range(NIGHT)}
