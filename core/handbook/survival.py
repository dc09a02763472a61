"""How many live-born kits are raised: the farm's line, how much a small count may say, and what a herd starts from."""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

SHARE: Final = "share of the live-born raised"

LOWEST_SURVIVAL: Final = Figure(0.70, SHARE, 0.5, 0.85, "ours", "the farm's line; WRS444 lost 18 %, SIKA 14 %, WRS433 19.5 %, TRIN 22.7 %")
JUDGED_FROM_LITTERS: Final = Figure(2, "finished litters", 1, 4, "ours", "one litter is luck")
JUDGED_FROM_LIVE_BORN: Final = Figure(12, "live-born kits", 8, 20, "ours")
LOW_SURVIVAL_CHANCE: Final = Figure(0.5, "chance that it is below the line", 0.5, 0.9, "ours", "more likely than not")

# What a herd starts from, before its own litters tell
PRIOR_MEAN: Final = Figure(0.82, SHARE, 0.75, 0.90, "WRS444", "18 % lost between birth and weaning")
PRIOR_WEIGHT: Final = Figure(10, "kits", 8, 12, "ours", "how many kits of her own outweigh the herd's")
PRIOR_WEIGHT_LARGEST: Final = Figure(200, "kits", 100, 500, "ours", "does that don't differ: the likelihood runs off here")
PRIOR_FROM_DOES: Final = Figure(8, "does with litters", 5, 15, "ours", "below it the handbook's prior serves")
LITTER_SPREAD: Final = Figure(
    0.08, "correlation of kits within a litter", 0.03, 0.20, "ours", "litters fail together: kits of a litter are not independent"
)
DOE_REPEATABILITY: Final = Figure(0.145, "correlation between a doe's litters", 0.07, 0.31, "WRS444", "mortality from birth to weaning")

# How sure an answer is
INTERVAL: Final = Figure(0.80, "share", 0.5, 0.95, "ours", "low and high of every estimate")
SHRINKING_FROM_LITTERS: Final = Figure(3, "litters", 3, 5, "ours")
SHRINKING_CHANCE: Final = Figure(0.8, "chance of a real fall", 0.7, 0.95, "ours")
TREND_PRIOR_SD: Final = Figure(0.5, "log odds a litter", 0.3, 1.0, "ours", "keeps three litters from shouting")
BORN_PRIOR_SD: Final = Figure(2.6, "kits a litter", 2.0, 3.5, "ours", "variation of 32 to 56 % about the mean; the middle")
WEANED_PRIOR_SD: Final = Figure(2.3, "kits a litter", 1.8, 3.2, "ours")
LITTER_TREND_PRIOR_SD: Final = Figure(
    0.7, "kits a litter, litter by litter", 0.2, 1.0, "ours", "how steep a fall is believed before it is seen: 9, 7, 5, 3 is one"
)
EARLY_LOSS_DAYS: Final = Figure(7, "days of age", 3, 10, "REVIEW", "70 to 78 % of the losses before weaning fall in the first week")
FINISHED_DAYS: Final = Figure(35, "days after kindling", 28, 56, "ours", "a litter past weaning age counts, weaned on the book or not")
