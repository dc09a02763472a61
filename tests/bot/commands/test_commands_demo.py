"""`haynote demo`: a throw-away book with an invented season, and what follows from it."""

from __future__ import annotations

import io
from pathlib import Path

import pytest
from prompt_toolkit.application import create_app_session
from prompt_toolkit.input import create_pipe_input
from prompt_toolkit.output import DummyOutput

from bot.commands import demo
from core.app import open_book
from tests.machine import Machine

SMALL = """2026-03-01 new doe 14 mini rex born 3/4/2025
2026-03-01 new buck 3 mini rex born 2/1/2025
2026-03-04 07:15 bred 14 to 3
2026-04-04 07:15 14 kindled 8, 2 dead
"""


class Keyboard(io.StringIO):
    """Standard input with a person behind it."""

    def isatty(self) -> bool:
        """Yes."""
        return True


@pytest.fixture
def small_season(monkeypatch: pytest.MonkeyPatch) -> None:
    """Four notes in the place of the season."""
    monkeypatch.setattr(demo, "season_of_notes", lambda: SMALL)


@pytest.mark.usefixtures("small_season")
def test_demo_shows_the_three_answers(machine: Machine) -> None:
    """Its clock is the season's last note; the person's own book stays as it is."""
    told = machine.ok("demo")
    assert "4 notes of an invented farm" in told
    assert "Saturday, 04 April 2026" in told
    for title in ("haynote due", "haynote digest", "haynote keep"):
        assert f"--- {title}" in told
    assert not (machine.folder / "data").exists()


@pytest.mark.usefixtures("small_season")
def test_demo_opens_the_chat_for_a_person(machine: Machine, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]) -> None:
    """Then a person can ask it something."""
    monkeypatch.setattr("sys.stdin", Keyboard())
    monkeypatch.setenv("HAYNOTE_DATA", str(machine.folder / "data"))
    app = open_book("demo.sqlite")
    with create_pipe_input() as keys, create_app_session(input=keys, output=DummyOutput()):
        keys.send_text("how many\nquit\n")
        demo.show(app)
    app.close()
    assert "Ask it something" in capsys.readouterr().out


def test_a_broken_installation_is_told(machine: Machine, monkeypatch: pytest.MonkeyPatch) -> None:
    """A season without notes is no season."""
    monkeypatch.setattr(demo, "season_of_notes", lambda: "")
    result = machine.run("demo")
    assert result.exit_code == 1
    assert "install Haynote anew" in result.stderr


def test_the_season_travels_with_the_program() -> None:
    """It is where the packaging puts it, and as long as a season."""
    season = demo.season_of_notes()
    assert (Path(demo.__file__).parents[2] / "demo_data" / "season.txt").read_text(encoding="utf-8") == season
    assert sum(line[:1].isdigit() for line in season.splitlines()) >= 1500


@pytest.mark.slow
def test_the_whole_demo(machine: Machine) -> None:
    """The real season: more than a thousand notes recorded, somebody to cull and somebody to keep."""
    told = machine.ok("demo")
    assert int(told.split(" ", 1)[0]) > 1000
    advice = told.partition("--- haynote keep")[2]
    assert "Cull " in advice
    assert "Keep" in advice
    assert "You decide" in advice
