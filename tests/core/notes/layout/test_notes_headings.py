"""Orderly notes: days that head a line or a page, lists that go on with a drug, and `ditto`."""

from __future__ import annotations

import json
from functools import lru_cache
from typing import Any

import pytest

from core.app import reader
from core.app.reading import Reader
from tests.core.notes.kinds.reads import AT, ROSTER


@lru_cache(maxsize=1)
def farm() -> Reader:
    """The sample farm's reader."""
    found = reader(ROSTER)
    assert isinstance(found, Reader)
    return found


def read_json(text: str) -> dict[str, Any]:
    """What the sample farm's reader makes of a note."""
    return farm().read(text, AT)


SHOWN = [
    {"kind": "shown", "who": "5", "placing": "second", "on": "2026-11-07"},
    {"kind": "shown", "who": "14", "placing": "third", "on": "2026-11-07"},
]
PANACUR = {"kind": "treated", "with": "fenbendazole", "withdrawal_days": 14}


@pytest.mark.parametrize(
    ("text", "facts"),
    [
        (
            "22 Nov: 9 weighed 9-14. Moss weighed 10-1.",
            [
                {"kind": "weighed", "who": "9", "grams": 4479, "on": "2026-11-22"},
                {"kind": "weighed", "who": "5", "grams": 4564, "on": "2026-11-22"},
            ],
        ),
        (
            "22 Nov: 9 weighed 9-14\nsold R21 for 30",
            [
                {"kind": "weighed", "who": "9", "grams": 4479, "on": "2026-11-22"},
                {"kind": "sold", "who": "R21", "price": "30.00", "on": "2026-11-25"},
            ],
        ),
        (
            "Weights, 21 Nov\n9 9-14\n22 9-8",
            [
                {"kind": "weighed", "who": "9", "grams": 4479, "on": "2026-11-21"},
                {"kind": "weighed", "who": "22", "grams": 4309, "on": "2026-11-21"},
            ],
        ),
        ("Show on 7 November: Moss, second; Juno, third.", SHOWN),
        (
            "sold R21 for 30. 22 Nov, sold R22 for 35",
            [
                {"kind": "sold", "who": "R21", "price": "30.00", "on": "2026-11-25"},
                {"kind": "sold", "who": "R22", "price": "35.00", "on": "2026-11-22"},
            ],
        ),
        ("sold R21 for 30. 22 Nov.", [{"kind": "sold", "who": "R21", "price": "30.00", "on": "2026-11-22"}]),
        (
            "12: lost 1 kit 21 Nov; lost 2 kits 24 Nov",
            [
                {"kind": "kits_lost", "doe": "12", "count": 1, "on": "2026-11-21"},
                {"kind": "kits_lost", "doe": "12", "count": 2, "on": "2026-11-24"},
            ],
        ),
        (
            "22 palpated open; 14, box in",
            [
                {"kind": "palpated", "doe": "22", "result": "open", "on": "2026-11-25"},
                {"kind": "nest_box", "doe": "14", "change": "in", "on": "2026-11-25"},
            ],
        ),
        (
            "Palpated 23 Nov: 14, bred; 9, bred.",
            [{"kind": "palpated", "doe": doe, "result": "bred", "on": "2026-11-23"} for doe in ("14", "9")],
        ),
        (
            "22 Nov: fenbendazole given. Doe 9, 0.4 ml; doe 22, 0.3 ml. Withdrawal 14 days.",
            [{**PANACUR, "who": "9", "dose": "0.4 ml", "on": "2026-11-22"}, {**PANACUR, "who": "22", "dose": "0.3 ml", "on": "2026-11-22"}],
        ),
        ("Treatment: 9, fenbendazole, 0.4 ml; withdrawal, 14 days.", [{**PANACUR, "who": "9", "dose": "0.4 ml", "on": "2026-11-25"}]),
        (
            "33 weighed 3-14 on 22 Nov; condition, 4.",
            [
                {"kind": "weighed", "who": "33", "grams": 1758, "on": "2026-11-22"},
                {"kind": "condition", "who": "33", "score": 4.0, "on": "2026-11-22"},
            ],
        ),
        ("6 Dec: butcher R21.", [{"kind": "planned", "who": "R21", "what": "cull", "on": "2026-12-06"}]),
        ("20 Nov: keep 33.", [{"kind": "planned", "who": "33", "what": "keep"}]),
        ("16 to buck 5, 3 falls", [{"kind": "bred", "doe": "16", "buck": "5", "falls": 3, "on": "2026-11-25"}]),
        (
            "R21 5-1; R22 ditto",
            [
                {"kind": "weighed", "who": "R21", "grams": 2296, "on": "2026-11-25"},
                {"kind": "weighed", "who": "R22", "grams": 2296, "on": "2026-11-25"},
            ],
        ),
        (
            'R21 5-1\nR22: "',
            [
                {"kind": "weighed", "who": "R21", "grams": 2296, "on": "2026-11-25"},
                {"kind": "weighed", "who": "R22", "grams": 2296, "on": "2026-11-25"},
            ],
        ),
        (
            "sold R21 to Mrs. Oakley; sold R22 to A. Fenn",
            [
                {"kind": "sold", "who": "R21", "to": "mrs oakley", "on": "2026-11-25"},
                {"kind": "sold", "who": "R22", "to": "a fenn", "on": "2026-11-25"},
            ],
        ),
        (
            "Settings: feed bag, 50 lb; feed price, $21 a bag.",
            [{"kind": "setting", "name": "feed_bag", "value": 22680}, {"kind": "setting", "name": "feed_price", "value": "21.00"}],
        ),
        ("16 bred to 5; palpate due 7 Dec.", [{"kind": "bred", "doe": "16", "buck": "5", "on": "2026-11-25"}]),
        ("Faults: 33, white toenail; 31, none.", [{"kind": "fault", "who": "33", "fault": "white toenail", "on": "2026-11-25"}]),
        ("16 -2 kits", [{"kind": "kits_lost", "doe": "16", "count": 2, "on": "2026-11-25"}]),
        ("mvd 33 C2", [{"kind": "moved", "who": "33", "cage": "C2", "on": "2026-11-25"}]),
        ("9 n 22 missed", [{"kind": "missed", "doe": "9", "on": "2026-11-25"}, {"kind": "missed", "doe": "22", "on": "2026-11-25"}]),
        ("sat nov 21 16x5", [{"kind": "bred", "doe": "16", "buck": "5", "on": "2026-11-21"}]),
    ],
)
def test_an_orderly_note_is_read_with_its_days(text: str, facts: list[dict[str, Any]]) -> None:
    """Each fact has the day of its own heading."""
    assert _sorted(read_json(text)["facts"]) == _sorted(facts)


@pytest.mark.parametrize(("text", "why"), [("15x3 tue 11/23", "when")])
def test_what_can_not_be_is_asked(text: str, why: str) -> None:
    """A weekday beside another day's date, and a ditto with nothing above it."""
    assert read_json(text)["ask"]["why"] == why


def test_a_box_that_is_not_in_is_no_change() -> None:
    """Denied: kept as said."""
    assert [fact["kind"] for fact in read_json("box not in 9 yet")["facts"]] == ["remark"]


def test_a_list_of_chores_is_no_question() -> None:
    """A title with a colon asks nothing."""
    assert all(fact["kind"] != "query" for fact in read_json("To do 2 Dec: clean trays")["facts"])


def _sorted(facts: list[dict[str, Any]]) -> list[str]:
    return sorted(json.dumps({name: value for name, value in fact.items() if value is not None}, sort_keys=True) for fact in facts)


def answered(chore: str, doe: str, text: str) -> dict[str, Any]:
    """What the sample farm's reader makes of an answer to a reminder."""
    return farm().read_request({"text": text, "reply_to": {"chore": chore, "doe": doe}}, AT)


def test_the_lines_of_an_answer_are_one() -> None:
    """A form below `done` tells what was done; a number in it is never dropped, an hour needn't be kept."""
    weaned = {"kind": "weaned", "doe": "16", "count": 5, "bucks": 3, "does": 2, "on": "2026-11-25"}
    assert answered("wean", "16", "Done.\nBucks: 3\nDoes: 2")["facts"] == [weaned]
    assert answered("nest_box_in", "9", "done, 3 too")["ask"] is not None
    assert answered("kindling", "14", "done at 7:30")["ask"]["why"] == "how_many"


@pytest.mark.parametrize(
    "head",
    [
        "11/23 PM\n",
        "Monday chores\n",
        "This is all of it from Monday: ",
        "Notes from Monday.\n",
        "Here is everything from Monday's round. ",
        "Monday's round: ",
    ],
)
def test_a_head_that_tells_when_holds_for_the_note(head: str) -> None:
    """A day with its part of day, or a sentence that only says what follows and from when."""
    facts = read_json(f"{head}Moss has ear mites. R21 weighed 5-4.")["facts"]
    assert [(fact["kind"], fact["on"]) for fact in facts] == [("ailment", "2026-11-23"), ("weighed", "2026-11-23")]


@pytest.mark.parametrize("head", ["All was quiet on Monday. ", "Everything from 12 and Monday. ", "Monday, the 22nd, notes. "])
def test_a_sentence_about_another_day_heads_nothing(head: str) -> None:
    """It must name a round or a list, one day and no animal."""
    facts = read_json(f"{head}R21 weighed 5-4.")["facts"]
    assert [fact["on"] for fact in facts if fact["kind"] == "weighed"] in ([], ["2026-11-25"])


def test_lines_that_ask_for_reminders_stand_apart() -> None:
    """A reminder or a setting among other lines is its own, and so are several reminders."""
    kinds = [fact["kind"] for fact in read_json("22 has ear mites\nremind me friday to check 22")["facts"]]
    assert kinds == ["ailment", "remind"]
    two = read_json("remind me friday to trim nails on 9\nremind me saturday to weigh 31")["facts"]
    assert [(fact["who"], fact["on"]) for fact in two] == [("9", "2026-11-27"), ("31", "2026-11-28")]


def test_a_reminder_behind_a_note_is_read_with_it() -> None:
    """Its `her` is the animal of the note; a wish that lacks its day leaves the whole to be asked."""
    facts = read_json("22 has ear mites, and can you remind me in 10 days to treat her again")["facts"]
    assert [(fact["kind"], fact["who"]) for fact in facts] == [("ailment", "22"), ("remind", "22")]
    facts = read_json("31 4-2, please remind me saturday to weigh 32")["facts"]
    assert [(fact["kind"], fact["who"]) for fact in facts] == [("weighed", "31"), ("remind", "32")]
    assert read_json("Moss has ear mites so remind me to look at him")["ask"] is not None


def test_a_page_is_no_question() -> None:
    """A first line such as `Feed` asks nothing where figures stand below it."""
    assert [fact["kind"] for fact in read_json("Feed costs\n4 bags @ 18.50\nTotal 74.00")["facts"]] != ["query"]


def test_what_is_well_is_no_question_among_other_lines() -> None:
    """`22 ok` beside ailments, `no kits yet` beside a box."""
    read = read_json("22 ok\n5 snotty nose\n9 ok")
    assert read["ask"] is None
    assert [(fact["kind"], fact["who"]) for fact in read["facts"]] == [("ailment", "5"), ("remark", "22"), ("remark", "9")]
    read = read_json("14 - day 32, no kits yet\n9 - day 28, box in\n22 - day 14, palpated bred")
    assert read["ask"] is None
    assert [(fact["kind"], fact.get("doe")) for fact in read["facts"][:2]] == [("nest_box", "9"), ("palpated", "22")]


@pytest.mark.parametrize(
    ("text", "kinds"),
    [
        ("9 - day 28, box in\n22 bit me", [("nest_box", "9"), ("temper", "22")]),
        ("9 weighed 8-4, box in\n22 bit me", [("weighed", "9"), ("nest_box", "9"), ("temper", "22")]),
        ("16's five got weaned, three bucks, then I put 15 in with Flint", [("weaned", "16"), ("bred", "15")]),
        ("juno 8 alive 1 dead. biscuit fine. moss has ear mites", [("kindled", "14"), ("remark", "22"), ("ailment", "5")]),
        ("box in 9\n31 4-2\nMoss to B1", [("nest_box", "9"), ("weighed", "31"), ("moved", "5")]),
        ("Juno had kindled while we were eating pie, ten of them, two dead", [("kindled", "14")]),
        ("palpated 22 bred, and that 15 felt empty", [("palpated", "22"), ("palpated", "15")]),
    ],
)
def test_each_line_or_breath_keeps_its_own_animal(text: str, kinds: list[tuple[str, str]]) -> None:
    """What is said of one animal is never carried to the next one."""
    facts = read_json(text)["facts"]
    assert sorted((fact["kind"], fact.get("doe", fact.get("who"))) for fact in facts) == sorted(kinds)


def spoken(*texts: str) -> list[dict[str, Any]]:
    """What a person's messages give, one after the other."""
    talk = [
        {"text": text, "conversation": "k", "from": "ann", "at": f"2026-11-25T07:{minute}:00-06:00"}
        for minute, text in enumerate(texts, 10)
    ]
    reader_of_all = reader(ROSTER)
    assert isinstance(reader_of_all, Reader)
    return [reader_of_all.read_request(each, AT) for each in talk]


def test_a_number_behind_for_her_is_a_price() -> None:
    """`sold her for 16` names no animal 16; `list her` asks for nothing."""
    *_, sold = spoken("33 3-10", "sold her for 16")
    assert [(fact["kind"], fact["who"], fact["price"]) for fact in sold["facts"]] == [("sold", "33", "16.00")]
    *_, listed = spoken("33 3-10", "list her for 50 until dec 20")
    assert [(fact["kind"], fact["who"], fact["price"]) for fact in listed["facts"]] == [("for_sale", "33", "50.00")]


def test_a_correction_by_the_way_corrects() -> None:
    """Small talk before `make that` changes nothing; without a value behind it, it is no correction."""
    *_, put_right = spoken("31 3-12", "and while I am at it make that 3-13, my eyes are going")
    assert [(fact["kind"], fact["set"]) for fact in put_right["facts"]] == [("correct", {"grams": 1729})]
    *_, remark = spoken("31 3-12", "we should make that hutch bigger for 12")
    assert [fact["kind"] for fact in remark["facts"]] == ["remark"]


@pytest.mark.parametrize("text", ["three weeks, 9 kindled 6", "day 47\n9 kindled 6"])
def test_a_count_of_days_at_the_head_is_asked_about(text: str) -> None:
    """Where it isn't that of the doe below it."""
    assert read_json(text)["ask"]["why"] == "what"


def test_settings_before_small_talk_are_each_taken() -> None:
    """Two in a row, and a long sigh behind them."""
    sigh = "which is robbery if you ask me but what can a person do these days when everything else has gone up too"
    facts = read_json(f"feed bag 40 lb; feed price $17.50 a bag, {sigh}")["facts"]
    assert [(fact["kind"], fact["name"]) for fact in facts] == [("setting", "feed_bag"), ("setting", "feed_price")]
