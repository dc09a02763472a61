"""A recording in the chat of a terminal: the name of a file typed, or dropped there, is heard as a voice note on a phone."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from typing import TYPE_CHECKING

from bot.voice import ear as voice
from core.app import Message
from core.app.speaking import spoken
from core.problem import Problem
from core.reply import Reply

if TYPE_CHECKING:
    from bot.voice.ear import Ear
    from core.app import App

#: How the name of a recording ends.
ENDINGS = frozenset({".ogg", ".oga", ".opus", ".mp3", ".m4a", ".aac", ".wav", ".flac", ".webm", ".amr", ".3gp"})


class Sounds:
    """Who listens in a terminal; one for a whole chat."""

    def __init__(self, app: App, tells: Callable[[str], object]) -> None:
        """`tells` is told how far a recording is that takes long."""
        self._app = app
        self._tells = tells
        self._ear: Ear | Problem | None = None

    def answer(self, message: Message) -> Reply | None:
        """What is answered to a recording, or to a choice about one; None where the words are neither."""
        if (waits := spoken(message.text)) is not None:
            return self._app.answer_spoken(waits, message)
        file = recording(message.text)
        if file is None:
            return None
        self._ear = self._ear or voice.ear()
        found = self._ear if isinstance(self._ear, Problem) else self._ear.hear(file, self._app.primer(), self._watch)
        if isinstance(found, Problem):
            return Reply((f"{found.text} {found.remedy}".strip(),))
        return self._app.hear_spoken(found.ears, message)

    def close(self) -> None:
        """No more listening."""
        if self._ear is not None and not isinstance(self._ear, Problem):
            self._ear.close()

    def _watch(self, done: float, of: float) -> None:
        if of > voice.LONG_S:
            self._tells(f"Heard {done:.0f} of {of:.0f} s.")


def recording(text: str) -> Path | None:
    """The recording that the words name; None where they name none."""
    path = Path(text.strip().strip("'\""))
    try:
        return path if path.suffix.lower() in ENDINGS and path.is_file() else None
    except (OSError, ValueError):  # words that are no name of a file
        return None
