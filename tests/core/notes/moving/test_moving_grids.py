"""Sheets out of bytes: whatever their letters and whatever parts their cells."""

from __future__ import annotations

import pytest

from core.notes.moving.grid import decoded, grid_of, separator_of, tidy

TEXT = "Tag;Name\n14;Zoë\n"


@pytest.mark.parametrize("letters", ["utf-8", "utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "cp1252"])
def test_letters_are_found_out(letters: str) -> None:
    """By the mark, by being UTF-8, by the noughts, or else as Windows wrote them."""
    assert decoded(TEXT.encode(letters)) == TEXT


def test_a_broken_mark_still_gives_text() -> None:
    """What is no letter becomes a mark; nothing is raised."""
    assert decoded(b"\xef\xbb\xbf14\xff") == "14\ufffd"


@pytest.mark.parametrize(
    ("text", "separator"),
    [("a,b\n1,2", ","), ("a;b\n1,5;2", ";"), ("a\tb\n1\t2", "\t"), ("a|b\n1|2", "|"), ("one\ntwo", ","), ("", ",")],
)
def test_what_parts_the_cells(text: str, separator: str) -> None:
    """What most lines have the same number of."""
    assert separator_of(text) == separator


def test_rows_keep_the_number_that_their_file_gives_them() -> None:
    """Empty ones are left out, a cell of several lines counts them, hard spaces go."""
    grid = grid_of('Tag,Notes\n\n14,"two\nlines"\n,\n 15\u00a0,x,\n', "herd")
    assert grid.rows == ((1, ("Tag", "Notes")), (3, ("14", "two\nlines")), (6, ("15", "x")))


def test_quotes_that_are_none() -> None:
    """One that never closes ends with its line; one alone means the same as above; an empty pair is nothing."""
    assert [cells for _, cells in grid_of('a,b\n5" cage,x\n"\'",""', "x").rows] == [("a", "b"), ('5" cage', "x"), ('"\'"', '""')]
    assert [cells for _, cells in grid_of('a;b;c\n1;2;3\n";x;"\n', "x").rows][2] == ("\u3003", "x", "\u3003")
    assert [cells for _, cells in grid_of('a\tb\n1\t2\n"\t"\n', "x").rows][2] == ("\u3003", "\u3003")
    assert [cells for _, cells in grid_of('a,b\n",",2\n', "x").rows][1] == (",", "2")


def test_an_empty_sheet_has_no_rows() -> None:
    """And one of blanks neither."""
    assert grid_of("", "x").rows == ()
    assert tidy("x", [(1, (None, "")), (2, ())]).rows == ()
