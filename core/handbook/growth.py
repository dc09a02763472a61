"""How kits grow, when to weigh them, and when one is light for its breed.

The curve is the Gompertz: W(t) = A exp(-b exp(-k t)), W in g, t in days, A the growing animal's ceiling. BLASCO93 found b and k alike
between lines and sexes, so one pair serves all breeds and A carries the breed. The pair is ours: least squares on log weights of the
AUS, RAO77 and FERR98 tables with A held at 0.70 of the New Zealand's senior maximum.
"""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

# When to weigh
WEIGH_DAYS: Final = (
    Figure(56, "days of age", 50, 63, "common-practice", "eight weeks: the fryer's first weight, RAO77's too"),
    Figure(70, "days of age", 63, 77, "common-practice", "ten weeks"),
    Figure(84, "days of age", 77, 91, "common-practice", "twelve weeks: feed begins to cost more than the gain is worth"),
    Figure(112, "days of age", 105, 119, "common-practice", "sixteen weeks: light or not"),
)
COMPARED_AGE_DAYS: Final = Figure(70, "days of age", 56, 84, "common-practice", "the age at which growing stock is compared")
COMPARED_WITHIN_DAYS: Final = Figure(49, "days", 14, 56, "ours", "a weight this near to that age can be brought to it by the curve")

# The light grow-out
LIGHT_AGE_DAYS: Final = Figure(112, "days of age", 98, 126, "common-practice", "sixteen weeks")
TARGET_G: Final = Figure(2268, "g", 1800, 2500, "common-practice", "5 lb; OSU745 wants 4 to 5 lb at eight weeks")
TARGET_FROM_SENIOR_MAXIMUM_G: Final = Figure(
    3629, "g", 3400, 4100, "common-practice", "8 lb: breeds this heavy are held to the 5 lb target"
)
TARGET_SHARE_OF_MAXIMUM: Final = Figure(
    0.55, "share of the senior maximum", 0.5, 0.65, "ours", "lighter breeds; the NZ's 5 lb and more scaled by adult weight"
)
RUNT_SHARE: Final = Figure(0.70, "share of the herd's mean at that age", 0.6, 0.8, "ours", "mean less 1.5 SD at RAO77's variation")
RUNT_16_WEEKS_G: Final = Figure(
    1900, "g", 1700, 2100, "ours", "medium breed, no herd of its own to compare; FERR98 reached 1887 g by half feeding alone"
)

# A weight that asks
WEIGHT_LIMIT_OVER_MAXIMUM: Final = Figure(
    1.4, "times the breed's highest senior maximum", 1.25, 1.6, "ours", "above it a slip is likelier than a rabbit"
)
WEIGHT_LIMIT_UNKNOWN_BREED_G: Final = Figure(9000, "g", 8000, 12000, "ours", "20 lb")
WEIGHT_CHANGE_ASKED: Final = Figure(1 / 3, "share of the expected weight", 0.25, 0.4, "ours", "more than a third off asks")
OPEN_ENDED_MAXIMUM: Final = Figure(1.5, "times the senior minimum", 1.3, 1.7, "ours", "where a standard sets no maximum")

# The curve
CEILING_SHARE_OF_MAXIMUM: Final = Figure(
    0.70, "share of the senior maximum", 0.6, 0.85, "ours", "A; a grown animal goes on filling out beyond it"
)
GOMPERTZ_B: Final = Figure(
    3.9, "no unit", 3.0, 4.1, "ours", "fitted to the tables of AUS, RAO77 and FERR98; alike between lines and sexes in BLASCO93"
)
GOMPERTZ_K: Final = Figure(0.0264, "a day", 0.0188, 0.0301, "ours", "fitted with b")
GOMPERTZ_K_GIANT: Final = Figure(0.020, "a day", 0.016, 0.024, "memory", "giants go on growing to a year or more")
CURVE_FROM_DAYS: Final = Figure(21, "days of age", 14, 35, "ours", "before this milk rules, not the curve")
UNKNOWN_BREED_MAXIMUM_G: Final = Figure(4536, "g", 2000, 5500, "ours", "10 lb: a medium breed stands in where the breed is not known")
CURVE_UNTIL_DAYS: Final = Figure(183, "days of age", 150, 244, "ours", "from half a year on a rabbit fills out beyond the growing curve")
CEILING_PRIOR_CV: Final = Figure(0.12, "share of A", 0.08, 0.2, "ours", "how far one animal's ceiling strays from its breed's")
SHAPE_PRIOR_CV: Final = Figure(0.06, "share of b", 0.03, 0.12, "ours", "how far one animal's b strays: birth weight and milk")
RATE_PRIOR_CV: Final = Figure(
    0.12, "share of k", 0.08, 0.25, "ours", "with A and b it makes RAO77's variation of weight at eight to ten weeks"
)
FARM_CEILING_CV: Final = Figure(0.12, "share of A", 0.05, 0.2, "ours", "how far a farm's strain of a breed strays from the handbook's")
FARM_SHAPE_CV: Final = Figure(0.06, "share of b", 0.03, 0.12, "ours")
FARM_RATE_CV: Final = Figure(0.10, "share of k", 0.05, 0.2, "ours", "feed and climate; AUS and FERR98 give 0.0188 and 0.0301 with other b")
SEX_CEILING_CV: Final = Figure(0.04, "share of A", 0.01, 0.08, "ours", "the sexes differ little while they grow")
SEX_SHAPE_CV: Final = Figure(0.02, "share of b", 0.005, 0.05, "ours")
SEX_RATE_CV: Final = Figure(0.03, "share of k", 0.01, 0.06, "ours")
WEIGHT_CV: Final = Figure(0.20, "share of the mean", 0.18, 0.22, "RAO77", "359 g in 1644 g is 22 %; live weights 18 to 21 %")
WEIGHING_ERROR_CV: Final = Figure(0.03, "share of the weight", 0.01, 0.05, "ours", "a full or empty belly, a kitchen scale")
USUAL_GAIN_G_A_DAY: Final = Figure(27, "g a day", 22, 38, "AUS", "35 to 70 days")

# To the table
DRESSING_SHARE: Final = Figure(0.53, "share of the live weight", 0.48, 0.56, "AUS", "rises with age and weight")
COSTLY_AGE_DAYS: Final = Figure(84, "days of age", 77, 98, "ours", "from here each pound gained eats five pounds of feed and more")
LIVE_VALUE_CENTS_A_KG: Final = Figure(
    485,
    "cents a kg live",
    300,
    1500,
    "ours",
    "2.20 dollars a lb; at a common price of feed it pays up to five and a half pounds of feed a pound gained",
)
