"""How this farm wants things: what `setting` notes changed, and the defaults for the rest."""

from __future__ import annotations

from calendar import monthrange
from collections.abc import Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from typing import Any

from core.handbook import breeds, feeding, flags, genetics, stages, survival


@dataclass(frozen=True, slots=True)
class Settings:
    """The farm's own wishes. Weights in grams, money in cents, shares 0 to 1, dates ISO; None: not said.

    `said` holds every setting note's value under its contract name (`bucks_a_breed`, ...); `by_breed` those said for one breed,
    under (name, breed). The fields below are the ones that code asks for by name.
    """

    timezone: str = "UTC"
    weight_units: str = "lb"
    temperature_units: str = "F"
    date_order: str = "MDY"
    dotted_weight: str | None = None  # decimal, ounces; None: ask once
    currency: str = "USD"
    said: Mapping[str, Any] = field(default_factory=dict)
    by_breed: Mapping[tuple[str, str], Any] = field(default_factory=dict)


#: Settings that are fields of `Settings` too.
_FIELDS = ("timezone", "weight_units", "temperature_units", "date_order", "dotted_weight")

#: When the farm's winter and spring begin unless it says otherwise: month and day.
WINTER_BEGINS = (12, 1)  # not a figure: December
SPRING_BEGINS = (4, 1)

REMINDER_TIME = "07:00"
DIGEST_DAY = "sunday"
QUIET_FROM = "21:00"
QUIET_TO = "06:30"


def breed_name(said: str) -> str:
    """A breed as settings and counts key it: the handbook's name in lower case, else as typed in lower case."""
    known = breeds.breed(said)
    return (known.name if known else said).lower()


def changed(settings: Settings, name: str, value: Any, breed: str | None = None) -> Settings:
    """The settings after one `setting` note; the value must be one that `core.herd.wishes.normal` gives."""
    if breed is not None:
        return replace(settings, by_breed={**settings.by_breed, (name, breed_name(breed)): value})
    said = {**settings.said, name: value}
    fields: dict[str, Any] = {name: value} if name in _FIELDS else {}
    return replace(settings, said=said, **fields)


def _said(settings: Settings, name: str, breed: str | None, default: Any) -> Any:
    """What was said for the breed, else for the farm, else the default."""
    of_farm = settings.said.get(name, default)
    return of_farm if breed is None else settings.by_breed.get((name, breed_name(breed)), of_farm)


def bucks_a_breed(settings: Settings, breed: str | None = None) -> int:
    """How many bucks of a breed the farm keeps."""
    return int(_said(settings, "bucks_a_breed", breed, flags.BUCKS_A_BREED.whole))


def does_a_breed(settings: Settings, breed: str | None = None) -> int | None:
    """How many does of a breed the farm means to keep; None: not said."""
    said = _said(settings, "does_a_breed", breed, None)
    return None if said is None else int(said)


def target_weight(settings: Settings, breed: str | None = None) -> int:
    """What a grow-out of the breed should weigh at sixteen weeks [g]."""
    return int(_said(settings, "target_weight", breed, breeds.target_g(breed)))


def lowest_survival(settings: Settings) -> float:
    """The farm's line: the share of live-born kits that a doe should raise."""
    return float(_said(settings, "lowest_survival", None, survival.LOWEST_SURVIVAL.value))


def highest_coi(settings: Settings) -> float:
    """The inbreeding of kits from which the farm wants to be warned."""
    return float(_said(settings, "highest_coi", None, genetics.COI_WARN.value))


def junior_age(settings: Settings) -> int:
    """From which age a young one counts as a junior [days]."""
    return int(_said(settings, "junior_age", None, stages.JUNIOR_FROM_DAYS.whole))


def feed_bag(settings: Settings) -> int:
    """A bag of feed [g]."""
    return int(_said(settings, "feed_bag", None, feeding.BAG_G.whole))


def cup_weight(settings: Settings) -> int:
    """A cup of pellets [g]."""
    return int(_said(settings, "cup_weight", None, feeding.CUP_G.whole))


def feed_price(settings: Settings) -> int | None:
    """What a bag costs [cents]; None: not said."""
    return _cents(_said(settings, "feed_price", None, None))


def feed_money(settings: Settings) -> int | None:
    """What the farm can spend on feed over the winter [cents]; None: not said."""
    return _cents(_said(settings, "feed_money", None, None))


def cages(settings: Settings) -> int | None:
    """How many cages there are; None: not said."""
    return _whole(settings, "cages")


def mouths(settings: Settings) -> int | None:
    """How many rabbits the farm can feed through the winter, untagged kits too; None: not said."""
    return _whole(settings, "mouths")


def litters_wanted(settings: Settings, breed: str | None = None) -> int | None:
    """How many litters are wanted in spring, of the breed or in all; None: not said."""
    said = settings.said.get("litters_wanted") if breed is None else settings.by_breed.get(("litters_wanted", breed_name(breed)))
    return None if said is None else int(said)


def lowest_temper(settings: Settings) -> str:
    """Which temper is put up with: `good` (no bad note), `mixed` (one) or `any`."""
    return str(_said(settings, "lowest_temper", None, "mixed"))


def risk(settings: Settings) -> str:
    """How much may rest on thin evidence: `low`, `some` or `high`."""
    return str(_said(settings, "risk", None, "some"))


def winter_feed(settings: Settings) -> int | None:
    """What may be eaten until spring [g]; None: not said."""
    return _whole(settings, "winter_feed")


def winter(settings: Settings, today: date) -> date:
    """The day the farm's winter begins, the one before the next spring: as said, else the first of December. In winter it is past."""
    said = settings.said.get("winter")
    month, day = (date.fromisoformat(said).month, date.fromisoformat(said).day) if said else WINTER_BEGINS
    over = spring(settings, today)
    this_year = _on(over.year, month, day)
    return this_year if this_year < over else _on(over.year - 1, month, day)


def spring(settings: Settings, today: date) -> date:
    """The day the farm's winter is over: as said, else the first of April; once that is past, the same day of the next year."""
    said = settings.said.get("spring")
    told = date.fromisoformat(said) if said else _on(today.year, *SPRING_BEGINS)
    if told >= today:
        return told
    this_year = _on(today.year, told.month, told.day)
    return this_year if this_year >= today else _on(today.year + 1, told.month, told.day)


def winter_low(settings: Settings) -> float | None:
    """How cold a usual winter's night is at the rabbits [C]; None: not said."""
    said = _said(settings, "winter_low", None, None)
    return None if said is None else float(said)


def reminder_time(settings: Settings) -> str:
    """When reminders are sent, HH:MM at the farm."""
    return str(_said(settings, "reminder_time", None, REMINDER_TIME))


def digest_day(settings: Settings) -> str:
    """The weekday of the digest, in lower case."""
    return str(_said(settings, "digest_day", None, DIGEST_DAY))


def quiet_hours(settings: Settings) -> tuple[str, str]:
    """From when until when nothing is sent, HH:MM at the farm."""
    return str(_said(settings, "quiet_from", None, QUIET_FROM)), str(_said(settings, "quiet_to", None, QUIET_TO))


def is_quiet(settings: Settings, clock: str) -> bool:
    """Whether nothing is sent at that time (HH:MM at the farm); the quiet hours may run past midnight."""
    start, end = quiet_hours(settings)
    return start <= clock < end if start <= end else clock >= start or clock < end


def reminders_from(settings: Settings) -> str:
    """When the day's reminders really go out: at their hour; where that is quiet, at the end of the quiet hours of that very day.

    Of quiet hours that run past midnight that is the morning before: a chore told the morning after would be told too late.
    """
    hour = reminder_time(settings)
    return quiet_hours(settings)[1] if is_quiet(settings, hour) else hour


def plain_notes(settings: Settings) -> str:
    """What a note is answered with that needs no answer: `words`, or a `thumb` up where the chat has such."""
    return str(_said(settings, "plain_notes", None, "words"))


def colors_wanted(settings: Settings, breed: str | None = None) -> str | None:
    """The colours that the farm breeds for, as typed; None: not said."""
    said = _said(settings, "colors_wanted", breed, None)
    return None if said is None else str(said)


def aim(settings: Settings) -> str | None:
    """What the rabbits are for, as typed; None: not said."""
    said = _said(settings, "aim", None, None)
    return None if said is None else str(said)


def _whole(settings: Settings, name: str) -> int | None:
    said = _said(settings, name, None, None)
    return None if said is None else int(said)


def _cents(said: str | None) -> int | None:
    """Cents of money with two decimals, as `wishes.normal` writes it."""
    return None if said is None else int(said.replace(".", ""))


def _on(year: int, month: int, day: int) -> date:
    """That day of the year; the 29th of February is the 28th where there is none."""
    return date(year, month, min(day, monthrange(year, month)[1]))
