"""Which messages are lists of animals or litters."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from core.notes.kinds import KINDS
from core.notes.moving.pasted import is_list

CORPUS = Path(__file__).parents[3] / "corpus"


@pytest.mark.parametrize(
    "text",
    [
        "tag,name,sex,breed,born\n14,Juno,doe,Mini Rex,2025-04-03",
        "Tag\tName\tSex\tBreed\tDOB\n14\tJuno\tD\tMini Rex\t4/3/2025\n\n3\tDuke\tB\tMini Rex\t2/1/2024",
        "Name; Sex; Color; Mood\nJuno; d; opal; calm",
        "doe, buck, bred, kindled, alive\n14, 3, 2026-03-01, 2026-04-01, 8",
        "Juno, doe, Mini Rex, 4/3/2025\nDuke, buck, Mini Rex, 2/1/2024",
        "14, Juno, doe, Mini Rex\n15, Hazel, doe, NZW",
        "R1 | buck | opal\nR2 | doe | castor",
    ],
)
def test_lists(text: str) -> None:
    """With headings or without, whatever parts the cells."""
    assert is_list(text)


@pytest.mark.parametrize(
    "text",
    [
        "tag,name,sex,breed",
        "14 weighed 8-2\n15 weighed 7-1",
        "14 weighed 8-2, calm, fat\n15 weighed 7-1, calm, fat",
        "Tag | Weight | BCS\n31 | 4-6 | 3\n32 | 4-3 | -",
        "tag, sex, breed\nand then some more words",
        "tag, mood, song, dance\n14, calm, none, none",
        "tag, weight, cage, price\n14, 4-6, B2, 30",
        "doe, Mini Rex, opal\ndoe, Mini Rex, castor",
        "bred, fed, watered\nfed, bred, watered",
        ", doe, Mini Rex\n15, doe, Mini Rex",
    ],
)
def test_other_messages(text: str) -> None:
    """One line, notes, the tables that a note may hold, and lists of something else."""
    assert not is_list(text)


def test_no_note_of_any_corpus_is_a_list() -> None:
    """So none of them is read otherwise than before."""
    told = [json.loads(line) for path in CORPUS.glob("*.jsonl") for line in path.read_text().splitlines()]
    texts = [each.get("text") or each.get("note") or "" for each in told]
    assert len([text for text in texts if text]) > 1000
    assert [text for text in texts if is_list(text)] == []


def test_no_example_of_any_kind_is_a_list() -> None:
    """Nor what a kind says is none of its own."""
    assert [example.text for kind in KINDS for example in kind.examples if is_list(example.text)] == []
