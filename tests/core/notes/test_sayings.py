"""The sentences of a farm, in words alone."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest

from core.herd.state import Herd
from core.notes.roster import herd_of
from core.notes.sayings import in_words, sayings, spoken_tag
from core.notes.slots.numbers import NUMBER_WORDS

FARM = herd_of(json.loads((Path(__file__).parents[2] / "corpus" / "roster.json").read_text()))
SAID = sayings(FARM)


def test_sentences_have_no_digits_and_no_marks() -> None:
    """An ear knows words."""
    assert all(re.fullmatch(r"[a-z']+(?: [a-z']+)*", each) for each in SAID)
    assert len(set(SAID)) == len(SAID) > 3000


@pytest.mark.parametrize("said", ["doe fourteen", "flint", "r twenty one", "juno's boy"])
def test_every_animal_is_spoken_of(said: str) -> None:
    """By tag and by name."""
    assert any(re.search(rf"\b{said}\b", each) for each in SAID)


def test_the_same_farm_says_the_same() -> None:
    """Nothing is drawn at random; a farm without animals still has does and bucks."""
    assert sayings(FARM) == SAID
    assert "doe bred to buck" in sayings(Herd())


def test_numbers_are_said_as_they_are_read() -> None:
    """Words back to the number."""
    for number in (0, 7, 13, 20, 31, 99):
        assert sum(NUMBER_WORDS[word] for word in in_words(number).split()) == number
    assert (in_words(100), in_words(131)) == ("one hundred", "one hundred thirty one")


def test_tags_are_said_part_by_part() -> None:
    """Letters one by one, numbers whole; a long number in two parts."""
    assert spoken_tag("R21") == "r twenty one"
    assert spoken_tag("AB-4") == "ab four"
    assert spoken_tag("2026") == "two hundred two six"
