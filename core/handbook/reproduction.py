"""From the buck to the weaning pen: the breeder's calendar and what a litter usually is."""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

AFTER_MATING: Final = "days after mating"
AFTER_KINDLING: Final = "days after kindling"

# The doe in kindle
GESTATION_DAYS: Final = Figure(31, AFTER_MATING, 28, 34, "common-practice", "means of 31.67 and 31.73 days in WRS499; MSU gives 28 to 32")
GESTATION_MEAN_DAYS: Final = Figure(31.7, AFTER_MATING, 31.3, 32.5, "WRS499", "the mean itself; the calendar counts whole days")
KINDLING_WINDOW_FIRST: Final = Figure(
    30, AFTER_MATING, 28, 31, "memory", "98 % of kindlings within 30 to 33 days, an older handbook as remembered"
)
KINDLING_WINDOW_LAST: Final = Figure(33, AFTER_MATING, 31, 35, "MSDp", "31 to 33 days, longer with four kits or fewer")
EARLIEST_KINDLING_DAY: Final = Figure(28, AFTER_MATING, 27, 29, "MSU", "before this no breeding on the book can be the one")
ASK_KINDLING_DAY: Final = Figure(
    36, AFTER_MATING, 34, 38, "ours", "WRS499's small litters average 32.5 days; after 35 a missed note is likelier"
)
VET_DAY: Final = Figure(34, AFTER_MATING, 33, 35, "MSDp", "a litter not born by then may be dead: a vet's matter")
SIRE_FIRST_DAY: Final = Figure(28, AFTER_MATING, 27, 30, "MSU", "the litter's sire is a buck that served her this long before or longer")
SIRE_LAST_DAY: Final = Figure(35, AFTER_MATING, 33, 36, "memory", "extremes of 29 to 35 days, an older handbook as remembered")
PALPATE_DAY: Final = Figure(12, AFTER_MATING, 10, 14, "RP", "most sure and safest about two weeks after; embryos olive-sized at 10 to 12")
PALPATE_AGAIN_DAYS: Final = Figure(4, "days after an open palpation", 3, 5, "ours", "worth a second feel where the hand is new to it")
NEST_BOX_IN_DAY: Final = Figure(28, AFTER_MATING, 27, 29, "MSDp", "28 to 29; earlier it gets fouled")
FALSE_PREGNANCY_DAYS: Final = Figure(18, AFTER_MATING, 15, 18, "RP", "an open doe is usually ready again about then")
SAME_TRY_DAYS: Final = Figure(7, "days between two matings of one doe", 1, 14, "ours", "matings this close count as one try")

# The litter
CHECK_NEST_DAY: Final = Figure(1, AFTER_KINDLING, 0, 2, "common-practice", "count and take out the dead within a day")
NEST_BOX_OUT_DAY: Final = Figure(18, AFTER_KINDLING, 15, 21, "RP", "15 to 21 by the weather; keep it to 21 in the cold")
NEST_BOX_OUT_COLD_DAY: Final = Figure(21, AFTER_KINDLING, 18, 24, "RP")
WEAN_DAY: Final = Figure(35, AFTER_KINDLING, 28, 56, "ours", "28 in RP, 35 to 42 on a slow rhythm, 42 to 56 in older guides")
ASK_WEAN_DAY: Final = Figure(25, AFTER_KINDLING, 21, 28, "ours", "nobody weans earlier by plan; RP's earliest is 28")
REBREED_DAY: Final = Figure(35, AFTER_KINDLING, 11, 60, "MSU", "35 for most; commercial herds 14 to 21")
FOSTER_LATEST_DAY: Final = Figure(3, AFTER_KINDLING, 1, 5, "RP", "one to two days after, litters within one to three days of each other")
TEATS: Final = Figure(8, "teats", 6, 12, "MSDp", "eight to ten are common")
LARGEST_LITTER: Final = Figure(18, "kits born", 14, 24, "memory", "larger litters are told of, but a slip of the finger is likelier")
BAD_LITTER_SURVIVAL: Final = Figure(
    0.70, "share of the live-born weaned", 0.5, 0.8, "ours", "10 to 25 % lost between birth and weaning is the usual band"
)

# What a litter usually is
USUAL_BORN_ALIVE: Final = Figure(7.4, "kits a litter", 4.4, 8.9, "ours", "medium meat breeds: FONT 6.74, SIKA 8.15, WRS433 7.46, TRIN 4.4")
USUAL_BORN: Final = Figure(8.0, "kits a litter", 4.9, 9.5, "ours", "FONT 7.39, SIKA 8.77, WRS444 9.53, TRIN 4.9")
USUAL_WEANED: Final = Figure(6.5, "kits a litter", 3.4, 7.7, "ours", "SIKA 7.00, WRS444 7.63, WRS433 5.87, TRIN 3.4")
USUAL_BORN_ALIVE_SMALL: Final = Figure(5, "kits a litter", 4, 6, "ours", "small breeds")
USUAL_BORN_ALIVE_DWARF: Final = Figure(3, "kits a litter", 2, 4, "memory", "dwarfs")
FARM_LITTER_CV: Final = Figure(
    0.18, "share of the usual litter", 0.1, 0.3, "ours", "how far a farm's strain of a breed strays: SIKA 8.15, FONT 6.74, TRIN 4.4"
)
#: Live-born by her litter's number, as a share of her best ones; later litters than the last stay at its share.
LITTER_SIZE_BY_PARITY: Final = (
    Figure(0.88, "share of her best litters", 0.8, 1.0, "memory", "a first litter is smaller"),
    Figure(0.96, "share of her best litters", 0.9, 1.0, "memory", "second"),
    Figure(1.0, "share of her best litters", 1.0, 1.0, "memory", "third"),
    Figure(1.0, "share of her best litters", 1.0, 1.0, "memory", "fourth"),
    Figure(1.0, "share of her best litters", 1.0, 1.0, "memory", "fifth"),
    Figure(
        0.98,
        "share of her best litters",
        0.9,
        1.0,
        "memory",
        "sixth; commercial does leave at about six kindlings (a median, as remembered)",
    ),
    Figure(0.95, "share of her best litters", 0.85, 1.0, "memory", "seventh"),
    Figure(0.92, "share of her best litters", 0.8, 1.0, "memory", "eighth and later"),
)
USUAL_STILLBORN: Final = Figure(0.07, "share of the born", 0.03, 0.12, "EGY", "6.96 % there, 8.85 % in FONT")
BIRTH_WEIGHT_G: Final = Figure(50, "g a kit", 30, 80, "THAI", "39 to 70 g between the small and the large class of WRS413")
USUAL_CONCEPTION: Final = Figure(0.68, "share of matings", 0.35, 0.91, "FONT")
LITTERS_A_YEAR: Final = Figure(
    4.5, "litters a doe", 1, 8, "ours", "a backyard meat doe; TX tells of six to eight, RP of two to three for show does"
)
DOES_A_BUCK: Final = Figure(10, "does a buck", 3, 20, "common-practice")
CONCEPTION_WEIGHT: Final = Figure(8, "matings", 4, 20, "ours", "how many matings of her own outweigh what is usual")
