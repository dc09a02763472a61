"""A recording named in the chat of a terminal."""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.terminal.sounds import recording
from bot.voice import ear as voice
from core.app.speaking import DISCARDED
from tests.ears import FakeEar
from tests.machine import Machine


@pytest.fixture
def machine(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Machine:
    """A machine whose book has a doe 14."""
    found = Machine(tmp_path, monkeypatch)
    found.tell("new doe 14")
    return found


def test_a_recording_is_heard_as_on_a_phone(machine: Machine, monkeypatch: pytest.MonkeyPatch) -> None:
    """Sure: noted at once. Else the letters do what the buttons do; a long one says how far it is."""
    ear = FakeEar(seconds=60)
    monkeypatch.setattr(voice, "ear", lambda: ear)
    (machine.folder / "sure.ogg").write_text("14 weighed 8 pounds|fourteen weighed eight pounds")
    (machine.folder / "unsure.wav").write_text("14 is moved to cage 3")
    (machine.folder / "picture.ogg").write_bytes(b"\x89PNG\xff\xfe")
    result = machine.run("chat", typed="'sure.ogg'\nunsure.wav\na\nunsure.wav\nc\npicture.ogg\n14\n")
    sure, shown, saved, _, discarded, refused, *_ = result.stdout.split("\n\n")
    assert sure.splitlines()[:2] == ["Heard: “14 weighed 8 pounds”", "Doe 14: 8 lb."]
    assert shown.splitlines()[-3:] == ["  a) Save", "  b) Fix", "  c) Discard"]
    assert "cage 3" in saved
    assert discarded == DISCARDED
    assert "no sound" in refused
    assert "Heard 60 of 60 s." in result.stderr


def test_without_the_extra(machine: Machine, monkeypatch: pytest.MonkeyPatch) -> None:
    """One line says how to get it."""
    monkeypatch.setattr(voice, "find_spec", lambda _name: None)
    (machine.folder / "sure.ogg").touch()
    assert "pip install 'haynote[voice]'" in machine.ok("chat", typed="sure.ogg\n")


def test_other_words_name_no_recording(machine: Machine) -> None:
    """No file, no sound, or no name at all."""
    (machine.folder / "note.txt").touch()
    for text in ("14 weighed 8-2", "note.txt", "gone.ogg", "x" * 5000 + ".ogg", "a\0.ogg"):
        assert recording(text) is None
