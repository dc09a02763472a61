"""What they eat: a day's ration by weight and state, a cup of pellets, what cold adds, and body condition."""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

DAILY: Final = "share of body weight a day"

# A day's pellets (16 to 18 % protein)
RATION_DRY: Final = Figure(
    0.033, DAILY, 0.028, 0.040, "ours", "bucks and dry does; THAI 110 to 175 g, an older standard 3.7 to 4 % of a weaker feed"
)
RATION_PREGNANT: Final = Figure(0.040, DAILY, 0.035, 0.050, "ours", "THAI gives 175 to 225 g for a medium doe")
RATION_NURSING: Final = Figure(0.070, DAILY, 0.050, 0.100, "ours", "THAI gives 225 to 450 g for a medium doe; as much as she wants")
KIT_FEED_G: Final = Figure(28, "g a kit a day", 20, 40, "ours", "on top of the doe's, once the kits eat")
KIT_FEED_FROM_DAYS: Final = Figure(21, "days of age", 18, 24, "ours")
GROWER_DRY_MATTER_G: Final = Figure(
    77,
    "g of dry matter a kg^0.75 a day",
    70,
    83,
    "WRS322",
    "as much as they want, 35 to 84 days at 14 to 22 degrees; MEXOR and MEX agree, THAI puts more before them",
)
FEED_DRY_MATTER: Final = Figure(0.89, "share of pellets", 0.87, 0.92, "common-practice", "about a tenth of a pellet is water")
GROWER_LEVEL_FROM_DAYS: Final = Figure(
    84, "days of age", 77, 98, "ours", "from about twelve weeks a grower eats no more from week to week; WRS322 ends there"
)
ADULT_WEIGHT_UNKNOWN_G: Final = Figure(3600, "g", 2000, 5000, "ours", "8 lb: an adult that nobody weighed, of a breed that nobody told")
ADULT_SHARE_OF_MAXIMUM: Final = Figure(0.85, "share of the senior maximum", 0.75, 1.0, "ours", "an adult that nobody weighed")
METABOLIC_POWER: Final = Figure(0.75, "power of weight", 0.67, 0.75, "common-practice", "textbook exponent")
NURSING_FULL_AFTER_DAYS: Final = Figure(7, "days after kindling", 3, 10, "RP", "raise her feed gradually over the first week")

# Energy, for checking rations
ENERGY_DRY_KJ: Final = Figure(430, "kJ of digestible energy a kg^0.75 a day", 400, 460, "memory", "textbook maintenance")
FEED_ENERGY_KJ_A_G: Final = Figure(
    10.5, "kJ of digestible energy a g", 9.0, 11.5, "NRC77", "2500 kcal a kg for growth and breeding; a feed for mere keeping may have 2100"
)

# Cold and heat at the feeder
COLD_FEED_BELOW_C: Final = Figure(15, "degrees C", 10, 18, "WRS322", "the comfort zone is 10 to 15 in RP")
COLD_FEED_A_DEGREE: Final = Figure(
    0.01,
    "share more a degree below",
    0.005,
    0.02,
    "ours",
    "WRS322: 83 against 77 g over six degrees is 1.3 % a degree; a little less is charged",
)
COLD_FEED_OUTDOORS: Final = Figure(1.2, "times", 1.0, 1.4, "ours", "an open-air hutch; weakly supported")
HEAT_FEED_SHARE: Final = Figure(0.75, "share of the usual intake", 0.64, 0.80, "WRS322", "at 30 to 33 degrees")

# The bag and the cup
CUP_G: Final = Figure(142, "g a cup", 114, 154, "MILL", "5 oz; one feed varied by a quarter, 4.0 to 5.4 oz: weigh your cup once")
BAG_G: Final = Figure(22680, "g a bag", 9072, 25000, "common-practice", "50 lb")
FEED_PRICE_CENTS: Final = Figure(2000, "cents a bag", 1200, 3500, "ours", "only until the farm tells its own price")

# Body condition, 1 to 5
CONDITION_LOWEST: Final = Figure(1, "score", 1, 1, "SWEET13")
CONDITION_HIGHEST: Final = Figure(5, "score", 5, 5, "SWEET13")
CONDITION_IDEAL: Final = Figure(3, "score", 2.5, 3.5, "SWEET13")
CONDITION_THIN_BELOW: Final = Figure(2.5, "score", 2, 3, "SWEET13")
CONDITION_FAT_ABOVE: Final = Figure(3.5, "score", 3, 4, "SWEET13")
CONDITION_TOO_THIN_TO_BREED: Final = Figure(2, "score", 1.5, 2.5, "ours", "RP: backbone and hips prominent, delay")
CONDITION_POINT_SHARE: Final = Figure(
    0.08, "share of body weight a point of condition", 0.05, 0.12, "memory", "about a tenth from lean to ideal"
)
FEED_A_GRAM_OF_CONDITION: Final = Figure(
    3.0, "g of feed a g put on or lost", 2.0, 4.0, "ours", "fat: 30 to 35 kJ a g at 10.5 kJ a g of feed"
)
CONDITION_REGAIN_DAYS: Final = Figure(
    42, "days a point of condition", 28, 84, "ours", "how fast a thin adult is brought back: 4.5 kg then takes a sixth more than its need"
)
CONDITION_SCORE_SD: Final = Figure(0.4, "points", 0.25, 0.6, "ours", "owners and a vet gave the same score two times in three")
NEED_CV: Final = Figure(
    0.15, "share of the expected need", 0.10, 0.25, "ours", "how far one adult's need strays from another's of its weight"
)
RATION_CV: Final = Figure(
    0.10, "share of the ration", 0.05, 0.25, "MILL", "a cup is not always full: one feed's cup varied by a quarter from batch to batch"
)
HOLDING_FROM_DAYS: Final = Figure(14, "days on one ration", 7, 28, "ours", "sooner than that the hand can't feel a change")
FRUGAL_TIMES: Final = Figure(
    0.6, "times the expected ration", 0.4, 0.75, "ours", "one that holds on so little is frugal, or its measure is wrong"
)
MOUTH_RATION_G: Final = Figure(150, "g a day", 110, 175, "ours", "THAI gives 110 to 175; one mouth of winter, when nothing else is known")
