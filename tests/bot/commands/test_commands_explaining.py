"""`haynote read --explain`: why a note was read as it was."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from bot.commands.explaining import explanation
from tests.machine import Machine

ROSTER = str(Path(__file__).parents[3] / "tests" / "corpus" / "roster.json")
AT = "2026-11-25T07:10:00-06:00"


def lines(machine: Machine, text: str) -> list[str]:
    """What is printed of a note on the sample farm."""
    return machine.ok("read", "--roster", ROSTER, "--at", AT, "--explain", text).splitlines()


def test_a_note_in_words(machine: Machine) -> None:
    """First what `read` always prints; then the words, what they were taken for, the rule that fired and those that almost did."""
    told = lines(machine, "14 kindled 8, 2 dead")
    assert told[0] == "kindled: doe 14, on 2026-11-25, born 8, alive 6, dead 2"
    assert "tokens: 14 | kindled | 8 | , | 2 | dead" in told
    assert any(line.startswith("  kindled  ") and line.endswith("word [kindle] -> kindled") for line in told)
    assert "statement 1: 14 kindled 8 , 2 dead" in told
    assert any(line.startswith("  fired   kindled on “kindled” (kindle) at kindling.py:") for line in told)
    assert any(line.startswith("  nearly  died on “dead” (die) gave up at death.py:") for line in told)


@pytest.mark.parametrize(
    ("text", "line"),
    [
        ("14 kindled", "asks how_many: kindled (kindling.py:"),
        ("14 kindled", "; lacks born"),
        ("weighed 31 32 4-1", "  left over: "),
        ("14 hasn't kindled yet", "  no rule was tried: it says that something is not so"),
        ("14 kindled eight no seven", "taken back by the speaker: eight no"),
        ("no, 15 not 14", "not cut into statements: it is one thing as a whole"),
        ("sold R22 to Ann 40 and she limps", "          taken back: the same message tells"),
        ("wormed 22. nose is runny", "(speaking of 22)"),
        ("31 4-6", "  fired   weighed, by its form, at weighing.py:"),
        ("", "text: "),
    ],
)
def test_lines_for_what_is_rare(machine: Machine, text: str, line: str) -> None:
    """Each has its line, and only then."""
    assert any(line in told for told in lines(machine, text))


def test_json_has_the_same_under_one_key(machine: Machine) -> None:
    """The contract's object, with `explain` beside its three keys."""
    told = machine.json("read", "--roster", ROSTER, "--at", AT, "--explain", "14 kindled 8, 2 dead")
    assert set(told) == {"facts", "ask", "unread", "explain"}
    assert set(told["explain"]) == {"readings", "asks"}


def test_the_farms_own_book_explains_too(farm: Machine) -> None:
    """Without a roster."""
    told = farm.ok("read", "--explain", "14 has 6 kits")
    assert "fired   kit_count" in told


def test_a_conversation_explains_each_message(machine: Machine) -> None:
    """With `--jsonl`; an answer to a question may need no reading of its own."""
    said = [{"text": "14 kindled", "conversation": "c"}, {"text": "8", "conversation": "c"}, {"text": "31 4-6"}, {"text": 7}]
    told = machine.ok("read", "--roster", ROSTER, "--at", AT, "--json", "--jsonl", "--explain", typed="\n".join(map(json.dumps, said)))
    first, answer, alone, none = (json.loads(line) for line in told.splitlines())
    assert first["explain"]["asks"]["why"] == "how_many"
    assert answer["facts"][0]["born"] == 8
    assert alone["explain"]["readings"][0]["text"] == "31 4-6"
    assert "explain" not in none


def test_what_was_never_read_says_so() -> None:
    """An answer in a few words goes past the reader."""
    assert explanation({"readings": [], "asks": None})[-1] == "read before, or answered without reading it as a note"
