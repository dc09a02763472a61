"""Every picture by its name and whom it is about."""

from __future__ import annotations

from collections.abc import Callable

from core.herd.state import Animal
from core.problem import Problem
from core.reports.evidence import Evidence
from core.reports.pictures.growing import growing_animal
from core.reports.pictures.litter import growing_litter
from core.reports.pictures.litters import litter_sizes
from core.reports.pictures.ranks import bucks, dams
from core.reports.pictures.values import Picture
from core.reports.pictures.week import week
from core.reports.pictures.winter import winter

#: The pictures of one animal, by its key.
OF_ONE: dict[str, Callable[[Evidence, Animal], Picture | Problem]] = {
    "growing": growing_animal,
    "litter": growing_litter,
    "litters": litter_sizes,
}
#: The pictures of the farm; those of dams and bucks may be of one breed.
OF_FARM: dict[str, Callable[[Evidence, str | None], Picture | Problem]] = {
    "dams": dams,
    "bucks": bucks,
    "winter": winter,
    "week": week,
}


def picture(barn: Evidence, about: str, key: str | None = None) -> Picture | Problem:
    """The picture of that name; a Problem where there is nothing to show. KeyError where it, or the animal, is unknown."""
    return OF_ONE[about](barn, barn.herd.animals[key or ""]) if about in OF_ONE else OF_FARM[about](barn, key)
