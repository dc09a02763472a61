"""Births: which number is born, alive or dead, and whose kits they are."""

from __future__ import annotations

import pytest

from tests.core.notes.kinds.reads import Note, fact, holds, note, remark, unrecorded

NOTES = [
    note("14 kindled, buck 3, 8 alive", fact("kindled", doe="14", born=8, alive=8)),
    note("14 kindled 8, sire 3", fact("kindled", doe="14", born=8)),
    note("14 kindled 8 sire: 3", fact("kindled", doe="14", born=8)),
    note("14 kindled 8 by Flint", fact("kindled", doe="14", born=8)),
    note("14 kindled 8 by Moss", ask="what"),
    note("14 kindled 8, buck: 3", fact("kindled", doe="14", born=8)),
    note("doe 14 buck 3 kindled 8", fact("kindled", doe="14", born=8)),
    note("14 kindled 8, none dead", fact("kindled", doe="14", born=8, alive=8, dead=0)),
    note("14 kindled 8, all alive, no dead", fact("kindled", doe="14", born=8, alive=8, dead=0)),
    note("14 kindled 8, 6 alive and 7 alive", ask="which_number"),
    note("14 kindled 8, 6 alive, 6 alive", fact("kindled", doe="14", born=8, alive=6, dead=2)),
    note("14 kindled 8, 2 dead, 2 died", fact("kindled", doe="14", born=8, alive=6, dead=2)),
    note("14 kindled 8, three were outside and didn't survive", fact("kindled", doe="14", born=8, alive=5, dead=3)),
    note("14 kindled 8 and three in a corner were born dead", fact("kindled", doe="14", born=8, alive=5, dead=3)),
    note("14 kindled, 2 dead, rest all alive", ask="how_many"),
    note("14 kindled all alive, 2 dead", ask="how_many"),
    note("14 kindled alive 6 dead 2", fact("kindled", doe="14", born=8, alive=6, dead=2)),
    note("14 kindled eight kits dead", ask="how_many"),
    note("14 kindled dead kits 2 born 8", ask="which_number"),
    note("14 kindled 6 kits alive, 2 kits dead", fact("kindled", doe="14", born=8, alive=6, dead=2)),
    note("14 kindled 4, 6 dead", ask="impossible"),
    note("14 kindled 8, 5 alive, 1 dead", ask="which_number"),
    note("14 6 live 2 dead", fact("kindled", doe="14", born=8, alive=6, dead=2)),
    note("12 has 6 live 1 dead", ask="which_number"),
    note("12 7 alive", ask="what"),
    note("3 6 live 2 dead", ask="which_number"),
    note("3 has 7 kits", ask="wrong_sex"),
    note("buck 5 7 kits", ask="wrong_sex"),
    unrecorded("12 juggled 6 kits"),
    remark("14 no kits yet", "14"),
    remark("no kits in 14", "14"),
    remark("no more hay for 14", "14"),
    remark("none of 12's kits died", "12"),
    remark("lots of kits in the barn"),
    remark("lots to do in the barn"),
    note("12 lost 2 kits, froze", fact("kits_lost", doe="12", count=2, cause="cold")),
    note("14 kindled 8 if i counted right", fact("kindled", doe="14", born=8)),
    remark("Juno kindled if it counts", "14"),
    note("14 kindled almost 8", fact("kindled", doe="14", born=8)),
    remark("14 almost kindled", "14"),
    remark("almost 14", "14"),
    remark("unless 14 kindled", "14"),
    note("rabbit 14 born yesterday 7 kits", fact("kindled", doe="14", on="2026-11-24", born=7)),
    note("rabbit 9 born 7 kits 2 dead", fact("kindled", doe="9", born=7, alive=5, dead=2)),
    remark("rabbit 15 born 7 kits"),
    note("14 kindled 8, alive and well", fact("kindled", doe="14", born=8, alive=8)),
    note("14 kindled 8 all fat alive", fact("kindled", doe="14", born=8, alive=8)),
    note("14 kindled 8, alive", fact("kindled", doe="14", born=8, alive=8)),
    note("14 kindled 8 almost", fact("kindled", doe="14", born=8)),
    note("12 lost another one, that makes six", fact("kits_lost", doe="12", count=1)),
    note("12 lost one, leaves 6", fact("kits_lost", doe="12", count=1)),
    note("12 lost one, leaves 4", ask="which_number"),
    note("12 lost 2 of hers", fact("kits_lost", doe="12", count=2)),
    remark("14 no litter yet", "14"),
    remark("14 no palp yet", "14"),
    unrecorded("14 no kits"),
    unrecorded("12 has 1 kit with a bad eye"),
    unrecorded("12 1 kit with a bad eye"),
]


@pytest.mark.parametrize("row", NOTES, ids=[row[0] for row in NOTES])
def test_the_note_becomes_its_facts(row: Note) -> None:
    """Each number by the word beside it; what can't be placed asks."""
    holds(row)
