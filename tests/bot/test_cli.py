"""The command line as a whole: help, version, lazy loading, UTF-8."""

from __future__ import annotations

import io
import subprocess
import sys
from pathlib import Path

import click
import pytest
from click.testing import CliRunner

from bot import cli

TOP = Path(__file__).parents[2]
WANTED = {
    "demo",
    "chat",
    "serve",
    "work",
    "read",
    "say",
    "hear",
    "replay",
    "due",
    "digest",
    "keep",
    "herd",
    "card",
    "export",
    "import",
    "calendar",
    "picture",
    "paper",
    "backup",
    "restore",
    "delete",
    "check",
    "setup",
    "status",
}


def test_every_command_of_the_design_is_there() -> None:
    """By its name."""
    assert set(cli.PLACES) == WANTED
    assert cli.haynote.list_commands(click.Context(cli.haynote)) == list(cli.PLACES)


@pytest.mark.parametrize("command", sorted(WANTED))
def test_every_command_has_help(command: str) -> None:
    """A sentence on what it does, and a line for each option."""
    result = CliRunner().invoke(cli.haynote, [command, "--help"], prog_name="haynote")
    assert result.exit_code == 0
    assert result.stdout.startswith(f"Usage: haynote {command}")
    described = cli.haynote.get_command(None, command)  # type: ignore[arg-type]
    assert described is not None
    assert described.help
    assert all(option.help for option in described.params if isinstance(option, click.Option))


def test_help_lists_the_commands_under_what_they_are_for() -> None:
    """All of them on one screen, none cut short."""
    told = CliRunner().invoke(cli.haynote, ["--help"]).stdout
    assert all(f"\n  {command} " in told for command in WANTED)
    assert all(f"{group}:" in told for group in cli.COMMANDS)
    assert "..." not in told.partition("Try it:")[2]
    assert len(told.splitlines()) < 50


def test_an_unknown_command_is_wrong_use() -> None:
    """Ends with 2."""
    assert CliRunner().invoke(cli.haynote, ["cook"]).exit_code == 2


def run(*words: str, typed: bytes = b"") -> bytes:
    """What `python -m bot` prints on a machine that knows ASCII only."""
    environment = {"LC_ALL": "C", "PYTHONUTF8": "0", "PYTHONIOENCODING": "ascii", "PYTHONPATH": str(TOP)}
    return subprocess.run(
        [sys.executable, "-m", "bot", *words], cwd=TOP, input=typed, capture_output=True, env=environment, check=True
    ).stdout


READ = ("read", "--roster", "tests/corpus/roster.json", "--at", "2026-11-25T07:10:00-06:00", "--json")


def test_text_is_utf8_whatever_the_terminal_says() -> None:
    """Under the C locale too; and `python -m bot` is `haynote`."""
    assert "Zoë" in run(*READ, typed="new doe 40 named Zoë mini rex\n".encode()).decode("utf-8")


def test_bytes_that_are_no_text_are_replaced() -> None:
    """The rest of the line is read all the same."""
    assert b'"kind": "weighed", "who": "31"' in run(*READ, typed=b"31 4-6 \xff\xfe\n")


def test_streams_that_cannot_change_are_left(monkeypatch: pytest.MonkeyPatch) -> None:
    """A stand-in for standard output without an encoding does no harm."""
    monkeypatch.setattr("sys.stdin", io.StringIO())
    monkeypatch.setattr("sys.argv", ["haynote", "--version"])
    monkeypatch.setattr(cli.haynote, "main", lambda **_: None)
    cli.main()
