"""What an animal is worth to a farm that keeps it: what a year of hers weans, and what temper, health and youth take off."""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

MISSED_COSTS_DAYS: Final = Figure(
    25, "days a missed mating", 14, 40, "ours", "felt for at twelve days, or waited for past the day she was due"
)
BUCK_IN_RESERVE: Final = Figure(
    1.0, "of a usual doe's year", 0.5, 1.5, "ours", "what a buck is worth for being there: without him a doe or more stays open"
)
YOUNG_BUCK: Final = Figure(
    0.3, "of a grown buck's worth", 0.1, 0.8, "ours", "of the young bucks that grow up hardly one in three is ever used"
)
DAUGHTERS_KEPT: Final = Figure(0.4, "daughters a doe and year", 0.2, 1.0, "ours", "a doe leaves after two to three years of breeding")
DAUGHTERS_BREED: Final = Figure(0.5, "of the year", 0.3, 0.8, "ours", "how much of it a daughter kept is old enough to breed")
KITS_KEPT: Final = Figure(
    0.3,
    "kits a litter",
    0,
    1,
    "ours",
    "of a litter without tags: those that are meant to stay get one, and past breeding age none are left",
)
LIGHT_TAKES: Final = Figure(0.3, "of its worth", 0.1, 0.5, "ours", "of a young one that will surely be light at sixteen weeks")
BAD_TEMPER_TAKES: Final = Figure(
    0.1, "of its worth a bad note of the year", 0.03, 0.2, "ours", "a doe that bites is handled less and looked at less"
)
BAD_NEST_TAKES: Final = Figure(
    0.05, "of her worth a bad note of the year", 0.02, 0.15, "ours", "what was lost by it stands in her survival already"
)
NOT_WELL_TAKES: Final = Figure(0.15, "of its worth", 0.05, 0.5, "ours", "while signs of illness are on the book")
FAULT_TAKES: Final = Figure(0.05, "of its worth", 0.0, 0.2, "ours", "a disqualifying fault of one that is bred for meat or pets")
FAULT_TAKES_SHOW: Final = Figure(0.5, "of its worth", 0.3, 0.9, "ours", "the same where the farm breeds for show")
SHOW_ADDS: Final = Figure(0.05, "of its worth", 0.0, 0.1, "ours", "placed or well scored, on a farm that says nothing of show")
SHOW_ADDS_SHOW: Final = Figure(0.25, "of its worth", 0.1, 0.5, "ours", "the same where the farm breeds for show")
COLOR_ADDS: Final = Figure(0.1, "of its worth", 0.03, 0.3, "ours", "of a colour that the farm breeds for")
