"""How the reports speak: names of animals, ages, weights and chances in a breeder's words."""

from __future__ import annotations

from datetime import date

from core.herd.settings import Settings
from core.herd.state import Animal, Herd
from core.words import count, day, money, share, weight

WEEK = 7  # not a figure: days in a week
YOUNG_UNTIL_WEEKS = 26  # not a figure: from half a year on an age is told in months
DAYS_IN_MONTH = 30.4375  # not a figure: days in a month
MONTHS_IN_YEAR = 12  # not a figure: months in a year


def called(animal: Animal) -> str:
    """The animal as a line begins with it: `Doe 14 (Juno)`."""
    sex = (animal.sex or "rabbit").capitalize()
    return f"{sex} {animal.tag}" + (f" ({animal.name})" if animal.name else "")


def tag_of(herd: Herd, key: str | None) -> str | None:
    """The tag that people know the animal of that key by; None for no animal."""
    if key is None:
        return None
    return herd.animals[key].tag if key in herd.animals else key


def short(animal: Animal) -> str:
    """The animal in a list: `14 Juno`."""
    return f"{animal.tag} {animal.name}" if animal.name else animal.tag


def pronoun(animal: Animal) -> str:
    """He, she or it."""
    return {"buck": "he", "doe": "she"}.get(animal.sex or "", "it")


def age(days: int) -> str:
    """An age in words: days, then weeks to half a year, then months, then years."""
    weeks = days // WEEK
    if weeks < 2:
        return count(days, "day")
    if weeks <= YOUNG_UNTIL_WEEKS:
        return count(weeks, "week")
    months = int(days / DAYS_IN_MONTH)
    if months < 2 * MONTHS_IN_YEAR:
        return count(months, "month")
    return f"{days / DAYS_IN_MONTH / MONTHS_IN_YEAR:.1f} years"


def likely(low: float, high: float) -> str:
    """An interval of shares that lean on the herd's: `allowing for luck, likely 55 to 80 %`."""
    return f"allowing for luck, likely {low * 100:.0f} to {share(high)}"


def how_sure(before: str, after: str, chance: float) -> str:
    """What is said, with its chance as people say it: `his kits would outgrow mine 8 times in 10`, `his kits would almost surely outgrow mine`."""
    tenths = round(chance * 10)
    if tenths in {0, 10}:
        return f"{before} {'almost surely' if tenths else 'hardly ever'} {after}"
    often = "half the time" if tenths == 10 // 2 else f"{count(tenths, 'time')} in 10"
    return f"{before} {after} {often}"


def grams(settings: Settings, weight_g: float) -> str:
    """A weight in the farm's units."""
    return weight(round(weight_g), settings.weight_units)


def more_or_less(settings: Settings, grams_off: float) -> str:
    """A difference of weight: `3 oz above`, `120 g below`, `level with`."""
    if grams(settings, abs(grams_off)) in {"0 oz", "0 g"}:
        return "level with"
    return f"{grams(settings, abs(grams_off))} {'above' if grams_off >= 0 else 'below'}"


def price(settings: Settings, cents: float) -> str:
    """Money as the farm writes it: dollars with their sign, other money with its code."""
    return f"${money(round(cents))}" if settings.currency == "USD" else f"{money(round(cents))} {settings.currency}"


def when(on: date, today: date) -> str:
    """A day from today: `today`, `tomorrow`, `Tue 24 Nov`, with the year where it is another one."""
    away = (on - today).days
    named = {-1: "yesterday", 0: "today", 1: "tomorrow"}.get(away)
    return named or (day(on) if on.year == today.year else f"{day(on)} {on.year}")


def begun(line: str) -> str:
    """A line with its first letter large."""
    return line[:1].upper() + line[1:]
