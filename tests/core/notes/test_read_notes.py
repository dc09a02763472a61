"""Notes of every kind and voice, each with what it becomes: a change of the reader that changes one of them shows here."""

from __future__ import annotations

import json
from datetime import date, datetime
from functools import lru_cache
from pathlib import Path
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.app import reader as opened
from core.app.reading import Reader
from core.herd.state import Herd
from core.notes.fact import to_json
from core.notes.reader import read
from core.notes.reading import Context, Message
from core.notes.roster import herd_of

HERE = Path(__file__).parent
ROSTER = json.loads((HERE.parents[1] / "corpus" / "roster.json").read_text(encoding="utf-8"))
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
CASES = [
    json.loads(line)
    for file in sorted(HERE.glob("notes_read*.jsonl"))
    for line in file.read_text(encoding="utf-8").split("\n")
    if line.strip()
]


@lru_cache(maxsize=1)
def herd() -> Herd:
    """The sample farm's herd."""
    return herd_of(ROSTER)


@pytest.fixture(scope="module")
def farm() -> Reader:
    """The sample farm's reader, checks and all."""
    found = opened(ROSTER)
    assert isinstance(found, Reader)
    return found


def stated(facts: list[dict[str, Any]]) -> list[str]:
    """The facts without what they leave unsaid, in an order of their own."""
    return sorted(json.dumps({name: value for name, value in fact.items() if value is not None}, sort_keys=True) for fact in facts)


@pytest.mark.parametrize("case", CASES, ids=[case["text"][:60] for case in CASES])
def test_a_note_becomes_its_facts(farm: Reader, case: dict[str, Any]) -> None:
    """Exactly the facts beside it, and a question only where one stands beside it."""
    found = farm.read(case["text"], AT)
    assert stated(found["facts"]) == stated(case["facts"])
    assert (found["ask"] and found["ask"]["why"]) == case["ask"]


def pieces() -> st.SearchStrategy[str]:
    """Any text, and words of notes in any order."""
    words = sorted({word for case in CASES for word in case["text"].split()})
    return st.one_of(st.text(max_size=40), st.lists(st.sampled_from(words), max_size=12).map(" ".join))


@given(pieces(), st.sampled_from([None, "14", "31", "R30"]))
def test_no_text_stops_the_reader(text: str, subject: str | None) -> None:
    """Whatever is sent gives facts of known fields, days that are days, and a reason where it asks."""
    found = read(Message(text, AT), herd(), Context(subject=subject))
    for fact in found.facts:
        assert to_json(fact)["kind"] == fact.kind
        on = getattr(fact, "on", None)
        assert on is None or isinstance(on, date)
    assert found.ask is None or found.ask.text


@given(
    st.integers(1, 9),
    st.integers(100, 999),
    st.sampled_from(["doe 14 kindled {a} and {b} more", "weaned 16 {b}", "31 4-2 {b}", "sold Pip 40 {b} {a}"]),
)
def test_no_number_is_dropped(a: int, b: int, words: str) -> None:
    """A number that no fact holds raises a question."""
    found = read(Message(words.format(a=a, b=b), AT), herd())
    held = {str(value) for fact in found.facts for value in to_json(fact).values()}
    assert found.ask is not None or str(b) in held or any(str(b) in value for value in held)
