"""The book as tables: cells that lose nothing and start no formula, and what stands in which table."""

from __future__ import annotations

import csv
import io
from datetime import date
from decimal import Decimal

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.herd.state import Herd
from core.notes.fact import Cents, ColorCounts, field_names
from core.notes.journal import Note
from core.notes.moving.facts import cells_of, fact_of
from core.notes.moving.own_tables import KEYS, own_tables
from core.notes.moving.table import Cell, Table, csv_text, safe, unsafe, written
from core.notes.replay import book
from tests.core.notes.talking import NOW, Barn
from tests.farm import fact
from tests.strategies import written_facts

FACTS = written_facts()
FORMULAS = ("=1+1", "+1", "-1", "@sum", "\tx", "\rx", "'=1", "''+")


@pytest.mark.parametrize("kind", sorted(set(FACTS) - {"query", "undo", "correct"}))
@given(data=st.data())
def test_a_facts_cells_make_the_same_fact(kind: str, data: st.DataObject) -> None:
    """As a spreadsheet keeps them, and as the text of a CSV file."""
    told = data.draw(FACTS[kind])
    columns = [names.json for names in field_names(told)]
    cells = cells_of(told)

    assert fact_of(kind, dict(zip(columns, cells, strict=True))) == told
    assert fact_of(kind, {name: unsafe(written(cell)) for name, cell in zip(columns, cells, strict=True)}) == told


@pytest.mark.parametrize(
    ("kind", "said"),
    [
        ("weighed", {"who": "31", "on": "2026-03-04", "grams": "4.5"}),
        ("weighed", {"who": "31", "on": "2026-03-04", "grams": "four"}),
        ("weighed", {"who": "31", "on": "2026-03-04", "grams": True}),
        ("weighed", {"who": "31", "on": "4th", "grams": 4}),
        ("weighed", {"who": "31", "on": "2026-03-04", "grams": float("nan")}),
        ("fault", {"who": "31", "fault": "x", "on": "2026-03-04", "disqualifies": "perhaps"}),
        ("litter_colors", {"doe": "12", "on": "2026-03-04", "colors": "some black"}),
    ],
)
def test_cells_that_make_no_fact(kind: str, said: dict[str, Cell]) -> None:
    """They are refused, not guessed at."""
    with pytest.raises(ValueError, match=r".*"):
        fact_of(kind, said)


def test_a_field_that_is_missing_or_unknown() -> None:
    """Both are refused."""
    with pytest.raises(TypeError):
        fact_of("weighed", {"who": "31"})
    with pytest.raises(KeyError):
        fact_of("weighed", {"whom": "31"})


def test_cells_as_a_spreadsheet_gives_them_back() -> None:
    """Numbers for tags and names, days with a clock, a setting that nobody knows."""
    said: dict[str, Cell] = {"who": 14.0, "grams": 1984.0, "on": date(2026, 3, 4), "nothing": None}
    assert fact_of("weighed", said) == fact("weighed", who="14", grams=1984, on=date(2026, 3, 4))
    moved = fact("moved", who="14", cage="2026-03-04", on=date(2026, 3, 4))
    assert fact_of("moved", {"who": 14, "cage": date(2026, 3, 4), "on": "2026-03-04 00:00:00"}) == moved
    assert fact_of("setting", {"name": "odd", "value": 3}) == fact("setting", name="odd", value=3)


def test_colors_of_any_name() -> None:
    """Plain ones in words; one that looks like a list in its own way."""
    plain = fact("litter_colors", doe="12", colors=ColorCounts((("castor", 3), ("blue otter", 1))))
    odd = fact("litter_colors", doe="12", colors=ColorCounts((("Red, 2 white", 3),)))
    assert cells_of(plain)[1] == "3 castor, 1 blue otter"
    for one in (plain, odd):
        doe, colors, on = cells_of(one)
        assert fact_of("litter_colors", {"doe": doe, "colors": colors, "on": on}) == one


@pytest.mark.parametrize("text", FORMULAS)
def test_no_text_becomes_a_formula(text: str) -> None:
    """A sign stands before it in CSV, and comes off again."""
    assert written(text).startswith("'")
    assert unsafe(safe(text)) == text


@given(st.text())
def test_made_safe_and_back_it_is_the_same_text(text: str) -> None:
    """And plain words are left alone."""
    assert unsafe(safe(text)) == text
    assert safe(f"a{text}") == f"a{text}"


@given(st.lists(st.tuples(st.text(st.characters(codec="utf-8")), st.text(st.characters(codec="utf-8"))), max_size=5))
def test_csv_is_read_back_by_any_reader(rows: list[tuple[str, str]]) -> None:
    """Quotes, commas and line ends inside cells."""
    text = csv_text(Table("t", ("a", "b"), tuple(rows)))
    got = list(csv.reader(io.StringIO(text, newline=""), strict=True))
    assert got[0] == ["a", "b"]
    assert [tuple(unsafe(cell) for cell in row) for row in got[1:]] == rows


def test_cells_in_csv() -> None:
    """Each sort in its own plain way."""
    row = (None, True, False, 3, 2.5, Decimal("4.50"), date(2026, 3, 4), "words")
    assert [written(cell) for cell in row] == ["", "true", "false", "3", "2.5", "4.50", "2026-03-04", "words"]


def test_the_tables_of_a_farm() -> None:
    """What stands, what it adds up to, and what was typed, undone notes too; questions tell nothing of the farm."""
    barn = Barn()
    for minutes, text in enumerate(["31 3-14", "32 4-1", "undo", "why 12", "12 lost 1 kit cold"]):
        barn.say(text, minutes=minutes)
    told = (fact("sold", who="31", price=Cents(4000)), fact("for_sale", who="33"))
    barn.book = barn.book.with_note(Note(barn.book.last_id + 1, "sold 31 $40, 33 is for sale", NOW, "bo", facts=told))
    tables = {table.name: table for table in own_tables(barn.book, "home")}
    assert tables["about"].rows[0] == ("form", "haynote tables")
    assert [name for name in tables if name.startswith("told ")] == ["told kits_lost", "told weighed", "told sold", "told for_sale"]
    assert tables["told weighed"].columns == (*KEYS, "who", "grams", "on")
    (weighed,) = tables["told weighed"].rows
    assert (weighed[0], weighed[2], weighed[4]) == (1, "ann", "31")
    animals = {row[0]: dict(zip(tables["animals"].columns, row, strict=True)) for row in tables["animals"].rows}
    assert (animals["31"]["gone"], animals["31"]["weight_grams"], animals["31"]["for_sale"]) == ("sold", weighed[5], False)
    assert animals["33"]["for_sale"] is True
    litters = [dict(zip(tables["litters"].columns, row, strict=True)) for row in tables["litters"].rows]
    assert any((litter["dam"], litter["lost"]) == ("12", 1) for litter in litters)
    assert tables["matings"].rows
    assert [row[5] for row in tables["notes"].rows[:3]] == [True, False, True]


def test_an_empty_book_has_tables_too() -> None:
    """With nothing in them; none of a kind that nobody told."""
    tables = own_tables(book(Herd()), "home")
    assert [table.name for table in tables] == ["about", "animals", "matings", "litters", "notes"]
    assert not any(table.rows for table in tables[1:])
