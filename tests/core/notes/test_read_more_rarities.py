"""More forms that notes seldom take: a week of days, a salve on a sore, the wrong animal put right at once, words put right amid talk."""

from __future__ import annotations

import json
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from core.app import reader
from core.app.reading import Reader
from core.notes.reading import Message
from tests.core.notes.kinds.reads import Note, fact, holds, note, read_after, remark

CORPUS = Path(__file__).parents[2] / "corpus"
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")

WEEKS: list[Note] = [
    note("butcher 12 the week of 7 dec", fact("planned", who="12", what="cull", on="2026-12-07", until="2026-12-13")),
    note("butcher 12 the week of the 9th", fact("planned", who="12", what="cull", on="2026-12-07", until="2026-12-13")),
    note(
        "breed 15 to Flint the week of the 14th of december",
        fact("planned", who="15", what="breed", on="2026-12-14", until="2026-12-20", with_="3"),
    ),
    note("bred 15 to Flint the week of 16 nov", ask="when"),
    note("day 28, 9 kindled 6", fact("kindled", doe="9", born=6)),
    note("day 47, 9 kindled 6", ask="what"),
    note("day 47 nov twenty four and 9 kindled 6", ask="what"),
    note("butcher 12 week of christmas", fact("planned", who="12", what="cull")),
]

ANIMALS: list[Note] = [
    note("new doe 41 very big", fact("animal", tag="41", sex="doe")),
    note(
        "a friend gave me a doe, tag 52, New Zealand red, born 3/8",
        fact("animal", tag="52", sex="doe", breed="New Zealand", color="red", born="2026-03-08", origin="given"),
    ),
    note("new doe 41 named kindel", fact("animal", tag="41", name="Kindel", sex="doe")),
    note("31 4-6, no that was 32", fact("weighed", who="32", grams=1984)),
    note("31 4-6 32 4-1, no wait, that was 33", ask="what"),
    remark("Biscuit and Clover ten pounds, no wait, that was Juno", "22"),
]

ASKED_BEHIND: list[Note] = [
    note("14 kindled 5, who is due next?", fact("kindled", doe="14", born=5), fact("query", about="due")),
    note(
        "14 kindled 5\nFlint in with 15 yesterday\nwho's due next",
        fact("kindled", doe="14", born=5),
        fact("bred", doe="15", buck="3", on="2026-11-24"),
        fact("query", about="due"),
    ),
    note("14 kindled 5. how are you?", fact("kindled", doe="14", born=5)),
    note("14 kindled 5. is 6 normal?", ask="which_number"),
    note("sold pip. who is for sale", fact("sold", who="R23"), fact("query", about="sales")),
    note("31 weighed 4-6, which is good", fact("weighed", who="31", grams=1984)),
    note("14 kindled 5. what a day", fact("kindled", doe="14", born=5)),
]

BESIDE: list[Note] = [
    note(
        "31 has stray white hairs, though that is not a disqualification.",
        fact("fault", who="31", fault="stray white hairs", disqualifies=False),
    ),
    note("31 has white hairs, not surprised, and it's a dq", fact("fault", who="31", fault="white hairs", disqualifies=True)),
    note("lilac doe kindled 6", ask="which_animal"),
    note("moss clover 1 cup, 3/4 cup", ask="what"),
    note(
        "Moss has a sore hock. I put some zinc cream on it.",
        fact("ailment", who="5", sign="sore hock"),
        fact("treated", who="5", with_="zinc cream"),
    ),
    note("what reminders did I set", fact("query", about="due")),
    note("which reminder is set for 14", fact("query", about="card", who="14")),
    note("how many reminders do I have", fact("query", about="count")),
    note("the box is too small, who is due next?", fact("query", about="due")),
    note(
        "box in with Clover\nSorrel has 7 kits, all fat",
        fact("nest_box", doe="9", change="in"),
        fact("kit_count", doe="12", count=7),
    ),
]

MATINGS: list[Note] = [
    note("15 went to buck 3, 2 falls", fact("bred", doe="15", buck="3", falls=2)),
    note("bred 15 to Flint and 22 went to Moss too", fact("bred", doe="15", buck="3"), fact("bred", doe="22", buck="5")),
    note("sold R22 for breeding", fact("sold", who="R22")),
    note("keep 32 for breeding", fact("planned", who="32", what="keep")),
    note("retire Moss from breeding", fact("planned", who="5", what="retire")),
    remark("stop breeding 12", "12"),
    note("breeding 15 to Flint on saturday", fact("planned", who="15", what="breed", on="2026-11-28", with_="3")),
    remark("weaning 16 on saturday if it stays mild", "16"),
    note("14 &amp; 22 missed", fact("missed", doe="14"), fact("missed", doe="22")),
]

CARE: list[Note] = [
    note(
        "14 has a sore hock, smeared some salve on it",
        fact("ailment", who="14", sign="sore hock"),
        fact("treated", who="14", with_="salve"),
    ),
    note(
        "14 has a sore hock, dabbed a bit of salve on it",
        fact("ailment", who="14", sign="sore hock"),
        fact("treated", who="14", with_="salve"),
    ),
    note("14 has a sore hock, gave it a rest", fact("ailment", who="14", sign="sore hock")),
    note("14 has a sore hock, put a little on it", fact("ailment", who="14", sign="sore hock")),
    note("14 has a sore hock, put the kits on the hay", fact("ailment", who="14", sign="sore hock")),
    note(
        "ivermectin: 5 to cage C4, 0.5 ml; doe 9, 0.4 ml, 14 day withdrawal",
        fact("moved", who="5", cage="C4"),
        fact("treated", who="5", with_="ivermectin", dose="0.5 ml", withdrawal_days=14),
        fact("treated", who="9", with_="ivermectin", dose="0.4 ml", withdrawal_days=14),
    ),
    remark("looked at the nest box in 12", "12"),
    note("Moss is up to 6 oz of hay", ask="what"),
    note("Moss is up to half a cup of pellets a day", fact("ration", who="5", amount=0.5, unit="cup")),
]

QUESTIONS: list[Note] = [
    note(
        "Requested: pedigree of 31; card of 14.",
        fact("query", about="pedigree", who="31"),
        fact("query", about="card", who="14"),
    ),
    remark("Requested: pedigree of 31; hay.", "31"),
]


@pytest.mark.parametrize("row", WEEKS + ASKED_BEHIND + BESIDE + ANIMALS + MATINGS + CARE + QUESTIONS, ids=lambda row: row[0])
def test_a_rare_form_reads(row: Note) -> None:
    """Exactly those facts, and that question."""
    holds(row)


TALK = (
    ", the neighbor came by and had a look at the whole thing with me and then we stood in the yard"
    " and talked about the weather and the price of hay this year"
)
NOTHING_BEFORE = ""

PUT_RIGHT: list[tuple[str, str, dict[str, Any], str | None]] = [
    ("12 lost 2 kits froze", "make that crushed" + TALK, {"cause": "crushed"}, None),
    ("palpated 22 bred", "make that open" + TALK, {"result": "open"}, None),
    ("palpated 22 bred", "no she's open" + TALK, {"result": "open"}, None),
    ("sold 31 for $40", "make that $45" + TALK, {"price": "45.00"}, None),
    (NOTHING_BEFORE, "$45 not $40", {"price": "45.00"}, None),
    (NOTHING_BEFORE, "that was for 31, $45", {"price": "45.00"}, "31"),
    (NOTHING_BEFORE, "no make that open", {"result": "open"}, None),
    (NOTHING_BEFORE, "that was cage C5 not C4", {"cage": "C5"}, None),
]


@pytest.mark.parametrize(("before", "text", "value", "who"), PUT_RIGHT, ids=str)
def test_a_value_is_put_right_amid_talk_or_alone(before: str, text: str, value: dict[str, Any], who: str | None) -> None:
    """The one field, of the one animal where it is named; talk behind it changes nothing."""
    told = fact("correct", set=value, **({"who": who} if who else {}))
    assert read_after(*filter(None, (before, text))) == ([told], None)


@pytest.mark.parametrize(
    ("first", "then", "put"),
    [
        ("gave 22 ivermectin .2 ml, 28 day withdrawal", "make that 30 days", {"withdrawal_days": 30}),
        ("weaned 14 kits at 30 days", "make it 28 days", {"age_days": 28}),
        ("9 kindled 8, 2 dead", "lost 3 not 2", {"dead": 3}),
        ("9 kindled 8, 2 dead", "3 died, not 2", {"dead": 3}),
        ("12 lost 3 kits", "no 2 died", {"count": 2}),
    ],
)
def test_what_stands_beside_a_number_tells_what_it_puts_right(first: str, then: str, put: dict[str, int]) -> None:
    """A span without a name is the withdrawal of a treatment, else the age; what was lost is the dead of a birth."""
    ear = _reader()
    ear.read_in("barn", Message(first, AT, "ann"))
    read = ear.read_in("barn", Message(then, AT, "ann"))
    assert read["facts"] == [{"kind": "correct", "set": put}]


def test_another_buck_while_the_doe_is_asked_for() -> None:
    """The question stands; the buck put right meanwhile is taken."""
    ear = _reader()
    ear.read_in("barn", Message("bred to Moss yesterday", AT, "ann"))
    assert ear.read_in("barn", Message("no, Flint", AT, "ann"))["ask"]["why"] == "which_animal"
    read = ear.read_in("barn", Message("15", AT, "ann"))
    assert read["facts"] == [{"kind": "bred", "doe": "15", "buck": "3", "on": "2026-11-24"}]


def _reader() -> Reader:
    ear = reader(json.loads((CORPUS / "roster.json").read_text(encoding="utf-8")))
    assert isinstance(ear, Reader)
    return ear
