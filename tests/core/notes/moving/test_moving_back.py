"""Our own tables and our own JSON, come back as the facts that they were."""

from __future__ import annotations

import json
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.herd.state import Herd
from core.notes.journal import Note
from core.notes.moving.document import document
from core.notes.moving.grid import Grid, grid_of, tidy
from core.notes.moving.own_in import document_facts, is_own, notes_of, own_facts
from core.notes.moving.own_tables import own_tables, told_entries
from core.notes.moving.table import csv_text
from core.notes.replay import Book, book
from core.problem import Problem
from tests.core.notes.talking import NOW, Barn
from tests.strategies import written_facts

FACTS = written_facts()


def written(told: Book) -> list[Grid]:
    """The tables as CSV files have them."""
    return [grid_of(csv_text(table), table.name.replace(" ", "-")) for table in own_tables(told, "home")]


def stands(told: Book) -> list[Any]:
    """The facts that stand, with the day and the author of each."""
    return [(entry.fact, entry.note.at, entry.note.author) for entry in told_entries(told)]


@given(st.lists(st.one_of(*FACTS.values()), max_size=6))
def test_any_book_comes_back_from_each_form(facts: list[Any]) -> None:
    """The same facts, in the same order, told at the same time by the same person."""
    told = book(Herd(), [Note(1, "=told", NOW, "ann", facts=tuple(facts))])
    from_tables = own_facts(written(told))
    from_json = document_facts(json.loads(json.dumps(document(told, "home"))))
    assert not isinstance(from_tables, Problem)
    assert from_tables == from_json
    assert stands(book(Herd(), notes_of(from_tables))) == stands(told)


def test_a_book_with_corrections_comes_back_equal() -> None:
    """What was undone is gone; what was put right stands in its place; the herd is the same."""
    barn = Barn(book(Herd()))
    for text in ("new doe 14 mini rex", "new buck 3 mini rex", "14 x 3 on 11/1", "14 4-2", "no, 4-6", "3 5-1", "undo", "box in 14"):
        barn.say(text)
    found = own_facts(written(barn.book))
    assert not isinstance(found, Problem)
    again = book(Herd(), notes_of(found))
    assert stands(again) == stands(barn.book)
    assert again.herd == barn.herd


def test_which_tables_are_ours() -> None:
    """By what the first cells of `about` say, or by the head of a table of facts."""
    barn = Barn()
    barn.say("31 3-14")
    grids = written(barn.book)
    assert is_own(grids)
    assert is_own([grid for grid in grids if grid.name.startswith("told")])
    assert not is_own([grid_of("Tag,Sex\n14,d\n", "herd"), tidy("none", [])])
    assert own_facts([grid_of("x,y\n1,2\n", "told-weighed"), tidy("told-weighed", []), grid_of("x\n", "herd")]) == ()


@pytest.mark.parametrize(("good", "bad"), [("31", ""), ("2026", "soon "), ("+00:00", ""), ("ann,1", "ann,one")])
def test_a_table_that_was_spoilt_is_refused(good: str, bad: str) -> None:
    """With the row that is none."""
    barn = Barn()
    barn.say("31 3-14")
    text = next(csv_text(table) for table in own_tables(barn.book, "home") if table.name == "told weighed")
    assert isinstance(own_facts([grid_of(text, "told-weighed")]), tuple)
    found = own_facts([grid_of(text.replace(good, bad), "told-weighed")])
    assert isinstance(found, Problem)
    assert found.text == "Row 2 of told-weighed is no fact of that kind."


def test_a_document_that_was_spoilt_is_refused() -> None:
    """It is another thing, or a fact of it is none."""
    barn = Barn()
    barn.say("31 3-14")
    good = document(barn.book, "home")
    for spoilt in (None, [], {**good, "version": 2}, {**good, "facts": [{"order": 1}]}, {**good, "facts": ["x"]}):
        assert isinstance(document_facts(spoilt), Problem)
    found = document_facts({**good, "facts": None})
    assert found == ()


def test_notes_are_parted_as_they_were() -> None:
    """One for each note that told some in a row."""
    barn = Barn()
    barn.say("31 3-14, 32 4-1")
    barn.say("box in 14", author="bob", minutes=5)
    found = document_facts(json.loads(json.dumps(document(barn.book, "home"))))
    assert not isinstance(found, Problem)
    notes = notes_of(found, 5)
    assert [(note.id, note.author, note.facts) for note in notes] == [
        (5, "ann", barn.book.notes[0].facts),
        (6, "bob", barn.book.notes[1].facts),
    ]
