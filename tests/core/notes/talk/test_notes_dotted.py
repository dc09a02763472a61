"""What the dot in a weight means: asked once, settled by the answer, and remembered."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from core.app import reader
from core.app.reading import Reader
from core.notes.reading import Ask
from core.notes.talk.dotted import dot_told

ROSTER = json.loads((Path(__file__).parents[3] / "corpus" / "roster.json").read_text(encoding="utf-8"))
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")

Say = Callable[[str], dict[str, Any]]


@pytest.fixture
def say() -> Say:
    """A conversation on a farm that has not said what its dots mean."""
    untold = {**ROSTER, "farm": {name: value for name, value in ROSTER["farm"].items() if name != "dotted_weight"}}
    farm = reader(untold)
    assert isinstance(farm, Reader)
    return lambda text: farm.read_request({"text": text, "conversation": "c", "from": "ann"}, AT)


def weighed(read: dict[str, Any]) -> dict[str, int]:
    """Who weighs what."""
    return {fact["who"]: fact["grams"] for fact in read["facts"] if fact["kind"] == "weighed"}


def dots(read: dict[str, Any]) -> list[Any]:
    """What was noted of dots."""
    return [fact["value"] for fact in read["facts"] if fact.get("name") == "dotted_weight"]


@pytest.mark.parametrize(
    ("answer", "way", "grams"),
    [
        ("decimal", "decimal", 2087),
        ("4.6 lb", "decimal", 2087),
        ("4.6 pounds", "decimal", 2087),
        ("pounds and ounces", "ounces", 1984),
        ("4 lb 6 oz", "ounces", 1984),
        ("4 pounds 6 ounces", "ounces", 1984),
        ("4-6", "ounces", 1984),
    ],
)
def test_the_answer_settles_the_weight_and_is_remembered(say: Say, answer: str, way: str, grams: int) -> None:
    """The weight asked about, and the setting; the next dotted weight is not asked about."""
    asked = say("31 4.6")["ask"]
    assert asked["why"] == "which_number"
    assert asked["choices"] == ["4.6 lb", "4 lb 6 oz"]
    answered = say(answer)
    assert (dots(answered), weighed(answered)) == ([way], {"31": grams})
    assert say("32 4.2")["ask"] is None


def test_every_weight_of_the_note_is_settled(say: Say) -> None:
    """One answer is for all of them."""
    say("31 4.6, 32 4.7")
    assert weighed(say("ounces")) == {"31": 1984, "32": 2013}


def test_a_litters_weight_is_settled_too(say: Say) -> None:
    """Whatever was weighed."""
    say("12 litter weight 3.9")
    assert [fact.get("grams") for fact in say("decimal")["facts"]] == [None, 1769]


def test_another_weight_settles_only_itself(say: Say) -> None:
    """A scale read anew says nothing of dots."""
    say("31 4.6")
    answered = say("5-2")
    assert (dots(answered), weighed(answered)) == ([], {"31": 2325})
    assert say("33 3.9")["ask"] is not None


@pytest.mark.parametrize("choices", [(), ("3", "5"), ("4.6 lb", "5")])
def test_no_other_question_is_about_dots(choices: tuple[str, ...]) -> None:
    """An answer to something else is left to it."""
    assert dot_told(Ask("which_number", "Which?", choices), "decimal") is None


def test_what_says_nothing_of_the_dot_is_left(say: Say) -> None:
    """A full note drops the question."""
    say("31 4.6")
    assert [fact["kind"] for fact in say("14 kindled 8")["facts"]] == ["kindled"]
