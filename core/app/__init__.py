"""The one door to the domain. The shells come in here, and nowhere else.

Importing it is cheap: the store, and the reckoning behind the reports, are loaded by the first call that needs them.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from core.notes.reading import Message, ReplyTo
from core.problem import Problem

if TYPE_CHECKING:
    from core.app.book import App
    from core.app.house import House
    from core.app.members import Wish
    from core.app.moving_in import Brought
    from core.app.photos import Sent
    from core.app.reading import Reader
    from core.notes.moving.table import Table
    from core.notes.spoken import Ears, Primer
    from core.store.intake import Update
    from core.store.outgoing import Outgoing
    from core.store.people import Member
    from core.store.whose import Hint

__all__ = [
    "App",
    "Brought",
    "Ears",
    "Hint",
    "House",
    "Member",
    "Message",
    "Outgoing",
    "Primer",
    "Problem",
    "ReplyTo",
    "Sent",
    "Table",
    "Update",
    "Wish",
    "open_book",
    "open_house",
    "reader",
    "trouble",
]

#: What shells want to name the types of, and where it is: loaded when somebody asks.
LATER = {
    "App": "core.app.book",
    "Brought": "core.app.moving_in",
    "Ears": "core.notes.spoken",
    "Hint": "core.store.whose",
    "House": "core.app.house",
    "Member": "core.store.people",
    "Outgoing": "core.store.outgoing",
    "Primer": "core.notes.spoken",
    "Sent": "core.app.photos",
    "Table": "core.notes.moving.table",
    "Update": "core.store.intake",
    "Wish": "core.app.members",
}


def open_book(url: str, farm: str | None = None, *, create: bool = False) -> App | Problem:
    """The farm's book at the address, made on first use; or the reason why it can't be opened.

    A book with several farms wants the farm's name. A name that is not in the book is refused, unless the book is new or `create` is set.
    """
    from core.app.opening import opened  # noqa: PLC0415 - loads SQLAlchemy

    return opened(url, farm, create=create)


def open_house(url: str) -> House | Problem:
    """The book at the address with all its farms, for one bot that speaks for all; or the reason why it can't be opened."""
    from core.app.opening import opened_whole  # noqa: PLC0415 - loads SQLAlchemy

    return opened_whole(url)


def reader(roster: object) -> Reader | Problem:
    """A reader of notes for the farm that a roster (as `json.loads` gives it) describes; no database is touched."""
    from core.app.reading import reader_of  # noqa: PLC0415 - loads the grammar, which opening a book does later

    return reader_of(roster)


def trouble(error: BaseException) -> Problem | None:
    """What the machine did to a book (a full disk, a lock, damage), in plain words; None for any other error."""
    from core.app.troubles import trouble as told  # noqa: PLC0415 - nobody needs it while all is well

    return told(error)


def __getattr__(name: str) -> Any:
    """The names of LATER: most of them load SQLAlchemy, which reading a note does not need."""
    if name not in LATER:
        raise AttributeError(name)
    from importlib import import_module  # noqa: PLC0415 - rarely needed

    return getattr(import_module(LATER[name]), name)
