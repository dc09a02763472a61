"""Weights, scores, colors and placings: each number with its animal, in the order said."""

from __future__ import annotations

import pytest

from tests.core.notes.kinds.reads import Note, fact, holds, note, remark, unrecorded

NOTES = [
    note("weighed R21 4-18", ask="which_number"),
    note("31 4-18", ask="which_number"),
    note("weighed 31", ask="how_many"),
    note("weighed 31 and 32", ask="what"),
    note("weighed 31 and 5", ask="what"),
    note("weighed 31 5", fact("weighed", who="31", grams=2268)),
    note("31 is up to", ask="what"),
    note("31 5 9 32 4 8", fact("weighed", who="32", grams=2041), fact("weighed", who="31", grams=2523)),
    note("weights 31 4 6 32 3 15", fact("weighed", who="32", grams=1786), fact("weighed", who="31", grams=1984)),
    note("31 4.6, 32 3.9", fact("weighed", who="32", grams=1769), fact("weighed", who="31", grams=2087)),
    note("weighed 4-6", ask="which_animal"),
    note("weighed 31 4 6", fact("weighed", who="31", grams=1984)),
    note("weighed 31 4 lb 4 oz 3 lb", ask="what"),
    unrecorded("gave 31 6 oz carrots"),
    unrecorded("moss ate 6 oz"),
    note("wt. 31 4-6", fact("weighed", who="31", grams=1984)),
    note("wts. 31 4-6, 32 3-15", fact("weighed", who="32", grams=1786), fact("weighed", who="31", grams=1984)),
    note("weighed 16's kits 5.4", fact("litter_weighed", doe="16", grams=2449)),
    note("16 litter weighed 5.5", fact("litter_weighed", doe="16", grams=2495)),
    note("weighed litter 5 lb 4", ask="which_animal"),
    note("16 kits weigh 2 lb each", ask="which_number"),
    note("all 5 of 16's kits 2 lb each", fact("litter_weighed", doe="16", grams=4536, count=5)),
    note("16: 5 kits, 1 lb each", fact("litter_weighed", doe="16", grams=2268, count=5)),
    note("each of 16's kits weighs 2 lb", ask="which_number"),
    remark("16 weighs kits", "16"),
    note("butchered 32 5-18", ask="which_number"),
    note("butchered 31 and 32 5-2", ask="which_animal"),
    note("butchered 31 and 32", fact("culled", who="31"), fact("culled", who="32")),
    note("butchered 31 and 32 5-2 4-15", ask="which_animal"),
    note("butchered 31 and 32, 5-2 and 4-15 live, 2-8 dressed", ask="which_animal"),
    note("butchered 32, 5-2 live, 2-12", fact("culled", who="32", live_grams=2325, dressed_grams=1247)),
    note("butchered 32 live 5-2, 2-12", ask="which_animal"),
    note("butchered 32, 2-12 dressed, 5-2", fact("culled", who="32", live_grams=2325, dressed_grams=1247)),
    note("buck 5 bcs 2, 7 3", fact("condition", who="5", score=2.0), fact("condition", who="7", score=3.0)),
    note("bcs: 5 3, 7 2.5", fact("condition", who="7", score=2.5), fact("condition", who="5", score=3.0)),
    note("condition 3", ask="what"),
    remark("condition of 31 is good", "31"),
    note("5 2 bcs", fact("condition", who="5", score=2.0)),
    note("type 4 out of 5 on 33", fact("scored", who="33", trait="type", score=4.0)),
    note(
        "33 type 4 out of 5, fur 3 of 5",
        fact("scored", who="33", trait="fur", score=3.0),
        fact("scored", who="33", trait="type", score=4.0),
    ),
    note("type 4", ask="what"),
    unrecorded("15 opal 3"),
    unrecorded("31 is black 4"),
    remark("it's black"),
    remark("black is a nice color"),
    note("31 is black", fact("color", who="31", color="black")),
    unrecorded("31 color black 4"),
    note("16 litter castor: 3 black: 2", fact("litter_colors", doe="16", colors={"castor": 3, "black": 2})),
    note("16 litter black 3", fact("litter_colors", doe="16", colors={"black": 3})),
    remark("white toenail dq"),
    note("31 white toenail, dq", fact("fault", who="31", fault="white toenail", disqualifies=True)),
    remark("has a white toenail"),
    note("14 won 2", ask="what"),
    note("3 won best of breed", fact("shown", who="3", placing="won best of breed")),
    note("31 bcs 3/5", fact("condition", who="31", score=3.0)),
    note("dressed weights: 31 2-8, 32 2-6", fact("culled", who="32", dressed_grams=1077), fact("culled", who="31", dressed_grams=1134)),
    note(
        "butchered R22 and R23, dressed 2-10 and 2-12",
        fact("culled", who="R22", dressed_grams=1191),
        fact("culled", who="R23", dressed_grams=1247),
    ),
    note("butchered R22 and R23 5-2", ask="which_number"),
    note("all 5 of 16's kits 2-3 each", fact("litter_weighed", doe="16", grams=4960, count=5)),
    note("31 and 32 both 4 lb", fact("weighed", who="31", grams=1814), fact("weighed", who="32", grams=1814)),
    note("31 and 32 both 4-18 oz", ask="what"),
    note("31 4-6 was 4-2", fact("weighed", who="31", grams=1984)),
    note("weighed 31 4-6, was 4-2", fact("weighed", who="31", grams=1984)),
    note("weighed 31 4-6 at 3:15", fact("weighed", who="31", grams=1984)),
    remark("14 for bob", "14"),
    note("14 bob", fact("shown", who="14", placing="bob")),
    unrecorded("color black"),
    unrecorded("colour is black now"),
    unrecorded("the gate is open 4-6"),
    unrecorded("gate was open today 4-6 then"),
]


@pytest.mark.parametrize("row", NOTES, ids=[row[0] for row in NOTES])
def test_the_note_becomes_its_facts(row: Note) -> None:
    """A number that fits no weight, score or animal asks."""
    holds(row)
