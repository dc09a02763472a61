"""A book begun in the middle: the animals are told first, and then what happened before that day."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from core.herd.state import Herd
from core.notes.as_notes import export_notes
from core.notes.kinds.query import Query
from core.notes.listen import Heard, listen
from core.notes.reading import Message
from core.notes.replay import Book, book
from core.reply import Reply

AT = datetime(2026, 11, 25, 13, 10, tzinfo=UTC)
TOLD = (
    "new doe 14 mini rex born 3/4/2025",
    "new buck 3 mini rex born 2/1/2025",
    "bred 14 to 3 on 9/24",
    "14 kindled 8, 2 dead on 10/25",
    "14 weighed 4-2 on 11/2",
)


def silent(_query: Query, _book: Book, _at: datetime) -> Reply:
    """Nobody asks anything here."""
    return Reply(())


def tell(kept: Book, *texts: str) -> tuple[Book, list[Heard]]:
    """The book after these notes, a minute apart, and what each came to."""
    heard = []
    for text in texts:
        number = str(kept.last_id + 1)
        heard.append(listen(kept, Message(text, AT + timedelta(minutes=kept.last_id), "me", "c", number), silent))
        kept = heard[-1].book
    return kept, heard


def test_what_happened_before_an_animal_was_told_of_counts() -> None:
    """The breeding of September gives the litter of October its sire, though both rabbits came on the book in November."""
    kept, heard = tell(book(Herd()), *TOLD)
    assert [each.note.ask for each in heard] == [None] * len(TOLD)
    (litter,) = kept.herd.litters.values()
    assert (litter.sire, litter.alive) == ("3", 6)
    assert kept.herd.find("14").weights  # type: ignore[union-attr]


def test_note_by_note_is_the_same_as_all_at_once() -> None:
    """The warm book and the one worked out whole agree."""
    kept, _ = tell(book(Herd()), *TOLD)
    assert book(Herd(), kept.notes).herd == kept.herd


def test_undoing_the_animal_withdraws_its_history() -> None:
    """Without the doe there is no litter; undoing that brings it back."""
    kept, _ = tell(book(Herd()), *TOLD)
    without, _ = tell(kept, "undo", "undo", "undo", "undo", "undo")
    assert without.herd.litters == {}
    assert without.herd.animals == {}


def test_an_export_begins_with_the_animals() -> None:
    """So that replaying it meets every animal before its history."""
    kept, _ = tell(book(Herd()), *TOLD)
    lines = list(export_notes(kept))
    assert ["new" in line for line in lines] == [True, True, False, False, False]
    assert lines[2] == "2026-11-25 2026-09-24: bred doe 14 to buck 3"


def test_an_animal_named_again_is_there_from_its_first_note() -> None:
    """A detail told later, or a number used again, does not move what happened in between."""
    kept, _ = tell(book(Herd()), *TOLD)
    later = AT + timedelta(days=20)
    kept = listen(kept, Message("14 is a doe", later, "me", "c", "90"), silent).book
    heard = listen(kept, Message("14 weighed 4-4 on 12/1", later, "me", "c", "91"), silent)
    assert [day.isoformat() for day, entry in heard.book.happened() if entry.fact.kind == "weighed"] == ["2026-11-25", "2026-12-01"]
