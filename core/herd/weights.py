"""Questions about weights: the last one, where it leads, and how fast one grew."""

from __future__ import annotations

from datetime import date

from core.handbook import breeds, growth, stages
from core.herd.state import Animal, Weight
from core.reckon.curve import carried


def last_weight(animal: Animal, until: date | None = None) -> Weight | None:
    """The newest weight; with `until`, the newest by that day."""
    known = [weight for weight in animal.weights if until is None or weight.on <= until]
    return known[-1] if known else None


def expected_weight(animal: Animal, on: date) -> float | None:
    """What the last weight before that day leads to [g]: an adult's own weight, a growing one's carried along the curve."""
    known = [weight for weight in animal.weights if weight.on <= on]
    if not known:
        return None
    last = known[-1]
    age = (last.on - animal.born).days if animal.born else None
    if age is None or age >= stages.SENIOR_FROM_DAYS.whole or last.on == on:
        return float(last.grams)
    ceiling = max(breeds.growth_ceiling_g(animal.breed, animal.sex), last.grams)
    return carried(last.grams, age, age + (on - last.on).days, ceiling, growth.GOMPERTZ_B.value, breeds.growth_rate(animal.breed).value)


def odd_weight(animal: Animal, grams: int, on: date) -> float | None:
    """The expected weight [g] where this one differs from it by more than the share that asks; else None."""
    expected = expected_weight(animal, on)
    if expected is None or abs(grams - expected) <= expected * growth.WEIGHT_CHANGE_ASKED.value:
        return None
    return expected


def gain_since(animal: Animal, on: date) -> tuple[int, int] | None:
    """What the newest weight by that day gained on the one before: grams and days; None with fewer than two."""
    known = [weight for weight in animal.weights if weight.on <= on]
    if len(known) < 2:
        return None
    before, last = known[-2:]
    return last.grams - before.grams, (last.on - before.on).days
