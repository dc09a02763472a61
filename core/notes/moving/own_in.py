"""Our own tables and our own JSON, come back: the facts as they were told, when, and by whom."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import datetime
from typing import Any

from core.notes.fact import Fact, from_json
from core.notes.journal import Note
from core.notes.kinds import KIND_OF
from core.notes.moving import document
from core.notes.moving.facts import fact_of
from core.notes.moving.grid import Grid
from core.notes.moving.own_tables import FORM, KEYS, TOLD
from core.notes.moving.table import Cell, unsafe
from core.problem import Problem

#: What the notes of another book are known by.
CHAT = "moved in"


@dataclass(frozen=True, slots=True)
class Once:
    """A fact with where it came from: its place among all, when it was told, by whom, in which note."""

    order: int
    at: datetime
    author: str
    note: int
    fact: Fact


def is_own(grids: Iterable[Grid]) -> bool:
    """Whether these are tables that `export` wrote."""
    return any(grid.rows and tuple(grid.rows[0][1][: len(KEYS)]) == KEYS and _kind(grid.name) in KIND_OF for grid in grids) or any(
        cells[:2] == ("form", FORM) for grid in grids for _, cells in grid.rows
    )


def _kind(name: str) -> str:
    return name.replace("told-", TOLD, 1).removeprefix(TOLD)


def own_facts(grids: Iterable[Grid]) -> tuple[Once, ...] | Problem:
    """The facts of our own tables, in the order told; or which row is none."""
    found: list[Once] = []
    for grid in grids:
        kind = _kind(grid.name)
        if kind not in KIND_OF or not grid.rows or tuple(grid.rows[0][1][: len(KEYS)]) != KEYS:
            continue
        heads = [str(head) for head in grid.rows[0][1]]
        for line, cells in grid.rows[1:]:
            said = {head: unsafe(cell) if isinstance(cell, str) else cell for head, cell in zip(heads, cells, strict=True)}
            try:
                found.append(_once(kind, said))
            except (KeyError, TypeError, ValueError):
                return _bad(f"Row {line} of {grid.name} is no fact of that kind.")
    return tuple(sorted(found, key=lambda each: each.order))


def _once(kind: str, said: Mapping[str, Cell]) -> Once:
    fact = fact_of(kind, {name: cell for name, cell in said.items() if name not in KEYS})
    return Once(int(str(said["order"])), _moment(str(said["told_at"])), str(said["told_by"]), int(str(said["note"])), fact)


def _moment(said: str) -> datetime:
    at = datetime.fromisoformat(said)
    if at.tzinfo is None:
        raise ValueError(said)
    return at


def document_facts(told: Any) -> tuple[Once, ...] | Problem:
    """The facts of our own JSON; or which is none."""
    if not isinstance(told, dict) or (told.get("form"), told.get("version")) != (document.FORM, document.VERSION):
        return _bad("This is no book of Haynote in JSON.")
    found = []
    for number, each in enumerate(told.get("facts") or (), start=1):
        try:
            fact = from_json(KIND_OF[each["fact"]["kind"]].fact, each["fact"])
            found.append(Once(int(each["order"]), _moment(each["told_at"]), str(each["told_by"]), int(each["note"]), fact))
        except (KeyError, TypeError, ValueError, AttributeError):
            return _bad(f"Fact {number} of the book can't be read.")
    return tuple(sorted(found, key=lambda each: each.order))


def _bad(text: str) -> Problem:
    return Problem("bad_tables", text, remedy="Nothing was changed. Give the whole of what 'haynote export' wrote.")


def notes_of(facts: Iterable[Once], first: int = 1) -> tuple[Note, ...]:
    """The facts as notes, one for each that told some of them in a row, at its own time and by its own author."""
    runs: list[list[Once]] = []
    for one in facts:
        last = runs[-1][0] if runs else None
        if last is not None and (last.note, last.at, last.author) == (one.note, one.at, one.author):
            runs[-1].append(one)
        else:
            runs.append([one])
    return tuple(_note(number, run) for number, run in enumerate(runs, start=first))


def _note(number: int, run: list[Once]) -> Note:
    return Note(
        number,
        f"note {run[0].note} of the book moved in",
        run[0].at,
        run[0].author,
        CHAT,
        str(number),
        facts=tuple(one.fact for one in run),
    )
