"""How closely a pair is related: the usual coefficients of close kin, reckoned by hand, and the reckoning by tables, which is held against sgkit."""

from __future__ import annotations

import pytest

from core.herd.kin import inbreeding_of_kits
from core.herd.questions import pedigree
from core.reckon import pedigree as book
from core.reckon.kinship import coi
from tests.herds import Barn


def family() -> Barn:
    """Two founders, their kits, and kits of these."""
    barn = Barn().buck("1").doe("2").doe("9")
    barn.buck("3", sire="1", dam="2").doe("4", sire="1", dam="2").doe("5", sire="1", dam="9")
    return barn.doe("6", sire="3", dam="4")


@pytest.mark.parametrize(
    ("buck", "doe", "kin"),
    [("1", "9", 0.0), ("1", "4", 0.25), ("3", "4", 0.25), ("3", "5", 0.125), ("3", "6", 0.375), ("1", "6", 0.25)],
    ids=["strangers", "father and daughter", "full brother and sister", "half", "father and inbred daughter", "grandfather"],
)
def test_close_kin_are_as_close_as_the_book_says(buck: str, doe: str, kin: float) -> None:
    """The kits' inbreeding is their parents' coancestry; the reckoning by tables says the same."""
    herd = family().herd
    keys = {animal.tag: animal.key for animal in herd.animals.values()}
    assert inbreeding_of_kits(herd, keys[buck], keys[doe]) == pytest.approx(kin)
    rows = [(key, *parents) for key, parents in pedigree(herd).items()]
    told = book.pedigree(rows)
    assert isinstance(told, book.Pedigree)
    assert coi(told, keys[buck], keys[doe]) == pytest.approx(kin)
