"""Wording that several rooms share: weights, dates, money, counts, lists."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date
from decimal import ROUND_HALF_EVEN, Decimal

POUND_G = Decimal("453.59237")
OUNCE_G = Decimal("28.349523125")
OUNCES_IN_POUND = 16


def grams_of(pounds: Decimal | int, ounces: Decimal | int = 0) -> int:
    """Whole grams [g] of pounds and ounces, rounded half to even."""
    return int((POUND_G * pounds + OUNCE_G * ounces).to_integral_value(ROUND_HALF_EVEN))


def pounds_and_ounces(grams: int) -> tuple[int, int]:
    """The nearest whole ounces, as (lb, oz)."""
    ounces = int((Decimal(grams) / OUNCE_G).to_integral_value(ROUND_HALF_EVEN))
    return divmod(ounces, OUNCES_IN_POUND)


def weight(grams: int, units: str = "lb") -> str:
    """A weight as the farm says it: `4 lb 6 oz`, or `1.98 kg`."""
    if units != "lb":
        return f"{grams / 1000:.2f} kg" if grams >= 1000 else f"{grams} g"
    pounds, ounces = pounds_and_ounces(grams)
    parts = [f"{pounds} lb"] * (pounds > 0) + [f"{ounces} oz"] * (ounces > 0 or pounds == 0)
    return " ".join(parts)


def money(cents: int) -> str:
    """Money with two decimals: `18.50`."""
    return f"{cents // 100}.{cents % 100:02d}"


def price(cents: int, currency: str) -> str:
    """Money as the farm writes it: dollars with their sign, other money with its code."""
    return f"${money(cents)}" if currency == "USD" else f"{money(cents)} {currency}"


def day(on: date) -> str:
    """A day as replies say it: `Tue 24 Nov`."""
    return f"{on:%a} {on.day} {on:%b}"


def count(number: int, one: str, many: str | None = None) -> str:
    """A number with its noun: `1 kit`, `7 kits`."""
    return f"{number} {one if number == 1 else many or one + 's'}"


def listed(parts: Iterable[str], last: str = "and") -> str:
    """A list in words: `3 bucks, 2 does and 1 kit`."""
    items = list(parts)
    if len(items) < 2:
        return "".join(items)
    return f"{', '.join(items[:-1])} {last} {items[-1]}"


def share(part: float) -> str:
    """A share as whole per cent: `72 %`."""
    return f"{part * 100:.0f} %"


def plain(number: float) -> str:
    """A number without needless zeros: `2.5`, `3`."""
    return f"{number:g}"


def weight_change(grams: int, units: str = "lb") -> str:
    """What was gained or lost: `up 8 oz`, `down 120 g`, `no change`."""
    if grams == 0:
        return "no change"
    return f"{'up' if grams > 0 else 'down'} {weight(abs(grams), units)}"


def celsius(degrees: float, scale: str) -> float:
    """Degrees of a scale (F or C) in Celsius, to a tenth."""
    return round((degrees - 32) * 5 / 9 if scale == "F" else degrees, 1)  # not a figure: Fahrenheit where water freezes


def temperature(celsius: float, units: str = "F") -> str:
    """A temperature as the farm says it: `15 °F`, or `-9.4 °C`."""
    if units != "F":
        return f"{celsius:g} °C"
    return f"{round(celsius * 9 / 5 + 32)} °F"  # not a figure: Fahrenheit's zero


def sentence(text: str) -> str:
    """Text with its first letter large and a full stop."""
    stopped = text if text.endswith((".", "!", "?")) else text + "."
    return stopped[:1].upper() + stopped[1:]


def full_day(on: date) -> str:
    """A day with its year: `Tue 24 Nov 2026`."""
    return f"{day(on)} {on.year}"
