"""Under which name the bot is known: kept for papers that are printed later."""

from __future__ import annotations

from pathlib import Path

from bot.telegram.met import FILE, bot_of, remember


def test_each_book_has_its_bot(tmp_path: Path) -> None:
    """The one that last served it, in a folder that is made."""
    folder = tmp_path / "data"
    assert bot_of(folder, "one") is None
    remember(folder, "one", "old_bot")
    remember(folder, "two", "other_bot")
    remember(folder, "one", "barn_notes_bot")
    assert (bot_of(folder, "one"), bot_of(folder, "two")) == ("barn_notes_bot", "other_bot")


def test_what_can_not_be_read_or_written_stops_nothing(tmp_path: Path) -> None:
    """Papers have no codes then."""
    (tmp_path / FILE).write_text("[1]", encoding="utf-8")
    assert bot_of(tmp_path, "one") is None
    (tmp_path / FILE).write_text("{", encoding="utf-8")
    assert bot_of(tmp_path, "one") is None
    file = tmp_path / "no_folder"
    file.write_text("", encoding="utf-8")
    remember(file, "one", "barn_notes_bot")
    assert bot_of(file, "one") is None
