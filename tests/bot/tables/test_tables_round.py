"""A workbook that went out comes in again: nothing that its cells can hold is lost, and what they can't hold is told in it."""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any

from hypothesis import given
from hypothesis import strategies as st

from bot.tables.sheets import sheets_of
from bot.tables.workbook import workbook
from core.herd.state import Herd
from core.notes.journal import Note
from core.notes.moving.grid import tidy
from core.notes.moving.own_in import own_facts
from core.notes.moving.own_tables import LEFT_OUT, own_tables
from core.notes.replay import book
from core.problem import Problem
from tests.strategies import written_facts

NOW = datetime(2026, 11, 25, 13, 10, tzinfo=UTC)


@given(st.lists(st.one_of(*written_facts().values()), max_size=4))
def test_any_book_comes_back_from_a_workbook(facts: list[Any]) -> None:
    """Or its first sheet says more than that tables leave some things to other forms."""
    told = book(Herd(), [Note(1, "=told", NOW, "ann", facts=tuple(facts))])
    grids = [tidy(name, rows) for name, rows in sheets_of("book.xlsx", workbook(own_tables(told, "home")))]
    lost = [cells[1] for _, cells in grids[0].rows if cells[0] == "not here" and cells[1] not in LEFT_OUT]
    found = own_facts(grids)
    assert not isinstance(found, Problem)
    if not lost:
        assert [(one.fact, one.at, one.author) for one in found] == [
            (fact, NOW, "ann") for fact in facts if fact.kind not in {"query", "undo", "correct"}
        ]
