"""Two machines on one PostgreSQL book: the lock file of the one is not seen by the other."""

from __future__ import annotations

from pathlib import Path

import pytest
from click.testing import CliRunner

from bot.commands.serving import serve
from core.app import App, open_book
from tests.postgres import postgres_server, postgres_template, postgres_url  # noqa: F401 - fixtures


def test_a_server_on_another_machine_is_noticed(monkeypatch: pytest.MonkeyPatch, tmp_path: Path, postgres_url: str) -> None:  # noqa: F811
    """The second one is refused with what to do, before it shows a code or asks for news."""
    monkeypatch.setenv("HAYNOTE_DATA", str(tmp_path / "this machine"))
    monkeypatch.setenv("HAYNOTE_BOT_TOKEN", "7000001:secret-words_of-a-bot")
    monkeypatch.setenv("HAYNOTE_BOT_API", "http://127.0.0.1:9")
    there = open_book(postgres_url)
    assert isinstance(there, App)
    with there.serving("8000002") as free:
        assert free
        result = CliRunner().invoke(serve, ["--book", postgres_url])
    there.close()
    assert result.exit_code == 1
    assert "perhaps on another machine" in result.stderr
    assert result.stdout == ""
