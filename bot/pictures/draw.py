"""A picture's values as a PNG."""

from __future__ import annotations

from collections.abc import Callable
from threading import Lock
from typing import Any

from bot.pictures.days import days
from bot.pictures.growing import growing
from bot.pictures.litters import litters
from bot.pictures.ranks import ranks
from bot.pictures.sheet import Sheet
from bot.pictures.week import week
from core.app.pictures import Days, Growing, Litters, Picture, Ranks, Week

#: Who draws each form.
DRAWERS: dict[type, Callable[[Any], Sheet]] = {
    Growing: growing,
    Ranks: ranks,
    Litters: litters,
    Days: days,
    Week: week,
}
#: The drawing library does not like to be used by two threads at once.
_ONE_AT_A_TIME = Lock()


def png(told: Picture) -> bytes:
    """The picture as a PNG, 1080 dots wide."""
    with _ONE_AT_A_TIME:
        return DRAWERS[type(told)](told).png()
