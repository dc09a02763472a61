"""How a winter plan is made: when an animal goes, how much doubt counts, and what feed and kinship are worth in kits."""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

SELL_DAYS: Final = Figure(21, "days", 7, 60, "ours", "time to find a buyer, before an animal that should go is culled instead")
GROW_ON_DAYS: Final = Figure(
    42, "days", 14, 70, "ours", "a young one that should go, and makes its weight within so many days, is fed until then"
)
CAUTION_LOW: Final = Figure(
    1.0, "deviations taken off a worth", 0.8, 1.5, "ours", "risk low: an animal counts for what it is at least likely to bring"
)
CAUTION_SOME: Final = Figure(0.5, "deviations taken off a worth", 0.3, 0.8, "ours", "risk some")
CAUTION_HIGH: Final = Figure(
    0.0, "deviations taken off a worth", 0.0, 0.3, "ours", "risk high: an animal counts for what may be expected of it"
)
FEED_WORTH: Final = Figure(
    0.1,
    "g of weaned kits a g of feed",
    0.05,
    0.25,
    "ours",
    "below this an animal does not earn its feed; four of feed to one of kits would be 0.25",
)
COI_COST_G: Final = Figure(
    14000,
    "g of kits weaned a year for a COI of 1",
    5000,
    24000,
    "ours",
    "5.9 kits a litter (DAM_INBREEDING_WEANED), four litters a year of kits of 600 g",
)
UNMATED_G: Final = Figure(
    7000, "g of kits weaned a year", 3000, 14000, "ours", "half of what a usual doe weans: no buck in spring costs her the best half"
)
