"""Several programs work on one book at once: every message is recorded once, answered once, and in its chat's order."""

from __future__ import annotations

import json
import threading
from collections.abc import Callable
from datetime import timedelta
from pathlib import Path

import pytest

from core.app import Message
from core.app.book import App
from tests.faults.farm import NOW, opened
from tests.postgres import postgres_server, postgres_template, postgres_url  # noqa: F401 - fixtures

WORKERS = 3
CHATS = 4
MESSAGES = 8


@pytest.fixture(params=["sqlite", "postgres"])
def url(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """A new book on each engine."""
    return f"sqlite:///{tmp_path}/book.sqlite" if request.param == "sqlite" else str(request.getfixturevalue("postgres_url"))


def all_at_once(works: list[Callable[[], None]]) -> None:
    """Each in a thread of its own; the first error comes out."""
    troubles: list[BaseException] = []

    def run(work: Callable[[], None]) -> None:
        try:
            work()
        except BaseException as error:  # noqa: BLE001 - handed to the test
            troubles.append(error)

    threads = [threading.Thread(target=run, args=(work,)) for work in works]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    for trouble in troubles:
        raise trouble


def work_off(url: str, worker: str) -> None:
    """Take updates until none is left that could be taken."""
    app = opened(url)
    while (update := app.next_update(worker, NOW)) is not None or not _done(app):
        if update is not None:
            text, at = f"the hay smells good, take {update.update_id}", NOW + timedelta(seconds=update.update_id)
            app.hear_update(update, Message(text, at, "ann", update.chat, str(update.update_id)), NOW)
    app.close()


def _done(app: App) -> bool:
    return set(app.status()["inbox"]) == {"done"}


def test_workers_share_an_inbox(url: str) -> None:
    """None is lost, none is taken twice, none overtakes another of its chat."""
    app = opened(url)
    numbers = range(1, CHATS * MESSAGES + 1)
    app.take_updates("bot", [(number, f"c{number % CHATS}", "{}") for number in numbers])
    all_at_once([lambda worker=f"w{number}": work_off(url, worker) for number in range(WORKERS)])  # type: ignore[misc]
    notes = [json.loads(line) for line in list(app.export_journal())[1:]]
    assert sorted(int(note["number"]) for note in notes) == list(numbers)
    for chat in range(CHATS):
        order = [int(note["number"]) for note in notes if note["chat"] == f"c{chat}"]
        assert order == sorted(order)
    assert app.status()["outbox"] == {"waiting": len(numbers)}
    assert app.check() == ()
    app.close()


def test_clocks_share_a_reminder(url: str) -> None:
    """Each asks what is due at the same moment; one of them puts it out."""
    app = opened(url)
    app.take_updates("bot", [(1, "c", "{}")])
    update = app.next_update("w", NOW)
    assert update is not None
    app.hear_update(update, Message("remind me tomorrow to buy hay", NOW, "ann", "c", "1"), NOW)
    made: list[int] = []

    def tick() -> None:
        other = opened(url)
        made.append(other.tick(NOW + timedelta(days=1)))
        other.close()

    all_at_once([tick] * WORKERS)
    assert sorted(made) == [0] * (WORKERS - 1) + [1]
    app.close()
