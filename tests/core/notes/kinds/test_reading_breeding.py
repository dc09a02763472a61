"""Matings, what was felt, what came to nothing, and what a doe does with her nest."""

from __future__ import annotations

import pytest

from tests.core.notes.kinds.reads import Note, fact, holds, note, remark, unrecorded

NOTES = [
    note("22 wouldn't lift for Moss", fact("refused", doe="22", buck="5")),
    note("wouldn't lift", ask="which_animal"),
    note("22 and 15 wouldn't lift for Moss", fact("refused", doe="15", buck="5"), fact("refused", doe="22", buck="5")),
    note("Moss wouldn't lift", ask="wrong_sex"),
    note("R99 wouldn't lift for Moss", ask="which_animal"),
    note("15 refused 7, 22 too", fact("refused", doe="15", buck="7"), fact("refused", doe="22")),
    remark("22 refused feed", "22"),
    note("14 and 9 missed", fact("missed", doe="14"), fact("missed", doe="9")),
    note("14 missed, 9 too", fact("missed", doe="14"), fact("missed", doe="9")),
    note("missed: 14, 9", fact("missed", doe="14"), fact("missed", doe="9")),
    note("14 missed; 9", ask="which_number"),
    note("22 open", fact("palpated", doe="22", result="open")),
    note("22 is open", fact("palpated", doe="22", result="open")),
    note("22 she's open", fact("palpated", doe="22", result="open")),
    note("Biscuit open", fact("palpated", doe="22", result="open")),
    note("she is open", ask="which_animal"),
    remark("she's open"),
    remark("gate is open"),
    note("22 feels bred", fact("palpated", doe="22", result="bred")),
    note("22 pregnant", fact("palpated", doe="22", result="bred")),
    remark("22 is not pregnant", "22"),
    note("22 palpated good", fact("palpated", doe="22", result="bred")),
    note("22 took, feels bred", fact("palpated", doe="22", result="bred")),
    note("felt 22, not sure", fact("palpated", doe="22", result="unsure")),
    note("palpated 22", ask="what"),
    note("palp 22 ? not sure", fact("palpated", doe="22", result="unsure")),
    note("palpated 22: open, 9: bred", fact("palpated", doe="22", result="open"), fact("palpated", doe="9", result="bred")),
    note("22 took", ask="what"),
    note("bred 15", ask="which_animal"),
    note("bred 15 to 7 once", fact("bred", doe="15", buck="7", falls=1)),
    note("15 x 7 once", fact("bred", doe="15", buck="7", falls=1)),
    note("15 x 7, twice", fact("bred", doe="15", buck="7", falls=2)),
    note("bred 15 to Flint fell off twice", fact("bred", doe="15", buck="3", falls=2)),
    note("bred 15 to Flint, fall off: 2", fact("bred", doe="15", buck="3", falls=2)),
    note("bred 15 to 15 and 3", fact("bred", doe="15", buck="3")),
    note("bred 15 to the neighbor's buck Duke", fact("bred", doe="15", buck="Duke")),
    note("bred 15 to the neighbor's buck", ask="which_animal"),
    note("bred 15 to Flint yesterday, nov 24", fact("bred", doe="15", buck="3", on="2026-11-24")),
    note("bred 15 to Flint yesterday, nov 20", ask="what"),
    note("put 15 in with 7", fact("bred", doe="15", buck="7")),
    unrecorded("put 15 with 7"),
    unrecorded("15 and 7 together"),
    note("14 pulling fur", fact("nest_manners", doe="14", sign="good")),
    note("14 is carrying hay", fact("nest_manners", doe="14", sign="good")),
    note("14 didn't pull fur", fact("nest_manners", doe="14", sign="no_fur")),
    remark("14 hasn't pulled fur yet", "14"),
    remark("14 has no fur in the nest yet", "14"),
    note("14 has no fur in the nest", fact("nest_manners", doe="14", sign="no_fur")),
    note("14 scattered her nest", fact("nest_manners", doe="14", sign="scattered")),
    note("14's nest is scattered", fact("nest_manners", doe="14", sign="scattered")),
    note("box in 14 and 9", fact("nest_box", doe="14", change="in"), fact("nest_box", doe="9", change="in")),
    note("moved her box out", ask="which_animal"),
    note("bred 15 to 3, 22 to 5", fact("bred", doe="15", buck="3"), fact("bred", doe="22", buck="5")),
    note("bred 15 to 7, 2 clean falls", fact("bred", doe="15", buck="7", falls=2)),
    note("bred 15 to 7 good falls", ask="which_animal"),
    note("bred Dot to 15", ask="which_animal"),
    note("bred 14 to 3 again since she missed", fact("bred", doe="14", buck="3")),
    note("bred 14 to 3 again, 15 missed", fact("bred", doe="14", buck="3"), fact("missed", doe="15")),
    note("22 refused two times", fact("refused", doe="22")),
    note("22 refused Moss two times", fact("refused", doe="22", buck="5")),
    note("bred 15 to 7 at 4:30", fact("bred", doe="15", buck="7")),
    remark("Flint soiled the nest", "3"),
]


@pytest.mark.parametrize("row", NOTES, ids=[row[0] for row in NOTES])
def test_the_note_becomes_its_facts(row: Note) -> None:
    """The doe and the buck by their sexes; what is denied is a remark."""
    holds(row)
