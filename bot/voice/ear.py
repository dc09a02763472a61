"""The way to an ear: a process of its own, so that a recording that breaks it, or a slow one, harms nobody else.

It takes one recording at a time and stays for the next, since loading its model takes longer than listening does.
"""

from __future__ import annotations

import json
import subprocess
import sys
import threading
from collections.abc import Callable, Sequence
from contextlib import suppress
from dataclasses import dataclass
from importlib.util import find_spec
from pathlib import Path
from typing import IO, Any, Final, Protocol

from core.app import Ears, Primer
from core.problem import Problem

Progress = Callable[[float, float], None]  # seconds heard, of how many

#: A recording may take so long at most [s]; then the worker is ended and another started for the next.
WITHIN_S: Final = 120.0

#: Longer recordings are told about while they are listened to [s].
LONG_S: Final = 20.0

NO_EXTRA: Final = Problem(
    "no_voice", "Voice notes need an extra that is not installed here.", remedy="Type the note; or install it: pip install 'haynote[voice]'"
)
BAD_SOUND: Final = Problem("bad_sound", "That is no sound that I can hear.", remedy="Send it as a voice note, or type it.")
TOO_LONG: Final = Problem("too_long", "That is longer than two minutes.", remedy="Say it in shorter notes, or type it.")
NO_MODEL: Final = Problem(
    "no_model", "The folder of the model is not whole, or not the one expected.", remedy="Look at HAYNOTE_VOICE_MODEL."
)
BROKEN: Final = Problem("bad_sound", "Something went wrong while I listened.", remedy="Send it again, or type it.")
REFUSALS: Final = {each.code: each for each in (BAD_SOUND, TOO_LONG, NO_MODEL)}

#: What the extra brings.
NEEDS: Final = ("av", "faster_whisper")


@dataclass(frozen=True, slots=True)
class Sounds:
    """What was heard in a recording, and how long that is [s]."""

    ears: Ears
    seconds: float


class Ear(Protocol):
    """Whatever hears."""

    def hear(self, sound: Path, told: Primer, progress: Progress = ...) -> Sounds | Problem:
        """What was said in that file, or why nothing can be heard there."""
        ...

    def close(self) -> None:
        """Nothing more is to be heard."""
        ...


def _silent(_done: float, _all: float) -> None:
    """Progress that nobody watches."""


class Worker:
    """The worker process, started by the first recording."""

    def __init__(self, command: Sequence[str], within: float = WITHIN_S) -> None:
        """`command` starts it."""
        self._command = tuple(command)
        self._within = within
        self._process: subprocess.Popen[str] | None = None
        self._turn = threading.Lock()

    def hear(self, sound: Path, told: Primer, progress: Progress = _silent) -> Sounds | Problem:
        """What was said in that file; each waits for the one before."""
        asked = {"sound": str(sound), "manner": told.manner, "names": told.names, "sayings": told.sayings}
        with self._turn:
            process = self._running()
            end = threading.Timer(self._within, process.kill)
            end.start()
            try:
                answer = _answer(process, asked, progress)
            except (OSError, ValueError):  # it died, or was ended
                self._end()
                return BROKEN
            finally:
                end.cancel()
        if (why := answer.get("problem")) is not None:
            return REFUSALS.get(why, BROKEN)
        return Sounds(Ears(answer["first"], answer["second"]), answer["seconds"])

    def close(self) -> None:
        """End the process, also while it listens."""
        if (process := self._process) is not None:
            process.kill()
        with self._turn:
            self._end()

    def _running(self) -> subprocess.Popen[str]:
        if self._process is None or self._process.poll() is not None:
            self._end()
            self._process = subprocess.Popen(  # noqa: S603 - our own program
                self._command, stdin=subprocess.PIPE, stdout=subprocess.PIPE, text=True, encoding="utf-8"
            )
        return self._process

    def _end(self) -> None:
        process, self._process = self._process, None
        if process is not None:
            process.kill()
            process.wait()
            for pipe in (process.stdin, process.stdout):
                with suppress(OSError):
                    _pipe(pipe).close()


def _answer(process: subprocess.Popen[str], asked: dict[str, Any], progress: Progress) -> dict[str, Any]:
    """The worker's last word on a recording. ValueError where it ends without one."""
    pipe = _pipe(process.stdin)
    pipe.write(json.dumps(asked) + "\n")
    pipe.flush()
    for line in _pipe(process.stdout):
        said: dict[str, Any] = json.loads(line)
        if "done" not in said:
            return said
        progress(said["done"], said["of"])
    raise ValueError(process.poll())


def _pipe(pipe: IO[str] | None) -> IO[str]:
    if pipe is None:  # pragma: no cover - it was asked for when the process was started
        raise ValueError(pipe)
    return pipe


def ear() -> Ear | Problem:
    """The ear of this machine; how to get one, where there is none."""
    if any(find_spec(name) is None for name in NEEDS):
        return NO_EXTRA
    return Worker((sys.executable, "-m", "bot.voice.worker"))
