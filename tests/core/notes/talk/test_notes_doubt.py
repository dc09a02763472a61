"""The same thing told twice, and facts checked in the herd of their day."""

from __future__ import annotations

import pytest

from core.notes.listen import entered
from core.notes.reading import Message
from tests.core.notes.talking import NOW, Barn, facts, why
from tests.farm import fact


def test_the_same_facts_from_the_farm_within_a_quarter_of_an_hour_are_asked_about() -> None:
    """Whoever says them, in whatever words; a yes records them, a no does not."""
    barn = Barn()
    barn.say("14 kindled 8, 2 dead")
    assert why(barn.say("juno kindled 8 2 dead", "bo", minutes=3)) == "duplicate"
    assert facts(barn.say("no", "bo", minutes=4)) == []
    assert len(barn.stands()) == 1
    barn.say("12 lost 1", minutes=5)
    assert why(barn.say("12 lost 1", "bo", minutes=6)) == "duplicate"
    assert facts(barn.say("yes", minutes=7)) == [{"kind": "kits_lost", "doe": "12", "count": 1}]


def test_later_or_said_again_it_is_no_duplicate() -> None:
    """Sixteen minutes later, with "another", or after the first was taken back."""
    barn = Barn()
    barn.say("12 lost 1")
    assert why(barn.say("12 lost 1 another", minutes=1)) is None
    assert why(barn.say("12 lost 1", minutes=30)) is None
    barn.say("undo", minutes=31)
    assert why(barn.say("12 lost 1", minutes=32)) is None


@pytest.mark.parametrize("text", ["why 12", "undo", "hello there"])
def test_talk_may_be_repeated(text: str) -> None:
    """Questions, undos and remarks are never duplicates."""
    barn = Barn()
    barn.say(text)
    assert why(barn.say(text, minutes=1)) is None


def test_only_what_was_said_before_is_held_back() -> None:
    """The rest of the message is recorded."""
    barn = Barn()
    barn.say("31 3-14")
    heard = barn.say("31 3-14; 32 4-1", minutes=1)
    assert (why(heard), [each["who"] for each in facts(heard)]) == ("duplicate", ["32"])


def test_facts_of_one_message_follow_each_other() -> None:
    """Six lost of seven leaves one to lose."""
    barn = Barn()
    heard = barn.say("12 lost 6; 12 lost 2")
    assert (why(heard), [each["count"] for each in facts(heard)]) == ("impossible", [6])


def test_a_late_note_is_checked_in_the_herd_of_its_day() -> None:
    """Weighed the day before it was sold."""
    barn = Barn()
    barn.say("sold pip 40")
    late = entered(barn.book, Message("", NOW), [fact("weighed", who="R23", grams=2200, on=fact("weighed", who="R23", grams=1).on)])
    assert len(late.standing()) == 2
    assert why(barn.say("pip 5-1", minutes=-1440)) is None


def test_lines_of_a_file_without_a_time_are_never_duplicates() -> None:
    """Two equal lines of a day are two events; with times they are one note sent twice."""
    barn = Barn()
    barn.say("12 lost 1", chat="replay", number="2026-11-25 --:-- aa 1")
    assert why(barn.say("12 lost 1", chat="replay", number="2026-11-25 --:-- aa 2")) is None
    barn.say("12 lost 2", chat="replay", number="2026-11-25 07:10 bb 1")
    assert why(barn.say("12 lost 2", chat="replay", number="2026-11-25 07:10 bb 2")) == "duplicate"


def test_a_line_of_a_file_never_answers_another() -> None:
    """And what it asked stays unanswered."""
    barn = Barn()
    assert why(barn.say("14 kindled", chat="replay")) == "how_many"
    assert why(barn.say("7", chat="replay", minutes=1)) == "what"
    assert why(barn.say("7", minutes=2)) == "what"
    assert facts(barn.say("flint", minutes=3))[0]["kind"] == "remark"
