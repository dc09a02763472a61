"""Frost, cold or heat at the barn."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import ClassVar

from core.notes.kind import Example

@dataclass(frozen=True, slots=True, kw_only=True)
class WeatherNoted:
    """Frost, cold or heat at the barn."""

    kind: ClassVar[str] = "weather"

    what: str
    on: date
    celsius: float | None = None


EXAMPLES: tuple[Example, ...] = ()
NOT_THIS: tuple[str, ...] = ()
