"""A file of dated notes: one a line, `2026-03-04 07:15 doe 14 kindled 8, 2 dead`.

The time may be missing (then noon), `#` begins a comment line, and a line that begins with two spaces goes on with the message above.
A line is known by its date, its time, its text and how many equal lines precede it, so the same file twice adds nothing.
"""

from __future__ import annotations

import hashlib
import re
from collections import Counter
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import date, datetime, time, tzinfo

from core.notes.reading import Message
from core.notes.talk.recall import REPLAY

_DATED = re.compile(r"^(?P<day>\d{4}-\d{2}-\d{2})(?:[ T](?P<time>\d{1,2}:\d{2})(?::\d{2})?)?(?:\s+|$)(?P<text>.*)$")
_NOON = time(12)  # not a figure: an hour of the day
_NO_TIME = "--:--"


@dataclass(frozen=True, slots=True)
class DatedLine:
    """A note of the file. `line` counts from 1; `number` is the line's identity; `time` is None where none was written."""

    line: int
    day: date
    time: time | None
    text: str
    number: str

    def message(self, timezone: tzinfo, author: str) -> Message:
        """The note as a message, sent at its own time."""
        at = datetime.combine(self.day, self.time or _NOON, tzinfo=timezone)
        return Message(self.text, at, author, REPLAY, self.number)


@dataclass(frozen=True, slots=True)
class UndatedLine:
    """A line that begins with no date, so that nobody can tell when it was meant."""

    line: int
    text: str


def dated_lines(text: str) -> Iterator[DatedLine | UndatedLine]:
    """The notes of a file, in its order; blank lines and comments left out."""
    seen: Counter[tuple[str, str, str]] = Counter()
    for line, said in _messages(text.splitlines()):
        found = _DATED.match(said.split("\n", 1)[0])
        day = _day(found.group("day")) if found else None
        clock = _clock(found.group("time")) if found else None
        if found is None or day is None or (clock is None and found.group("time")):
            yield UndatedLine(line, said)
            continue
        words = "\n".join([found.group("text"), *said.split("\n")[1:]]).strip()
        written = f"{clock:%H:%M}" if clock else _NO_TIME
        same = (day.isoformat(), written, words)
        seen[same] += 1
        yield DatedLine(line, day, clock, words, _identity(same, seen[same]))


def _messages(lines: Iterable[str]) -> Iterator[tuple[int, str]]:
    """Lines joined with those that go on with them, and where each begins."""
    begun: tuple[int, str] | None = None
    for number, line in enumerate(lines, start=1):
        if begun is not None and line.startswith("  ") and line.strip():
            begun = (begun[0], f"{begun[1]}\n{line[2:].rstrip()}")
            continue
        if not line.strip() or line.startswith("#"):
            continue
        if begun is not None:
            yield begun
        begun = (number, line.strip())
    if begun is not None:
        yield begun


def _day(said: str) -> date | None:
    try:
        return date.fromisoformat(said)
    except ValueError:
        return None


def _clock(said: str | None) -> time | None:
    if said is None:
        return None
    try:
        return time.fromisoformat(said.zfill(5))
    except ValueError:
        return None


def _identity(same: tuple[str, str, str], repeat: int) -> str:
    """`2026-03-04 07:15 9f86d081884c7d65 1`: short, and the same for the same line whatever stands around it."""
    day, clock, words = same
    digest = hashlib.sha256(words.encode()).hexdigest()[:16]
    return f"{day} {clock} {digest} {repeat}"


def written(day: date, text: str) -> str:
    """A note as such a line, further lines of its text indented."""
    first, *rest = text.strip().split("\n") if text.strip() else [""]
    return "\n".join([f"{day.isoformat()} {first}", *(f"  {line}" for line in rest if line.strip())])
