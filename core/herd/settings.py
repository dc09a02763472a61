"""How this farm wants things: what `setting` notes changed, and the defaults for the rest."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any


@dataclass(frozen=True, slots=True)
class Settings:
    """The farm's own wishes. Weights in grams, money in cents, shares 0 to 1, dates ISO; None: not said.

    `said` holds every setting note's value under its contract name (`bucks_a_breed`, ...); `by_breed` those said for one breed,
    under (name, breed). The fields below are the ones that code asks for by name.
    """

    timezone: str = "UTC"
    weight_units: str = "lb"
    temperature_units: str = "F"
    date_order: str = "MDY"
    dotted_weight: str | None = None  # decimal, ounces; None: ask once
    currency: str = "USD"
    said: Mapping[str, Any] = field(default_factory=dict)
    by_breed: Mapping[tuple[str, str], Any] = field(default_factory=dict)
