"""How cold the days to come are likely to be at the rabbits: by the farm's own setting, else by its notes of cold, else not known."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from statistics import fmean
from typing import Literal

from core.handbook import feeding, weather
from core.herd.settings import spring, winter, winter_low
from core.herd.state import Event, Herd

#: Years and leap days: the same day so many years on is this far away.
_YEAR = 365.25  # not a figure: days in a year


@dataclass(frozen=True, slots=True)
class Air:
    """The air of the days from today on.

    celsius   of each day, night and day together; None where nothing tells of it: then no cold is counted
    by        where that is from: the farm's `setting`, its `notes` of cold, or nothing
    """

    celsius: tuple[float | None, ...]
    by: Literal["setting", "notes"] | None

    @property
    def cold_days(self) -> int:
        """Days on which the cold asks for more feed."""
        return sum(1 for one in self.celsius if one is not None and one < feeding.COLD_FEED_BELOW_C.value)


def air(herd: Herd, today: date, days: int) -> Air:
    """How cold so many days from today on are likely to be."""
    ahead = [today + timedelta(day) for day in range(days)]
    low = winter_low(herd.settings)
    if low is not None:
        first, end = winter(herd.settings, today), spring(herd.settings, today)
        return Air(tuple(_mean(low) if first <= day < end else None for day in ahead), "setting")
    noted = [one for one in herd.weather if one.detail["what"] in {"cold", "frost"}]
    told = tuple(_as_noted(noted, day) for day in ahead)
    return Air(told, "notes" if any(one is not None for one in told) else None)


def _mean(low: float) -> float:
    """A night's low as the mean of night and day [C]."""
    return low + weather.NIGHT_BELOW_DAY_C.value


def _as_noted(noted: Sequence[Event], day: date) -> float | None:
    """The mean of what was noted near that day of the year, this winter or one of the last."""
    lows = [_low(one) for one in noted if _tells_of(one.on, day)]
    return _mean(fmean(lows)) if lows else None


def _tells_of(on: date, day: date) -> bool:
    years = range(weather.COLD_NOTE_YEARS.whole + 1)
    return any(abs((day - on).days - round(year * _YEAR)) <= weather.COLD_NOTE_DAYS.whole for year in years)


def _low(note: Event) -> float:
    """The night's low of a note [C]: as told, else what the word stands for."""
    told = note.detail.get("celsius")
    if told is not None:
        return float(told)
    return weather.FROST_C.value if note.detail["what"] == "frost" else weather.COLD_FROM_C.value
