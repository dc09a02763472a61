"""One matter that makes an animal worth more or less than usual, as what its worth is multiplied by."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class Factor:
    """What a matter does to a worth.

    times       1 changes nothing
    deviation   how far `times` may be off
    count       the litters, kits or notes behind it
    """

    code: str
    times: float
    deviation: float
    count: int


def moved_by(variance: float, noise: float) -> float:
    """How far one more reading with that `noise` (variance) may be expected to move what is known so well: a standard deviation."""
    return variance / (variance + noise) ** 0.5 if variance > 0 else 0.0
