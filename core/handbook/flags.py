"""When an animal is flagged in the digest. Thresholds of weight and survival stand in `growth` and `survival`."""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

LONG_OPEN_DAYS: Final = Figure(60, "days since she weaned, lost her litter or became senior", 30, 120, "ours", "without a mating")
MISSED_IN_A_ROW: Final = Figure(2, "matings without a litter", 2, 4, "common-practice")
BAD_TEMPER_NOTES: Final = Figure(2, "bad notes", 2, 4, "ours", "everybody has a bad day")
BAD_NEST_NOTES: Final = Figure(2, "bad notes", 2, 3, "common-practice")
BAD_NOTES_WITHIN_DAYS: Final = Figure(365, "days", 180, 730, "ours", "twelve months")
HEAVY_FEEDER_TIMES: Final = Figure(1.5, "times the expected ration", 1.25, 2.0, "ours")
HEAVY_FEEDER_CONDITION: Final = Figure(3, "condition score", 2.5, 3.5, "ours", "a thin one is not greedy")
BUCKS_A_BREED: Final = Figure(2, "bucks", 1, 5, "common-practice", "the best senior and the best junior")
LEAST_UNRELATED_BUCKS: Final = Figure(2, "unrelated bucks", 2, 4, "common-practice", "never advise below")
REASONS_AT_MOST: Final = Figure(3, "reasons a verdict", 1, 3, "ours")
FEED_LOW_DAYS: Final = Figure(7, "days of feed left", 3, 14, "ours")
DUE_AHEAD_DAYS: Final = Figure(14, "days", 7, 31, "ours", "how far `due` looks unless told")
SHOW_SCORE: Final = Figure(4, "points", 3, 5, "ours", "scored this well on the whole, it is worth a show home")
AILING_DAYS: Final = Figure(30, "days since the sign was last noted", 7, 90, "ours", "without a note that it is over")
OUTDOES_CHANCE: Final = Figure(0.8, "chance", 0.7, 0.95, "ours", "from here one buck is said to outdo another")
