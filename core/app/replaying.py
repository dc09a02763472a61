"""Taking in a file of dated notes: each line at its own time, none twice, and at the end those that ask or were not understood."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time
from typing import Any

from core.app.hearing import Hearing
from core.app.reading import what_is_wrong
from core.app.telling import Told
from core.notes.fact import Fact
from core.notes.journal import Note
from core.notes.layout.dated_lines import DatedLine, UndatedLine, dated_lines
from core.notes.listen import Heard
from core.notes.replay import zone
from core.notes.roster import facts_of
from core.notes.talk.recall import REPLAY
from core.problem import Problem
from core.reply import Reply
from core.words import count

#: Lines written down in one transaction: a power cut costs a moment's work, and the disk is not asked for each line.
TOGETHER = 100

#: What a roster's note is known by, so that it is taken in once.
ROSTER = "roster"

#: Lines that the reply names; `--json` has them all.
NAMED = 20

Progress = Callable[[int, int], None]


@dataclass(slots=True)
class Outcome:
    """What became of the lines."""

    lines: int = 0
    recorded: int = 0
    asked: list[dict[str, Any]] = field(default_factory=list)
    unread: list[dict[str, Any]] = field(default_factory=list)

    def told(self) -> Told:
        """The outcome as the contract prints it, and as a person reads it."""
        document = {"lines": self.lines, "recorded": self.recorded, "asked": self.asked, "unread": self.unread}
        head = f"{count(self.lines, 'line')} read, {self.recorded} newly recorded, {len(self.asked)} to ask about, {len(self.unread)} not understood."
        lines = [f"Line {each['line']}: {each['text']} - {each['question']}" for each in self.asked]
        lines += [f"Line {each['line']}: {each['text']} - not understood" for each in self.unread]
        more = (f"And {len(lines) - NAMED} more: --json lists them all.",) if len(lines) > NAMED else ()
        return Told(document, Reply((head, *lines[:NAMED], *more)))


def replayed(hearing: Hearing, text: str, author: str, progress: Progress) -> Told:
    """Every note of the file heard. A line that asks records what is safe; the next line never answers it."""
    lines = list(dated_lines(text))
    outcome = Outcome(lines=len(lines))
    for start in range(0, len(lines), TOGETHER):
        _heard(hearing, lines[start : start + TOGETHER], author, outcome)
        progress(min(start + TOGETHER, len(lines)), len(lines))
    return outcome.told()


def _heard(hearing: Hearing, lines: Sequence[DatedLine | UndatedLine], author: str, outcome: Outcome) -> None:
    """Some lines heard in one transaction. Times are the farm's, as its notes say by then."""
    with hearing.turn() as turn:
        for line in lines:
            if isinstance(line, UndatedLine):
                outcome.unread.append({"line": line.line, "text": line.text})
            else:
                timezone = zone(turn.book.herd.settings.timezone)
                _weigh(outcome, line, turn.hear(line.message(timezone, author)))


def _weigh(outcome: Outcome, line: DatedLine, heard: Heard) -> None:
    """Count a line by what became of it."""
    note = heard.note
    outcome.recorded += bool(heard.is_new and note.facts)
    if note.ask is not None:
        outcome.asked.append({"line": line.line, "text": line.text, "why": note.ask.why, "question": note.ask.text})
    elif not note.facts:
        outcome.unread.append({"line": line.line, "text": line.text})


def take_roster(hearing: Hearing, roster: Any, text: str, author: str) -> Problem | None:
    """Take a roster's settings and animals into an empty book; None once they are there. A book that has this roster is left alone."""
    try:
        facts = facts_of(roster)
        at = _before_all(facts, text, roster)
    except (AttributeError, KeyError, TypeError, ValueError) as error:
        reason = f"The roster can't be read: {what_is_wrong(error)}."
        return Problem(
            "bad_roster", reason, remedy="It is one JSON object with farm, animals, breedings and litters; only tags are needed."
        )
    with hearing.turn() as turn:
        if any(note.number == ROSTER and note.facts == facts for note in turn.book.notes[:1]):
            return None
        if turn.book.notes:
            return Problem("not_empty", "A roster begins an empty book, and this one has notes.", remedy="Give a new book: --book FILE.")
        turn.write(Note(1, ROSTER, at, author, REPLAY, ROSTER, facts=facts))
    return None


def _before_all(facts: Sequence[Fact], text: str, roster: Any) -> datetime:
    """A moment before anything that the roster or the file tells of: the animals must be there when it happens to them."""
    days = [*_days(facts), *(line.day for line in dated_lines(text) if isinstance(line, DatedLine))]
    timezone = zone(str((roster.get("farm") or {}).get("timezone", "UTC")))
    if not days:
        return datetime.fromisoformat(roster["now"]) if roster.get("now") else datetime.combine(date.min, time(), UTC)
    return datetime.combine(min(days), time(), timezone)


def _days(facts: Sequence[Fact]) -> Iterator[date]:
    for fact in facts:
        for name in ("on", "born"):
            day = getattr(fact, name, None)
            if isinstance(day, date):
                yield day
