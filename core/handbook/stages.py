"""When a young rabbit counts as a junior, as a senior, and may be mated. The farm's stage, not a show class."""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

AGE: Final = "days of age"

JUNIOR_FROM_DAYS: Final = Figure(152, AGE, 120, 183, "ours", "five months: breeding age of the middle breeds; a farm setting")
SENIOR_FROM_DAYS: Final = Figure(244, AGE, 183, 275, "common-practice", "eight months")
SEXES_APART_DAYS: Final = Figure(90, AGE, 77, 120, "TX", "single cages by three to four months")
MATING_SHARE_OF_ADULT_WEIGHT: Final = Figure(0.75, "share of the adult weight", 0.70, 0.85, "memory", "75 to 80 %")

#: A doe's first mating by the size of her breed.
FIRST_MATING_DAYS: Final = {
    "dwarf": Figure(137, AGE, 122, 152, "FL4H", "mini breeds 125 to 150 days"),
    "small": Figure(137, AGE, 122, 183, "ours", "4 months in RP, 150 to 180 days in FL4H"),
    "medium": Figure(152, AGE, 137, 213, "RP", "4.5 to 5.5 months there, 6 to 7 for the New Zealand's size in FL4H"),
    "large": Figure(183, AGE, 152, 213, "ours", "between RP's medium and giant breeds"),
    "giant": Figure(244, AGE, 183, 274, "FL4H", "8 months and more; 6 to 7 in RP"),
}
BUCK_LATER_DAYS: Final = Figure(30, "days later than a doe", 15, 60, "RP", "about a month; 30 to 60 days in FL4H")

# A breed's size, by the weights of its standard
DWARF_MAXIMUM_G: Final = Figure(1814, "g of senior maximum", 1600, 2000, "ours", "4 lb")
SMALL_MAXIMUM_G: Final = Figure(2948, "g of senior maximum", 2700, 3200, "ours", "6.5 lb")
MEDIUM_MAXIMUM_G: Final = Figure(5443, "g of senior maximum", 5000, 5500, "ours", "12 lb: RP counts New Zealand and Californian as medium")
GIANT_MINIMUM_G: Final = Figure(4990, "g of the lightest senior minimum", 4900, 5500, "ours", "11 lb")
