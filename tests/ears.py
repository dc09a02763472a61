"""An ear that hears what it was told to: recordings are files whose text is what was spoken in them.

first words                 what the one ear hears
| other words               what the other hears, behind a stroke; without one there is no other ear
"""

from __future__ import annotations

from pathlib import Path

from bot.voice.ear import BAD_SOUND, Progress, Sounds
from core.app import Ears, Primer
from core.problem import Problem


class FakeEar:
    """Hears at once; a file that is no text is no sound."""

    def __init__(self, seconds: float = 3.0) -> None:
        """Every recording is so long."""
        self.seconds = seconds
        self.told: list[Primer] = []

    def hear(self, sound: Path, told: Primer, progress: Progress = lambda _done, _all: None) -> Sounds | Problem:
        """The words in the file."""
        self.told.append(told)
        try:
            first, stroke, second = sound.read_bytes().decode().partition("|")
        except UnicodeDecodeError:
            return BAD_SOUND
        progress(self.seconds, self.seconds)
        return Sounds(Ears(first.strip(), second.strip() if stroke else None), self.seconds)

    def close(self) -> None:
        """Nothing to end."""
