"""The journal of notes: append only, and which of its facts stand today.

A note may reverse earlier ones: an undo, a correction, an edit. Reversing a note that itself reversed something lets that
something stand again, so every undo can be undone.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
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
    """A fact that stands, and where it came from."""

    note: Note
    index: int
    fact: Fact


def standing(notes: Sequence[Note]) -> tuple[Entry, ...]:
    """The facts that stand, in the order they were told. Later reversals are weighed first: they may reverse reversals."""
    gone: set[Target] = set()
    kept: list[Entry] = []
    for note in sorted(notes, key=lambda each: each.id, reverse=True):
        if Target(note.id) in gone:
            continue
        gone.update(note.reverses)
        kept.extend(_entries(note, gone))
    return tuple(reversed(kept))


def _entries(note: Note, gone: set[Target]) -> Iterable[Entry]:
    """The note's facts that are not reversed, last first."""
    for index in range(len(note.facts) - 1, -1, -1):
        if Target(note.id, index) not in gone:
            yield Entry(note, index, note.facts[index])
