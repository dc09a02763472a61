"""What comes from outside."""

from __future__ import annotations

from pathlib import Path

from bot.settings import data_folder, settings


def test_defaults(tmp_path: Path) -> None:
    """A book in the data folder, no token, the public API."""
    kept = settings({"HAYNOTE_DATA": str(tmp_path)})
    assert kept.database_url == f"sqlite:///{tmp_path / 'herd-book.sqlite'}"
    assert (kept.bot_token, kept.bot_api) == (None, "https://api.telegram.org")


def test_what_is_said_wins() -> None:
    """Each variable; the slash at the end of an address is dropped."""
    said = {"HAYNOTE_DATABASE_URL": "sqlite:///a.sqlite", "HAYNOTE_BOT_TOKEN": "1:a", "HAYNOTE_BOT_API": "http://127.0.0.1:9/"}
    kept = settings(said)
    assert (kept.database_url, kept.bot_token, kept.bot_api) == ("sqlite:///a.sqlite", "1:a", "http://127.0.0.1:9")


def test_the_token_is_never_shown() -> None:
    """Whoever prints the settings sees only whether there is one."""
    assert "1:secret" not in repr(settings({"HAYNOTE_BOT_TOKEN": "1:secret", "HAYNOTE_DATA": "d"}))
    assert "bot_token=None" in repr(settings({"HAYNOTE_DATA": "d"}))


def test_the_folder_is_the_persons_own() -> None:
    """Without a word it is where this system keeps such data."""
    assert data_folder({}).name == "haynote"
