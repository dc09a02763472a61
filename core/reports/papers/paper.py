"""A paper before it has a look: what it is, whose, as of when, for which size of sheet, and what stands on it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, datetime
from typing import Any

from core.herd.settings import Settings

#: Every paper there is.
PAPERS = ("cards", "pedigree", "litter", "plan", "chores", "crib")
#: Sizes of sheets that printers hold.
SIZES = ("letter", "a4")


@dataclass(frozen=True, slots=True)
class Paper:
    """One paper.

    about    which one of PAPERS
    name     its file's name
    title    what stands above it
    farm     whose it is
    made_at  as of when (aware)
    day      the same as a day at the farm
    size     letter or a4
    content  what stands on it: the paper's own form
    alt      the same in words
    """

    about: str
    name: str
    title: str
    farm: str
    made_at: datetime
    day: date
    size: str
    content: Any
    alt: str


def size_for(settings: Settings, wanted: str | None) -> str:
    """The size that was wanted, else the one that goes with the farm's units: Letter with pounds, A4 with kilograms."""
    return wanted or ("letter" if settings.weight_units == "lb" else "a4")


def written(day: date | None) -> str:
    """A day as it stands on paper, where nobody knows what today is: `4 Mar 2025`; nothing where it is not known."""
    return f"{day.day} {day:%b} {day.year}" if day else ""
