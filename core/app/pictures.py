"""What pictures show, as plain values: the shells draw them. The forms stand here for the shells to name."""

from __future__ import annotations

from datetime import datetime

from core.herd.questions import fitting
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
    "OF_FARM",
    "OF_ONE",
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


#: What there is to draw: of one animal by its key, tag or name, and of the farm, or of one breed of it.
OF_ONE = ("growing", "litter", "litters")
OF_FARM = ("dams", "bucks", "winter", "week")


def picture(known: Book, about: str, key: str | None, now: datetime) -> Picture | Problem:
    """What the picture shows on that day; a Problem where there is nothing to show, or the animal is not on the book (any more)."""
    from core.reports.evidence import evidence  # noqa: PLC0415 - loads the reckoning, which naming the forms does not need
    from core.reports.pictures.picture import picture as shown  # noqa: PLC0415

    if about in OF_ONE and key not in known.herd.animals:
        found = fitting(known.herd, key or "")
        if len(found) != 1:
            text = f"There is no animal {key} on the book."
            return Problem("no_animal", text, remedy="'haynote herd' lists the tags. To add one: new doe 40 mini rex born 3/4")
        key = found[0].key
    return shown(evidence(known.herd, local_day(now, known.herd)), about, key)
