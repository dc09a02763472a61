"""Animals that are sold, listed, given away, gone or meant to go."""

from __future__ import annotations

import pytest

from tests.core.notes.kinds.reads import Note, fact, holds, note, remark

NOTES = [
    note("sold R22 and R23 for $80 total", fact("sold", who="R22", price="40.00"), fact("sold", who="R23", price="40.00")),
    note("sold R22 and R23 $40", ask="which_number"),
    note("sold R22 and R23 $40 each", fact("sold", who="R22", price="40.00"), fact("sold", who="R23", price="40.00")),
    note("sold R22 and R22 $40", fact("sold", who="R22", price="40.00")),
    note("sold 16's bucks", ask="how_many"),
    note("sold 16's bucks 20 each", ask="how_many"),
    note("sold three of Thistle's", fact("sold", litter_of="16", count=3)),
    note("sold 2 of Thistle's babies", fact("sold", litter_of="16", count=2)),
    note("sold 2 bucks from 16", fact("sold", litter_of="16", count=2)),
    note("sold 2 bucks out of 16 for $40", fact("sold", litter_of="16", count=2, price="40.00")),
    note("sold 31 for 40 bucks", fact("sold", who="31", price="40.00")),
    note("sold 31 40 bucks", fact("sold", who="31", price="40.00")),
    note("sold 2 from 16", fact("sold", litter_of="16", count=2)),
    note("sold 2 out of 16", fact("sold", litter_of="16", count=2)),
    note("sold 16's litter", fact("sold", litter_of="16", count=5)),
    note("sold the litter", ask="which_animal"),
    note("sold 16's whole litter for $100", fact("sold", litter_of="16", count=5, price="100.00")),
    note("sold kits", ask="which_animal"),
    note("16 sold 2 kits", fact("sold", litter_of="16", count=2)),
    note("16: sold 3 kits", fact("sold", litter_of="16", count=3)),
    note("sold some kits from 16", ask="how_many"),
    note("sold R22 to", fact("sold", who="R22")),
    note("sold R22 to at", fact("sold", who="R22")),
    note("sold R22 to the neighbor for 30", fact("sold", who="R22", price="30.00", to="the neighbor")),
    note("sold R22 to eat", fact("sold", who="R22")),
    remark("bought by Tom"),
    remark("might sell R23", "R23"),
    note("list R23, sold R22", fact("for_sale", who="R23"), fact("sold", who="R22")),
    note("list R23 for 40, sold R22 for 30", fact("for_sale", who="R23", price="40.00"), fact("sold", who="R22", price="30.00")),
    note("sold R22, list R23 for 40", fact("for_sale", who="R23", price="40.00"), fact("sold", who="R22")),
    remark("selling"),
    note("selling 32", fact("for_sale", who="32")),
    note("list 32 for 60 until feb 30", ask="when"),
    note("list 32 for 60 until dec 20", fact("for_sale", who="32", price="60.00", until="2026-12-20")),
    note("list 32 for 60 until spring", fact("for_sale", who="32", price="60.00")),
    note("32 for sale until sold", fact("for_sale", who="32")),
    note("list 5 of 16's kits for 20 each", fact("for_sale", litter_of="16", count=5, price="20.00")),
    note("gave my 22 away", fact("given_away", who="22")),
    remark("gave my 22 a bath", "22"),
    note("gave the R22 to Tom", fact("given_away", who="R22", to="tom")),
    note("gave my Biscuit to Tom", fact("given_away", who="22", to="tom")),
    note("gave our R22 away", fact("given_away", who="R22")),
    note("gave my neighbor R22", fact("given_away", who="R22", to="my neighbor")),
    note("gave the neighbor Pip", fact("given_away", who="R23", to="the neighbor")),
    note("31 was limping. he died", fact("died", who="31")),
    note("31 was limping. he died yesterday", fact("died", on="2026-11-24", who="31")),
    note("found 33 dead", fact("died", who="33")),
    note("retired 14", fact("planned", who="14", what="retire")),
    note("14 retired", fact("planned", who="14", what="retire")),
    note("process 14", fact("planned", who="14", what="cull")),
    remark("the process with 14 is slow", "14"),
    remark("in the process of moving 14", "14"),
    remark("keep cleaning 14", "14"),
    note("keep 7 until jan 5", fact("planned", who="7", what="keep", until="2027-01-05")),
    note("butcher 12 on feb 30", ask="when"),
    note("keep 60", ask="which_animal"),
    note("cull 60", ask="which_animal"),
    note(
        "cull 31, 32 and 33 on dec 3",
        fact("planned", who="31", what="cull", on="2026-12-03"),
        fact("planned", who="32", what="cull", on="2026-12-03"),
        fact("planned", who="33", what="cull", on="2026-12-03"),
    ),
]


@pytest.mark.parametrize("row", NOTES, ids=[row[0] for row in NOTES])
def test_the_note_becomes_its_facts(row: Note) -> None:
    """One fact an animal, with the price of each; what is not said asks."""
    holds(row)
