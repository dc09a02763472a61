"""The ears themselves, where the extra is installed: `doe_fourteen.ogg` was spoken by flite's `slt`, no person's voice.

`pytest -m voice` runs these alone; without the extra they are skipped.
"""

from __future__ import annotations

import json
import math
import struct
import wave
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path

import pytest

from bot.voice.decode import LONGEST_S, RATE, NoSoundError, TooLongError, decoded
from bot.voice.ear import BAD_SOUND, Ear, Sounds, ear
from core.app import Message, Primer
from core.app.speaking import primer_of, told
from core.notes.replay import book
from core.notes.roster import herd_of

pytest.importorskip("faster_whisper", reason="the extra `voice` is not installed")
pytestmark = pytest.mark.voice

HERE = Path(__file__).parent
SPOKEN = HERE / "doe_fourteen.ogg"
FARM = book(herd_of(json.loads((HERE.parents[1] / "corpus" / "roster.json").read_text())))
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")


@pytest.fixture(scope="module")
def listening() -> Iterator[Ear]:
    """The worker, with both ears."""
    found = ear()
    assert not isinstance(found, type(BAD_SOUND))
    yield found
    found.close()


@pytest.fixture(scope="module")
def primer() -> Primer:
    """What it is told of the farm of the corpus."""
    return primer_of(FARM)


def sound(path: Path, seconds: float, hertz: float = 0.0) -> Path:
    """A recording of silence, or of a tone."""
    with wave.open(str(path), "wb") as file:
        file.setparams((1, 2, RATE, 0, "NONE", ""))
        count = int(seconds * RATE)
        loud = (int(8000 * math.sin(2 * math.pi * hertz * at / RATE)) for at in range(count))
        file.writeframes(b"".join(struct.pack("<h", each) for each in loud) if hertz else bytes(2 * count))
    return path


def test_a_voice_note_is_heard_by_both_ears(listening: Ear, primer: Primer) -> None:
    """OGG/Opus as a chat service carries it; both come to the same birth, which is sure."""
    found = listening.hear(SPOKEN, primer)
    assert isinstance(found, Sounds)
    document = told(FARM, found.ears, Message("", AT), found.seconds).document
    assert document["facts"] == [{"kind": "kindled", "doe": "14", "on": "2026-11-25", "born": 8, "alive": 6, "dead": 2}]
    assert document["sure"]
    assert document["second"] == "doe fourteen kindled eight two dead"


def test_silence_and_a_tone_hold_no_words(listening: Ear, primer: Primer, tmp_path: Path) -> None:
    """Nothing is heard, so nothing can be noted."""
    for at, hertz in enumerate((0.0, 440.0)):
        found = listening.hear(sound(tmp_path / f"{at}.wav", 1.0, hertz), primer)
        assert isinstance(found, Sounds)
        assert found.ears.first == ""


def test_what_is_no_sound(listening: Ear, primer: Primer, tmp_path: Path) -> None:
    """A picture with another name, half a recording, nothing at all: refused, and the worker goes on."""
    for name, content in (("picture", b"\x89PNG\r\n\x1a\n" + bytes(50)), ("half", SPOKEN.read_bytes()[:40]), ("none", b"")):
        (tmp_path / name).write_bytes(content)
        assert listening.hear(tmp_path / name, primer) == BAD_SOUND
        with pytest.raises(NoSoundError):
            decoded(tmp_path / name)


def test_what_is_too_long(tmp_path: Path) -> None:
    """No more is decoded than a note may last."""
    with pytest.raises(TooLongError):
        decoded(sound(tmp_path / "long.wav", LONGEST_S + 1))
