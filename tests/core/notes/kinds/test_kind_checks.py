"""What is asked about a fact that can't be so, or ought to be confirmed; each in plain words and with a remedy."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from core.herd.state import Herd
from core.notes.fact import ColorCounts
from core.notes.kinds import KIND_OF
from core.problem import WHY
from tests.farm import TODAY, ago, check, small_herd, tell, why

#: Kind, fields, what is asked (None: nothing), in the small herd.
CASES: list[tuple[str, dict[str, Any], str | None]] = [
    # animals
    ("animal", {"tag": "40", "sex": "doe", "born": ago(200)}, None),
    ("animal", {"tag": "40", "born": ago(-1)}, "when"),
    ("animal", {"tag": "40", "on": ago(-1)}, "when"),
    ("animal", {"tag": "40", "sire": "14"}, "wrong_sex"),
    ("animal", {"tag": "40", "dam": "3"}, "wrong_sex"),
    ("animal", {"tag": "40", "dam": "14", "born": date(2024, 1, 1)}, "impossible"),
    ("animal", {"tag": "40", "sire": "Duke", "dam": "R23x"}, None),
    ("animal", {"tag": "31", "sex": "buck", "color": "Castor", "breed": "mini rex", "sire": "03"}, None),
    ("animal", {"tag": "31", "sex": "doe"}, "confirm"),
    ("animal", {"tag": "40", "name": "Bunny"}, "what"),
    ("animal", {"tag": "31", "breed": "New Zealand"}, "confirm"),
    ("animal", {"tag": "31", "sire": "5"}, "confirm"),
    ("animal", {"tag": "R23", "sex": "doe"}, None),
    ("moved", {"who": "14", "cage": "B3"}, None),
    ("moved", {"who": "34", "cage": "B3"}, "which_animal"),
    ("moved", {"who": "R23", "cage": "B3"}, "impossible"),
    ("moved", {"who": "R23", "cage": "B3", "on": ago(3)}, None),
    ("moved", {"who": "31", "cage": "B3", "on": ago(130)}, "impossible"),
    ("moved", {"who": "14", "cage": "B3", "on": ago(-1)}, "when"),
    ("tagged", {"tag": "R30", "litter_of": "16"}, None),
    ("tagged", {"tag": "R30"}, "which_animal"),
    ("tagged", {"tag": "31", "litter_of": "16"}, "which_animal"),
    ("tagged", {"tag": "R23", "litter_of": "16"}, None),
    ("tagged", {"tag": "R30", "litter_of": "99"}, "which_animal"),
    ("tagged", {"tag": "R30", "litter_of": "3"}, "wrong_sex"),
    ("tagged", {"tag": "R30", "litter_of": "14"}, "confirm"),
    ("tagged", {"tag": "R31", "who": "31"}, None),
    ("tagged", {"tag": "R31", "who": "31", "sex": "doe"}, "wrong_sex"),
    # mating to kindling
    ("bred", {"doe": "15", "buck": "3"}, None),
    ("bred", {"doe": "15", "buck": "Duke"}, None),
    ("bred", {"doe": "3", "buck": "5"}, "wrong_sex"),
    ("bred", {"doe": "15", "buck": "14"}, "wrong_sex"),
    ("bred", {"doe": "15", "buck": "R23"}, "impossible"),
    ("bred", {"doe": "99", "buck": "3"}, "which_animal"),
    ("refused", {"doe": "22", "buck": "5"}, None),
    ("refused", {"doe": "22", "buck": "9"}, "wrong_sex"),
    ("refused", {"doe": "22"}, None),
    ("palpated", {"doe": "22", "result": "open"}, None),
    ("palpated", {"doe": "5", "result": "open"}, "wrong_sex"),
    ("nest_box", {"doe": "14", "change": "in"}, None),
    ("nest_box", {"doe": "99", "change": "in"}, "which_animal"),
    ("missed", {"doe": "14"}, None),
    ("missed", {"doe": "14", "on": ago(-2)}, "when"),
    ("kindled", {"doe": "14", "born": 8, "alive": 6, "dead": 2}, None),
    ("kindled", {"doe": "9", "born": 6}, None),
    ("kindled", {"doe": "9", "born": 6, "on": ago(1)}, "impossible"),
    ("kindled", {"doe": "22", "born": 6}, "impossible"),
    ("kindled", {"doe": "15", "born": 6}, "confirm"),
    ("kindled", {"doe": "12", "born": 6}, "confirm"),
    ("kindled", {"doe": "14"}, "how_many"),
    ("kindled", {"doe": "14", "dead": 2}, "how_many"),
    ("kindled", {"doe": "14", "born": 4, "dead": 5}, "impossible"),
    ("kindled", {"doe": "14", "born": 7, "alive": 8}, "impossible"),
    ("kindled", {"doe": "14", "born": 7, "alive": 4, "dead": 1}, "which_number"),
    ("kindled", {"doe": "14", "alive": 5, "dead": 1}, None),
    ("kindled", {"doe": "14", "born": 19}, "confirm"),
    ("kindled", {"doe": "3", "born": 6}, "wrong_sex"),
    ("kindled", {"doe": "99", "born": 6}, "which_animal"),
    # kits
    ("kits_lost", {"doe": "12", "count": 7}, None),
    ("kits_lost", {"doe": "12", "count": 9}, "impossible"),
    ("kits_lost", {"doe": "15", "count": 1}, "impossible"),
    ("kits_lost", {"doe": "3", "count": 1}, "wrong_sex"),
    ("kits_lost", {"doe": "99", "count": 1}, "which_animal"),
    ("kits_lost", {"doe": "16", "count": 5, "on": ago(20)}, None),
    ("fostered", {"from_": "12", "to": "16", "count": 2}, "confirm"),
    ("fostered", {"from_": "15", "to": "12", "count": 2}, "confirm"),
    ("fostered", {"from_": "14", "to": "12", "count": 2}, "confirm"),
    ("fostered", {"from_": "12", "to": "12", "count": 2}, "which_animal"),
    ("fostered", {"from_": "12", "to": "99", "count": 2}, "which_animal"),
    ("kit_count", {"doe": "12", "count": 7}, None),
    ("kit_count", {"doe": "12", "count": 8}, "confirm"),
    ("kit_count", {"doe": "15", "count": 1}, "confirm"),
    ("kit_count", {"doe": "99", "count": 1}, "which_animal"),
    ("weaned", {"doe": "12", "count": 7}, "confirm"),
    ("weaned", {"doe": "12", "count": 8}, "impossible"),
    ("weaned", {"doe": "12", "count": 5, "bucks": 3, "does": 3}, "which_number"),
    ("weaned", {"doe": "12", "count": 5, "bucks": 2, "does": 2}, "which_number"),
    ("weaned", {"doe": "12", "count": 5, "bucks": 6}, "which_number"),
    ("weaned", {"doe": "15", "count": 5}, "impossible"),
    ("weaned", {"doe": "99", "count": 5}, "which_animal"),
    ("litter_weighed", {"doe": "12", "grams": 1673, "count": 7}, None),
    ("litter_weighed", {"doe": "12", "grams": 1673, "count": 8}, "confirm"),
    ("litter_weighed", {"doe": "15", "grams": 1673}, "confirm"),
    ("litter_weighed", {"doe": "12", "grams": 99999}, "impossible"),
    ("litter_weighed", {"doe": "12", "grams": 0}, "impossible"),
    ("litter_weighed", {"doe": "99", "grams": 900}, "which_animal"),
    ("litter_colors", {"doe": "16", "colors": ColorCounts((("castor", 3), ("black", 2)))}, None),
    ("litter_colors", {"doe": "16", "colors": ColorCounts((("castor", 9),))}, "confirm"),
    ("litter_colors", {"doe": "15", "colors": ColorCounts((("castor", 1),))}, "confirm"),
    ("litter_colors", {"doe": "99", "colors": ColorCounts((("castor", 1),))}, "which_animal"),
    # the animal itself
    ("weighed", {"who": "31", "grams": 1984}, None),
    ("weighed", {"who": "31", "grams": 2900}, "impossible"),
    ("weighed", {"who": "31", "grams": 0}, "impossible"),
    ("weighed", {"who": "34", "grams": 1900}, "which_animal"),
    ("condition", {"who": "5", "score": 2.5}, None),
    ("condition", {"who": "5", "score": 3}, None),
    ("condition", {"who": "5", "score": 2.3}, "which_number"),
    ("condition", {"who": "5", "score": 6}, "which_number"),
    ("ration", {"who": "5", "amount": 0.5, "unit": "cup"}, None),
    ("ration", {"scope": "does", "amount": 1, "unit": "cup"}, None),
    ("ration", {"amount": 1, "unit": "cup"}, "which_animal"),
    ("ration", {"who": "5", "amount": 0, "unit": "cup"}, "how_many"),
    ("temper", {"who": "22", "grade": "bad"}, None),
    ("temper", {"who": "99", "grade": "bad"}, "which_animal"),
    ("nest_manners", {"doe": "16", "sign": "soiled"}, None),
    ("nest_manners", {"doe": "5", "sign": "soiled"}, "wrong_sex"),
    ("ailment", {"who": "R23", "sign": "sneezing"}, "impossible"),
    ("treated", {"who": "22", "with_": "ivermectin"}, None),
    ("treated", {"who": "22", "with_": "ivermectin", "withdrawal_days": 10**9}, "which_number"),
    ("fault", {"who": "31", "fault": "white toenail"}, None),
    ("scored", {"who": "31", "trait": "type", "score": 4}, None),
    ("scored", {"who": "31", "trait": "type", "score": 6}, "which_number"),
    ("color", {"who": "31", "color": "black"}, None),
    ("shown", {"who": "3"}, None),
    ("shown", {"who": "3", "on": ago(-9)}, "when"),
    # leaving
    ("died", {"who": "31"}, None),
    ("died", {"who": "R23"}, "impossible"),
    ("died", {"litter_of": "16", "count": 2}, None),
    ("sold", {"litter_of": "16", "count": 6}, "impossible"),
    ("sold", {"litter_of": "16"}, "how_many"),
    ("sold", {}, "which_animal"),
    ("sold", {"litter_of": "3", "count": 1}, "wrong_sex"),
    ("sold", {"litter_of": "99", "count": 1}, "which_animal"),
    ("for_sale", {"who": "31", "until": ago(-9)}, None),
    ("for_sale", {"who": "31", "until": ago(9)}, "when"),
    ("for_sale", {"litter_of": "16", "count": 9}, "impossible"),
    ("culled", {"who": "31", "live_grams": 2000, "dressed_grams": 1100}, None),
    ("culled", {"who": "31", "live_grams": 9000}, "impossible"),
    ("culled", {"who": "31", "live_grams": 2000, "dressed_grams": 2000}, "which_number"),
    ("culled", {"litter_of": "16", "count": 1, "live_grams": 2000}, None),
    ("given_away", {"who": "99"}, "which_animal"),
    ("planned", {"who": "31", "what": "cull", "on": ago(-8)}, None),
    ("planned", {"who": "31", "what": "cull", "on": ago(8)}, "when"),
    ("planned", {"who": "14", "what": "breed", "with_": "3", "on": ago(24), "until": ago(-5)}, None),
    ("planned", {"who": "3", "what": "breed", "with_": "14"}, "wrong_sex"),
    ("planned", {"who": "5", "what": "replace", "with_": "99"}, "which_animal"),
    ("planned", {"who": "R23", "what": "keep"}, "impossible"),
    # the farm
    ("feed_bought", {"bags": 4}, None),
    ("feed_bought", {}, "how_many"),
    ("feed_left", {"grams": 1000}, None),
    ("feed_left", {"grams": 1000, "on": ago(-1)}, "when"),
    ("weather", {"what": "cold", "celsius": -9.4, "on": ago(-1)}, None),
    ("weather", {"what": "heat"}, None),
    ("weather", {"what": "heat", "celsius": 95.0}, "impossible"),
    ("setting", {"name": "bucks_a_breed", "value": 2, "breed": "Mini Rex"}, None),
    ("setting", {"name": "bucks_a_breed", "value": "two"}, "what"),
    ("setting", {"name": "no_such", "value": 2}, "what"),
    ("setting", {"name": "winter", "value": "2026-12-01", "breed": "Mini Rex"}, "what"),
    ("remind", {"text": "trim nails", "on": ago(-2), "who": "9"}, None),
    ("remind", {"text": "trim nails", "on": ago(2)}, "when"),
    ("remind", {"text": "trim nails", "on": TODAY, "who": "99"}, "which_animal"),
    ("remind", {"text": "call about him", "on": TODAY, "who": "R23"}, None),
    ("skipped", {"chore": "check_nest", "who": "12"}, None),
    ("skipped", {"chore": "check_nest", "who": "99"}, "which_animal"),
    ("skipped", {"chore": "check_nest"}, None),
    ("done", {"chore": "trim nails", "who": "R23"}, None),
    ("done", {"chore": "trim nails", "who": "99"}, "which_animal"),
    ("done", {"chore": "trim nails"}, None),
    ("remark", {"text": "looks rough", "who": "R23"}, None),
    ("remark", {"text": "looks rough", "on": ago(-3)}, "when"),
    ("query", {"about": "pair", "who": "15", "with_": "R23"}, None),
    ("query", {"about": "card", "who": "99"}, "which_animal"),
    ("undo", {}, None),
    ("correct", {"set": ()}, None),
]


@pytest.mark.parametrize(("kind", "fields", "asked"), CASES, ids=lambda part: str(part)[:60])
def test_check(kind: str, fields: dict[str, Any], asked: str | None) -> None:
    """The fact is taken as it is, or asked about with the contract's code."""
    assert why(small_herd(), kind, **fields) == asked


@pytest.mark.parametrize(("kind", "fields"), [(kind, fields) for kind, fields, asked in CASES if asked], ids=lambda part: str(part)[:60])
def test_questions_are_whole(kind: str, fields: dict[str, Any]) -> None:
    """Every question has a known code, words and a way out."""
    problem = check(small_herd(), kind, **fields)

    assert problem is not None
    assert problem.code in WHY
    assert problem.text.endswith((".", "?"))
    assert problem.remedy.endswith(".")
    assert problem.code != "confirm" or problem.choices == ("yes", "no")


def test_every_kind_is_checked() -> None:
    """The cases cover every kind."""
    assert {kind for kind, _, _ in CASES} == set(KIND_OF)


def test_kindled_late_is_confirmed() -> None:
    """From day 36 after every breeding a litter is confirmed, even with a later breeding that is too young."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "bred", doe="1", buck="2", on=ago(36))

    assert why(herd, "kindled", doe="1", born=5) == "confirm"
    assert why(herd, "kindled", doe="1", born=5, on=ago(1)) is None
    assert why(tell(herd, "bred", doe="1", buck="2", on=ago(9)), "kindled", doe="1", born=5) == "confirm"
    assert why(tell(herd, "bred", doe="1", buck="2", on=ago(30)), "kindled", doe="1", born=5) is None


def test_weight_far_from_the_last_one_is_confirmed() -> None:
    """A grown one over a third off asks; within it doesn't."""
    herd = tell(small_herd(), "weighed", who="5", grams=4500, on=ago(60))

    assert why(herd, "weighed", who="5", grams=2900) == "confirm"
    assert why(herd, "weighed", who="5", grams=3100) is None


def test_weaned_in_two_goes() -> None:
    """The rest of a litter may be weaned later; more than were in the nest may not."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "kindled", doe="1", born=7, on=ago(40))
    assert why(herd, "weaned", doe="1", count=7) is None
    herd = tell(herd, "weaned", doe="1", count=3, on=ago(5))

    assert why(herd, "weaned", doe="1", count=4) is None
    assert why(herd, "weaned", doe="1", count=5) == "impossible"


def test_fostering_between_two_nests() -> None:
    """Two does with nests, and no more kits than the first has."""
    herd = tell(small_herd(), "kindled", doe="9", born=4)

    assert why(herd, "fostered", from_="12", to="9", count=2) is None
    assert why(herd, "fostered", from_="12", to="9", count=8) == "impossible"


def test_a_weight_of_a_breed_nobody_knows() -> None:
    """Without a known breed only a weight that no rabbit has can't be."""
    herd = tell(Herd(), "animal", tag="1", breed="barn mix")

    assert why(herd, "weighed", who="1", grams=8000) is None
    assert why(herd, "weighed", who="1", grams=9500) == "impossible"


def test_sire_is_asked_where_two_bucks_fit() -> None:
    """The birth is recorded; whose kits they are is asked with both bucks."""
    from core.notes.kinds.kindling import question_after
    from tests.farm import fact

    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "bred", doe="1", buck="Flint", on=ago(33))
    one = tell(herd, "bred", doe="1", buck="Flint", on=ago(31))
    two = tell(herd, "bred", doe="1", buck="Moss", on=ago(31))
    kindled = fact("kindled", doe="1", born=6)

    assert question_after(kindled, one) is None
    asked = question_after(kindled, two)
    assert asked is not None
    assert (asked.code, asked.choices) == ("which_animal", ("Moss", "Flint"))
    after = tell(two, "kindled", doe="1", born=6)
    assert question_after(kindled, after) == asked
    assert next(iter(after.litters.values())).sire is None
    assert question_after(fact("kindled", doe="99", born=6), two) is None
