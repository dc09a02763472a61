"""What a setting may be: the value of a `setting` note put into the one form that the book keeps, or refused."""

from __future__ import annotations

import re
from collections.abc import Callable
from contextlib import suppress
from datetime import date
from decimal import Decimal, InvalidOperation
from functools import cache
from typing import Any
from zoneinfo import ZoneInfo, available_timezones

from core.handbook import weather

WEEKDAYS = ("monday", "tuesday", "wednesday", "thursday", "friday", "saturday", "sunday")
_CLOCK = re.compile(r"([01]?\d|2[0-3]):([0-5]\d)")


def _whole(value: Any) -> int | None:
    number = _number(value)
    return int(number) if number is not None and number >= 0 and number == int(number) else None


def _number(value: Any) -> Decimal | None:
    try:
        number = Decimal(str(value).strip())
    except InvalidOperation:
        return None
    return number if number.is_finite() and not isinstance(value, bool) else None


def _grams(value: Any) -> int | None:
    return _whole(value) or None


def _money(value: Any) -> str | None:
    number = _number(str(value).strip().lstrip("$"))
    return f"{number:.2f}" if number is not None and number >= 0 else None


def _share(value: Any) -> float | None:
    """A share; over 1 it was said in per cent."""
    number = _number(str(value).strip().rstrip("%").strip())
    if number is None or not 0 <= number <= 100:
        return None
    return float(number if number <= 1 and "%" not in str(value) else number / 100)


def _day(value: Any) -> str | None:
    try:
        return date.fromisoformat(str(value)).isoformat()
    except ValueError:
        return None


def _clock(value: Any) -> str | None:
    said = _CLOCK.fullmatch(str(value).strip())
    return f"{int(said[1]):02d}:{said[2]}" if said else None


def _timezone(value: Any) -> str | None:
    """The timezone as its own list spells it, in whatever case it was typed."""
    with suppress(KeyError, ValueError, OSError):
        return ZoneInfo(str(value)).key
    return _zones().get(str(value).strip().replace(" ", "_").lower())


@cache
def _zones() -> dict[str, str]:
    return {zone.lower(): zone for zone in available_timezones()}


def _weekday(value: Any) -> str | None:
    said = str(value).strip().lower()
    return said if said in WEEKDAYS else None


def _air(value: Any) -> float | None:
    """A temperature [C] that air can have."""
    number = _number(value)
    if number is None or not weather.COLDEST_BELIEVABLE_C.value <= number <= weather.HOTTEST_BELIEVABLE_C.value:
        return None
    return float(number)


def _text(value: Any) -> str | None:
    return str(value).strip() or None


def _one_of(*names: str) -> Callable[[Any], str | None]:
    """One of these words, in any case."""
    by_folded = {name.lower(): name for name in names}
    return lambda value: by_folded.get(str(value).strip().lower())


#: Every setting with what puts its value into form.
WISHES: dict[str, Callable[[Any], Any]] = {
    "bucks_a_breed": _whole,
    "does_a_breed": _whole,
    "cages": _whole,
    "mouths": _whole,
    "litters_wanted": _whole,
    "lowest_temper": _one_of("any", "mixed", "good"),
    "risk": _one_of("low", "some", "high"),
    "winter": _day,
    "spring": _day,
    "winter_low": _air,
    "feed_price": _money,
    "feed_money": _money,
    "winter_feed": _grams,
    "feed_bag": _grams,
    "cup_weight": _grams,
    "target_weight": _grams,
    "weight_units": _one_of("lb", "kg", "g"),
    "temperature_units": _one_of("F", "C"),
    "date_order": _one_of("MDY", "DMY", "YMD"),
    "dotted_weight": _one_of("decimal", "ounces"),
    "timezone": _timezone,
    "reminder_time": _clock,
    "digest_day": _weekday,
    "quiet_from": _clock,
    "quiet_to": _clock,
    "plain_notes": _one_of("words", "thumb"),
    "highest_coi": _share,
    "lowest_survival": _share,
    "colors_wanted": _text,
    "aim": _text,
    "junior_age": _grams,
}

#: Settings that may be said for one breed.
BY_BREED = frozenset({"bucks_a_breed", "does_a_breed", "litters_wanted", "target_weight", "colors_wanted"})


def normal(name: str, value: Any) -> Any:
    """The value in the book's form; None where there is no such setting or it can't have that value."""
    known = WISHES.get(name)
    return known(value) if known else None
