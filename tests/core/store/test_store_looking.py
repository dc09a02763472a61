"""When each farm has to be looked at: at once after any change, else at its moment, and by one clock alone."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

from sqlalchemy import Connection, Engine

from core.notes.journal import Note
from core.store import journal, looking, people

NOW = datetime(2026, 3, 4, 7, 15, tzinfo=UTC)
LATER = NOW + timedelta(hours=3)


def test_a_new_farm_is_looked_at(connection: Connection) -> None:
    """And then at the moment that was found for it."""
    assert looking.ripe(connection, NOW, 9) == (1,)
    looking.look_again(connection, 1, LATER)
    assert looking.ripe(connection, NOW, 9) == ()
    assert looking.ripe(connection, LATER, 9) == (1,)
    looking.look_again(connection, 1, None)
    assert looking.ripe(connection, LATER, 9) == ()


def test_whatever_may_change_what_is_due_makes_it_ripe(connection: Connection) -> None:
    """A note, a chat that is new, one that goes quiet, one that is back; and not what changes nothing."""
    changes = (
        lambda: journal.append(connection, 1, Note(1, "hay", NOW, "ann")),
        lambda: people.know_chat(connection, 1, "c"),
        lambda: people.mark_chat(connection, 1, "c", active=False),
        lambda: people.know_chat(connection, 1, "c"),
    )
    for change in changes:
        looking.look_again(connection, 1, None)
        change()
        assert looking.ripe(connection, NOW, 9) == (1,)
    looking.look_again(connection, 1, None)
    people.know_chat(connection, 1, "c")
    assert looking.ripe(connection, NOW, 9) == ()


def test_those_that_wait_longest_come_first(connection: Connection) -> None:
    """And no more than were asked for."""
    people.add_farm(connection, "Dale")
    people.add_farm(connection, "Hill")
    looking.look_again(connection, 1, NOW)
    looking.look_again(connection, 2, NOW - timedelta(days=1))
    assert looking.ripe(connection, NOW, 2) == (3, 2)
    assert looking.counted(connection, NOW) == 3


def test_one_clock_looks_at_a_farm(opened: Engine) -> None:
    """Another passes it by, meanwhile and afterwards."""
    with opened.begin() as begun:
        people.add_farm(begun, "home")
    with opened.begin() as first:
        assert looking.taken(first, 1, NOW)
        if opened.dialect.name == "postgresql":  # in a file nobody else can even ask meanwhile
            with opened.begin() as second:
                assert not looking.taken(second, 1, NOW)
        looking.look_again(first, 1, LATER)
    with opened.begin() as after:
        assert not looking.taken(after, 1, NOW)
