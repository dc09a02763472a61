"""Setting the bot up: a walk through token, timezone, units and first animals, typed or piped in, and the code at its end."""

from __future__ import annotations

from errno import ENOSPC
from pathlib import Path

import pytest

from bot.commands import setting_up
from tests.machine import Machine

TOKEN = "7000001:secret-words_of-a-bot"


def test_a_code_and_nothing_else_where_nothing_is_answered(machine: Machine) -> None:
    """On standard output the code, what to do with it on standard error; a second call prints another."""
    first, second = machine.run("setup"), machine.run("setup", "--code", typed="anything\n")
    assert first.stdout.startswith("set-up code: ")
    assert "Send it to the bot" in first.stderr
    assert first.stdout.count("\n") == second.stdout.count("\n") == 1
    assert first.stdout != second.stdout
    assert machine.json("status")["notes"] == 0


def test_the_walk(machine: Machine) -> None:
    """What can't be is asked again, an empty line leaves things as they are, animals are notes, and the token is shown nowhere."""
    answers = ["my token", TOKEN, "the moon", "america/denver", "", "C", "", "new doe 14 Juno mini rex", "new buck 3, Flint, mini rex", ""]
    told = machine.run("setup", typed="\n".join(answers) + "\n")
    assert "That is no bot token." in told.stderr
    assert "That can't be 'the moon'. Give it as Continent/City" in told.stderr
    assert "The farm's time zone [America/Chicago]: america/denver\nThe farm's time zone: America/Denver." in told.stderr
    assert "Doe 14 on the book: Juno, Mini Rex." in told.stderr
    assert "Buck 3 on the book: Flint, Mini Rex." in told.stderr
    assert "secret" not in told.output
    assert (machine.folder / "data" / "settings.toml").read_text(encoding="utf-8") == f'bot_token = "{TOKEN}"\n'
    assert "[set]" in machine.run("setup", typed="\n").stderr


def test_a_pasted_list_is_looked_at_and_taken_in(machine: Machine) -> None:
    """Its rows go together; the farm's own settings stay as they were."""
    rows = "tag,sex,breed\n14,doe,Mini Rex\n3,buck,Mini Rex\n"
    told = machine.run("setup", typed=f"\n\n\n\n\n{rows}\na\n")
    assert "Nothing is recorded yet. Take it in?" in told.stderr
    assert [animal["tag"] for animal in machine.json("herd")["animals"]] == ["3", "14"]


def test_a_token_that_cannot_be_kept(machine: Machine, monkeypatch: pytest.MonkeyPatch) -> None:
    """On a full disk another way is told, and the walk goes on."""

    def full(_place: Path, _name: str, _value: str) -> None:
        raise OSError(ENOSPC, "No space left on device")

    monkeypatch.setattr("bot.settings_file.kept", full)
    told = machine.run("setup", typed=f"{TOKEN}\n\nkg\n")
    assert "settings.toml can't be written: No space left on device. Put the token into HAYNOTE_BOT_TOKEN instead." in told.stderr
    assert "A weight without a unit is in kg." in told.stderr
    assert TOKEN not in told.output


def test_a_person_at_the_keyboard(machine: Machine, monkeypatch: pytest.MonkeyPatch) -> None:
    """Sees each question before the answer, but not the token; and is shown what to write of animals."""
    monkeypatch.setattr(setting_up, "is_typed", lambda: True)
    monkeypatch.setattr(setting_up, "getpass", lambda _asked: TOKEN)
    machine.environment["HAYNOTE_BOT_TOKEN"] = TOKEN
    told = machine.run("setup", typed="\n\n\n\n")
    assert setting_up.WINS in told.stderr
    assert "A weight without a unit is in [lb]: A temp" in told.stderr
    assert setting_up.ANIMALS in told.stderr
