"""Whose kit an animal is, said in passing."""

from __future__ import annotations

import pytest

from tests.core.notes.kinds.reads import Note, fact, holds, note, unrecorded

SAID: list[Note] = [
    note("R21 d/o Clover 5-3", fact("weighed", who="R21", grams=2353)),
    note("R22 son of Moss 5-3", fact("weighed", who="R22", grams=2353)),
    note("R21 d/o Juno 5-3", ask="what"),
    note("d/o Clover 5-3", ask="what"),
    unrecorded("the s/w corner of the barn leaks"),
    note("sold 2 o/o 16 $20 ea", fact("sold", litter_of="16", count=2, price="40.00")),
]


@pytest.mark.parametrize("row", SAID, ids=[row[0] for row in SAID])
def test_what_the_book_knows_is_no_second_animal(row: Note) -> None:
    """A parent that the book has already explains itself; any other one is asked about, and none is weighed in its kit's place."""
    holds(row)
