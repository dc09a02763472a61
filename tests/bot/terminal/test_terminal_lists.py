"""A list pasted into the chat of a terminal."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot.terminal import chat
from bot.terminal.lists import with_list
from core.app import App, Message, open_book
from core.app.bringing import GONE
from core.reply import Reply

AT = datetime(2026, 11, 25, 13, tzinfo=UTC)
ROWS = "Juno, doe, Mini Rex, 2025-04-03\nDuke, buck, Mini Rex, 2024-02-01"


@pytest.fixture
def app(tmp_path: Path) -> Iterator[App]:
    """A new book."""
    found = open_book(str(tmp_path / "book.sqlite"))
    assert isinstance(found, App)
    yield found
    found.close()


def held(app: App, folder: Path, *lines: str) -> list[str]:
    """What is written while these are typed."""
    written: list[str] = []

    def hear(text: str) -> Reply:
        told = with_list(app, text, AT, "me", folder)
        return told or app.hear(Message(text, AT, "me", "terminal", str(len(written))))

    chat.converse(lines, hear, written.append)
    return [text for text in written if text]


def test_a_list_is_taken_in_by_its_letter_and_taken_back(app: App, tmp_path: Path) -> None:
    """As by the buttons on a phone."""
    asked, done, undone = held(app, tmp_path, ROWS, "a", "undo")
    assert asked.splitlines()[-3:] == ["Nothing is recorded yet. Take it in?", "  a) Take it in", "  b) Leave it"]
    assert done.startswith("Taken in from your list: 2 notes")
    assert undone
    assert app.herd(AT).document["animals"] == []


def test_other_words_are_no_list(app: App, tmp_path: Path) -> None:
    """They are heard as ever."""
    assert with_list(app, "new doe 14", AT, "me", tmp_path) is None


def test_a_list_that_is_gone_is_asked_for_again(app: App, tmp_path: Path) -> None:
    """Somebody tidied the folder up."""
    asked = with_list(app, ROWS, AT, "me", tmp_path / "lists")
    assert asked is not None
    for file in (tmp_path / "lists").iterdir():
        file.unlink()
    assert with_list(app, asked.choices[0].says, AT, "me", tmp_path / "lists") == Reply((GONE,))
