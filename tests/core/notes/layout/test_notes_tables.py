"""Tables with a heading row."""

from __future__ import annotations

import pytest

from core.notes.layout.tables import table_told


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Tag | Weight | BCS\n---|---|---\n31 | 4-6 | 3\n32 | 4-3 | -", "31 weighed 4-6, bcs 3\n32 weighed 4-3"),
        ("| Doe | Born | Dead |\n| 14 | 8 | 2 |", "doe 14 kindled 8, 2 dead"),
        ("Date, Tag, Wt\n24 Nov, 31, 4-6\nall good", "24 Nov: 31 weighed 4-6\nall good"),
        ("Doe | Buck | Date | Falls\n16 | 5 | 23 Nov | 2", "23 Nov: doe 16 bred to buck 5 2 falls"),
        ("Tag;Cage\n31;B2", "31 moved to cage B2"),
        ("Date | Doe | Buck\n23 Nov | 16 | 5", "23 Nov: doe 16 bred to buck 5"),
        ("tag,weight\n31,4-6\n32,3-15", "31 weighed 4-6\n32 weighed 3-15"),
        ("Weight | Tag\n4-6 | 31", "31 weighed 4-6"),
        ("Tag | Weight (lb)\n31 | 4.5\n32 | 4-3", "31 weighed 4.5 lb\n32 weighed 4-3"),
        ("tag,wt_g\n31,1800", "31 weighed 1800 g"),
        ("| Tag | lb | oz |\n| R21 | 5 | 2 |\n| R22 | | 7 |", "R21 weighed 5 lb 2 oz\nR22 weighed 7 oz"),
        ("Tag | Wt | BCS\n31 | 4-2 |\n32 | | 3", "31 weighed 4-2\n32 bcs 3"),
        ("Tag\tWt\tBCS\n31\t4-2", "31 weighed 4-2"),
        ('Date | Doe | Buck\n11/22 | 15 | 3\n" | 16 | "', "11/22: doe 15 bred to buck 3\n11/22: doe 16 bred to buck 3"),
        ("Date | Tag | Wt\n11/22 | 31 | 4-2\n | 32 | ditto", "11/22: 31 weighed 4-2\n11/22: 32 weighed 4-2"),
        ("Doe | Born | Dead\n14 | 8 | 1\n9 | 6 | -\nTotal | 14 | 1", "doe 14 kindled 8, 1 dead\ndoe 9 kindled 6"),
        ("Doe | Born\n14 | 8\n9 | 6\nTotal | 15", "doe 14 kindled 8\ndoe 9 kindled 6\ndoe Total kindled 15"),
        ("Tag | Wt\n31 | 4-9\n32 | 4-8\nTotal | 9-1", "31 weighed 4-9\n32 weighed 4-8"),
        ("Tag | Palp\n22 | bred\n9 | open\nTotal | 2", "22 palpated bred\n9 palpated open\nTotal palpated 2"),
        ("Tag | Cage\n31 | B2\n32 | B3\nTotal | -", "31 moved to cage B2\n32 moved to cage B3"),
        ("Dam | Sire | Born\n14 | 3 | 8", "doe 14 kindled 8, by buck 3"),
        ("Doe | Buck | Born\n14 | | 8", "doe 14 kindled 8"),
        ("Name, Tag, Weight\nMoss, 5, 9-12\n, 31, 4-2", "Moss (5) weighed 9-12\n31 weighed 4-2"),
        ("Sold 11/24\nTag | Price | Buyer\nR21 | $40 | the neighbor", "Sold 11/24\nsold R21 for $40 to the neighbor"),
        ("Date | Tag | Live | Dressed\n11/22 | 32 | 4-2 | 2-3", "11/22: butchered 32: live 4-2, dressed 2-3"),
        ("Tag;live lb;dressed lb\n32;4.2;2.3", "butchered 32: live 4.2 lb, dressed 2.3 lb"),
        ('"Tag","Weight"\n"31","4-6"', "31 weighed 4-6"),
        (
            "Tag | Sex | Color | Dam\nR31 | buck | black | 16\nR32 | doe | - | 16",
            "tattooed R31 out of 16, buck, black\ntattooed R32 out of 16, doe",
        ),
        ("Doe | Kits | Notes\n12 | 7 | all fat\n16 | 5 |", "doe 12 has 7 kits\n12: all fat\ndoe 16 has 5 kits"),
        ("Date | Doe | Kits | Notes\n11/24 | 12 | 7 | fat", "11/24: doe 12 has 7 kits\n11/24: 12: fat"),
        ("Tag | Wt\n- | 4-2", " weighed 4-2"),
        ("from the barn\nTag  Cage\n31  B2", "from the barn\n31 moved to cage B2"),
    ],
)
def test_rows_are_told_in_words(text: str, told: str) -> None:
    """Each row becomes a line, empty cells left out; lines around the table stay."""
    assert table_told(text) == told


@pytest.mark.parametrize(
    "text",
    [
        "31 4-6\n32 4-3",
        "Tag, mood\n31, calm",
        "Doe, buck, mood\n15, 3, calm",
        "Tag, weight\nnone yet",
        "Tag | Price\nR21 | 40",
        "Tag\n31",
        "Name, Weight, Sire\nMoss, 4-2, 3",
    ],
)
def test_other_lines_are_no_table(text: str) -> None:
    """A column that nobody knows, two of animals, or no row: read as it stands."""
    assert table_told(text) is None
