"""How much of a trait is bred in: shares of variance, and how close is too close."""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

OF_VARIANCE: Final = "share of the variance"

# Litter traits: h2 bred in, p2 the doe's own lasting part
BORN_ALIVE_H2: Final = Figure(0.08, OF_VARIANCE, 0.03, 0.19, "ours", "centre of six studies, .02 to .188 (WRS444)")
BORN_ALIVE_P2: Final = Figure(0.10, OF_VARIANCE, 0.0, 0.15, "ours", "so that litters of one doe correlate at .18")
WEANED_H2: Final = Figure(0.07, OF_VARIANCE, 0.03, 0.13, "ours", "WRS444 .081")
WEANED_P2: Final = Figure(0.10, OF_VARIANCE, 0.05, 0.15, "ours", "WRS444 .106")
SURVIVAL_H2: Final = Figure(0.08, OF_VARIANCE, 0.04, 0.23, "ours", "WRS444 .113")
SURVIVAL_P2: Final = Figure(0.07, OF_VARIANCE, 0.02, 0.15, "ours", "so that litters of one doe correlate at .15")
LITTER_WEIGHT_H2: Final = Figure(0.10, OF_VARIANCE, 0.03, 0.35, "ours", "WRS444 .194")
LITTER_WEIGHT_P2: Final = Figure(0.10, OF_VARIANCE, 0.02, 0.15, "ours")
BORN_ALIVE_SD: Final = Figure(2.6, "kits a litter", 2.0, 3.5, "ours", "variation of about 35 %")
WEANED_SD: Final = Figure(2.3, "kits a litter", 1.8, 3.2, "ours")

# Weights: h2 bred in, c2 the litter they shared
WEIGHT_35D_H2: Final = Figure(0.12, OF_VARIANCE, 0.03, 0.24, "ours", "WRS381 .16 for gain to 35 days")
WEIGHT_35D_C2: Final = Figure(0.55, OF_VARIANCE, 0.43, 0.66, "ours", "WRS381 .60")
WEIGHT_35D_DAM: Final = Figure(0.06, OF_VARIANCE, 0.04, 0.11, "ours")
WEIGHT_56D_H2: Final = Figure(0.16, OF_VARIANCE, 0.10, 0.25, "ours")
WEIGHT_56D_C2: Final = Figure(0.35, OF_VARIANCE, 0.18, 0.62, "ours")
WEIGHT_70D_H2: Final = Figure(0.20, OF_VARIANCE, 0.12, 0.31, "ours", "NZ White .18 and .21 at ten and twelve weeks")
WEIGHT_70D_C2: Final = Figure(0.30, OF_VARIANCE, 0.18, 0.62, "ours", "WRS381 .32 after weaning")
WEIGHT_84D_H2: Final = Figure(0.20, OF_VARIANCE, 0.12, 0.31, "ours", "NZ White .21 at twelve weeks")
WEIGHT_84D_C2: Final = Figure(0.30, OF_VARIANCE, 0.18, 0.62, "ours", "WRS381 .32 after weaning")
WEIGHT_112D_H2: Final = Figure(0.25, OF_VARIANCE, 0.15, 0.40, "ours", "between twelve weeks and the grown rabbit")
WEIGHT_112D_C2: Final = Figure(0.22, OF_VARIANCE, 0.10, 0.40, "ours", "the litter's mark fades: WRS381 .19 for gain to 90 days")
WEIGHT_DAM: Final = Figure(
    0.05, OF_VARIANCE, 0.02, 0.11, "ours", "the dam's lasting part after weaning, milk and mothering in all her litters"
)
GAIN_H2: Final = Figure(0.18, OF_VARIANCE, 0.14, 0.35, "ours", "WRS381 .17")
GAIN_C2: Final = Figure(0.32, OF_VARIANCE, 0.19, 0.60, "WRS381", "36 to 90 days")
ADULT_WEIGHT_H2: Final = Figure(0.40, OF_VARIANCE, 0.30, 0.50, "memory")
WEIGHT_CV: Final = Figure(0.20, "share of the mean", 0.18, 0.22, "RAO77", "one phenotypic standard deviation")
SEASON_SHARE: Final = Figure(
    0.10, OF_VARIANCE, 0.05, 0.20, "ours", "kits and litters of one quarter of a year fare alike: heat, frost, feed"
)
GAIN_FROM_DAYS: Final = Figure(28, "days of age", 21, 36, "ours", "a gain is counted from the first weighing after this")
GAIN_UNTIL_DAYS: Final = Figure(98, "days of age", 84, 112, "ours", "to the last one before this; WRS381 to 90 days")
GAIN_OVER_DAYS: Final = Figure(14, "days", 10, 28, "ours", "two weighings nearer than this tell more of the belly than of growth")
WEIGHT_WITHIN_DAYS: Final = Figure(21, "days", 10, 28, "ours", "a weighing this near stands for the weight at 8, 12 or 16 weeks")

# Variances of one's own
REML_FROM_RECORDS: Final = Figure(300, "records", 200, 1000, "ours", "below it the defaults above serve")
PUBLISHED_RANGE_SPREADS: Final = Figure(
    4, "standard deviations in the range of a share", 3, 6, "ours", "how far herds stray from the published shares of variance"
)
PUBLISHED_SPREAD_WORTH: Final = Figure(
    30, "records", 10, 100, "ours", "how many records the published variation of a trait counts as beside the herd's own"
)

# Too close
COI_WARN: Final = Figure(0.125, "coefficient of inbreeding", 0.0625, 0.20, "common-practice", "half sibs")
COI_STRONG: Final = Figure(0.25, "coefficient of inbreeding", 0.20, 0.375, "common-practice", "full sibs, parent and child")
DAM_INBREEDING_BORN_ALIVE: Final = Figure(-0.805, "kits a litter for 10 % of the dam's inbreeding", -1.2, -0.3, "WRS433")
DAM_INBREEDING_WEANED: Final = Figure(-0.589, "kits a litter for 10 % of the dam's inbreeding", -1.0, -0.2, "WRS433")
COLOR_ERROR_RATE: Final = Figure(0.01, "share of colours noted wrong", 0.0, 0.05, "ours")
UNSEEN_ALLELE_SHARE: Final = Figure(
    0.02, "share of the founders' genes", 0.0, 0.1, "ours", "a color gene that no coat on the book has shown"
)
