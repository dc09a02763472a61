"""A message is read, written down and answered in one go, once."""

from __future__ import annotations

import sqlite3
from contextlib import closing
from datetime import timedelta
from pathlib import Path

import pytest

from core.app import Message
from core.app.book import App
from tests.core.app.conftest import AT, Say, opened
from tests.faults.steps import FaultError, fail, stopping_at

BRED = Message("bred 14 to 3", AT, "ann", "c", "77")


def journal(app: App) -> list[str]:
    """The journal as it is exported, without its head."""
    return list(app.export_journal())[1:]


def test_the_answer_echoes_the_note(small_farm: Say) -> None:
    """What was understood stands in the reply."""
    assert "14" in small_farm("14 kindled 8, 2 dead", days=31).text


def test_the_same_message_again_gives_the_same_answer(app: App, small_farm: Say) -> None:
    """Delivered twice, it is recorded once; also by a program that was started anew."""
    first = app.hear(BRED)
    kept = journal(app)
    assert app.hear(BRED) == first
    again = opened(app._engine.url.render_as_string())
    assert again.hear(BRED) == first
    assert journal(again) == kept
    again.close()


def test_a_question_with_choices_is_asked_the_same_again(small_farm: Say, app: App) -> None:
    """The choices come back with it."""
    asked = app.hear(Message("bred 14 to the neighbors", AT, "ann", "c", "78"))
    assert app.hear(Message("bred 14 to the neighbors", AT, "ann", "c", "78")) == asked


def test_say_tells_facts_and_new_chores(app: App, small_farm: Say) -> None:
    """The object of `say --json`: facts, question, reply, and the chores that were not there before."""
    told = app.say(Message("14 kindled 8, 2 dead", AT + timedelta(days=31), "ann", "c", "90"))
    assert told.document["facts"] == [{"kind": "kindled", "doe": "14", "born": 8, "alive": 6, "dead": 2, "on": "2026-04-04"}]
    assert told.document["ask"] is None
    assert told.document["reply"] == told.reply.text
    assert {"check_nest", "nest_box_out", "wean"} <= {chore["chore"] for chore in told.document["chores"]}


def test_say_tells_a_question(app: App, small_farm: Say) -> None:
    """Nothing is recorded that was asked about."""
    told = app.say(Message("14 kindled", AT + timedelta(days=31), "ann", "c", "90"))
    assert told.document["facts"] == []
    assert told.document["ask"]["why"] == "how_many"
    assert told.document["chores"] == []


def test_two_programs_share_a_book(app: App, small_farm: Say) -> None:
    """Each catches up with what the other wrote before it reads a message: one note, or many."""
    other = opened(app._engine.url.render_as_string())
    other.hear(Message("new doe 22 mini rex", AT + timedelta(hours=1), "bo", "d", "1"))
    assert "22" in small_farm("bred 22 to 3", days=1).text
    for number in range(2, 32):
        other.hear(Message(f"new doe {number + 100} mini rex", AT + timedelta(hours=1), "bo", "d", str(number)))
    assert "131" in small_farm("bred 131 to 3", days=1).text
    assert app.check() == ()
    other.close()


def test_a_book_put_back_from_a_copy_is_read_anew(app: App, small_farm: Say, tmp_path: Path) -> None:
    """Notes that are gone from under a running program are gone from its answers."""
    with closing(sqlite3.connect(tmp_path / "book.sqlite")) as file:
        for table in ("fact_bred", "facts"):
            file.execute(f"delete from {table} where note_id = 3")  # noqa: S608 - names of our own tables
        file.execute("delete from notes where id = 3")
        file.commit()
    assert len(journal(app)) == 2
    assert app.due(AT + timedelta(days=1)).document["chores"] == []


@pytest.mark.parametrize("step", range(40))
def test_a_failure_at_any_step_leaves_no_trace(app: App, small_farm: Say, step: int) -> None:
    """The error comes out, the book is as before, and the message can be heard afterwards."""
    before = journal(app)
    message = Message("14 kindled 8, 2 dead", AT + timedelta(days=31), "ann", "c", "90")
    with stopping_at(app._engine, step, fail) as reached:
        try:
            app.hear(message)
        except FaultError:
            failed = True
        else:
            failed = False
    assert failed is (len(reached) > step)
    assert (journal(app) == before) is failed
    assert app.hear(message).text.startswith("Doe 14: 8 born, 6 alive, 2 dead")
    assert len(journal(app)) == len(before) + 1
    assert app.check() == ()


def test_farms_of_one_book_share_nothing(app: App, small_farm: Say, place: Path) -> None:
    """Another farm's animals and notes are not there."""
    other = opened(place, "other", create=True)
    assert journal(other) == []
    other.hear(Message("new doe 14 mini rex", AT, "bo", "c", "1"))
    assert other.due(AT + timedelta(days=1)).document["chores"] == []
    assert len(journal(other)) == 1
    assert len(journal(app)) == 3
    other.close()
