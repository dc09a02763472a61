"""A question beside a note: the note is recorded, and the question is asked."""

from __future__ import annotations

import json
from datetime import datetime
from pathlib import Path

import pytest

from core.app import reader
from core.app.reading import Reader

AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
ROSTER = Path(__file__).parent.parent.parent / "corpus" / "roster.json"
WEIGHED = {"kind": "weighed", "who": "31", "grams": 1984, "on": "2026-11-25"}


@pytest.fixture(scope="module")
def ear() -> Reader:
    """A reader of the barn that all notes of the corpus are about."""
    made = reader(json.loads(ROSTER.read_text(encoding="utf-8")))
    assert isinstance(made, Reader)
    return made


@pytest.mark.parametrize(
    ("question", "asked"),
    [
        ("why 14?", {"about": "why", "who": "14"}),
        ("who is due?", {"about": "due"}),
        ("would you keep 14?", {"about": "keep", "who": "14"}),
        ("how would Sorrel and Biscuit compare?", {"about": "compare", "who": "12", "with": "22"}),
    ],
)
def test_a_question_and_a_note_on_two_lines(ear: Reader, question: str, asked: dict[str, str]) -> None:
    """In either order; the animal of the note is not asked about."""
    for text in (f"{question}\n31 4-6", f"31 4-6\n{question}", f"{question} 31 4-6"):
        assert ear.read(text, AT)["facts"] == [WEIGHED, {"kind": "query", **asked}], text


def test_a_figure_behind_a_question_is_not_lost_in_silence(ear: Reader) -> None:
    """Whose it is, nobody can tell: it is given back as unread."""
    assert ear.read("what is 31 now? 4-6", AT)["unread"] == "4-6"
    assert ear.read("did 14 kindle? yes 6", AT)["unread"] == "yes 6"


def test_a_question_over_two_lines_is_one_question(ear: Reader) -> None:
    """Nothing is told, so nothing stands apart."""
    assert ear.read("who is due\nthis week?", AT)["facts"] == [{"kind": "query", "about": "due", "until": "2026-11-29"}]
