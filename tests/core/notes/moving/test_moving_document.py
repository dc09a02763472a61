"""The book as one JSON object, as the published schema says."""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import fastjsonschema
import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.herd.state import Herd
from core.notes.journal import Note
from core.notes.moving.document import document, page, schema
from core.notes.replay import book
from tests.core.notes.talking import NOW, Barn
from tests.farm import small_herd
from tests.strategies import written_facts

PUBLISHED = Path(__file__).parents[4] / "docs" / "reference" / "book.schema.json"
FACTS = written_facts()
valid = fastjsonschema.compile(schema())


def test_the_published_schema_is_current() -> None:
    """`python -m core.notes.moving.document > docs/reference/book.schema.json` made it."""
    assert PUBLISHED.read_text(encoding="utf-8") == page()


@given(st.lists(st.one_of(*FACTS.values()), max_size=6))
def test_any_book_fits_the_schema(facts: list[Any]) -> None:
    """Every kind, every field said and unsaid; it is JSON through and through."""
    told = document(book(small_herd(), [Note(1, "=told", NOW, "ann", facts=tuple(facts))]), "home")
    assert valid(json.loads(json.dumps(told))) == told
    assert len(told["facts"]) == sum(fact.kind not in {"query", "undo", "correct"} for fact in facts)


@pytest.mark.parametrize("spoilt", [{"grams": "4 lb"}, {"grams": None}, {"whom": "31"}, {"kind": "hummed"}])
def test_what_does_not_fit_is_refused(spoilt: dict[str, Any]) -> None:
    """The schema can say no."""
    barn = Barn()
    barn.say("31 3-14")
    told = document(barn.book, "home")
    told["facts"][0]["fact"] |= spoilt
    with pytest.raises(fastjsonschema.JsonSchemaValueException):
        valid(told)


def test_an_empty_book_fits() -> None:
    """Nothing told, nothing there."""
    assert valid(document(book(Herd()), "home"))["facts"] == []
