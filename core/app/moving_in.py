"""Moving in: other people's spreadsheets, and our own tables and JSON come back. Looked at first, then recorded as one note."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import datetime
from typing import TYPE_CHECKING, Any

from core.app.room import Room
from core.app.telling import Told
from core.notes.journal import Note
from core.notes.replay import Book, local_day
from core.problem import Problem
from core.reply import Reply
from core.words import count

if TYPE_CHECKING:
    from core.notes.moving.grid import Grid
    from core.notes.moving.intake import Intake
    from core.notes.moving.own_in import Once
    from core.notes.moving.table import Cell

#: A sheet by its name: a text file's bytes, or numbered rows of cells.
Sheet = tuple[str, "bytes | Sequence[tuple[int, Sequence[Cell]]]"]

#: What an import's note is known by.
CHAT = "moved in"


@dataclass(frozen=True, slots=True)
class Brought:
    """A file that somebody brings along: its name, its sheets, who brings it and when, and the words that came with it."""

    name: str
    sheets: Sequence[Sheet]
    author: str
    at: datetime
    words: str = ""


def _silent(_done: int, _all: int) -> None:
    """Progress that nobody watches."""


class MovingIn(Room):
    """What the farm brings along."""

    @staticmethod
    def is_book(sheets: Sequence[Sheet]) -> bool:
        """Whether the sheets are a book of Haynote that `export` wrote: it brings its own settings."""
        return own_of(sheets) is not None

    def move_in(
        self,
        brought: Brought,
        decisions: Mapping[str, str] | None = None,
        *,
        dry: bool = False,
        progress: Callable[[int, int], None] = _silent,
    ) -> Told | Problem:
        """What the sheets of that file come to; recorded, unless it is a dry run. A Problem while something has to be asked."""
        own = own_of(brought.sheets)
        if isinstance(own, Problem):
            return own
        with self._hearing.turn() as turn:
            if own is not None:
                back, notes = come_back(turn.book, own, brought, dry=dry)
                for note in notes:
                    turn.write(note)
                return back
            found = understood(turn.book, brought, decisions or {}, progress)
            if isinstance(found, Problem):
                return found
            if found.questions and not dry:
                return _to_ask(found)
            if found.facts and not dry:
                turn.write(note_of(turn.book, found, brought))
            return _told(found, dry=dry)


def own_of(sheets: Sequence[Sheet]) -> tuple[Once, ...] | Problem | None:
    """The facts of tables or JSON that `export` wrote; None where they are somebody else's."""
    from core.notes.moving import own_in  # noqa: PLC0415 - only who moves in needs it

    content = sheets[0][1] if len(sheets) == 1 else None
    if isinstance(content, bytes) and content.lstrip()[:1] == b"{":
        try:
            return own_in.document_facts(json.loads(content))
        except ValueError:
            return own_in.document_facts(None)
    grids = _grids(sheets)
    return own_in.own_facts(grids) if own_in.is_own(grids) else None


def _grids(sheets: Sequence[Sheet]) -> list[Grid]:
    from core.notes.moving.grid import decoded, grid_of, is_text, tidy  # noqa: PLC0415

    told = [(name, decoded(content) if isinstance(content, bytes) else content) for name, content in sheets]
    return [grid_of(each if is_text(each) else "", name) if isinstance(each, str) else tidy(name, each) for name, each in told]


def understood(
    book: Book, brought: Brought, decisions: Mapping[str, str], progress: Callable[[int, int], None] = _silent
) -> Intake | Problem:
    """What other people's sheets come to in that book; a Problem where there is nothing in them."""
    from core.notes.moving.intake import intake  # noqa: PLC0415

    standing = (entry.fact for entry in book.standing())
    said = {key.lower(): value for key, value in decisions.items()}
    found = intake(_grids(brought.sheets), book.herd, standing, said, local_day(brought.at, book.herd), progress)
    if found.rows:
        return found
    return Problem(
        "bad_tables", f"There are no rows in {brought.name}.", remedy="Give a CSV file or a workbook with a row an animal or a litter."
    )


def _to_ask(found: Intake) -> Problem:
    """What has to be known first, and how to say it."""
    asks = [f"{each.text} Say --as {each.key}={'|'.join(each.choices) or 'DAY'}" for each in found.questions]
    if found.questions[0].key == "tag":
        asks[0] = f'{found.questions[0].text} Say --as "HEADING=tag"'
    first = found.questions[0]
    return Problem(
        "ask_first",
        "\n".join(asks),
        first.choices,
        "Nothing was recorded. 'haynote import FILE --dry-run' shows what each row would become.",
    )


def note_of(book: Book, found: Intake, brought: Brought) -> Note:
    """The note of an import: its words say where each fact came from, its number which content it was."""
    rows = [f"{row.sheet}, row {row.line}: {row.text}" for row in found.rows if row.facts]
    head = f"moved in from {brought.name}" + (f": {brought.words}" if brought.words else "")
    text = "\n".join((head, *rows))
    told = [(name, each if isinstance(each, bytes) else list(each)) for name, each in brought.sheets]
    content = hashlib.sha256(repr(told).encode()).hexdigest()
    before = sum(note.chat == CHAT and note.number.startswith(content) for note in book.notes)
    reply = f"{count(len(found.facts), 'note')} moved in from {brought.name}."
    facts = tuple(fact for fact, _ in found.facts)
    return Note(book.last_id + 1, text, brought.at, brought.author, CHAT, f"{content}.{before}", facts=facts, reply=reply)


def _told(found: Intake, *, dry: bool) -> Told:
    lines = list(found.lines())
    lines += [f"To be asked: {each.text}" for each in found.questions]
    end = "Nothing is recorded: this was a dry run." if dry else "Recorded as one note: 'haynote say undo' takes all of it back."
    if not found.facts:
        end = "Nothing new was in it."
    return Told({"recorded": 0 if dry else len(found.facts), "dry_run": dry, **found.document()}, Reply((*lines, end)))


def come_back(book: Book, facts: Sequence[Once], brought: Brought, *, dry: bool) -> tuple[Told, Sequence[Note]]:
    """Our own tables: what is told of them, and the notes to write. Into an empty book those that they were; into another one of what it lacks."""
    from core.notes.moving.own_in import notes_of  # noqa: PLC0415

    if not book.notes:
        notes: Sequence[Note] = notes_of(facts)
        new = len(facts)
    else:
        stands = {entry.fact for entry in book.standing()}
        lacking = tuple(one.fact for one in facts if one.fact not in stands)
        new = len(lacking)
        new_one = Note(book.last_id + 1, f"moved in from {brought.name}", brought.at, brought.author, CHAT)
        notes = [replace(new_one, number=f"{brought.name}.{new_one.id}", facts=lacking)] if lacking else []
    document: dict[str, Any] = {"recorded": 0 if dry else new, "dry_run": dry, "sheets": [], "questions": [], "facts": {}, "rows": []}
    said = f"{brought.name} is a book of Haynote: {count(len(facts), 'fact')}, {new} of them new here."
    told = Told(document, Reply((said, "Nothing is recorded: this was a dry run." if dry else "They are on the book.")))
    return told, () if dry else notes
