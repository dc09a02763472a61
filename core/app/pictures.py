"""What pictures show, as plain values: the shells draw them. The forms stand here for the shells to name."""

from __future__ import annotations

from datetime import datetime

from core.notes.replay import Book, local_day
from core.problem import Problem
from core.reports.pictures.values import (
    Aim,
    Axis,
    Born,
    DayRow,
    Days,
    Group,
    Growing,
    Litters,
    Panel,
    Picture,
    Point,
    Ranks,
    Row,
    Series,
    Week,
)

__all__ = [
    "Aim",
    "Axis",
    "Born",
    "DayRow",
    "Days",
    "Group",
    "Growing",
    "Litters",
    "Panel",
    "Picture",
    "Point",
    "Ranks",
    "Row",
    "Series",
    "Week",
    "picture",
]


def picture(known: Book, about: str, key: str | None, now: datetime) -> Picture | Problem:
    """What the picture shows on that day; a Problem where there is nothing to show, or not any more."""
    from core.reports.evidence import evidence  # noqa: PLC0415 - loads the reckoning, which naming the forms does not need
    from core.reports.pictures.picture import picture as shown  # noqa: PLC0415

    try:
        return shown(evidence(known.herd, local_day(now, known.herd)), about, key)
    except KeyError:
        return Problem("nothing_to_show", "What this picture was about is not on the book any more.", remedy="Ask again.")
