"""Files that go with replies: who makes them, and what of."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot import attachments
from bot.attachments import File, made, maker
from core.app import App, open_book
from tests.bot import makers

AT = datetime(2026, 11, 25, 13, tzinfo=UTC)


@pytest.fixture
def app(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> App:
    """A new book, and a maker of pictures."""
    monkeypatch.setitem(attachments.MAKERS, "picture", makers.PLACE)
    monkeypatch.setitem(attachments.MAKERS, "odd", makers.PLACE)
    found = open_book(str(tmp_path / "book.sqlite"))
    assert isinstance(found, App)
    return found


def test_a_file_is_made_from_what_the_book_holds(app: App) -> None:
    """Its name tells what it is."""
    assert made(app, makers.attached(), AT) == File("growing-14.png", "image/png", makers.dot(), "14 grows well.")


def test_what_nobody_can_name_is_a_file_all_the_same(app: App) -> None:
    """An ending that the world does not know."""
    file = made(app, makers.attached(what="odd", name="book.haynote"), AT)
    assert isinstance(file, File)
    assert file.mime == "application/octet-stream"


def test_nothing_to_make_says_why(app: App) -> None:
    """A problem, with what to do about it."""
    assert made(app, makers.attached("none"), AT) == makers.NONE


def test_every_maker_is_where_the_table_says() -> None:
    """A wrong place would be found by the first person who asks."""
    for what in attachments.MAKERS:
        assert isinstance(maker(what), attachments.Maker)
