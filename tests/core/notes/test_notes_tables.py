"""Tables with a heading row."""

from __future__ import annotations

import pytest

from core.notes.tables import table_told


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Tag | Weight | BCS\n---|---|---\n31 | 4-6 | 3\n32 | 4-3 | -", "31 weighed 4-6, bcs 3\n32 weighed 4-3"),
        ("| Doe | Born | Dead |\n| 14 | 8 | 2 |", "doe 14 kindled 8, 2 dead"),
        ("Date, Tag, Wt\n24 Nov, 31, 4-6\nall good", "24 Nov: 31 weighed 4-6\nall good"),
        ("Doe | Buck | Date | Falls\n16 | 5 | 23 Nov | 2", "23 Nov: doe 16 bred to buck 5 2 falls"),
        ("Tag;Cage\n31;B2", "31 moved to cage B2"),
        ("Date | Doe | Buck\n23 Nov | 16 | 5", "23 Nov: doe 16 bred to buck 5"),
        ("from the barn\nTag  Cage\n31  B2", "from the barn\n31 moved to cage B2"),
    ],
)
def test_rows_are_told_in_words(text: str, told: str) -> None:
    """Each row becomes a line, empty cells left out; lines around the table stay."""
    assert table_told(text) == told


@pytest.mark.parametrize("text", ["31 4-6\n32 4-3", "Tag, mood\n31, calm", "Doe, buck, mood\n15, 3, calm", "Tag, weight\nnone yet"])
def test_other_lines_are_no_table(text: str) -> None:
    """A column that nobody knows, two of animals, or no row: read as it stands."""
    assert table_told(text) is None
