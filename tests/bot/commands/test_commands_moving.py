"""Notes in and out: replay and export."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.machine import Machine

ROSTER = Path(__file__).parents[2] / "corpus" / "roster.json"
NOTES = """# an old notebook
2026-03-01 new doe 14 mini rex born 3/4/2025
2026-03-01 new buck 3 mini rex born 2/1/2025
2026-03-04 07:15 bred 14 to 3
2026-04-04 07:15 14 kindled 8, 2 dead
  she made a good nest
2026-04-05 77 kindled 5
not a dated line
"""


@pytest.fixture
def notebook(machine: Machine) -> str:
    """A file of old notes."""
    (machine.folder / "notes.txt").write_text(NOTES, encoding="utf-8")
    return "notes.txt"


def test_replay_tells_what_became_of_the_lines(machine: Machine, notebook: str) -> None:
    """How many were recorded; then those that ask, and those that nobody could read."""
    told = machine.json("replay", notebook)
    assert told["recorded"] == 4
    assert [(each["line"], each["why"]) for each in told["asked"]] == [(7, "which_animal")]
    assert [each["text"] for each in told["unread"]] == ["not a dated line"]


def test_replay_in_words(machine: Machine, notebook: str) -> None:
    """The same for people; progress goes to standard error."""
    result = machine.run("replay", notebook)
    assert result.exit_code == 0
    assert "Line 7: 77 kindled 5" in result.stdout
    assert "Reading notes" not in result.stdout


def test_replaying_twice_adds_nothing(machine: Machine, notebook: str) -> None:
    """A line's identity is its date, time and text."""
    machine.ok("replay", notebook)
    before = machine.json("status")["notes"], machine.json("herd")
    assert machine.json("replay", notebook)["recorded"] == 0
    assert (machine.json("status")["notes"], machine.json("herd")) == before


def test_replay_from_standard_input(machine: Machine) -> None:
    """`-` is standard input."""
    assert json.loads(machine.ok("replay", "-", "--json", typed=NOTES))["recorded"] == 4


def test_replay_begins_with_a_roster(machine: Machine) -> None:
    """An empty book takes the roster's animals first."""
    (machine.folder / "more.txt").write_text("2026-11-25 07:10 31 4-6\n", encoding="utf-8")
    assert machine.json("replay", "more.txt", "--roster", str(ROSTER))["recorded"] == 1
    assert machine.json("card", "31")["breed"]


def test_a_roster_wants_an_empty_book(farm: Machine, notebook: str) -> None:
    """A book with notes is left alone."""
    before = farm.json("status")["notes"]
    assert farm.refused("replay", notebook, "--roster", str(ROSTER))["code"] == "not_empty"
    assert farm.json("status")["notes"] == before


@pytest.mark.parametrize("text", ["no json", "[]", '{"animals": [{"name": "Clover"}]}'])
def test_a_bad_roster_changes_nothing(machine: Machine, notebook: str, text: str) -> None:
    """Ends with 1; no note is taken in."""
    (machine.folder / "bad.json").write_text(text, encoding="utf-8")
    assert machine.refused("replay", notebook, "--roster", "bad.json")["code"] == "bad_roster"
    assert machine.json("status")["notes"] == 0


@pytest.mark.parametrize("content", [None, b"\xff\xfe\x00broken"])
def test_a_file_that_cannot_be_read(machine: Machine, content: bytes | None) -> None:
    """Not there, or no text: ends with 1 and names the file."""
    if content is not None:
        (machine.folder / "notes.txt").write_bytes(content)
    problem = machine.refused("replay", "notes.txt")
    assert problem["code"] == "no_file"
    assert "notes.txt" in problem["text"]


def test_replaying_an_export_gives_an_equal_book(farm: Machine) -> None:
    """The same herd, and the same export."""
    notes = farm.ok("export", "--notes")
    (farm.folder / "out.txt").write_text(notes, encoding="utf-8")
    farm.ok("replay", "out.txt", "--book", "copy.sqlite")
    assert farm.json("herd", "--book", "copy.sqlite") == farm.json("herd")
    assert farm.ok("export", "--book", "copy.sqlite") == notes


def test_export_is_without_what_was_taken_back(farm: Machine) -> None:
    """Undone notes are in the journal, not among the notes that stand."""
    farm.tell("15 weighed 4-2")
    assert "15" in farm.ok("export").splitlines()[-1]
    farm.ok("say", "undo")
    assert "weighed" not in farm.ok("export")
    assert "15 weighed 4-2" in farm.ok("export", "--journal")


def test_export_into_a_file(farm: Machine) -> None:
    """`--to` writes the same there, and nothing to the screen."""
    assert farm.ok("export", "--journal", "--to", "journal.jsonl") == ""
    assert (farm.folder / "journal.jsonl").read_text(encoding="utf-8") == farm.ok("export", "--journal")


def test_export_to_where_nobody_can_write(farm: Machine) -> None:
    """Ends with 1 and says so."""
    result = farm.run("export", "--to", "no/such/folder/notes.txt")
    assert result.exit_code == 1
    assert "can't be written" in result.stderr
