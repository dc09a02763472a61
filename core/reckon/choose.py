"""Who is better, with the doubt left in: a ranking that tells how sure it is.

Small numbers make false champions. Beside its place each animal gets the place it may be expected to hold in truth
(one more than the sum of the chances that others are better), and the chance that it truly is above the next.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from math import hypot, sqrt
from statistics import NormalDist

SAME = 9  # not a figure: decimals beyond which two sums differ by rounding alone


@dataclass(frozen=True, slots=True)
class Ranked:
    """One animal's place.

    expected_rank      the mean of its true rank, 1 best
    better_than_next   the chance that it truly is above the next in the list; None for the last
    """

    animal: str
    value: float
    expected_rank: float
    better_than_next: float | None


def ranked(values: Mapping[str, float], better: Callable[[str, str], float]) -> tuple[Ranked, ...]:
    """The animals, best value first (ties, also those that only rounding sets apart, by name).

    `better(a, b)`: the chance that a truly is above b, from their joint error.
    """
    order = sorted(values, key=lambda animal: (-round(values[animal], SAME), animal))
    return tuple(
        Ranked(
            animal,
            values[animal],
            1 + sum(better(other, animal) for other in order if other != animal),
            better(animal, order[at + 1]) if at + 1 < len(order) else None,
        )
        for at, animal in enumerate(order)
    )


@dataclass(frozen=True, slots=True)
class Guess:
    """A number that is not quite known: its mean and how far the truth may be off (standard deviation)."""

    value: float
    deviation: float

    def times(self, other: Guess) -> Guess:
        """Their product, where the doubts have nothing to do with each other."""
        varied = (self.value * other.deviation) ** 2 + (other.value * self.deviation) ** 2 + (self.deviation * other.deviation) ** 2
        return Guess(self.value * other.value, sqrt(varied))

    def chance_above(self, other: Guess) -> float:
        """The chance that this is truly the greater one, both taken as bell-shaped and apart; one half where nothing sets them apart."""
        gap, spread = self.value - other.value, hypot(self.deviation, other.deviation)
        if spread == 0:
            return 0.5 if gap == 0 else float(gap > 0)
        return NormalDist().cdf(gap / spread)
