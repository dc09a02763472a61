"""A chore: something that is due on a day, computed from the herd each time it is asked for."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True, slots=True)
class Chore:
    """One thing to do.

    on     the day it is due (moved if somebody put it off)
    chore  palpate, nest_box_in, kindling, check_nest, nest_box_out, wean, rebreed, weigh, sale_date, cull_date, review, custom
    tag    the animal; the doe for a litter's chore; None where there is none
    text   the line a person sees
    key    the same chore has the same key for ever: `kindling:14:2026-10-24` (chore, animal, the day of what caused it)
    time   HH:MM where a person named one
    """

    on: date
    chore: str
    tag: str | None
    text: str
    key: str
    time: str | None = None
