"""`kill -9` at every step of taking a note, and at random ones: after a restart nothing is lost, nothing is there twice, all is answered."""

from __future__ import annotations

import multiprocessing
import shutil
import signal
from collections.abc import Iterator
from itertools import count
from multiprocessing.context import ForkServerContext, ForkServerProcess
from pathlib import Path
from typing import Any

import pytest

from core.app import Member
from core.store.people import add_member, know_chat
from tests.faults import kill_serve, kill_workers
from tests.faults.farm import opened
from tests.standin import StandIn

NOTE = "14 weighed 8-2"
ANSWER = "Doe 14: 8 lb 2 oz"


@pytest.fixture(scope="module")
def forks() -> ForkServerContext:
    """Processes that have the libraries loaded already."""
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload(["tests.faults.dying_serve"])
    return context


@pytest.fixture
def standin() -> Iterator[StandIn]:
    with StandIn() as served:
        yield served


@pytest.fixture
def farm(tmp_path: Path, standin: StandIn) -> Path:
    """A book that Ann owns, with one doe in it."""
    file = tmp_path / "farm.sqlite"
    app = opened(f"sqlite:///{file}")
    app.replay("2026-03-01 08:00 new doe 14 new zealand")
    number = standin.person("Ann")["id"]
    with app._engine.begin() as connection:
        add_member(connection, 1, Member(f"telegram:{number}", "Ann", "owner"), standin.world.now)
        know_chat(connection, 1, str(number))
    app.close()
    return file


class Servers:
    """Servers on copies of the farm's book."""

    def __init__(self, forks: ForkServerContext, standin: StandIn, farm: Path) -> None:
        self.forks = forks
        self.standin = standin
        self.farm = farm

    def copy(self, step: int) -> Path:
        """The book for the death at that step."""
        book = self.farm.with_name(f"book-{step}.sqlite")
        shutil.copy(self.farm, book)
        return book

    def start(self, book: Path, fatal: int = 0) -> ForkServerProcess:
        """A server on that book, which dies at that step."""
        from tests.faults.dying_serve import live

        server = self.forks.Process(target=live, args=(f"sqlite:///{book}", self.standin.token, self.standin.url, fatal))
        server.start()
        return server


def ended(server: ForkServerProcess) -> int | None:
    """How an orderly end went."""
    server.terminate()
    server.join(15)
    return server.exitcode


def told(book: Path) -> list[tuple[str, int]]:
    """The notes of the journal that a person typed, each with the number of its facts."""
    app = opened(f"sqlite:///{book}")
    try:
        return [(note.text, len(note.facts)) for note in app._hearing.book().notes if note.number and note.chat != "replay"][-1:]
    finally:
        app.close()


def answers(standin: StandIn, note: dict[str, Any]) -> list[str]:
    """What the bot answered to that very note."""
    replies = standin.answers(note)
    return [each["text"] for each in replies if each.get("reply_to_message", {}).get("message_id") == note["message_id"]]


@pytest.mark.slow
def test_killed_at_every_step_of_taking_a_note(forks: ForkServerContext, standin: StandIn, farm: Path) -> None:
    """Whatever the step: one note with its fact, one answer or (where its delivery was not confirmed) two."""
    servers = Servers(forks, standin, farm)
    steps = 0
    for step in count(1):
        book = servers.copy(step)
        first = servers.start(book, fatal=step)
        note = standin.say("Ann", NOTE)
        died = _died(first, standin, note) or ended(first) == -signal.SIGKILL
        if died:
            steps, calls = steps + 1, len(standin.calls())
            second = servers.start(book)
            standin.wait_calls("getUpdates", since=calls, answered=False)
            standin._wait(lambda note=note: answers(standin, note) or None, f"an answer after the death at step {step}", 10)
            standin.wait_confirmed()
            assert ended(second) == 0
        assert told(book) == [(NOTE, 1)]
        heard = answers(standin, note)
        assert len(heard) in {1, 2}
        assert all(ANSWER in text for text in heard)
        if not died:
            assert first.exitcode == 0
            break
    assert steps > 20


def _died(server: ForkServerProcess, standin: StandIn, note: dict[str, Any]) -> bool:
    """Whether the server dies over the note; False once it is answered, confirmed and noted as sent without that."""
    for _ in range(200):
        server.join(0.05)
        if server.exitcode is not None:
            assert server.exitcode == -signal.SIGKILL
            return True
        if answers(standin, note) and not standin.pending():
            server.join(0.1)
            return server.exitcode is not None
    raise TimeoutError(note)


@pytest.mark.slow
def test_killed_at_random_moments() -> None:
    """A small run of the acceptance script: see kill_serve."""
    outcome = kill_serve.run(notes=60, kills=4, seed=7)
    assert outcome.sound, outcome
    assert outcome.restarts_with_work


@pytest.mark.slow
def test_workers_killed_at_random_moments() -> None:
    """A small run of the acceptance script for many farms: see kill_workers."""
    outcome = kill_workers.run(notes=60, kills=6, workers=2, seed=7)
    assert outcome.sound, outcome
    assert outcome.kills == sum(outcome.killed.values())


def test_what_was_overtaken_is_seen() -> None:
    """Only by what was sent later, and where it first stands."""
    assert kill_serve.overtaken("abc", "axbbac") == 0
    assert kill_serve.overtaken("abc", "acb") == 1
    assert kill_serve.overtaken("abc", "cba") == 2
