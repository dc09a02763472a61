"""A picture's values as a PNG."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from bot.pictures.growing import growing
from bot.pictures.sheet import Sheet
from core.app.pictures import Growing, Picture

#: Who draws each form.
DRAWERS: dict[type, Callable[[Any], Sheet]] = {
    Growing: growing,
}


def png(told: Picture) -> bytes:
    """The picture as a PNG, 1080 dots wide."""
    return DRAWERS[type(told)](told).png()
