"""How a rabbit grows: weight at an age, the age at a weight, and where a weighing leads.

The curve is Gompertz's: W = A exp(-b exp(-k t)), t in days, W and A in grams. Plain Python, so that reading a note
stays quick. A, b and k come from the handbook or from a fit (`core.reckon.growth`).

Reference: Blasco & Gomez 1993, Animal Production 57 (abstract): Gompertz fits rabbits; b and k are alike between lines.
The equations follow from the curve's own differential equation, dW/dt = k W ln(A/W).
"""

from __future__ import annotations

from math import e, exp, log


def weight_at_age(age_days: float, adult_g: float, b: float, k: float) -> float:
    """Weight [g] at an age [days]: W = A exp(-b exp(-k t))."""
    return adult_g * exp(-b * exp(-k * age_days))


def age_at_weight(weight_g: float, adult_g: float, b: float, k: float) -> float | None:
    """Age [days] at which the curve passes a weight [g]: t = -ln(ln(A/W)/b)/k.

    None when the weight is the adult weight or more (never reached), or nothing. Negative: lighter than at birth.
    """
    if not 0 < weight_g < adult_g:
        return None
    return -log(log(adult_g / weight_g) / b) / k


def gain_at_age(age_days: float, adult_g: float, b: float, k: float) -> float:
    """Daily gain [g/day] at an age [days]: dW/dt = A b k exp(-k t) exp(-b exp(-k t))."""
    return b * k * exp(-k * age_days) * weight_at_age(age_days, adult_g, b, k)


def inflection_age(b: float, k: float) -> float:
    """Age of fastest growth [days]: ln(b)/k."""
    return log(b) / k


def greatest_gain(adult_g: float, k: float) -> float:
    """The fastest daily gain [g/day]: A k / e."""
    return adult_g * k / e


def carried(  # noqa: PLR0913, PLR0917 - a weighing, two days and the curve's three letters
    weight_g: float, from_day: float, to_day: float, adult_g: float, b: float, k: float
) -> float:
    """The weight [g] to which a weighing at `from_day` leads by `to_day` (ages in days).

    Forward, the rabbit goes on growing by the curve's own law, dW/dt = k W ln(A/W), from the weight it really had:
    ln(A/W) shrinks by exp(-k days). A light kit catches up, a heavy one is caught up, both end at the adult weight A.
    Backward that law would run away from the curve, so there the rabbit keeps its ratio to the curve instead.
    Days before birth count as the day of birth; a weight of nothing stays nothing.
    """
    from_day, to_day = max(from_day, 0), max(to_day, 0)
    if weight_g <= 0:
        return 0.0
    if to_day < from_day:
        return weight_g * weight_at_age(to_day, adult_g, b, k) / weight_at_age(from_day, adult_g, b, k)
    return adult_g * exp(-log(adult_g / weight_g) * exp(-k * (to_day - from_day)))
