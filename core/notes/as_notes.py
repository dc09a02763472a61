"""Writing the book back as notes: each fact that stands as a sentence of its own kind, so that replaying them gives the same book."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date

from core.herd.state import Herd
from core.notes.fact import Fact
from core.notes.kinds import KIND_OF
from core.notes.layout.dated_lines import written
from core.notes.replay import Book, apply

#: Kinds that say something to the program, not to the book.
TALK = frozenset({"query", "undo", "correct"})

#: Said at the end of a line that would be asked about: the answer was yes.
CONFIRMED = ", confirmed"


def export_notes(book: Book) -> Iterator[str]:
    """The standing facts as dated lines, in the order they happened."""
    herd = book.start
    for day, entry in book.happened():
        herd = herd.on_day(day)
        if entry.fact.kind not in TALK:
            yield _line(entry.fact, herd, day)
        herd = apply(entry.fact, herd, day)


def _line(fact: Fact, herd: Herd, day: date) -> str:
    kind = KIND_OF[fact.kind]
    text = str(kind.show(fact, herd)).removeprefix(f"{day.isoformat()}: ").removeprefix(f"{day.isoformat()} ")
    doubtful = fact.kind != "remark" and kind.check(fact, herd, day) is not None
    return written(day, text + CONFIRMED if doubtful else text)
