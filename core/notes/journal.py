"""The journal of notes: append only, and which of its facts stand today.

A note may reverse earlier ones: an undo, a correction, an edit. Reversing a note that itself reversed something lets that
something stand again, so every undo can be undone.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import datetime

from core.notes.fact import Fact
from core.notes.reading import Ask, Reading, ReplyTo


@dataclass(frozen=True, slots=True)
class Target:
    """What a note reverses: a whole note, or one fact of it."""

    note: int
    index: int | None = None


@dataclass(frozen=True, slots=True)
class Note:
    """A message as it was taken into the journal. `id` grows by one a note of the farm; facts are known by their place in it."""

    id: int
    text: str
    at: datetime
    author: str
    chat: str = ""
    number: str = ""
    edit: int = 0
    reply_to: ReplyTo | None = None
    facts: tuple[Fact, ...] = ()
    reverses: tuple[Target, ...] = ()
    ask: Ask | None = None
    subject: str | None = None
    unread: str = ""
    reply: str = ""

    @property
    def reading(self) -> Reading:
        """What the message was understood as."""
        return Reading(self.facts, self.ask, self.unread, self.subject)


@dataclass(frozen=True, slots=True)
class Entry:
    """A fact that stands, and where it came from. `origin` is the (note, index) that it put right, where it is a correction."""

    note: Note
    index: int
    fact: Fact
    origin: tuple[int, int] | None = None

    @property
    def place(self) -> tuple[int, int]:
        """Its place among the facts of a day: a fact put right stays where the first one was."""
        return self.origin or (self.note.id, self.index)

    @property
    def target(self) -> Target:
        """What a reversal of this fact alone would name."""
        return Target(self.note.id, self.index)


def standing(notes: Sequence[Note]) -> tuple[Entry, ...]:
    """The facts that stand, in the order they were told. Later reversals are weighed first: they may reverse reversals."""
    gone: set[Target] = set()
    kept: list[Entry] = []
    by_id: dict[int, Note] = {}
    for note in sorted(notes, key=lambda each: each.id, reverse=True):
        if Target(note.id) in gone:
            continue
        gone.update(note.reverses)
        if note.reverses and not by_id:
            by_id = {each.id: each for each in notes}
        kept.extend(_entries(note, gone, by_id))
    return tuple(reversed(kept))


def _entries(note: Note, gone: set[Target], by_id: Mapping[int, Note]) -> Iterable[Entry]:
    """The note's facts that are not reversed, last first."""
    for index in range(len(note.facts) - 1, -1, -1):
        if Target(note.id, index) not in gone:
            yield Entry(note, index, note.facts[index], _origin(note, index, by_id))


def _origin(note: Note, index: int, by_id: Mapping[int, Note]) -> tuple[int, int] | None:
    """Where the fact was first told: an edit stands where the message was, a corrected fact where the wrong one was.

    A correction's facts are the `correct` itself and then, in order, what its reversals become.
    """
    if note.reverses and note.facts[0].kind == "correct":
        target = note.reverses[index - len(note.facts)] if index else None
        if target is None or target.index is None or target.note not in by_id:
            return None
        return _origin(by_id[target.note], target.index, by_id) or (target.note, target.index)
    return (_first_version(note, by_id), index) if note.edit else None


def _first_version(note: Note, by_id: Mapping[int, Note]) -> int:
    """The number of the message as it was first sent: an edit takes back every version before it."""
    versions = [target.note for target in note.reverses if target.index is None and target.note in by_id]
    return min([note.id, *versions])
