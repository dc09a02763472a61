"""A program that dies at every step in turn: run with the book's address and what to do.

Each death is a process of its own, forked before the book is opened. One JSON line a death comes out: the step it died at, and what
a fresh process finds after it has started again.
"""

from __future__ import annotations

import json
import os
import sys
from collections.abc import Callable
from datetime import timedelta
from itertools import count

import core.reports.answers
import core.reports.due  # noqa: F401 - the same
from core.app.book import App
from tests.faults.farm import NOW, WORKER, counted, deliver, opened, send_all
from tests.faults.steps import die, stopping_at


def take_in(app: App, number: int) -> None:
    """One message, from the chat service to its answer in the outbox."""
    deliver(app, number)


def remind(app: App, number: int) -> None:
    """The reminders of a day, and their way out."""
    now = NOW + timedelta(days=number)
    app.tick(now)
    send_all(app, now)


DEEDS: dict[str, Callable[[App, int], None]] = {"take_in": take_in, "remind": remind}


def child(work: Callable[[], None]) -> int:
    """Do it in a process of its own; how that ended."""
    sys.stdout.flush()
    number = os.fork()
    if number == 0:
        code = 1
        try:
            work()
            code = 0
        finally:
            sys.stdout.flush()
            os._exit(code)
    return os.waitstatus_to_exitcode(os.waitpid(number, 0)[1])


def dying_at(url: str, deed: str, step: int) -> bool:
    """Whether the program died at that step; False if it was done before."""

    def work() -> None:
        app = opened(url)
        with stopping_at(app._engine, step, die):
            DEEDS[deed](app, step)

    return child(work) == 9


def starting_again(url: str, deed: str, step: int) -> None:
    """What a fresh process does, and what it finds."""

    def work() -> None:
        app = opened(url)
        app.begin_work(WORKER)
        DEEDS[deed](app, step)
        print(json.dumps({"step": step} | counted(app)))

    assert child(work) == 0


def main() -> None:
    """Die at every step, one after the other, on one book."""
    url, deed = sys.argv[1:]
    for step in count():
        died = dying_at(url, deed, step)
        starting_again(url, deed, step)
        if not died:
            return


if __name__ == "__main__":
    main()
