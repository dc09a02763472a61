"""The herd as a value: tags, keys and the day being told."""

from __future__ import annotations

import pytest

from core.herd.state import Animal, Gone, Herd, folded
from tests.farm import TODAY, ago


@pytest.mark.parametrize(("typed", "tag"), [("r-021", "R21"), ("R 21", "R21"), ("007", "7"), ("0", "0"), ("00", "0"), ("b", "B")])
def test_folded(typed: str, tag: str) -> None:
    """Case, leading zeros, spaces and hyphens don't matter in a tag."""
    assert folded(typed) == folded(tag)


def test_find_prefers_the_living() -> None:
    """A tag used again is the living animal's; once that is gone, the last one's."""
    gone = Animal(key="7", tag="7", gone=Gone(ago(9), "sold", {}))
    herd = Herd().with_animal(gone).with_animal(Animal(key="7~2", tag="7"))

    assert herd.find("7") == herd.animals["7~2"]
    assert herd.with_animal(Animal(key="7~2", tag="7", gone=Gone(TODAY, "died", {}))).find("07") is not None
    assert herd.find("8") is None


def test_a_changed_tag_forgets_the_old_one() -> None:
    """An animal that got a new tag is no longer found by the old one."""
    herd = Herd().with_animal(Animal(key="31", tag="31")).with_animal(Animal(key="31", tag="R31"))

    assert (herd.find("31"), herd.find("r31")) == (None, Animal(key="31", tag="R31"))


def test_free_key() -> None:
    """The first animal's key is its tag; later ones of that tag are numbered."""
    herd = Herd().with_animal(Animal(key="7", tag="7")).with_animal(Animal(key="7~2", tag="7"))

    assert (herd.free_key("7"), herd.free_key("8")) == ("7~3", "8")


def test_day_does_not_tell_herds_apart() -> None:
    """Two herds that the same notes made are equal, whatever day is being told."""
    herd = Herd().on_day(TODAY)

    assert herd == Herd()
    assert herd.on_day(TODAY) is herd
