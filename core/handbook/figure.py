"""A number of the trade: what it is, how far it ranges, and who says so.

A number without its source can't be argued with, and a breeder who doubts a reminder must be able to.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Final

#: How far a source was seen, the best first. `memory` and `weak` may never serve as a published check.
SEEN: Final = ("page", "abstract", "extract", "common practice", "ours", "weak", "memory")


@dataclass(frozen=True, slots=True)
class Figure:
    """One number of the trade.

    value   what the program uses unless the farm says otherwise
    unit    what it counts, in words
    low     the least that a farm may sensibly set, or the least that sources give
    high    the most
    source  key into `core.handbook.sources.SOURCES`
    note    what a doubter should know: other readings, what is from memory, how it was chosen

    ValueError where the range does not hold the value.
    """

    value: float
    unit: str
    low: float
    high: float
    source: str
    note: str = ""

    def __post_init__(self) -> None:
        """Refuse a range that leaves the value out."""
        if not self.low <= self.value <= self.high:
            raise ValueError(f"{self.value} {self.unit} is outside {self.low} to {self.high}")

    @property
    def whole(self) -> int:
        """The value as a whole number, for counting days, kits or grams; ValueError where it has a fraction."""
        whole = int(self.value)
        if whole != self.value:
            raise ValueError(f"{self.value} {self.unit} is not a whole number")
        return whole
