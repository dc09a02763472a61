"""What an undo names, and denials that are one."""

from __future__ import annotations

import pytest

from core.herd.state import Herd
from core.notes.fact import Fact
from core.notes.kinds import KINDS
from core.notes.kinds.undoing import Undo, noun
from core.notes.reader import read
from core.notes.reading import Message
from tests.core.notes.talking import NOW, Barn, facts


def test_each_kind_is_taken_back_by_the_words_that_are_offered_for_it() -> None:
    """`undo the weight` means weights: whatever noun stands for a kind in the offer, it is read as that kind."""
    for kind in KINDS:
        if kind.fact.kind not in {"undo", "correct", "query"}:
            told: tuple[Fact, ...] = read(Message(f"undo the {noun(kind.fact.kind)}", NOW), Herd()).facts
            assert told == (Undo(about=kind.fact.kind),), kind.fact.kind


@pytest.mark.parametrize(
    ("told", "said"),
    [
        ("found R22 dead", "no 14 isnt"),
        ("found R22 dead", "no you didnt"),
        ("found R22 dead", "he isnt"),
        ("sold R22; sold R23", "no she isnt"),
        ("sold R22; found R23 dead", "no they arent"),
        ("sold R22", "no she is alive"),
        ("31 4-0", "no she isnt"),
    ],
)
def test_words_that_deny_something_else_take_nothing_back(told: str, said: str) -> None:
    """Another animal, several, another thing: the note stands."""
    barn = Barn()
    barn.say(told)
    stood = barn.stands()
    heard = barn.say(said, minutes=1)
    assert barn.stands() == stood
    assert not heard.note.reverses


def test_a_denial_of_an_older_note_is_a_remark() -> None:
    """Only right behind the note it is clear what is denied."""
    barn = Barn()
    barn.say("found R22 dead")
    barn.say("the fan quit", minutes=1)
    assert [fact["kind"] for fact in facts(barn.say("no he isnt", minutes=2))] == ["remark"]
