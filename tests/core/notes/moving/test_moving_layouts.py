"""What each column is, and what has to be asked before a row can be read."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime

import pytest

from core.herd.settings import Settings
from core.notes.moving.grid import grid_of, tidy
from core.notes.moving.heads import by_cells, plain, settled, weighing_head, word_meaning
from core.notes.moving.layout import Layout, laid_out
from core.notes.moving.table import Cell


def layout(text: str, settings: Settings | None = None, **decisions: str) -> Layout:
    """The layout of a sheet typed here."""
    return laid_out(grid_of(text, "sheet"), settings or Settings(), {key.replace("_", " "): value for key, value in decisions.items()})


def means(text: str, **decisions: str) -> list[str | None]:
    """What its columns are."""
    return [column.means for column in layout(text, **decisions).columns]


def asks(text: str, settings: Settings | None = None, **decisions: str) -> list[str]:
    """What has to be decided."""
    return [question.key for question in layout(text, settings, **decisions).questions]


@pytest.mark.parametrize(
    ("head", "meaning"),
    [
        ("Tag #", "tag"), ("#", "tag"), ("D.O.B.", "born"), ("Weight (lb)", "weight"), ("8 wk wt", "weight"), ("Ear No.", "tag"),
        ("weaned date", "weaned_on"), ("bred date", "bred"), ("Wt lb", "weight"), ("moon", None), (None, None), (14, None),
    ],
)  # fmt: skip
def test_words_of_headings(head: Cell, meaning: str | None) -> None:
    """As breeders write them; signs, units and case don't matter."""
    assert word_meaning(head) == meaning


@pytest.mark.parametrize(
    ("head", "said"),
    [
        (date(2025, 3, 1), (None, date(2025, 3, 1))),
        (datetime(2025, 3, 1), (None, date(2025, 3, 1))),  # noqa: DTZ001 - as a workbook has it
        ("wt 3/1/2025", (None, "3/1/2025")),
        ("3/1/2025", (None, "3/1/2025")),
        ("due 3/1/2025", None),
        ("8 wk wt", (56, None)),
        ("70 days", (70, None)),
        ("12 day check", None),
        (None, None),
    ],
)
def test_headings_of_weights_that_say_when(head: Cell, said: object) -> None:
    """By a day or by an age."""
    assert weighing_head(head) == said


def test_a_column_without_a_heading_is_known_by_its_cells() -> None:
    """Sex, days, breeds, colours and weights; counts could be anything."""
    columns: list[tuple[Cell, ...]] = [
        ("d", "b"),
        ("3/4/25", "2025-01-01"),
        ("Mini Rex", "nzw"),
        ("opal", "castor"),
        ("4-6", "3 lb"),
        ("1", "2"),
        (None,),
    ]
    assert [by_cells(cells) for cells in columns] == ["sex", "born", "breed", "color", "weight", None, None]
    assert plain("Weight (lb):") == "weight"


@pytest.mark.parametrize(
    ("means", "cells", "head", "settled_as"),
    [
        ("born", ("8", "7"), "Born", "born_kits"), ("born", ("3/4/25",), "Born", "born"), ("weaned", ("3/4/25",), "Weaned", "weaned_on"),
        ("kindled", ("8",), "Kindled", "born_kits"), ("kindled", ("yes",), "Kindled", "kindled"), ("bred", ("Duke",), "Bred", "buck"),
        ("bred", ("3",), "Bred", None), ("sold_on", ("45",), "Sold", "sold_for"), ("sold_on", ("to a friend",), "Sold", "remark"),
        ("died_on", ("heat",), "Died", "remark"), ("died_on", (None,), "Died", "died_on"), (None, ("x",), "x", None),
    ],
)  # fmt: skip
def test_what_stands_below_settles_a_heading(means: str | None, cells: tuple[Cell, ...], head: str, settled_as: str | None) -> None:
    """`Born` over days and `Born` over numbers are two things."""
    assert settled(means, cells, head) == settled_as


def test_sheets_of_animals_and_of_litters() -> None:
    """The same word means another thing in each."""
    assert means("Tag,Name,Date,Dam,Price,Kits\n14,Juno,3/4/25,12,5,x") == ["tag", "name", None, "dam", None, None]
    assert means("Dam,Sire,Born,Alive,Breed,Color\n14,3,3/4/25,8,Mini Rex,opal") == ["doe", "buck", "kindled", "alive", None, "remark"]
    assert means("Doe,Buck,Date\n14,3,3/4/25") == ["doe", "buck", "bred"]
    assert means("Doe,Bred,Date,Kits\n14,3/4/25,4/4/25,8") == ["doe", "bred", "kindled", "born_kits"]
    assert means("Doe,Bred,Kindled,Date,Kits,#\n14,3/4/25,4/4/25,5/5/25,8,1") == ["doe", "bred", "kindled", None, "born_kits", "ignore"]


def test_a_list_without_headings() -> None:
    """The first column that could be a tag is it; words beside it are the name."""
    assert means("R1,doe,Mini Rex,opal\nR2,buck,Mini Rex,castor") == ["tag", "sex", "breed", "color"]
    assert means("Juno,doe,Mini Rex,x\nHazel,doe,Mini Rex,x") == ["name", "sex", "breed", None]
    assert means("") == []
    assert means("fed all\n14 looked well\nbought hay") == [None]
    assert asks("fed all\n14 looked well\nbought hay") == ["tag"]


def test_columns_that_somebody_decided_on() -> None:
    """What a person says wins over heading and cells, for a heading that nobody knows too."""
    assert means("Left,Tag\n14,x", left="tag", tag="ignore") == ["tag", "ignore"]
    assert means("Doe,Tag,Kindled,Kits\n14,x,3/4/25,8", tag="ignore") == ["doe", "ignore", "kindled", "born_kits"]


def test_columns_that_stand_twice() -> None:
    """Two birth days can't both be right; a second tag is a name; ounces stand behind pounds."""
    assert means("Tag,DOB,Birth date\n14,3/4/25,3/5/25") == ["tag", "born", None]
    assert means("Tattoo,Rabbit,Sex\nR1,Juno,d") == ["tag", "name", "sex"]
    assert means("#,Rabbit,Sex\n1,Juno,d\n2,Hazel,d") == ["ignore", "tag", "sex"]
    assert means("Tag,Wt lb,Wt oz,Wt kg\n14,4,6,2") == ["tag", "weight", "ounces", "weight"]


def test_the_headings_may_stand_below_a_title() -> None:
    """The row with the most words that are known; rows above are not read."""
    found = layout("My herd\n\nTag,Sex\n14,d")
    assert [column.head for column in found.columns] == ["Tag", "Sex"]
    assert found.rows == ((4, ("14", "d")),)
    dated = laid_out(tidy("s", [(1, ("Tag", date(2025, 3, 1), None)), (2, ("14", 4.5, "x"))]), Settings(), {})
    assert [(column.head, column.means) for column in dated.columns] == [("Tag", "tag"), ("2025-03-01", "weight"), ("column 3", None)]


def test_the_order_of_dates_is_asked_only_where_it_matters() -> None:
    """Not where a day over twelve, the farm's word, or a decision tells it, nor where both orders give one day."""
    assert asks("Tag,DOB\n14,3/4/25") == ["dates"]
    assert asks("Tag,DOB\n14,3/4/25", Settings(said={"date_order": "DMY"})) == []
    assert asks("Tag,DOB\n14,3/4/25", dates="DMY") == []
    assert asks("Tag,DOB\n14,3/3/25") == []
    assert asks("Tag,wt 3/4/25\n14,4-6") == ["dates"]
    assert [layout("Tag,DOB\n14,3/25/25").order, layout("Tag,DOB\n14,25/3/25").order] == ["MDY", "DMY"]


def test_weights_that_could_be_several_things_are_asked_about() -> None:
    """Their unit, what stands behind the dot, and the day."""
    assert asks("Tag,Weight,Date\n14,70,3/25/25") == ["unit"]
    assert asks("Tag,Weight,Date\n14,70,3/25/25", unit="oz") == []
    assert asks("Tag,Weight,Date\n14,4.6,3/25/25") == ["dots"]
    assert asks("Tag,Weight,Date\n14,4.75,3/25/25") == []
    assert asks("Tag,Weight,Date\n14,4.6,3/25/25", replace(Settings(), dotted_weight="ounces")) == []
    assert asks("Tag,Weight,Sex\n14,4-6,d") == ["weighed"]
    assert asks("Tag,Weight,Sex\n14,4-6,d", weighed="2025-03-04") == []


def test_what_else_is_asked() -> None:
    """Which column names the animal, and when the litters were weaned."""
    assert asks("Sex,Breed\nd,Mini Rex") == ["tag"]
    assert asks("Doe,Kindled,Kits,Weaned\n14,3/25/25,8,7") == ["weaned"]
    assert asks("Doe,Kindled,Kits,Weaned\n14,3/25/25,8,7", weaned="35") == []
