"""Whose a message is, where one bot speaks for many farms."""

from __future__ import annotations

from datetime import UTC, datetime, timedelta

import pytest
from sqlalchemy import Connection, select

from core.notes.journal import Note
from core.store import buttons, journal, outgoing, people, whose
from core.store.buttons import Button
from core.store.outgoing import Parcel
from core.store.people import Member
from core.store.tables import farms, seats
from core.store.whose import Hint

NOW = datetime(2026, 3, 4, 7, 15, tzinfo=UTC)
HOME, DALE, HILL = 1, 2, 3


@pytest.fixture
def book(connection: Connection) -> Connection:
    """Three farms. Ann is on two of them, Bo on one, Cy on none."""
    assert (people.add_farm(connection, "Dale"), people.add_farm(connection, "Hill")) == (DALE, HILL)
    people.add_member(connection, HILL, Member("ann", "Ann", "owner"), NOW)
    people.add_member(connection, DALE, Member("ann", "Ann", "helper"), NOW + timedelta(days=1))
    people.add_member(connection, DALE, Member("bo", "Bo", "owner"), NOW)
    return connection


def whose_is(connection: Connection, account: str, chat: str = "", **more: object) -> int | None:
    """The farm of a message."""
    return whose.farm_of(connection, Hint(account, chat or account, **more), NOW)  # type: ignore[arg-type]


def test_somebody_on_one_farm_means_it(book: Connection) -> None:
    """In whatever chat of their own."""
    assert whose_is(book, "bo") == DALE


def test_strangers_knock_at_the_first_farm(book: Connection) -> None:
    """Which does not make their chat its own."""
    assert whose_is(book, "cy", words="hello") == HOME
    assert book.execute(select(seats)).all() == []


def test_a_code_leads_to_its_farm(book: Connection) -> None:
    """A stranger, and somebody who is on another farm: from then on the chat means it."""
    code = people.new_code(book, HILL, "helper", NOW)
    assert whose_is(book, "cy", words=code) == HILL
    assert whose_is(book, "bo", words=code) == HILL
    people.use_code(book, HILL, code, NOW)
    people.add_member(book, HILL, Member("bo", "Bo", "helper"), NOW)
    assert whose_is(book, "bo") == HILL
    assert whose_is(book, "cy", words=code) == HOME


def test_a_chat_means_the_farm_chosen_last(book: Connection) -> None:
    """At first the one where somebody came first; a chat that means a farm they have left means nothing."""
    assert whose_is(book, "ann") == HILL
    whose.sit(book, DALE, "ann")
    assert whose_is(book, "ann") == DALE
    people.remove_member(book, DALE, "ann")
    assert whose_is(book, "ann") == HILL


def test_a_farm_asked_for_by_name(book: Connection) -> None:
    """One's own alone, and not in a group; what is sent right behind goes there too."""
    assert whose_is(book, "ann", farm="dale") == DALE
    assert whose_is(book, "ann") == DALE
    assert whose_is(book, "ann", farm="home") == DALE
    assert whose_is(book, "ann", "-5", group=True, farm="dale") == HILL
    assert whose_is(book, "bo", farm="hill") == DALE


def test_a_group_belongs_to_one_farm(book: Connection) -> None:
    """Whoever speaks there, and whatever code is read out there: an answer of another farm would be read by the wrong people."""
    assert whose_is(book, "ann", "-5", group=True) == HILL
    assert whose_is(book, "bo", "-5", group=True) == HILL
    code = people.new_code(book, DALE, "helper", NOW)
    assert whose_is(book, "ann", "-5", group=True, words=code) == HILL


def test_what_is_answered_tells_the_farm(book: Connection) -> None:
    """A button, a message of the bot, a note of one's own and an edit of it; only of farms that the person is on."""
    key = buttons.offer(book, DALE, Button("b", "ann", "Yes", "yes"), NOW)
    outgoing.put(book, DALE, Parcel("k", "ann", {}, NOW))
    out = outgoing.claim(book, None, "w", NOW)
    assert out is not None
    assert out.farm == DALE
    outgoing.mark_sent(book, DALE, out.id, "70")
    journal.append(book, DALE, Note(1, "hay", NOW, "ann", "ann", "69"))
    assert whose_is(book, "ann", button=key) == DALE
    assert whose_is(book, "ann", answers="70") == DALE
    assert whose_is(book, "ann", answers="69") == DALE
    assert whose_is(book, "ann", number="69") == DALE
    assert whose_is(book, "ann", button="no such", answers="71", number="71") == HILL
    people.remove_member(book, DALE, "ann")
    people.add_member(book, HOME, Member("ann", "Ann", "looker"), NOW + timedelta(days=2))
    assert whose_is(book, "ann", button=key, answers="70", number="69") == HILL


def test_a_group_that_gets_another_number_stays_with_its_farm(book: Connection) -> None:
    """Only its own farm can say that it moved."""
    assert whose_is(book, "ann", "-5", group=True) == HILL
    whose.moved(book, DALE, "-5", "-1005")
    assert whose_is(book, "bo", "-5", group=True) == HILL
    whose.moved(book, HILL, "-5", "-1005")
    assert whose_is(book, "bo", "-1005", group=True) == HILL


def test_what_a_group_writes_right_after_it_moved_goes_to_its_farm(book: Connection) -> None:
    """The service's own word of the new number is heard where it comes in."""
    assert whose_is(book, "bo", "-5", group=True) == DALE
    assert whose_is(book, "bo", "-5", group=True, moved="-1005") == DALE
    assert whose_is(book, "ann", "-1005", group=True) == DALE


def test_the_farms_of_a_person(book: Connection) -> None:
    """By name."""
    assert whose.named(book, "ann") == ((DALE, "Dale"), (HILL, "Hill"))
    assert whose.named(book, "cy") == ()


def test_a_book_without_farms(book: Connection) -> None:
    """Nobody is there to answer."""
    from core.store.leaving import delete_farm

    for farm in (HOME, DALE, HILL):
        delete_farm(book, farm)
    assert book.execute(select(farms)).all() == []
    assert whose_is(book, "cy") is None
