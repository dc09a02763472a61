"""Questions about matings: which one is open, how far on a doe is, whose kits they are."""

from __future__ import annotations

from datetime import date
from itertools import pairwise

from core.handbook import reproduction as figures
from core.herd.state import Herd, Mating

#: Matings no further apart than the kindling window is wide are one service: the calendar can't tell them apart.
SERVICE_DAYS = figures.KINDLING_WINDOW_LAST.whole - figures.KINDLING_WINDOW_FIRST.whole


def matings_of(herd: Herd, doe: str) -> tuple[Mating, ...]:
    """All matings of a doe (by key), the earliest first."""
    return tuple(mating for mating in herd.matings if mating.doe == doe)


def matings_with(herd: Herd, buck: str) -> tuple[Mating, ...]:
    """All matings of a buck (by key), the earliest first."""
    return tuple(mating for mating in herd.matings if mating.buck == buck)


def open_matings(herd: Herd, doe: str, on: date | None = None) -> tuple[Mating, ...]:
    """The doe's matings that nothing has come of yet; with `on`, those made by that day."""
    return tuple(m for m in matings_of(herd, doe) if m.outcome is None and (on is None or m.on <= on))


def open_mating(herd: Herd, doe: str, on: date | None = None) -> Mating | None:
    """The mating that the doe's calendar counts from: the first of her last open service."""
    found = open_matings(herd, doe, on)
    if not found:
        return None
    first = found[-1]
    for earlier, later in reversed(list(pairwise(found))):
        if (later.on - earlier.on).days > SERVICE_DAYS:
            break
        first = earlier
    return first


def days_pregnant(herd: Herd, doe: str, today: date) -> int | None:
    """Days since the mating that the doe's calendar counts from; None where none is open."""
    mating = open_mating(herd, doe, today)
    return (today - mating.on).days if mating else None


def last_mating(herd: Herd, key: str) -> Mating | None:
    """The last mating of an animal of either sex."""
    return next((mating for mating in reversed(herd.matings) if key in {mating.doe, mating.buck}), None)


def unused_matings(herd: Herd, doe: str, on: date) -> tuple[Mating, ...]:
    """The doe's matings before that day that have given no litter yet, whatever was thought of them."""
    return tuple(m for m in matings_of(herd, doe) if m.on < on and m.outcome != "kindled")


def fitting_matings(herd: Herd, doe: str, kindled_on: date) -> tuple[Mating, ...]:
    """Those of the doe's unused matings that are as long ago as a kindling takes."""
    first, last = figures.SIRE_FIRST_DAY.whole, figures.SIRE_LAST_DAY.whole
    return tuple(m for m in unused_matings(herd, doe, kindled_on) if first <= (kindled_on - m.on).days <= last)


def possible_sires(herd: Herd, doe: str, kindled_on: date) -> tuple[str, ...]:
    """The bucks (by key) whose kits they may be, the latest mating first."""
    return tuple(dict.fromkeys(mating.buck for mating in reversed(fitting_matings(herd, doe, kindled_on))))


def overdue_does(herd: Herd, today: date) -> tuple[Mating, ...]:
    """The open matings of living does past their kindling window."""
    open_ones = (open_mating(herd, animal.key, today) for animal in herd.animals.values() if animal.living)
    late = figures.KINDLING_WINDOW_LAST.whole
    return tuple(mating for mating in open_ones if mating and (today - mating.on).days > late)
