"""Files under a reply in a terminal."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from bot import attachments
from bot.terminal.files import with_files
from core.app import App, open_book
from core.reply import Choice, Reply
from tests.bot import makers

AT = datetime(2026, 11, 25, 13, tzinfo=UTC)


@pytest.fixture
def app(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> App:
    """A new book, and a maker of pictures."""
    monkeypatch.setitem(attachments.MAKERS, "picture", makers.PLACE)
    found = open_book(str(tmp_path / "book.sqlite"))
    assert isinstance(found, App)
    return found


def test_a_file_is_written_and_named(app: App, tmp_path: Path) -> None:
    """Under the reply stands where it lies; the choices stay."""
    reply = Reply(("14 grows well.",), (Choice("Card", "card 14"),), (makers.attached(),))
    shown = with_files(app, reply, AT, tmp_path / "new" / "files")
    path = tmp_path / "new" / "files" / "growing-14.png"
    assert shown == Reply(("14 grows well.", f"File: {path}"), reply.choices)
    assert path.read_bytes() == makers.dot()


def test_what_can_not_be_made_or_written_is_said(app: App, tmp_path: Path) -> None:
    """The words of the reply are there all the same."""
    (tmp_path / "taken").write_text("a file where the folder should be", encoding="utf-8")
    reply = Reply(("Here.",), attached=(makers.attached("none"), makers.attached()))
    lines = with_files(app, reply, AT, tmp_path / "taken").lines
    assert lines[:2] == ("Here.", "There is nothing to show. Weigh it first.")
    assert lines[2].startswith(f"growing-14.png can't be written to {tmp_path / 'taken'}: ")
