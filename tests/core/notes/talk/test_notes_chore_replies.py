"""Answers to reminders, for every chore that there is."""

from __future__ import annotations

from typing import Any

import pytest

from core.herd.chore import CHORES
from core.notes.talk.answer import day_alone
from tests.conversations.heard import farm
from tests.conversations.transcript import DAY
from tests.core.notes.talking import Barn, facts, why

DONE: list[tuple[str, str, str, list[dict[str, Any]]]] = [
    ("palpate", "22", "bred", [{"kind": "palpated", "doe": "22", "result": "bred"}]),
    ("palpation", "22", "done, open", [{"kind": "palpated", "doe": "22", "result": "open"}]),
    ("nest_box", "14", "done", [{"kind": "nest_box", "doe": "14", "change": "in"}]),
    ("nest_box_in", "9", "✅", [{"kind": "nest_box", "doe": "9", "change": "in"}]),
    ("nest_box_out", "12", "done yesterday", [{"kind": "nest_box", "doe": "12", "change": "out", "on": "2026-11-24"}]),
    ("kindling", "14", "8, 2 dead", [{"kind": "kindled", "doe": "14", "born": 8, "alive": 6, "dead": 2}]),
    ("check_nest", "12", "7 kits", [{"kind": "kit_count", "doe": "12", "count": 7}]),
    ("check_nest", "12", "done", [{"kind": "done", "chore": "check_nest", "who": "12", "key": "check_nest:12:2026-11-10"}]),
    ("wean", "16", "done", [{"kind": "weaned", "doe": "16", "count": 5}]),
    ("weaning", "16", "done 3 bucks 2 does", [{"kind": "weaned", "doe": "16", "count": 5, "bucks": 3, "does": 2}]),
    ("nest_box_in", "9", "done at 6", [{"kind": "nest_box", "doe": "9", "change": "in"}]),
    ("weigh", "31", "3-14", [{"kind": "weighed", "who": "31", "grams": 1758}]),
    ("rebreed", "16", "flint", [{"kind": "bred", "doe": "16", "buck": "3"}]),
    ("sale_date", "32", "60", [{"kind": "sold", "who": "32", "price": "60.00"}]),
    ("sale_date", "32", "done", [{"kind": "sold", "who": "32"}]),
    ("cull_date", "12", "done", [{"kind": "culled", "who": "12"}]),
    ("review", "15", "keep", [{"kind": "planned", "what": "keep", "who": "15"}]),
    ("review", "15", "done", [{"kind": "done", "chore": "review", "who": "15"}]),
    ("custom", "9", "done", [{"kind": "done", "chore": "custom", "who": "9"}]),
]


@pytest.mark.parametrize(("chore", "who", "text", "expected"), DONE)
def test_a_reminder_answered_gives_the_event_it_asked_for(chore: str, who: str, text: str, expected: list[dict[str, Any]]) -> None:
    """In its own words, or just done."""
    heard = Barn().say(text, reply_to=(chore, who))
    assert (facts(heard), why(heard)) == (expected, None)


def test_done_asks_for_what_the_event_needs() -> None:
    """How many, bred or open, which buck; the answer completes it."""
    for chore, who, reason, answer, kind in (
        ("kindling", "14", "how_many", "7", "kindled"),
        ("palpate", "22", "what", "bred", "palpated"),
        ("rebreed", "16", "which_animal", "flint", "bred"),
        ("wean", "15", "how_many", "4", "weaned"),
    ):
        barn = Barn()
        heard = barn.say("done", reply_to=(chore, who))
        assert (why(heard), facts(heard)) == (reason, [])
        answered = barn.say(answer, minutes=1)
        asked_of = answered.note.ask.draft.kind if answered.note.ask and answered.note.ask.draft else facts(answered)[0]["kind"]
        assert asked_of == kind


@pytest.mark.parametrize("chore", CHORES)
def test_any_chore_can_be_put_off(chore: str) -> None:
    """To a later day, under the chore's own key where the book has it."""
    heard = Barn().say("tomorrow", reply_to=(chore, "14"))
    (fact,) = facts(heard)
    assert (fact["kind"], fact["on"], fact["who"]) == ("remind", "2026-11-26", "14")
    if chore == "kindling":
        assert fact["key"] == "kindling:14:2026-10-24"


@pytest.mark.parametrize("chore", CHORES)
def test_any_chore_can_be_skipped_or_left(chore: str) -> None:
    """Skip closes it; "not yet" is a remark about the animal."""
    assert facts(Barn().say("skip it", reply_to=(chore, "14"))) == [{"kind": "skipped", "chore": chore, "who": "14"}]
    assert facts(Barn().say("not yet", reply_to=(chore, "14"))) == [{"kind": "remark", "text": "not yet", "who": "14"}]


def test_later_asks_when() -> None:
    """The day that answers puts the chore off."""
    barn = Barn()
    assert why(barn.say("later", reply_to=("kindling", "14"))) == "when"
    (fact,) = facts(barn.say("friday", minutes=1))
    assert (fact["kind"], fact["on"], fact["key"]) == ("remind", "2026-11-27", "kindling:14:2026-10-24")


def test_the_key_of_the_reminder_wins() -> None:
    """It came with the button; the herd may have several of that name."""
    barn = Barn()
    (fact,) = facts(barn.say("in 2 days", reply_to=("custom", "9", "custom:9:2026-11-25:nails")))
    assert fact["key"] == "custom:9:2026-11-25:nails"
    (known,) = facts(barn.say("in 2 days", reply_to=("kindling", "14", "kindling:14:2026-10-24"), minutes=1))
    assert known["text"].startswith("Doe 14 is due")


def test_a_full_note_of_another_animal_stands_as_it_is() -> None:
    """Whatever it is an answer to."""
    assert facts(Barn().say("31 3-14", reply_to=("weigh", "32"))) == [{"kind": "weighed", "who": "31", "grams": 1758}]
    assert facts(Barn().say("undo", reply_to=("weigh", "32"))) == [{"kind": "undo"}]
    assert facts(Barn().say("why 12", reply_to=("weigh", "32"))) == [{"kind": "query", "about": "why", "who": "12"}]


def test_a_number_that_fits_no_event_asks() -> None:
    """And words that fit none are kept."""
    heard = Barn().say("13-1 dressed", reply_to=("rebreed", "16"))
    assert facts(heard) in ([{"kind": "remark", "text": "13-1 dressed", "who": "16"}], [])
    assert why(Barn().say("to 99", reply_to=("rebreed", "16"))) == "which_animal"
    assert facts(Barn().say("she bit me", reply_to=("custom", "9"))) == [{"kind": "remark", "text": "she bit me", "who": "9"}]
    assert facts(Barn().say(" ", reply_to=("custom", "9"))) == []


def test_done_with_words_nobody_can_place_is_still_done() -> None:
    """The words stay unread."""
    heard = Barn().say("done, what a mess", reply_to=("nest_box_out", "12"))
    assert facts(heard) == [{"kind": "nest_box", "doe": "12", "change": "out"}]
    assert heard.note.unread == "what a mess"


def test_a_reminder_of_no_animal() -> None:
    """A custom one may have none."""
    assert facts(Barn().say("done", reply_to=("custom",))) == [{"kind": "done", "chore": "custom"}]
    assert why(Barn().say("done", reply_to=("custom", "99"))) == "which_animal"
    assert why(Barn().say("done", reply_to=("wean",))) is not None


def test_the_reminders_animal_stays_the_subject() -> None:
    """For the next message."""
    barn = Barn()
    barn.say("done", reply_to=("nest_box_in", "9"))
    assert facts(barn.say("ear mites", minutes=5)) == [{"kind": "ailment", "who": "9", "sign": "ear mites"}]


def test_only_words_that_are_nothing_but_a_day_are_one() -> None:
    """A note that names a day is a note."""
    herd = farm()
    assert day_alone("", herd, DAY, "plan") is None
    assert day_alone("tomorrow i will", herd, DAY, "plan") is None
    assert day_alone("tomorrow", herd, DAY, "plan") is not None
