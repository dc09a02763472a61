"""How the young stock grows: weights brought to one age, and each against its breed's target and the herd's own mean."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from statistics import fmean

from core.handbook import breeds, growth
from core.herd.settings import target_weight
from core.herd.state import Animal, Herd
from core.reckon.curve import weight_at_age
from core.reckon.growth import standard_weight

Curve = tuple[float, float, float]


@dataclass(frozen=True, slots=True)
class Grown:
    """A young one's newest weight, and what it is measured against.

    grams     its newest weight [g], taken at `at_days` of age
    target    the farm's target for its breed at sixteen weeks [g]
    expected  what its herd mates of the breed weigh at that age [g]; None where nobody else was weighed
    mates     how many of them
    """

    grams: int
    on: date
    at_days: int
    target: int
    expected: float | None
    mates: int


def curve_of(breed: str | None, sex: str | None = None) -> Curve:
    """The handbook's growth curve (A [g], b, k [a day]) for a breed."""
    return breeds.growth_ceiling_g(breed, sex), growth.GOMPERTZ_B.value, breeds.growth_rate(breed).value


def weighings(animal: Animal) -> list[tuple[float, float]]:
    """Its weights by age (age [days], weight [g]), from the age at which the curve holds."""
    if animal.born is None:
        return []
    aged = [((one.on - animal.born).days, one.grams) for one in animal.weights]
    return [(age, grams) for age, grams in aged if age >= growth.CURVE_FROM_DAYS.value]


def weight_at(animal: Animal, age: float) -> float | None:
    """Its weight brought to that age [g]; None where no weighing is near enough."""
    return standard_weight(weighings(animal), age, curve_of(animal.breed), growth.COMPARED_WITHIN_DAYS.value)


def standard_weights(herd: Herd) -> Mapping[str, float]:
    """Everybody's weight at the age of comparison [g], living or gone."""
    age = growth.COMPARED_AGE_DAYS.value
    brought = {animal.key: weight_at(animal, age) for animal in herd.animals.values()}
    return {key: weight for key, weight in brought.items() if weight is not None}


def grown(herd: Herd, animal: Animal, today: date, standard: Mapping[str, float]) -> Grown | None:
    """The animal's newest weight against its breed's target and its herd mates; None where it was never weighed or its age isn't known."""
    known = [one for one in animal.weights if one.on <= today]
    if not known or animal.born is None:
        return None
    newest = known[-1]
    at_days = (newest.on - animal.born).days
    mates = [weight for key, weight in standard.items() if key != animal.key and (herd.animals[key].breed or "") == (animal.breed or "")]
    mean = fmean(mates) if mates else None
    expected = None if mean is None else mean * _on_curve(animal.breed, at_days) / _on_curve(animal.breed, growth.COMPARED_AGE_DAYS.value)
    return Grown(newest.grams, newest.on, at_days, target_weight(herd.settings, animal.breed), expected, len(mates))


def _on_curve(breed: str | None, age: float) -> float:
    return weight_at_age(max(age, 1), *curve_of(breed))
