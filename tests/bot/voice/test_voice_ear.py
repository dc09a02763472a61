"""The way to the worker: a process that answers, waits for its end, breaks, or takes too long."""

from __future__ import annotations

import sys
from pathlib import Path

import pytest

from bot.voice import ear as voice
from bot.voice.ear import BAD_SOUND, BROKEN, NO_EXTRA, TOO_LONG, Sounds, Worker
from core.app import Ears, Primer

TOLD = Primer("Doe 27 kindled 7.", ("Juno",), ("doe fourteen kindled",))
#: A worker that says how far it is and answers with what it was told; it dies at one file, hangs at another, and knows why of a third.
PROGRAM = """
import json, sys, time
for line in sys.stdin:
    asked = json.loads(line)
    if asked["sound"] == "dies":
        sys.exit(3)
    if asked["sound"] == "hangs":
        sys.stdin.read()
    if asked["sound"] == "garbles":
        print("no JSON", flush=True)
    print(json.dumps({"done": 1.5, "of": 3}), flush=True)
    told = {"problem": asked["sound"]} if asked["sound"] in ("too_long", "odd") else {"first": asked["manner"], "second": asked["names"][0], "seconds": 3.0}
    print(json.dumps(told), flush=True)
"""


def worker(within: float = 60) -> Worker:
    """The worker, not started yet."""
    return Worker((sys.executable, "-S", "-c", PROGRAM), within)


def test_a_worker_is_told_of_the_farm_and_stays_for_the_next_recording() -> None:
    """It hears in one process as often as it is asked, tells how far it is, and refuses with its reasons; what it does not explain is a breakdown."""
    ear = worker()
    far: list[tuple[float, float]] = []
    try:
        assert ear.hear(Path("a.ogg"), TOLD, lambda done, of: far.append((done, of))) == Sounds(Ears("Doe 27 kindled 7.", "Juno"), 3.0)
        assert far == [(1.5, 3)]
        first = ear._process
        assert ear.hear(Path("too_long"), TOLD) == TOO_LONG
        assert ear.hear(Path("odd"), TOLD) == BROKEN
        assert ear._process is first
    finally:
        ear.close()
    assert first is not None
    assert first.returncode is not None


@pytest.mark.parametrize("sound", ["dies", "garbles"])
def test_a_recording_that_breaks_the_worker_costs_only_itself(sound: str) -> None:
    """The next one gets a new process."""
    ear = worker()
    try:
        assert ear.hear(Path(sound), TOLD) == BROKEN
        assert isinstance(ear.hear(Path("a.ogg"), TOLD), Sounds)
    finally:
        ear.close()


def test_a_worker_that_does_not_come_to_an_end_is_ended() -> None:
    """It waits for more input, which never comes."""
    ear = worker(within=0.05)
    assert ear.hear(Path("hangs"), TOLD) == BROKEN
    ear.close()


def test_without_the_extra_there_is_no_ear(monkeypatch: pytest.MonkeyPatch) -> None:
    """One line says how to get it; with it the worker is ours, not started before it is needed."""
    monkeypatch.setattr(voice, "find_spec", lambda _name: None)
    assert voice.ear() == NO_EXTRA
    assert "pip install 'haynote[voice]'" in NO_EXTRA.remedy
    monkeypatch.setattr(voice, "find_spec", lambda name: name)
    ear = voice.ear()
    assert isinstance(ear, Worker)
    assert ear._process is None
    ear.close()
    assert BAD_SOUND.remedy
