"""Who stays because there is room, though the choice would let it go: nobody goes without need."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.reckon.choose import Guess
from core.reckon.winter.types import Candidate, Choice, Limits
from core.reports.winter.wanted import Asked

NOBODY = Choice((), (), 0.0, 0.0, 0, 0, (), None, {}, (), {})


def doe(key: str, worth: float) -> Candidate:
    """A grown doe that eats ten kilograms until spring."""
    return Candidate(key, "doe", "rex", Guess(worth, 0.0), grown=True, feed_g=10_000)


THREE = (doe("a", 3000), doe("b", 5000), doe("c", 4000))


@pytest.mark.parametrize(
    ("limits", "kept"),
    [
        (Limits(), "abc"),
        (Limits(cages=2), "bc"),
        (Limits(mouths=1), "b"),
        (Limits(feed_g=25_000), "bc"),
        (Limits(does={"rex": 2}), "bc"),
        (Limits(bucks={"rex": 0}, does={"satin": 0}), "abc"),
        (Limits(cages=0), ""),
    ],
)
def test_room_is_given_to_the_best(limits: Limits, kept: str) -> None:
    """As long as cages, mouths, feed and does of the breed reach, by what each should bring."""
    asked = Asked(THREE, limits, NOBODY, ())
    assert asked.kept == set(kept)
    assert asked.full is (len(kept) < len(THREE))


def test_a_person_s_word_is_no_want_of_room() -> None:
    """Who is to go by a person's word gets no place, and is no sign that there is none."""
    asked = Asked((replace(THREE[0], pin="go"), *THREE[1:]), Limits(), NOBODY, ())
    assert asked.kept == {"b", "c"}
    assert not asked.full
