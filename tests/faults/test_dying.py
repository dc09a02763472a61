"""The program is killed between every two steps. After a fresh start nothing is lost and nothing is there twice."""

from __future__ import annotations

import json
import subprocess
import sys
from datetime import timedelta
from pathlib import Path
from typing import Any

import pytest

from core.app import Message
from tests.faults.farm import CHAT, NOW, opened
from tests.postgres import postgres_server, postgres_template, postgres_url  # noqa: F401 - fixtures

ROOT = Path(__file__).parents[2]


@pytest.fixture(params=["sqlite", "postgres"])
def url(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """A new book on each engine."""
    return f"sqlite:///{tmp_path}/book.sqlite" if request.param == "sqlite" else str(request.getfixturevalue("postgres_url"))


def deaths(url: str, deed: str) -> list[dict[str, Any]]:
    """What was found after each death."""
    command = [sys.executable, "-m", "tests.faults.dying", url, deed]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stderr
    return [json.loads(line) for line in done.stdout.splitlines()]


def test_killed_while_taking_a_message_in(url: str) -> None:
    """Whatever the step: each message is in the journal once, answered once, and its update is done."""
    opened(url).close()
    found = deaths(url, "take_in")
    assert len(found) > 15
    for each in found:
        messages = range(each["step"] + 1)
        assert each["notes"] == {str(number): 1 for number in messages}
        assert each["answers"] == {f"reply:{CHAT}:{number}:0": 1 for number in messages}
        assert each["states"] == {"done": each["step"] + 1}
    app = opened(url)
    assert app.check() == ()
    app.close()


def test_killed_while_sending_reminders(tmp_path: Path) -> None:
    """Whatever the step: each day's reminder is put out once."""
    url = f"sqlite:///{tmp_path}/book.sqlite"
    app = opened(url)
    for day in range(40):
        text = f"remind me tomorrow to trim nails round {day}"
        app.hear(Message(text, NOW + timedelta(days=day - 1), "ann", CHAT, f"r{day}"))
    with app._hearing.turn() as turn:
        from core.store.people import know_chat

        know_chat(turn.connection, 1, CHAT)
    app.close()
    found = deaths(url, "remind")
    assert len(found) > 8
    for each in found:
        assert sorted(day for _, day in each["sent"]) == [f"{NOW + timedelta(days=day):%Y-%m-%d}" for day in range(each["step"] + 1)]
        assert len(each["answers"]) == each["step"] + 1
        assert set(each["answers"].values()) == {1}
