"""How a winter plan is made: when an animal goes, how much doubt counts, and what feed and kinship are worth in kits."""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

SELL_DAYS: Final = Figure(21, "days", 7, 60, "ours", "time to find a buyer, before an animal that should go is culled instead")
GROW_ON_DAYS: Final = Figure(
    42, "days", 14, 70, "ours", "a young one that should go, and makes its weight within so many days, is fed until then"
)
