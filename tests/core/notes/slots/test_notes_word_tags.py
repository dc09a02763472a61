"""Rabbits that have only a name: it is their tag, and is said as a name is."""

from __future__ import annotations

import pytest

from core.herd.state import Animal, Herd
from core.notes.slots.animals import is_name, words_of

HERD = Herd().with_animal(Animal(key="flint", tag="flint", sex="buck")).with_animal(Animal(key="R21", tag="R21", sex="doe"))


def test_a_word_for_a_tag_is_found_as_a_name() -> None:
    """In the middle of a note, too, and with an s behind it."""
    assert words_of(HERD).names["flint"] == [((), ("flint",))]
    assert words_of(HERD).names["flints"] == [((), ("flint",))]


def test_such_a_tag_is_no_prefix_of_numbers() -> None:
    """`flint 4-2` is a weight of Flint's, never the tag flint4; `R 21` is the tag R21."""
    assert words_of(HERD).prefixes == {"R"}


@pytest.mark.parametrize(("tag", "is_one"), [("flint", True), ("Moss", True), ("R21", False), ("14", False), ("AB", False), ("x", False)])
def test_which_tags_are_names(tag: str, is_one: bool) -> None:
    """Words of three letters or more."""
    assert is_name(tag) is is_one
