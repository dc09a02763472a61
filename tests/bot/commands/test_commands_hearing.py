"""`haynote hear`: what a recording would become, with an ear that hears what it was told to."""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.voice import ear as voice
from tests.ears import FakeEar
from tests.machine import Machine

ROSTER = Path(__file__).parents[2] / "corpus" / "roster.json"


@pytest.fixture
def ear(monkeypatch: pytest.MonkeyPatch) -> FakeEar:
    """The ear of the machine."""
    found = FakeEar()
    monkeypatch.setattr(voice, "ear", lambda: found)
    return found


def recorded(machine: Machine, content: str) -> str:
    """A recording in which that was said."""
    (machine.folder / "note.ogg").write_text(content)
    return "note.ogg"


def test_a_recording_is_told_and_not_noted(machine: Machine, ear: FakeEar) -> None:
    """What both ears heard, the facts, and whether they agree; nothing is on the book."""
    machine.tell("new doe 12", "new buck 3", "bred 12 to 3 on 10/24")
    told = machine.json("hear", recorded(machine, "Doe 12 kindled 8.|doe twelve kindled eight"))
    fact = {"kind": "kindled", "doe": "12", "on": "2026-11-25", "born": 8}
    assert told == {
        "heard": "Doe 12 kindled 8.",
        "second": "doe twelve kindled eight",
        "agree": True,
        "sure": True,
        "facts": [fact],
        "ask": None,
        "unread": "",
        "others": [],
        "seconds": 3.0,
    }
    assert "kindling" in [each["chore"] for each in machine.json("due", "--days", "1")["chores"]]
    assert machine.ok("hear", "note.ogg").splitlines() == [
        "Heard: “Doe 12 kindled 8.”",
        "Not noted yet. It would be:",
        "Doe 12: 8 born, 8 alive.",
        "Both ears agree: sent to the chat, it is noted at once.",
    ]


def test_talk_gives_no_fact(machine: Machine, ear: FakeEar) -> None:
    """The words are told, and that there is no note in them; against a roster as well. A long recording is told about on the way."""
    ear.seconds = 60
    file = recorded(machine, "I think it is going to rain")
    told = machine.json("hear", file, "--roster", str(ROSTER), "--at", "2026-11-25T07:10")
    assert (told["heard"], told["facts"], told["unread"]) == ("I think it is going to rain", [], "I think it is going to rain")
    found = machine.run("hear", file, "--roster", str(ROSTER))
    assert "I heard no note." in found.stdout
    assert "Heard 60 of 60 s." in found.stderr
    assert "Flint" in ear.told[0].names


def test_what_is_no_sound_is_refused(machine: Machine, ear: FakeEar) -> None:
    """A picture that was renamed."""
    (machine.folder / "note.ogg").write_bytes(b"\x89PNG\xff\xfe")
    assert machine.refused("hear", "note.ogg")["code"] == "bad_sound"


def test_without_the_extra(machine: Machine, monkeypatch: pytest.MonkeyPatch) -> None:
    """One line that says how to get it."""
    monkeypatch.setattr(voice, "find_spec", lambda _name: None)
    problem = machine.refused("hear", recorded(machine, "Doe 12 kindled 8."))
    assert problem["code"] == "no_voice"
    assert "pip install 'haynote[voice]'" in problem["remedy"]
