"""A machine on which somebody uses the commands: a data folder of its own, and a clock that stands where the test sets it."""

from __future__ import annotations

import json
from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest
from click.testing import CliRunner, Result

from bot.cli import haynote
from bot.commands import options

#: A Wednesday morning in November, ten past seven at the farm.
MORNING = datetime(2026, 11, 25, 13, 10, tzinfo=UTC)
FARM = "America/Chicago"


class Machine:
    """Runs `haynote` in this process, in `folder`, with the data folder `folder/data`."""

    def __init__(self, folder: Path, monkeypatch: pytest.MonkeyPatch, now: datetime = MORNING) -> None:
        """The clock reads `now` until somebody sets it."""
        self.folder = folder
        self.now = now
        self.environment: dict[str, str | None] = {
            "HAYNOTE_DATA": str(folder / "data"),
            "HAYNOTE_DATABASE_URL": None,
            "HAYNOTE_BOT_TOKEN": None,
            "HAYNOTE_BOT_API": None,
            "HAYNOTE_SETTINGS": None,
            "TZ": FARM,
        }
        monkeypatch.setattr(options, "clock", lambda: self.now)
        monkeypatch.setattr("tzlocal.get_localzone_name", lambda: FARM)
        monkeypatch.chdir(folder)

    def run(self, *words: str, typed: str | bytes | None = None) -> Result:
        """What the command did. An exception that a person would see as a traceback fails the test."""
        result = CliRunner().invoke(haynote, list(words), input=typed, env=self.environment, prog_name="haynote")
        if result.exception is not None and not isinstance(result.exception, SystemExit):
            raise result.exception
        return result

    def ok(self, *words: str, typed: str | bytes | None = None) -> str:
        """What the command printed; it must have ended with 0."""
        result = self.run(*words, typed=typed)
        assert result.exit_code == 0, result.output
        return result.stdout

    def json(self, *words: str, typed: str | None = None) -> Any:
        """What the command printed as JSON, on one line; it must have ended with 0."""
        told = self.ok(*words, "--json", typed=typed)
        assert told.count("\n") == 1
        return json.loads(told)

    def refused(self, *words: str) -> dict[str, str]:
        """The problem that the command told with `--json`; it must have ended with 1."""
        result = self.run(*words, "--json")
        assert result.exit_code == 1, result.output
        problem: dict[str, str] = json.loads(result.stdout)["problem"]
        assert set(problem) == {"code", "text", "remedy"}
        assert all(problem.values())
        return problem

    def tell(self, *notes: str) -> None:
        """Say each note; every one must be understood."""
        for note in notes:
            said = self.json("say", note)
            assert said["ask"] is None, (note, said)
            assert said["facts"], note
