"""How closely a buck and a doe are related: the inbreeding that their kits would have, by what the book knows of their ancestors."""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache

from core.herd.state import Herd

#: Generations looked at: what lies further back adds less than a hundredth, and each doubles the work.
GENERATIONS = 6  # not a figure: how far


def inbreeding_of_kits(herd: Herd, buck: str, doe: str) -> float:
    """The kits' coefficient of inbreeding [share], for the animals' keys: the parents' coefficient of kinship (Wright's)."""
    near: dict[str | None, int] = {}
    for parent in (buck, doe):
        _go_back(herd, parent, 0, near)
    born: dict[str | None, int] = {}
    for key in near:
        _place(herd, key, near, born)

    @cache
    def kinship(one: str | None, other: str | None) -> float:
        if one not in near or other not in near:
            return 0.0
        if one == other:
            return (1 + kinship(*_parents(herd, one))) / 2
        young, old = (one, other) if born[one] >= born[other] else (other, one)
        return sum(kinship(parent, old) for parent in _parents(herd, young)) / 2

    return kinship(buck, doe)


def _parents(herd: Herd, key: str | None) -> tuple[str | None, str | None]:
    animal = herd.animals.get(key or "")
    return (animal.sire, animal.dam) if animal is not None else (None, None)


def _go_back(herd: Herd, key: str | None, generation: int, near: dict[str | None, int]) -> None:
    """Note the animal and its ancestors, by the fewest generations back."""
    if key is None or generation > GENERATIONS or near.get(key, GENERATIONS + 1) <= generation:
        return
    near[key] = generation
    for parent in _parents(herd, key):
        _go_back(herd, parent, generation + 1, near)


def _place(herd: Herd, key: str | None, near: Mapping[str | None, int], born: dict[str | None, int]) -> int:
    """Ancestors come before their descendants."""
    if key not in near:
        return 0
    if key not in born:
        born[key] = 0
        born[key] = 1 + max(_place(herd, parent, near, born) for parent in _parents(herd, key))
    return born[key]
