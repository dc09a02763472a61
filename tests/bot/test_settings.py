"""What comes from outside."""

from __future__ import annotations

from pathlib import Path

import pytest

from bot.settings import Settings, data_folder, settings
from bot.settings_file import kept
from core.problem import Problem
from tests.machine import Machine


def told(**environment: str) -> Settings:
    """The settings, which are in order."""
    found = settings(environment)
    assert isinstance(found, Settings), found
    return found


def test_defaults(tmp_path: Path) -> None:
    """A book in the data folder, no token, the public API."""
    found = told(HAYNOTE_DATA=str(tmp_path))
    assert found.database_url == f"sqlite:///{tmp_path / 'herd-book.sqlite'}"
    assert (found.bot_token, found.bot_api) == (None, "https://api.telegram.org")


def test_what_is_said_wins(tmp_path: Path) -> None:
    """Over the file, and what the file says over the default; the slash at the end of an address is dropped."""
    file = 'bot_token = "2:file"\nbot_api = "http://127.0.0.1:9/"\nkeep_voice = true\n'
    (tmp_path / "settings.toml").write_text(file, encoding="utf-8")
    found = told(HAYNOTE_DATA=str(tmp_path), HAYNOTE_DATABASE_URL="sqlite:///a.sqlite", HAYNOTE_BOT_TOKEN="1:a")
    assert (found.database_url, found.bot_token, found.bot_api) == ("sqlite:///a.sqlite", "1:a", "http://127.0.0.1:9")
    assert found.keep_voice


def test_the_token_is_never_shown() -> None:
    """Whoever prints the settings sees only whether there is one."""
    assert "1:secret" not in repr(told(HAYNOTE_BOT_TOKEN="1:secret", HAYNOTE_DATA="d"))
    assert "bot_token=None" in repr(told(HAYNOTE_DATA="d"))


def test_the_folder_is_the_persons_own(tmp_path: Path) -> None:
    """Without a word it is where this system keeps such data; the file may name another, `~` and all."""
    assert data_folder({}).name == "haynote"
    (tmp_path / "s.toml").write_text('data = "~/barn"\n', encoding="utf-8")
    assert data_folder({"HAYNOTE_SETTINGS": str(tmp_path / "s.toml")}) == Path.home() / "barn"


@pytest.mark.parametrize(
    ("file", "text", "remedy"),
    [
        ('bot_tokn = "7:secret-words"', "no setting 'bot_tokn'", "Did you mean bot_token?"),
        ('colour = "7:secret-words"', "no setting 'colour'", "There are database_url, data,"),
        ("bot_token = 7000001", "bot_token in * should be text, and is a number.", "in quotation marks"),
        ("listen = [8443]", "should be text, and is a list.", "in quotation marks"),
        ("keep_voice = 1", "keep_voice in * should be true or false, and is a number.", "keep_voice = true"),
        ("bot_token = 7:secret-words", "can't be read as settings: ", "one setting a line"),
        ("\udcff", "it is no text", "yours to read"),
    ],
)
def test_a_settings_file_that_cannot_be_right(tmp_path: Path, monkeypatch: pytest.MonkeyPatch, file: str, text: str, remedy: str) -> None:
    """It is refused with what would be right, by every command that looks at it; no value is told."""
    machine = Machine(tmp_path, monkeypatch)
    place = machine.folder / "s.toml"
    place.write_bytes(file.encode("utf-8", "surrogateescape"))
    machine.environment["HAYNOTE_SETTINGS"] = str(place)
    problem = machine.refused("status")
    assert problem["code"] == "bad_settings"
    assert text.replace("*", str(place)) in problem["text"]
    assert remedy in problem["remedy"]
    assert "secret" not in "".join(problem.values())
    assert machine.run("serve").exit_code == 1


def test_a_settings_file_that_is_named_has_to_be_there(tmp_path: Path) -> None:
    """One that nobody named need not be; what lies there and is no file is refused."""
    found = settings({"HAYNOTE_SETTINGS": str(tmp_path / "none.toml")})
    assert isinstance(found, Problem)
    assert "There is no file" in found.text
    assert isinstance(settings({"HAYNOTE_SETTINGS": str(tmp_path)}), Problem)


def test_a_setting_is_kept_in_its_place(tmp_path: Path) -> None:
    """Over what it said before, the rest of the file as it was; nobody else can read it."""
    place = tmp_path / "new" / "settings.toml"
    kept(place, "bot_token", "1:first")
    place.write_text(f'# mine\nbot_api = "http://a"\n{place.read_text(encoding="utf-8")}', encoding="utf-8")
    kept(place, "bot_token", "2:second")
    assert place.read_text(encoding="utf-8") == '# mine\nbot_api = "http://a"\nbot_token = "2:second"\n'
    assert place.stat().st_mode & 0o077 == 0
