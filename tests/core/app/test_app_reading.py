"""`haynote read`: what a note becomes, alone or in a conversation, with nothing written down."""

from __future__ import annotations

from datetime import datetime, timedelta, timezone
from typing import Any

import pytest

from core.app import Problem, reader
from core.app.book import App
from core.app.reading import Reader
from tests.core.app.conftest import AT, Say

NOW = datetime(2026, 11, 25, 7, 10, tzinfo=timezone(timedelta(hours=-6)))
ROSTER: dict[str, Any] = {
    "farm": {"timezone": "America/Chicago", "date_order": "MDY", "dotted_weight": "decimal"},
    "now": "2026-11-25T07:10:00-06:00",
    "animals": [
        {"tag": "14", "name": "Juno", "sex": "doe", "breed": "Mini Rex", "born": "2024-02-18"},
        {"tag": "15", "sex": "doe", "breed": "Mini Rex", "born": "2024-02-18"},
        {"tag": "3", "name": "Flint", "sex": "buck", "breed": "Mini Rex", "born": "2024-03-02"},
    ],
    "breedings": [{"doe": "14", "buck": "3", "on": "2026-10-25"}],
}


@pytest.fixture
def reads() -> Reader:
    """A reader for the roster."""
    found = reader(ROSTER)
    assert isinstance(found, Reader)
    return found


def kinds(read: dict[str, Any]) -> list[str]:
    """The kinds of the facts."""
    return [fact["kind"] for fact in read["facts"]]


def test_a_note_on_its_own(reads: Reader) -> None:
    """The contract's object."""
    read = reads.read("doe 14 kindled 8, 2 dead", NOW)
    assert read["facts"] == [{"kind": "kindled", "doe": "14", "born": 8, "alive": 6, "dead": 2, "on": "2026-11-25"}]
    assert read["ask"] is None
    assert set(read) == {"facts", "ask", "unread"}


def test_a_question_is_told_with_its_choices(reads: Reader) -> None:
    """As the person sees it."""
    ask = reads.read("14 kindled", NOW)["ask"]
    assert ask["why"] == "how_many"
    assert set(ask) == {"why", "text", "choices"}


def test_notes_on_their_own_do_not_know_each_other(reads: Reader) -> None:
    """The same one twice is no duplicate."""
    assert kinds(reads.read("bred 15 to 3", NOW)) == kinds(reads.read("bred 15 to 3", NOW)) == ["bred"]


def test_a_conversation_is_read_in_order(reads: Reader) -> None:
    """An answer completes the question before it; another conversation knows nothing of it."""
    assert reads.read_request({"text": "14 kindled", "conversation": "a"}, NOW)["ask"]["why"] == "how_many"
    answer = reads.read_request({"text": "8, 2 dead", "conversation": "a", "at": "2026-11-25T07:12:00"}, NOW)
    assert kinds(answer) == ["kindled"]
    assert kinds(reads.read_request({"text": "8, 2 dead", "conversation": "b"}, NOW)) != ["kindled"]


def test_an_edit_gives_what_stands_after_it(reads: Reader) -> None:
    """The message of that number, read anew; and edited again."""
    for text, edit_of in (("bred 15 to 3", None), ("bred 14 to 3", 0), ("bred 15 to Flint", 0)):
        read = reads.read_request({"text": text, "conversation": "a", "edit_of": edit_of}, NOW)
    assert read["facts"] == [{"kind": "bred", "doe": "15", "buck": "3", "on": "2026-11-25"}]


def test_an_answer_to_a_reminder(reads: Reader) -> None:
    """The chore may be named in plain words, its animal under `doe` or `who`, alone or in a conversation."""
    for reply_to in ({"chore": "nest_box", "doe": "14"}, {"chore": "nest_box_in", "who": "14"}):
        assert kinds(reads.read_request({"text": "done", "reply_to": reply_to}, NOW)) == ["nest_box"]
    read = reads.read_request({"text": "done", "reply_to": {"chore": "nest_box_in", "who": 14}, "conversation": "a"}, NOW)
    assert kinds(read) == ["nest_box"]


@pytest.mark.parametrize(
    "said",
    [
        None,
        7,
        [],
        {},
        {"text": 7},
        {"text": "x", "at": "soon"},
        {"text": "x", "at": 7},
        {"text": "x", "edit_of": "0"},
        {"text": "x", "edit_of": -1},
        {"text": "x", "reply_to": "wean"},
        {"text": "x", "reply_to": {"doe": "14"}},
    ],
)
def test_a_line_that_is_no_message_asks(reads: Reader, said: Any) -> None:
    """It is answered like every other, so that outputs stay in step with inputs."""
    read = reads.read_request(said, NOW)
    assert (read["facts"], read["ask"]["why"], read["unread"]) == ([], "what", "")


def test_a_time_of_its_own(reads: Reader) -> None:
    """The day of a fact follows when its message was sent."""
    read = reads.read_request({"text": "bred 15 to 3", "at": "2026-11-24T23:30:00-06:00", "from": "bo"}, NOW)
    assert read["facts"][0]["on"] == "2026-11-24"


@pytest.mark.parametrize("roster", [[], {"animals": [{}]}, {"animals": [{"tag": "1", "born": "soon"}]}])
def test_a_roster_that_is_none(roster: Any) -> None:
    """What is wrong with it is told."""
    found = reader(roster)
    assert isinstance(found, Problem)
    assert found.code == "bad_roster"


def test_a_question_of_the_persons_is_read_and_not_answered(reads: Reader) -> None:
    """It is a fact of its own."""
    assert kinds(reads.read("who's due", NOW)) == ["query"]


def test_the_farms_clock(reads: Reader, app: App) -> None:
    """A time without an offset is the farm's."""
    assert str(reads.timezone()) == "America/Chicago"
    assert str(app.timezone()) == "UTC"


def test_the_farms_own_book_can_be_read_against(app: App, small_farm: Say) -> None:
    """Nothing is written down."""
    before = list(app.export_journal())
    read = app.reader(AT + timedelta(days=31)).read("14 kindled 8, 2 dead", AT + timedelta(days=31))
    assert kinds(read) == ["kindled"]
    assert list(app.export_journal()) == before
