"""A server that kills itself at a given step: before or after each statement, commit and request between taking a note and having answered it.

Steps are counted from the moment at which news have come from the chat service. Imported by a fork server, so that each death costs little.
"""

from __future__ import annotations

import asyncio
import os
import signal
from collections.abc import Iterable
from typing import Any

from sqlalchemy import event
from telegram.request import HTTPXRequest

import core.reports.answers
import core.reports.due  # noqa: F401 - loaded once, before the first fork
from bot.settings import Settings
from bot.telegram.counter import Counter
from bot.telegram.serve import Paces, Serving, bot_of
from core.app.book import App
from tests.faults.farm import opened

#: Nothing is slowed down, and the clock asks once, before any note comes.
PACES = Paces(poll=20, tick=3600, overall=10_000, patience=lambda _: 0.05)


class Steps:
    """Counts once it is armed, and kills at one step. Step 0 never comes."""

    def __init__(self, fatal: int) -> None:
        self.fatal = fatal
        self.passed = 0
        self.armed = False

    def __call__(self, *_: object) -> None:
        """One step further."""
        self.passed += self.armed
        if self.armed and self.passed == self.fatal:
            os.kill(os.getpid(), signal.SIGKILL)


def live(url: str, token: str, api: str, fatal: int) -> None:
    """Serve until the step, or until told to stop."""
    app, steps = opened(url), Steps(fatal)
    event.listen(app._engine, "before_cursor_execute", steps)
    event.listen(app._engine, "commit", steps)
    _arm_when_news_come(app, steps)
    _count_requests(steps)
    asyncio.run(_serve(Serving(bot_of(Settings(url, token, api)), Counter(app), PACES)))


def _arm_when_news_come(app: App, steps: Steps) -> None:
    """The first step is the one between having the news and writing them down."""
    take = app.take_updates

    def taking(bot_id: str, updates: Iterable[tuple[int, str, str]], *said: Any) -> int:
        steps.armed = True
        steps()
        return take(bot_id, updates, *said)

    app.take_updates = taking  # type: ignore[method-assign]


def _count_requests(steps: Steps) -> None:
    """A step before each request, and one before its answer is known here."""
    request = HTTPXRequest.do_request

    async def counted(self: HTTPXRequest, *said: Any, **more: Any) -> tuple[int, bytes]:
        steps()
        answer = await request(self, *said, **more)
        steps()
        return answer

    HTTPXRequest.do_request = counted  # type: ignore[method-assign]


async def _serve(serving: Serving) -> None:
    asyncio.get_running_loop().add_signal_handler(signal.SIGTERM, serving.stop)
    try:
        await serving.run()
    finally:
        serving.counter.close()
