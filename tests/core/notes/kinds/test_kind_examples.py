"""Each kind's own examples: read against the sample farm, every one gives exactly its facts and asks nothing."""

from __future__ import annotations

import json
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from core.app import reader
from core.app.reading import Reader
from core.notes.kind import Example
from core.notes.kinds import KIND_OF

ROSTER = Path(__file__).parents[3] / "corpus" / "roster.json"
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
EXAMPLES = [(kind.name, example) for kind in KIND_OF.values() for example in kind.examples]
NOT_THIS = [(kind.name, text) for kind in KIND_OF.values() for text in kind.not_this]


@pytest.fixture(scope="module")
def farm() -> Reader:
    """The sample farm's reader."""
    found = reader(json.loads(ROSTER.read_text(encoding="utf-8")))
    assert isinstance(found, Reader)
    return found


def stated(facts: list[dict[str, Any]]) -> list[list[tuple[str, Any]]]:
    """The fields that a note states, in an order of their own."""
    return sorted(sorted((name, value) for name, value in fact.items() if value is not None) for fact in facts)


@pytest.mark.parametrize(("kind", "example"), EXAMPLES, ids=[example.text for _, example in EXAMPLES])
def test_an_example_gives_exactly_its_facts(farm: Reader, kind: str, example: Example) -> None:
    """One reading over all kinds: the example's facts, no other fact, no question."""
    read = farm.read(example.text, AT)
    assert stated(read["facts"]) == stated([{"kind": kind, **fact} for fact in example.facts])
    assert read["ask"] is None


@pytest.mark.parametrize(("kind", "text"), NOT_THIS)
def test_a_counter_example_is_never_of_the_kind(farm: Reader, kind: str, text: str) -> None:
    """Words that look like the kind and aren't give no fact of it."""
    assert kind not in {fact["kind"] for fact in farm.read(text, AT)["facts"]}
