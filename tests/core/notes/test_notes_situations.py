"""The situations of the barn: the short notes that tell them, and the crib for the barn wall."""

from __future__ import annotations

import json
from collections import Counter
from datetime import datetime
from pathlib import Path

import pytest

from core.app import reader
from core.app.reading import Reader
from core.notes import crib_page
from core.notes.clauses.asked_about import ORDER
from core.notes.kinds import KIND_OF
from core.notes.situations import SITUATIONS, Situation, situation_named

ROSTER = json.loads((Path(__file__).parents[2] / "corpus" / "roster.json").read_text(encoding="utf-8"))
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
ONE_PAGE = 55  # lines
NAMES = [one.name for one in SITUATIONS]


@pytest.fixture(scope="module")
def farm() -> Reader:
    """The sample farm's reader."""
    found = reader(ROSTER)
    assert isinstance(found, Reader)
    return found


def test_every_kind_has_one_situation() -> None:
    """None is left out, none stands twice."""
    assert Counter(kind for one in SITUATIONS for kind in one.kinds) == Counter(KIND_OF.keys())


@pytest.mark.parametrize("situation", SITUATIONS, ids=NAMES)
def test_the_short_notes_say_what_they_stand_for(farm: Reader, situation: Situation) -> None:
    """Each is read without a question as kinds of its situation, and each of those kinds is said."""
    said: set[str] = set()
    for saying in situation.sayings:
        read = farm.read(saying, AT)
        kinds = {fact["kind"] for fact in read["facts"]}
        assert kinds, saying
        assert read["ask"] is None, saying
        assert kinds <= set(situation.kinds), saying
        said |= kinds
    assert said == set(situation.kinds)


def test_everything_that_can_be_asked_is_there(farm: Reader) -> None:
    """All that a question can be about."""
    asked = {farm.read(saying, AT)["facts"][0]["about"] for one in SITUATIONS if one.kinds == ("query",) for saying in one.sayings}
    assert asked >= set(ORDER)


def test_the_crib_is_one_page() -> None:
    """Short enough for a sheet, narrow enough to print; every situation and every short note is on it, none broken."""
    lines = crib_page.crib()
    assert len(lines) <= ONE_PAGE
    assert all(len(line) <= crib_page.WIDTH for line in lines)
    text = "\n".join(lines)
    for one in SITUATIONS:
        assert f"\n{one.name.upper()} " in "\n" + text
        assert all(saying in text for saying in one.sayings)


@pytest.mark.parametrize(
    ("words", "name"),
    [
        ("help weights", "weights and condition"),
        ("Help sale?", "sale and leaving"),
        ("help settings", "settings"),
        ("help", None),
        ("help and", None),
    ],
)
def test_a_situation_by_its_name(words: str, name: str | None) -> None:
    """As somebody asks for help with it."""
    found = situation_named(words)
    assert (found.name if found else None) == name
