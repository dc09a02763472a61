"""Notes by several hands, each with what it must become: how many are read right, and how many wrongly without a question."""

from __future__ import annotations

import importlib.util
import json
from collections import Counter
from collections.abc import Iterator
from datetime import datetime, timedelta
from functools import lru_cache
from pathlib import Path
from types import ModuleType
from typing import Any

import pytest

from core.app import reader
from core.app.reading import Reader

CORPUS = Path(__file__).parent / "corpus"
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
#: How many notes known_misses.jsonl holds: lower it with each that is mended, never raise it.
KNOWN_MISSES = 5


@lru_cache(maxsize=1)
def judge() -> ModuleType:
    """The corpus's own judge of readings, a script beside the notes."""
    spec = importlib.util.spec_from_file_location("corpus_score", CORPUS / "score.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def messages(case: dict[str, Any]) -> Iterator[tuple[dict[str, Any], dict[str, Any]]]:
    """The requests of a case and what is expected of each: one, or a conversation's turns."""
    if "turns" not in case:
        yield {"text": case["text"]}, case
    for turn in case.get("turns", ()):
        at = AT + timedelta(minutes=turn.get("minutes", 0))
        said = {"text": turn["text"], "conversation": case["id"], "from": turn.get("from", "ann"), "at": at.isoformat()}
        yield said | {name: turn[name] for name in ("reply_to", "edit_of") if turn.get(name) is not None}, turn


def results(name: str) -> Counter[str]:
    """How many messages of a file come out right, silently wrong, asked for nothing and so on."""
    roster = json.loads((CORPUS / "roster.json").read_text(encoding="utf-8"))
    farm = reader(roster)
    assert isinstance(farm, Reader)
    cases = [json.loads(line) for line in (CORPUS / name).read_text(encoding="utf-8").split("\n") if line.strip()]
    return Counter(judge().best(farm.read_request(request, AT), wanted)[0] for case in cases for request, wanted in messages(case))


# The reader was mended by the notes of the fifth and sixth files, so they guard against a relapse and are no measure of how new notes fare.
@pytest.mark.parametrize(
    ("name", "right", "silent"),
    [
        ("examples.jsonl", 0.97, 0),
        ("notes_dev.jsonl", 0.97, 0.01),
        ("notes_more.jsonl", 0.97, 0.01),
        ("notes_third.jsonl", 0.97, 0.01),
        ("notes_fourth.jsonl", 0.97, 0.01),
        ("notes_fifth.jsonl", 0.99, 0.01),
        ("notes_sixth.jsonl", 0.99, 0.01),
    ],
)
def test_notes_are_read_right_and_never_silently_wrong(name: str, right: float, silent: float) -> None:
    """At least 97 % of a file come out right, of the fifth and sixth 99; none of the examples, and at most one in a hundred of the rest, is recorded wrongly unasked."""
    found = results(name)
    total = found.total()
    assert found["right"] >= right * total, found
    assert found["silent wrong"] <= silent * total, found


def whole(case: dict[str, Any]) -> bool:
    """Whether every message of a case is read right; `exact` names fields that must be just so in all its facts, null for absent."""
    farm = reader(json.loads((CORPUS / "roster.json").read_text(encoding="utf-8")))
    assert isinstance(farm, Reader)
    for request, wanted in messages(case):
        document = farm.read_request(request, AT)
        loose = any(fact.get(name) != value for name, value in case.get("exact", {}).items() for fact in document["facts"])
        if loose or judge().best(document, wanted)[0] != "right":
            return False
    return True


def test_the_known_misses_are_misses_still_and_grow_fewer() -> None:
    """Notes that the reader gets wrong are written down with what they ought to give; none of them may come right unnoticed, and none may be added."""
    cases = [json.loads(line) for line in (CORPUS / "known_misses.jsonl").read_text(encoding="utf-8").split("\n") if line.strip()]
    mended = [f"{case['id']}: {case.get('text') or case['turns'][-1]['text']}" for case in cases if whole(case)]
    assert not mended, f"read right now: move it into a corpus (one with `exact` into its kind's EXAMPLES) and lower KNOWN_MISSES: {mended}"
    assert len(cases) <= KNOWN_MISSES, "mend the reader instead of writing down one more miss"
    assert len({case["id"] for case in cases}) == len(cases)


def test_the_judge_tells_wrong_from_right() -> None:
    """A dropped, changed or added fact is silently wrong; a question in its place is not."""
    kindled = {"kind": "kindled", "doe": "14", "born": 8}
    wanted = {"expect": {"facts": [kindled]}}
    assert judge().best({"facts": [kindled], "ask": None}, wanted)[0] == "right"
    assert judge().best({"facts": [kindled | {"born": 7}], "ask": None}, wanted)[0] == "silent wrong"
    assert judge().best({"facts": [kindled, {"kind": "missed", "doe": "14"}], "ask": None}, wanted)[0] == "silent wrong"
    assert judge().best({"facts": [], "ask": {"why": "what"}}, wanted)[0] == "over-asked"
    assert judge().best({"facts": [], "ask": None}, wanted)[0] == "missed"
