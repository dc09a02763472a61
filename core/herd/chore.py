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


#: Every chore there is.
CHORES = (
    "palpate",
    "nest_box_in",
    "kindling",
    "check_nest",
    "nest_box_out",
    "wean",
    "weigh",
    "rebreed",
    "sale_date",
    "cull_date",
    "review",
    "custom",
)

#: Plain words for chores, by the word that gives them away. The first that fits wins.
_PLAIN = (
    ("palp", "palpate"),
    ("box out", "nest_box_out"),
    ("out of", "nest_box_out"),
    ("pull the box", "nest_box_out"),
    ("nest check", "check_nest"),
    ("check", "check_nest"),
    ("box", "nest_box_in"),
    ("kindl", "kindling"),
    ("nest", "check_nest"),
    ("wean", "wean"),
    ("weigh", "weigh"),
    ("rebre", "rebreed"),
    ("breed", "rebreed"),
    ("sale", "sale_date"),
    ("cull", "cull_date"),
    ("butcher", "cull_date"),
    ("review", "review"),
)


def chore_named(said: str) -> str | None:
    """The chore that somebody's words name (`nest check`, `palpation`, `nest_box_in`); None where they name none."""
    plain = said.strip().lower().replace("-", " ").replace("_", " ")
    exact = plain.replace(" ", "_")
    if exact in CHORES:
        return exact
    return next((chore for word, chore in _PLAIN if word in plain), None)
