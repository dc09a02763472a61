"""A farm's book in a temporary folder, and the words to talk to it."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from datetime import UTC, datetime, timedelta
from pathlib import Path

import pytest

from core.app import Message, Problem, open_book
from core.app.book import App
from core.notes.fact import Fact
from core.notes.journal import Note
from core.reply import Reply

AT = datetime(2026, 3, 4, 13, 15, tzinfo=UTC)  # a Wednesday

Say = Callable[..., Reply]


def opened(place: Path | str, farm: str | None = None, *, create: bool = False) -> App:
    """The book, which must open."""
    app = open_book(str(place), farm, create=create)
    assert not isinstance(app, Problem), app.text
    return app


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """Where the book is."""
    return tmp_path / "book.sqlite"


@pytest.fixture
def app(place: Path) -> Iterator[App]:
    """A new farm."""
    found = opened(place)
    yield found
    found.close()


@pytest.fixture
def say(app: App) -> Say:
    """Tell the farm something: each message a minute after the one before, or so many days on."""
    told: list[str] = []

    def say_it(text: str, *, days: float = 0, author: str = "ann", chat: str = "c") -> Reply:
        told.append(text)
        return app.hear(Message(text, AT + timedelta(days=days, minutes=len(told)), author, chat, str(len(told))))

    return say_it


def record(app: App, *facts: Fact, days: float = 0) -> None:
    """Put facts on the book as if a note had told them, whatever words that takes."""
    with app._hearing.turn() as turn:
        turn.write(Note(turn.book.last_id + 1, "told", AT + timedelta(days=days), "ann", "c", facts=facts))


@pytest.fixture
def small_farm(say: Say) -> Say:
    """A doe, a buck, and a mating of today."""
    for text in ("new doe 14 mini rex", "new buck 3 mini rex", "bred 14 to 3"):
        say(text)
    return say
