"""Whose a message is, where one bot speaks for many farms. Here alone rows are looked for across farms: the answer is a farm's number.

What this decides is only at which farm's door a message is laid. Whether its author may come in there is asked at that door.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import datetime

from sqlalchemy import Connection, delete, select, update

from core.store.once import put_once
from core.store.people import hash_of
from core.store.tables import buttons, farms, members, notes, outbox, seats, setup_codes


@dataclass(frozen=True, slots=True)
class Hint:
    """What tells whose a message is.

    account  its author's
    group    whether others read along
    words    what was typed
    number   its own number in the chat, where it is an edit of what was said before
    answers  the number of the message that it answers
    button   the key of the button that was pressed
    moved    the number that the chat has from now on
    farm     the name of the farm that the author wants the chat to mean from now on
    """

    account: str
    chat: str
    group: bool = False
    words: str = ""
    number: str | None = None
    answers: str | None = None
    button: str | None = None
    moved: str | None = None
    farm: str | None = None


def farm_of(connection: Connection, hint: Hint, now: datetime) -> int | None:
    """The farm that a message is for; None in a book without farms.

    A group belongs to one farm, whoever speaks there: an answer for another one would be read by the wrong people. With somebody who is on
    several farms, a button or an answered message tells which; else the one chosen last. Strangers knock at the book's first farm.
    """
    seat: int | None = connection.scalar(select(seats.c.farm_id).where(seats.c.chat == hint.chat))
    if hint.group and seat is not None:
        if hint.moved is not None:
            moved(connection, seat, hint.chat, hint.moved)
        return seat
    mine = _farms_of(connection, hint.account)
    chosen = _by_name(connection, hint) or _by_code(connection, hint.words, now)
    farm: int | None
    if chosen is not None:
        farm = chosen
    elif len(mine) > 1:
        farm = _by_what_it_answers(connection, hint, mine) or (seat if seat in mine else mine[0])
    else:
        farm = mine[0] if mine else connection.scalar(select(farms.c.id).order_by(farms.c.id).limit(1))
    if farm is not None and (chosen is not None or (hint.group and farm in mine)):
        sit(connection, farm, hint.chat)
    return farm


def _farms_of(connection: Connection, account: str) -> tuple[int, ...]:
    """The farms of a person, in the order in which they came there."""
    mine = select(members.c.farm_id).where(members.c.account == account)
    return tuple(connection.scalars(mine.order_by(members.c.joined_at, members.c.farm_id)))


def _by_name(connection: Connection, hint: Hint) -> int | None:
    """The farm that the author wants, of their own."""
    if hint.farm is None or hint.group:
        return None
    return next((number for number, name in named(connection, hint.account) if name.casefold() == hint.farm.casefold()), None)


def _by_code(connection: Connection, words: str, now: datetime) -> int | None:
    """The farm that a code in the words opens."""
    if not words:
        return None
    fresh = setup_codes.c.used_at.is_(None) & (setup_codes.c.expires_at > now)
    return connection.scalar(select(setup_codes.c.farm_id).where(setup_codes.c.hash == hash_of(words), fresh))


def _by_what_it_answers(connection: Connection, hint: Hint, mine: tuple[int, ...]) -> int | None:
    """The farm whose button was pressed, whose message was answered, or whose note was edited; of those that the author is on."""
    asked = []
    if hint.button is not None:
        asked.append(select(buttons.c.farm_id).where(buttons.c.key == hint.button, buttons.c.farm_id.in_(mine)))
    if hint.answers is not None:
        asked.append(
            select(outbox.c.farm_id).where(outbox.c.chat == hint.chat, outbox.c.number == hint.answers, outbox.c.farm_id.in_(mine))
        )
    for number in (hint.answers, hint.number):
        if number is not None:
            this = (notes.c.chat == hint.chat) & (notes.c.number == number)
            asked.append(select(notes.c.farm_id).where(notes.c.farm_id.in_(mine), this))
    found = (connection.scalar(query.limit(1)) for query in asked)
    return next((farm for farm in found if farm is not None), None)


def sit(connection: Connection, farm: int, chat: str) -> None:
    """This farm is meant in the chat from now on."""
    if not put_once(connection, seats, chat=chat, farm_id=farm):
        connection.execute(update(seats).where(seats.c.chat == chat).values(farm_id=farm))


def named(connection: Connection, account: str) -> tuple[tuple[int, str], ...]:
    """The farms of a person, number and name."""
    theirs = farms.join(members, members.c.farm_id == farms.c.id)
    rows = connection.execute(
        select(farms.c.id, farms.c.name).select_from(theirs).where(members.c.account == account).order_by(farms.c.name)
    )
    return tuple((row.id, row.name) for row in rows)


def moved(connection: Connection, farm: int, chat: str, to: str) -> None:
    """The chat has another number from now on; what was meant in it stays."""
    mine = (seats.c.farm_id == farm) & (seats.c.chat == chat)
    if connection.execute(delete(seats).where(mine)).rowcount:
        put_once(connection, seats, chat=to, farm_id=farm)
