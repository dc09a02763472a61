"""How wide an interval is told: the middle 80 %, everywhere the same unless asked otherwise."""

from __future__ import annotations

from scipy.special import ndtri

LEVEL = 0.8  # not a figure: the share of the truth that `low` and `high` are to hold, by the contract


def reach(level: float) -> float:
    """Half the width, in standard errors, of the interval that holds a normal value with that chance."""
    return float(ndtri((1 + level) / 2))
