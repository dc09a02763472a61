"""The process that listens: a line of JSON in, what was heard out, one recording after the other.

It is nice to what else the machine does, and whatever a library prints goes where it can't be taken for an answer.
"""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import IO, Any, Final, Protocol

from bot.settings import Settings, settings
from bot.voice.decode import RATE, NoSoundError, TooLongError, decoded
from bot.voice.pieces import Samples, is_silent, pieces
from bot.voice.sphinx import Sphinx, can_hear
from bot.voice.whisper import NoModelError, Whisper, model_folder

#: Steps behind what else the machine does.
NICE: Final = 10

Say = Callable[[dict[str, Any]], None]


class FirstEar(Protocol):
    """What turns a piece of sound into words, told how notes sound."""

    def hear(self, samples: Samples, manner: str) -> str:
        """The words; empty where nobody speaks."""
        ...


class SecondEar(Protocol):
    """What turns a piece of sound into words of one farm's sentences."""

    def hear(self, samples: Samples) -> str:
        """The words."""
        ...


Sayings = tuple[tuple[str, ...], tuple[str, ...]]  # sentences, names


@dataclass
class Listener:
    """The ears, each loaded when it is first needed; the other one anew where a farm's sentences are others."""

    loads: Callable[[], FirstEar]
    loads_second: Callable[[tuple[str, ...], tuple[str, ...]], SecondEar] | None = None
    decodes: Callable[[Path], Samples] = decoded
    _first: FirstEar | None = None
    _second: tuple[Sayings, SecondEar] | None = None

    def answer(self, asked: dict[str, Any], say: Say) -> dict[str, Any]:
        """What was heard in a recording, or why nothing could be."""
        try:
            samples = self.decodes(Path(asked["sound"]))
            return self._heard(samples, asked, say) | {"seconds": round(len(samples) / RATE, 2)}
        except NoSoundError:
            return {"problem": "bad_sound"}
        except TooLongError:
            return {"problem": "too_long"}
        except NoModelError:
            return {"problem": "no_model"}

    def _heard(self, samples: Samples, asked: dict[str, Any], say: Say) -> dict[str, Any]:
        self._first = self._first or self.loads()
        other = self._other(asked)
        first: list[str] = []
        second: list[str] = []
        done = 0
        for piece in pieces(samples, RATE):
            if not is_silent(piece, RATE):
                first.append(self._first.hear(piece, asked["manner"]))
                second += [other.hear(piece)] if other is not None and first[-1] else []
            done += len(piece)
            say({"done": done / RATE, "of": len(samples) / RATE})
        return {"first": _joined(first), "second": None if other is None else _joined(second)}

    def _other(self, asked: dict[str, Any]) -> SecondEar | None:
        """The other ear, made for these sentences."""
        if self.loads_second is None:
            return None
        told = (tuple(asked["sayings"]), tuple(asked["names"]))
        if self._second is None or self._second[0] != told:
            self._second = (told, self.loads_second(*told))
        return self._second[1]


def _joined(parts: list[str]) -> str:
    return " ".join(filter(None, parts))


def work(lines: IO[str], out: IO[str], listener: Listener) -> None:
    """Answer line by line until there are no more."""

    def say(answer: dict[str, Any]) -> None:
        out.write(json.dumps(answer, ensure_ascii=False) + "\n")
        out.flush()

    for line in lines:
        say(listener.answer(json.loads(line), say))


def main() -> None:  # pragma: no cover - a process of its own, and the extra
    """Run as a process of its own."""
    if hasattr(os, "nice"):
        os.nice(NICE)
    out = os.fdopen(os.dup(sys.stdout.fileno()), "w", encoding="utf-8")
    os.dup2(sys.stderr.fileno(), sys.stdout.fileno())
    kept = settings()
    named = kept.voice_model if isinstance(kept, Settings) else None  # what is wrong with the settings, who started this has told
    work(sys.stdin, out, Listener(lambda: Whisper(model_folder(named)), Sphinx if can_hear() else None))


if __name__ == "__main__":  # pragma: no cover - as above
    main()
