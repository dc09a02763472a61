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
PRIOR_MEAN_WEIGHT: Final = Figure(10, "kits", 5, 20, "ours", "how firmly that mean is believed of a herd: 0.6 to 0.95 is possible")
PRIOR_WEIGHT: Final = Figure(10, "kits", 8, 12, "ours", "how alike does are: how many kits of her own outweigh the herd's word")
PRIOR_WEIGHT_SPREAD: Final = Figure(
    0.9, "standard deviation of its logarithm", 0.3, 1.2, "ours", "4 to 25 kits are likely, 1 to 85 possible"
)
LITTER_SPREAD: Final = Figure(
    0.08, "correlation of kits within a litter", 0.03, 0.20, "ours", "litters fail together: kits of a litter are not independent"
)
LITTER_SPREAD_SPREAD: Final = Figure(
    0.8, "standard deviation of its log odds", 0.3, 1.5, "ours", "0.04 to 0.16 are likely, 0.01 to 0.4 possible"
)
STILLBORN_WEIGHT: Final = Figure(20, "kits", 10, 50, "ours", "how many births of her own outweigh the herd's word on the dead-born")
DOE_REPEATABILITY: Final = Figure(0.145, "correlation between a doe's litters", 0.07, 0.31, "WRS444", "mortality from birth to weaning")

# A night that hits the whole barn: how often a litter loses kits to no cause that was noted, by its age
LOSS_NIGHT_NEWBORN: Final = Figure(0.15, "share of nights, a litter", 0.05, 0.3, "ours", "to a day old: the weak ones go first")
LOSS_NIGHT_EARLY: Final = Figure(0.05, "share of nights, a litter", 0.02, 0.1, "ours", "to the end of the first week")
LOSS_NIGHT_LATE: Final = Figure(0.01, "share of nights, a litter", 0.003, 0.03, "ours", "from then to weaning")
LOSS_NIGHT_WEIGHT: Final = Figure(30, "litter nights", 10, 100, "ours", "how soon the herd's own nights outweigh these shares")
NEWBORN_DAYS: Final = Figure(1, "days of age", 0, 2, "common-practice", "the first day and night")
BAD_NIGHT_CHANCE: Final = Figure(
    0.002, "chance", 0.0005, 0.01, "ours", "a night is the barn's fault where so many nests are hit by accident less often than this"
)
BAD_NIGHT_NOTED_CHANCE: Final = Figure(0.05, "chance", 0.01, 0.1, "ours", "the same where weather was noted that night")

# How sure an answer is
SURE: Final = Figure(0.9, "chance", 0.8, 0.95, "ours", "from here it is said on which side of the line a doe is")
SURE_WITHIN_LITTERS: Final = Figure(8, "litters", 4, 12, "ours", "about two years of hers: further ahead nobody plans")
INTERVAL: Final = Figure(0.80, "share", 0.5, 0.95, "ours", "low and high of every estimate")
SHRINKING_FROM_LITTERS: Final = Figure(3, "litters", 3, 5, "ours")
SHRINKING_CHANCE: Final = Figure(0.8, "chance of a real fall", 0.7, 0.95, "ours")
TREND_PRIOR_SD: Final = Figure(0.5, "log odds a litter", 0.3, 1.0, "ours", "keeps three litters from shouting")
BORN_PRIOR_SD: Final = Figure(2.6, "kits a litter", 2.0, 3.5, "ours", "variation of 32 to 56 % about the mean; the middle")
WEANED_PRIOR_SD: Final = Figure(2.3, "kits a litter", 1.8, 3.2, "ours")
LITTER_TREND_PRIOR_SD: Final = Figure(
    0.7, "kits a litter, litter by litter", 0.2, 1.0, "ours", "how steep a fall is believed before it is seen: 9, 7, 5, 3 is one"
)
FULL_YEAR_DAYS: Final = Figure(
    90, "days since her first kindling", 60, 180, "ours", "sooner than that a yearly number is a guess from one litter"
)
EARLY_LOSS_DAYS: Final = Figure(7, "days of age", 3, 10, "REVIEW", "70 to 78 % of the losses before weaning fall in the first week")
FINISHED_DAYS: Final = Figure(35, "days after kindling", 28, 56, "ours", "a litter past weaning age counts, weaned on the book or not")
