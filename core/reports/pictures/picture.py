"""Every picture by its name and whom it is about."""

from __future__ import annotations

from collections.abc import Callable

from core.problem import Problem
from core.reports.evidence import Evidence
from core.reports.pictures.growing import growing_animal
from core.reports.pictures.values import Picture

#: What makes each picture, of a key: an animal's or litter's, or a breed.
PICTURES: dict[str, Callable[[Evidence, str | None], Picture | Problem]] = {
    "growing": lambda barn, key: growing_animal(barn, barn.herd.animals[key or ""]),
}


def picture(barn: Evidence, about: str, key: str | None = None) -> Picture | Problem:
    """One of PICTURES; a Problem where there is nothing to show. KeyError where the picture or whom it is about is unknown."""
    return PICTURES[about](barn, key)
