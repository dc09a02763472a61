"""Notes written for each kind of fact: enough of them, near misses among them, and read right."""

from __future__ import annotations

import json
from collections import Counter
from typing import Any

import pytest

from core.notes.kinds import KINDS
from tests.test_corpus import CORPUS, messages, results

FILE = "by_kind.jsonl"
#: Examples and counter-examples that each kind must have, those of its own file among them.
ENOUGH = 25


def cases() -> list[dict[str, Any]]:
    """The notes, each under the kind that it was written for."""
    return [json.loads(line) for line in (CORPUS / FILE).read_text(encoding="utf-8").split("\n") if line.strip()]


# The reader was mended by these notes, so they guard against a relapse and are no measure of how new notes fare.
def test_the_notes_of_each_kind_are_read_right() -> None:
    """At least 99 in a hundred come out right, and none is recorded wrongly unasked."""
    found = results(FILE)
    assert found["right"] >= 0.99 * found.total(), found
    assert found["silent wrong"] == 0, found


@pytest.mark.parametrize("kind", KINDS, ids=lambda kind: kind.name)
def test_a_kind_has_enough_examples(kind: Any) -> None:
    """At least 25 notes that give the kind or are near it; some of those beside its own file must not give it."""
    written = Counter(bool(case.get("counter")) for case in cases() if case["kind"] == kind.name)
    assert len(kind.examples) + len(kind.not_this) + written.total() >= ENOUGH
    assert len(kind.not_this) + written[True] > 0


def test_a_counter_example_says_what_must_not_come_out() -> None:
    """A note beside a kind names it among what it must never give, in each of its outcomes; a plain remark may come with anything."""
    for case in cases():
        if not case.get("counter") or case["kind"] == "remark":
            continue
        last = [wanted for _, wanted in messages(case)][-1]
        for outcome in last.get("expect_any") or [last["expect"]]:
            assert case["kind"] in outcome["never"], case["id"]


def test_an_example_gives_its_kind_or_a_question() -> None:
    """A note written for a kind gives a fact of it in one of its messages, or asks before it does."""
    for case in cases():
        if case.get("counter") or case["kind"] in {"done", "remark"}:
            continue
        outcomes = [outcome for _, wanted in messages(case) for outcome in wanted.get("expect_any") or [wanted["expect"]]]
        assert any(outcome["ask"] or any(fact["kind"] == case["kind"] for fact in outcome["facts"]) for outcome in outcomes), case["id"]
