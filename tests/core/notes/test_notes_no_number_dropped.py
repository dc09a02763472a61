"""No number is dropped: what no fact holds is asked about, wherever in a note it stands."""

from __future__ import annotations

import json
from collections.abc import Iterator
from datetime import datetime
from pathlib import Path
from typing import Any

import pytest

from core.app import reader
from core.app.reading import Reader
from core.notes.kinds import KINDS

CORPUS = Path(__file__).parents[2] / "corpus"
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")

#: Numbers, weights, days and animals that no note here is about, and that no fact can take.
STRAY = (
    " 77", ", 79", " (73)", " on the 45th", " 4-61", " R99", " 13:77", " x71", " 3/45", " -76", " 2026-02-30", ", 78 kits", " 1/77", " #91", " 77%",
    " and 73", " / 78", " = 79", " + 73", " @ 73", " seventy seven", " nov 47", " 47 nov", " 77ml", " 40-13", " 777g", " $77", " 7.77 lb", " 77 cups",
    " born 2026-02-30", " 77 dead", " 77 bucks",
)  # fmt: skip
#: Questions, corrections and whole remarks hold what they hold in their own words.
WORDS_KEPT = frozenset({"query", "undo", "correct"})
LONGEST = 200  # letters: the long rambles take most of the time and show nothing else


@pytest.fixture(scope="module")
def farm() -> Reader:
    """The sample farm's reader."""
    found = reader(json.loads((CORPUS / "roster.json").read_text(encoding="utf-8")))
    assert isinstance(found, Reader)
    return found


def notes() -> list[str]:
    """Every kind's examples and the corpus's notes that record without a question."""
    told = [example.text for kind in KINDS for example in kind.examples]
    for name in sorted(CORPUS.glob("*.jsonl")):
        cases = [json.loads(line) for line in name.read_text(encoding="utf-8").split("\n") if line.strip()]
        told += [case["text"] for case in cases if "text" in case and not case.get("expect", {"ask": True}).get("ask")]
    return [text for text in dict.fromkeys(told) if len(text) <= LONGEST]


def strayed(place: int, text: str) -> Iterator[str]:
    """The note with a stray number at its end, and with one behind its first word; each note gets other numbers."""
    for step in range(3):
        stray = STRAY[(place * 3 + step) % len(STRAY)]
        yield text.rstrip(" .!") + stray
        first, space, rest = text.partition(" ")
        if space and "\n" not in text:
            yield f"{first}{stray} {rest}"


def stated(read: dict[str, Any]) -> set[str]:
    """The facts as text."""
    return {json.dumps(fact, sort_keys=True) for fact in read["facts"]}


def test_a_stray_number_in_any_note_is_held_or_asked_about(farm: Reader) -> None:
    """A note with one number more never becomes just what it was without it."""
    dropped, tried = [], 0
    for place, text in enumerate(notes()):
        plain = farm.read(text, AT)
        if plain["ask"] or not plain["facts"] or any(fact["kind"] in WORDS_KEPT for fact in plain["facts"]):
            continue
        for note in strayed(place, text):
            tried += 1
            read = farm.read(note, AT)
            if read["ask"] is None and stated(read) <= stated(plain):
                dropped.append(note)
    assert tried > 3000
    assert dropped == []


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("bred 15 to Flint on the 45th", "when"),
        ("31 born 2026-02-30", "when"),
        ("new doe 40 mini rex opal born 3/4, 3/45", "when"),
        ("bred 15 to Flint yesterday, this morning", "when"),
        ("frost on the 45th", "when"),
        ("14 kindled 8, x5", "which_number"),
        ("12 lost 2 x3", "which_number"),
        ("14 kindled 8, 12th", "when"),
        ("moved cage 14 to 9", "which_animal"),
        ("sold duke for 60", "which_animal"),
        ("vet friday for 6", "which_animal"),
        ("12 has a dozen kits", "confirm"),
        ("butchered R22 13:77", "which_number"),
        ("skip the weighing on 31 77", "which_number"),
        ("33 has a torn ear 77", "which_number"),
        ("Setting: feed is $23 a bag 77", "what"),
        ("11/23 11/24 | doe 14 | kindled | 7 born", "when"),
        ("digest on sunday at 7:00", "what"),
        ("our 77 aim is better fur", "what"),
        ("please 77 remind me friday to order hay", "what"),
        ("gave 22 ivermectin .2 ml 3 ml", "what"),
        ("fostered 2 kits from 12 to 16, 77 days", "what"),
        ("new doe 42 Magpie, satin, black, born 3/4/26, 3 weeks", "what"),
        ("Thistle is using her nest box as a toilet again! R99", "what"),
        ("Losses: (73) doe 12, 1 kit, starved", "which_number"),
    ],
)
def test_what_cannot_be_placed_is_asked_about(farm: Reader, text: str, why: str) -> None:
    """A day that can't be, two days, a number too many, an animal nobody knows."""
    read = farm.read(text, AT)
    assert read["ask"] is not None
    assert read["ask"]["why"] == why


@pytest.mark.parametrize(
    ("text", "facts"),
    [
        ("14 kindled 8, 15 x3", [{"kind": "kindled", "doe": "14", "born": 8}, {"kind": "bred", "doe": "15", "buck": "3"}]),
        ("bred 15 to 7, 22 x5", [{"kind": "bred", "doe": "15", "buck": "7"}, {"kind": "bred", "doe": "22", "buck": "5"}]),
        ("33 has 2 white toenails", [{"kind": "fault", "who": "33", "fault": "2 white toenails"}]),
        ("14 kindled 8 on the 31st day", [{"kind": "kindled", "doe": "14", "born": 8}]),
        ("gave 22 ivermectin .2 ml, 48 hour withdrawal", [{"kind": "treated", "who": "22", "with": "ivermectin", "withdrawal_days": 2}]),
        ("skip the 3 week check on 12", [{"kind": "skipped", "who": "12", "chore": "3 week check"}]),
        ("(1) 14 kindled 6; (2) R22 sold", [{"kind": "kindled", "doe": "14", "born": 6}, {"kind": "sold", "who": "R22"}]),
        ("breed 7 to 14 next month on the 5th", [{"kind": "planned", "who": "14", "with": "7", "on": "2026-12-05"}]),
        ("14 kindled 8, her 4th litter", [{"kind": "kindled", "doe": "14", "born": 8}]),
        ("sold hay for 60", [{"kind": "remark"}]),
        ("R21 NZW", [{"kind": "animal", "tag": "R21", "breed": "New Zealand"}]),
        ("R21 sneezing is finally gone", [{"kind": "remark", "who": "R21"}]),
        ("R21 sneezing, not gone", [{"kind": "ailment", "who": "R21", "sign": "sneezing"}]),
        ("a cup of feed weighs 5 oz", [{"kind": "setting", "name": "cup_weight", "value": 142}]),
        ("vet friday", [{"kind": "remind", "text": "vet", "on": "2026-11-27"}]),
        ("R21 NZW red black", [{"kind": "remark"}]),
        ("vet came friday", [{"kind": "remark"}]),
    ],
)
def test_what_looks_stray_and_is_not(farm: Reader, text: str, facts: list[dict[str, Any]]) -> None:
    """Numbers that belong to a word beside them are read with it."""
    read = farm.read(text, AT)
    assert read["ask"] is None
    assert [{name: fact.get(name) for name in wanted} for fact, wanted in zip(read["facts"], facts, strict=True)] == facts


def test_a_full_cage_moves_with_whoever_lives_in_it(farm: Reader) -> None:
    """`moved cage B3 to 9`: the animal that the book has there; of a cage moved elsewhere nothing is known."""
    talk = [farm.read_request({"text": text, "conversation": "cages"}, AT)["facts"] for text in ("14 to B3", "moved cage B3 to 9")]
    assert [[(fact["who"], fact["cage"]) for fact in facts] for facts in talk] == [[("14", "B3")], [("14", "9")]]
    assert not any(fact["kind"] == "moved" for fact in farm.read("moved cage 14 to the barn", AT)["facts"])
