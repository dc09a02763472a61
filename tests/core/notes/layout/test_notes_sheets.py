"""Headings and the lines below them, as they are told before they are read."""

from __future__ import annotations

from functools import lru_cache

import pytest

from core.notes.layout.sheets import sheet_told
from core.notes.roster import herd_of
from core.notes.slots.animals import HerdWords, words_of
from tests.core.notes.kinds.reads import ROSTER
from tests.core.notes.layout.test_notes_headings import read_json


@lru_cache(maxsize=1)
def words() -> HerdWords:
    """The tags and names of the sample farm."""
    return words_of(herd_of(ROSTER))


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("Kindling log, 24 Nov\n- 14 (Juno): born 9, dead 2\n- Clover: 7", "24 nov: 14 kindled born 9, dead 2\n24 nov: Clover kindled 7"),
        ("Litters\n9: 6 live", "9 kindled 6 live"),
        ("Condition\nbuck Moss - 2.5\n22 = 3\nJuno's Boy: 4", "buck Moss bcs 2.5\n22 bcs 3\nJuno's Boy bcs 4"),
        ("Boxes 11/24\nOut: 12, 16\n9 in", "11/24: box out 12, 16\n11/24: box in 9"),
        ("Breeding plan for December\n1. 15 x Flint, Dec 5\n2. 16 x Moss", "plan to breed 15 to Flint, Dec 5\nplan to breed 16 to Moss in december"),
        ("To breed 12/6\nbreed 15 to Flint", "plan to breed 15 to Flint on 12/6"),
        ("Plans\n15 x Flint Dec 5\nbutcher 12 Dec 3\nskip the nest check on 12", "plan to breed 15 to Flint Dec 5\nplan to butcher 12 Dec 3\nskip the nest check on 12"),
        ("Cull list\n12 - Dec 3\nR22", "plan to cull 12, Dec 3\nplan to cull R22"),
        ("Keepers\n33, R21\n\nTo sell\nR22", "plan to keep 33, R21\n\nplan to sell R22"),
        ("Medical\n22 - ear mites - ivermectin 0.2 ml\nMoss: sore hocks; put salve on", "22 has ear mites, gave 22 ivermectin 0.2 ml\nMoss has sore hocks, put salve on Moss"),
        ("Sick list\nMoss: snotty nose\n5 day course: done", "Moss: snotty nose\n5 day course: done"),
        ("Kit counts\n12: 7\n16: five alive", "12 has 7\n16 has five alive"),
        ("Rations\nbucks: 1/2 cup\n9 - 1 cup", "bucks get 1/2 cup\n9 get 1 cup"),
        ("SOLD\nR21 - $40\nR22 - 45 to the neighbor", "sold R21 for $40\nsold R22 for 45 to the neighbor"),
        ("Moves\n14 -> B2\n31: cage 7", "14 to cage B2\n31: cage 7"),
        ("Butchered 11/22\n32: live 4-2, dressed 2-3", "11/22: butchered 32: live 4-2, dressed 2-3"),
        ("Losses\n12: 1 (cold)\n16 - 2", "12 lost 1 kits, cold\n16 lost 2 kits"),
        ("Skip: nest check on 12; palpation on 22.", "skip nest check on 12\nskip palpation on 22"),
        ("BCS 11/25: Flint 3, Moss 2.5", "11/25: Flint bcs 3\n11/25: Moss bcs 2.5"),
        ("To do Saturday\n- palpate 22\n[x] weigh 31", "[ ] palpate 22\n[x] weigh 31"),
        ("To do 11/24\n[x] trim nails 9", "[x] 11/24: trim nails 9"),
        ("Chores\n[ ] weigh 31", "[ ] weigh 31"),
        ("Done today\n- trim nails 9\n- 22 palpated bred", "today: done trim nails 9\ntoday: 22 palpated bred"),
        ("Monday rounds:\nJuno: pulling fur", "monday: Juno: pulling fur"),
        ("Weights (oz)\n31 66\n32 4-2", "31 weighed 66 oz\n32 4-2"),
        ("1) 14 kindled 8\n2) R22 found dead", "14 kindled 8\nR22 found dead"),
        ("Moves\n14: A1 -> B2\n31 - C4\n22 stays", "moved 14 from A1 to B2\n31 to cage C4\n22 stays"),
        ("New arrivals\n53: Mini Rex doe, blue, $50\n54: no idea", "new doe 53 Mini Rex blue, $50\n54: no idea"),
        ("Losses, Sorrel\n11/22: 1, cold\n1, crushed", "11/22: sorrel lost 1 kits, cold\nsorrel lost 1 kits, crushed"),
        ("Condition of buck Moss\n2.5", "buck moss bcs 2.5"),
        ("Skipped this week\n- nail trim, Moss\n- palpation, 22", "skip nail trim on Moss\nskip palpation on 22"),
        ("AM\n- box in 9\nPM\n- 22 bit me", "box in 9\n22 bit me"),
        ("Plan\nkeep 14\n1/7 cull 12 on 3 Dec", "plan to keep 14\n1/7 cull 12 on 3 Dec"),
        ("Plan for the week\n- Thu: box in 14\n- Sat: breed 15 to Flint\n- skip the nest check on 12", "[ ] Thu: box in 14\nplan to breed 15 to Flint on Sat\nskip the nest check on 12"),
        ("Reminders\n- Friday: trim nails on 9\nweigh 31 - Dec 2\nsome day", "remind me Friday to trim nails on 9\nremind me dec 2 to weigh 31\nsome day"),
        ("Coat colors\n31: castor", "31 is castor"),
        ("Litter weights\n12: 3 lb 12 oz (7 kits)", "12 litter 3 lb 12 oz (7 kits)"),
        ("Litter colors\n16: 3 black, 2 castor", "16 litter 3 black, 2 castor"),
        ("Breedings 11/20 - 11/22\n11/20 15 x Flint\n11/22 16 x Moss", "11/20: 15 x Flint\n11/22: 16 x Moss"),
        ("Deaths this week\nR22 11/23 bloat\nR21 found dead\n12: 1 kit", "11/23: R22 died of bloat\nR21 died\n12: 1 kit"),
        ("Palpation 11/24\n22 +\n15: neg\n16 was fat", "11/24: palpated 22 bred\n11/24: palpated 15 open\n11/24: 16 was fat"),
        ("Inventory\nPellets: 220 lb\nHay: 6 bales", "220 lb of feed left\nHay: 6 bales"),
        ("Feed bill\n4 bags @ 18.50\nthanks", "bought 4 bags of feed @ 18.50\nthanks"),
        ("Litter update\n12 (Sorrel): 7 kits, eyes open", "12 has 7 kits, eyes open"),
        ("Losses\n12: 1 cold\n\nall quiet", "12 lost 1 kits, cold\n\nall quiet"),
    ],
)  # fmt: skip
def test_lines_below_a_heading_are_told_in_words(text: str, told: str) -> None:
    """The heading gives its lines the verb and the day that they leave out; a line of another kind stays."""
    assert sheet_told(text, words()) == told


@pytest.mark.parametrize(
    "text",
    [
        "31 4-6\n32 4-3",
        "Condition\nall fine here",
        "Chores\nweigh 31",
        "Condition: fine",
        "Skip: nest check on 12",
        "at 4:30: Flint 3, Moss 2",
        "Keep: yes, sure",
        "BCS: good, fair",
        "Boxes\nR99 in a row",
        "3 bucks and 2 does\n1. Flint",
        "Kindled\n14 days to go\n9 lb of hay",
        "Condition\nJuno's girl 3",
        "Condition\nMoss5 3",
        "Condition of the barn\n3",
        "Breedings 11/20 - 11/22\n15 x Flint",
    ],
)
def test_other_notes_stay(text: str) -> None:
    """No heading that is known, or no line that fits it."""
    assert sheet_told(text, words()) is None


def test_another_animal_in_brackets_is_not_left_out() -> None:
    """`14 (Clover)` names two, and the note asks."""
    assert sheet_told("Condition\n14 (Clover): 3", words()) is None
    assert sheet_told("Condition\n14 (old): 3", words()) is None
    assert sheet_told("Condition\n14 (doe 14): 3", words()) == "14 bcs 3"


def test_an_empty_box_never_records() -> None:
    """Whatever its shape, an empty box is a remark and a ticked one is done."""
    for note in ("\u2611 box in 9\n\u2610 box out 12", "(x) box in 9\n( ) box out 12", "\u2705 box in 9\n\u274c box out 12"):
        kinds = [(fact["kind"], fact.get("doe", fact.get("who"))) for fact in read_json(note)["facts"]]
        assert kinds == [("nest_box", "9"), ("remark", "12")]
