"""The notes behind a finding: what was typed, when and by whom."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Any

from core.herd.state import folded
from core.notes.fact import to_json
from core.notes.journal import Entry

#: Fields of a fact that name an animal.
NAMED = ("who", "doe", "buck", "dam", "sire", "litter_of", "from", "to", "tag", "with")


@dataclass(frozen=True, slots=True)
class Behind:
    """One note: the day it is about, its words, and who wrote them."""

    on: date
    text: str
    author: str
    kind: str
    note: int

    def document(self) -> dict[str, Any]:
        """The note as a value."""
        return {"on": self.on.isoformat(), "text": self.text, "author": self.author, "kind": self.kind, "note": self.note}


def names(entry: Entry, tag: str) -> bool:
    """Whether the fact is about the animal of that tag."""
    said = to_json(entry.fact)
    return any(folded(str(said[name])) == folded(tag) for name in NAMED if said.get(name) is not None)


def notes_behind(entries: Iterable[Entry], tag: str, kinds: Sequence[str] | None = None) -> tuple[Behind, ...]:
    """The notes about an animal, of these kinds or of any, by day; each note once."""
    found: dict[int, Behind] = {}
    for entry in entries:
        if (kinds is None or entry.fact.kind in kinds) and names(entry, tag):
            on = getattr(entry.fact, "on", None)
            day = on if isinstance(on, date) and entry.fact.kind not in {"planned", "remind"} else entry.note.at.date()
            found.setdefault(entry.note.id, Behind(day, entry.note.text, entry.note.author, entry.fact.kind, entry.note.id))
    return tuple(sorted(found.values(), key=lambda one: (one.on, one.note)))
