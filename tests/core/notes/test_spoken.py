"""Spoken notes: when two ears agree, what a number may have been mistaken for, and what an ear is told beforehand."""

from __future__ import annotations

import json
from dataclasses import replace
from datetime import datetime, timedelta
from pathlib import Path

import pytest

from core.herd.state import Herd
from core.notes.journal import Note
from core.notes.listen import noted
from core.notes.reading import Message
from core.notes.replay import Book, book
from core.notes.roster import herd_of
from core.notes.spoken import Ears, Judged, becomes, judged, names_learned, primer, twins

AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
FARM: Book = book(herd_of(json.loads((Path(__file__).parents[2] / "corpus" / "roster.json").read_text())))


def heard(first: str, second: str | None = None) -> Judged:
    """What comes of it on the farm of the corpus, which has a 12, a 14 and a 31, and no 40."""
    return judged(FARM, Ears(first, second), Message("", AT))


@pytest.mark.parametrize(
    ("first", "second", "agree", "sure"),
    [
        ("Doe 14 kindled 8, 2 dead.", "doe fourteen kindled eight two dead", True, True),
        ("Doe 14 kindled 8, 2 dead.", "doe fourteen kindled eight three dead", False, False),
        ("Doe 14 kindled 8, 2 dead.", None, False, False),
        ("Doe 14 kindled 8.", "doe forty kindled eight", False, False),
        ("31 weighed 4 pounds 6 ounces", "thirty one weighed four pounds six ounces", True, True),
        ("Clover is a sweet cart", "clover is a sweet card", False, False),
        ("I moved Clover to cage B3", "moved clover to cage b three", True, True),
        ("Remind me friday to trim nails on 9", "remind me friday to trim nails on nine", True, True),
        ("Sold 31 for $15", "sold thirty one for fifteen dollars", True, False),
        ("Sold 31 for fifteen dollars", "sold thirty one for fifteen dollars", True, False),
        ("Doe 40 kindled 8", "doe forty kindled eight", False, False),
        ("The tractor will not start again.", "the tractor will not start again", False, False),
    ],
    ids=[
        "the same",
        "another count",
        "one ear",
        "another animal",
        "weight",
        "words left over",
        "little words",
        "free text",
        "price of a twin",
        "in words",
        "no such animal",
        "talk",
    ],
)
def test_ears_agree(first: str, second: str | None, agree: bool, sure: bool) -> None:
    """In every fact; and a number that could be its twin is not sure even then."""
    found = heard(first, second)
    assert (found.agree, found.sure) == (agree, sure)


def test_an_animal_that_is_not_there_may_be_one_that_is() -> None:
    """No doe 40: fourteen is offered. Of a price both are; where it is sure, nothing is."""
    assert heard("Doe 40 kindled 8, 2 dead").others == ("Doe 14 kindled 8, 2 dead",)
    assert heard("Sold 31 for $15").others == ("Sold 31 for $50",)
    assert heard("Doe 14 kindled 8.", "doe fourteen kindled six").others == ("doe fourteen kindled six",)
    assert heard("Doe 14 kindled 8.", "doe fourteen kindled eight").others == ()


@pytest.mark.parametrize(
    ("text", "tells"),
    [
        ("The tractor will not start again.", False),
        ("", False),
        ("14 14", False),
        ("16 looks rough today", True),
        ("doe 14 kindled", True),
        ("who is due this week", True),
    ],
)
def test_talk_is_no_note(text: str, tells: bool) -> None:
    """Words about nobody, or a number that says nothing."""
    assert heard(text).tells is tells


def test_a_question_only_asks() -> None:
    """Nothing is recorded by mishearing it."""
    assert heard("Who is due this week?").only_asks
    assert not heard("Doe 14 kindled 8.").only_asks
    assert not heard("").only_asks


def test_twins_change_one_number() -> None:
    """Teens and tens, in digits and in words, in a tag too; other numbers have none."""
    assert list(twins("14 had 8, R30 fifteen")) == ["40 had 8, R30 fifteen", "14 had 8, R13 fifteen", "14 had 8, R30 fifty"]
    assert list(twins("112 had 8 at 20")) == []


def test_what_a_note_becomes() -> None:
    """A line a fact."""
    (line,) = becomes(FARM, heard("doe 14 kindled 8 and doe 40 kindled 6").note)
    assert line.startswith("Doe 14: 8 born")


def mended(heard_as: str, typed: str, *, author: str = "me") -> Book:
    """The farm's book after something was heard wrongly and typed instead."""
    wrong = Note(FARM.last_id + 1, heard_as, AT, "me", "c", "heard:7")
    after = FARM.with_note(wrong)
    return after.with_note(replace(noted(after, Message(typed, AT, author, "c", "8")), id=after.last_id + 1))


@pytest.mark.parametrize(
    ("heard_as", "typed", "learned"),
    [
        ("Clever weighed 8 pounds", "Clover weighed 8 pounds", {"clever": "Clover"}),
        ("so real weighed 8 pounds", "Sorrel weighed 8 pounds", {"so real": "Sorrel"}),
        ("Flint weighed 8 pounds", "Clover weighed 8 pounds", {}),
        ("40 weighed 8 pounds", "Clover weighed 8 pounds", {}),
        ("Clever weighed 9 pounds", "Clever", {}),
        ("it was all very nice weighed 8 pounds", "Clover weighed 8 pounds", {}),
    ],
    ids=["a word", "two words", "another animal's name", "a number", "nothing told", "too much"],
)
def test_names_are_learned_from_what_was_typed(heard_as: str, typed: str, learned: dict[str, str]) -> None:
    """Words that stand where a name was typed are that name from then on, where they were nothing else."""
    assert names_learned(mended(heard_as, typed)) == learned


def test_a_learned_name_is_heard() -> None:
    """Where only so the note can be recorded; somebody else's next note teaches nothing."""
    book = mended("so real weighed 8 pounds", "Sorrel weighed 8 pounds")
    later = Message("", AT + timedelta(days=90))
    found = judged(book, Ears("So real weighed 9 pounds", "sorrel weighed nine pounds"), later)
    assert (found.text, found.sure) == ("Sorrel weighed 9 pounds", True)
    assert judged(book, Ears("It is so real today"), later).text == "It is so real today"
    assert names_learned(mended("so real weighed 8 pounds", "Sorrel weighed 8 pounds", author="bo")) == {}


def test_an_ear_is_told_tags_and_names() -> None:
    """Every living animal's; tags of the sample notes are nobody's, so that none of them can leak into a record."""
    told = primer(FARM.herd)
    assert "Flint" in told.names
    assert "Flint" in told.manner
    assert "R21" in told.manner
    assert "doe fourteen kindled" in told.sayings
    assert "Doe 27 kindled" in told.manner
    assert "Names" not in primer(Herd()).manner
    taken = book(herd_of({"farm": {}, "animals": [{"tag": "27"}], "breedings": [], "litters": []}))
    assert "Doe 28 kindled" in primer(taken.herd).manner
