"""Reads the transcripts of this folder: messages with the answers that are expected to them."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from datetime import date, datetime
from pathlib import Path
from zoneinfo import ZoneInfo

HERE = Path(__file__).parent
DAY = date(2026, 11, 25)
FARM = ZoneInfo("America/Chicago")
ANY = "..."

_SENT = re.compile(r"^(?:(\d{4}-\d\d-\d\d) )?(\d\d:\d\d) (\w+)(?: \((answers|edits) ([^)]+)\))?: ?(.*)$")
_CHOICE = re.compile(r"\[([^\]]+)\]")


@dataclass(slots=True)
class Turn:
    """One message and what is expected of it. `answers`: chore and animal; `edits`: the place of an earlier turn."""

    line: int
    at: datetime
    author: str
    text: str
    answers: tuple[str, str | None] | None = None
    edits: int | None = None
    reply: list[str] = field(default_factory=list)
    choices: list[str] = field(default_factory=list)
    why: str | None = None
    kinds: list[str] | None = None

    def same_reply(self, lines: list[str]) -> bool:
        """Whether the answer is as expected, `...` standing for any lines."""
        return _fits(self.reply, lines)


def _fits(expected: list[str], lines: list[str]) -> bool:
    if not expected:
        return not lines
    if expected[0] == ANY:
        return any(_fits(expected[1:], lines[start:]) for start in range(len(lines) + 1))
    return bool(lines) and expected[0] == lines[0] and _fits(expected[1:], lines[1:])


def transcripts() -> list[Path]:
    """All transcripts, by name."""
    return sorted(HERE.glob("*.txt"))


def turns(path: Path) -> list[Turn]:
    """The messages of a transcript. ValueError where a line is no line of one."""
    found: list[Turn] = []
    for number, line in enumerate(path.read_text(encoding="utf-8").splitlines(), start=1):
        if not line.strip() or line.startswith("#"):
            continue
        sent = _SENT.match(line)
        if sent:
            found.append(_turn(number, sent, found))
        elif line.startswith("  ") and found:
            _expect(found[-1], line[2:])
        else:
            raise ValueError(f"{path.name}, line {number}: neither a message nor an answer: {line!r}")
    return found


def _turn(number: int, sent: re.Match[str], before: list[Turn]) -> Turn:
    day, clock, author, how, what, text = sent.groups()
    at = datetime.combine(date.fromisoformat(day) if day else (before[-1].at.date() if before else DAY), datetime.min.time(), FARM)
    hour, minute = clock.split(":")
    turn = Turn(number, at.replace(hour=int(hour), minute=int(minute)), author, text)
    if how == "answers":
        chore, _, who = what.partition(" ")
        turn.answers = (chore, who or None)
    if how == "edits":
        turn.edits = next(place for place, each in enumerate(before) if f"{each.at:%H:%M}" == what)
    return turn


def _expect(turn: Turn, line: str) -> None:
    if line.startswith("| "):
        turn.text += "\n" + line[2:]
    elif line.startswith("? "):
        turn.why = line[2:].strip()
    elif line.startswith("= "):
        turn.kinds = [] if line[2:] == "nothing" else line[2:].split()
    elif line.startswith("[") and _CHOICE.sub("", line).strip() == "":
        turn.choices = _CHOICE.findall(line)
    else:
        turn.reply.append(line)
