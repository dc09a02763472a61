"""Cold and heat: what the words mean in degrees, how warm kits must lie, and when to worry."""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

DEGREES: Final = "degrees C"

COLD_FROM_C: Final = Figure(5, DEGREES, 0, 10, "ours", "this and below is a cold note")
HEAT_FROM_C: Final = Figure(29, DEGREES, 27, 32, "MO13", "a hutch should not pass 29.4 (85 F)")
FROST_C: Final = Figure(0, DEGREES, 0, 0, "common-practice")
COLDEST_BELIEVABLE_C: Final = Figure(-60, DEGREES, -70, -40, "ours", "a colder note is a slip")
HOTTEST_BELIEVABLE_C: Final = Figure(55, DEGREES, 50, 60, "ours", "a hotter note is a slip, or Fahrenheit")

# Air in the nest below which a kit burns its own reserve to stay warm
KIT_CRITICAL_NEWBORN_C: Final = Figure(32, DEGREES, 30, 34, "SANZ89", "day 1")
KIT_CRITICAL_TEN_DAYS_C: Final = Figure(28, DEGREES, 26, 30, "SANZ89", "day 10")
KIT_CRITICAL_TWENTY_DAYS_C: Final = Figure(24, DEGREES, 22, 26, "SANZ89", "day 20")
KIT_TEN_DAYS: Final = Figure(10, "days of age", 10, 10, "SANZ89")
KIT_TWENTY_DAYS: Final = Figure(20, "days of age", 20, 20, "SANZ89")
KIT_NAKED_UNTIL_DAYS: Final = Figure(7, "days of age", 4, 10, "MSDp", "they can't yet hold their warmth")
NEST_LEAVING_FROM_DAYS: Final = Figure(14, "days of age", 12, 16, "common-practice", "first ones tumble out and may not find back")
NEST_LEAVING_DAYS: Final = Figure(18, "days of age", 15, 21, "RP", "the box may go")
KIT_COLD_RISK_UNTIL_DAYS: Final = Figure(28, "days of age", 21, 35, "ours", "litters older than this are not warned of")

# Adults in the heat
HEAT_CAUTION_C: Final = Figure(27, DEGREES, 26, 28, "FONT", "months above 80 F lowered conception and litter size")
HEAT_HIGH_C: Final = Figure(29.5, DEGREES, 29, 30, "MO13", "85 F")
HEAT_EMERGENCY_C: Final = Figure(32, DEGREES, 31, 33, "RP", "90 F: some die")
HEAT_BUCK_REST_DAYS: Final = Figure(21, "days after the heat", 14, 28, "WRS450", "semen was normal again after three weeks")

# Whose fault a loss is
COLD_LOSS_DAYS: Final = Figure(
    2, "days after a cold note", 1, 3, "ours", "kits lost to cold on the night of the note or this soon after lie with the weather"
)

# What winter asks at the dish
NIGHT_BELOW_DAY_C: Final = Figure(5, DEGREES, 3, 8, "ours", "a noted low is the night's; night and day together are about this much warmer")
COLD_NOTE_DAYS: Final = Figure(3, "days", 1, 5, "ours", "a cold note tells of its week: so many days before and after it")
COLD_NOTE_YEARS: Final = Figure(3, "years", 1, 5, "ours", "how many winters' notes tell of the coming one")
