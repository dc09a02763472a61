"""A server that kills itself at a given step: before or after each statement, commit and request between taking a note and having answered it.

Steps are counted from the moment at which news have come from the chat service. Imported by a fork server, so that each death costs little.
"""

from __future__ import annotations

import asyncio
import os
import signal
from collections.abc import Awaitable, Callable
from typing import Any

import core.reports.answers
import core.reports.due  # noqa: F401 - loaded once, before the first fork
from bot.settings import Settings
from bot.telegram import intake
from bot.telegram.counter import Counter
from bot.telegram.serve import Paces, Serving, bot_of
from core.app.book import App
from tests.faults.farm import opened
from tests.faults.steps import stopping_at

#: Nothing is slowed down, and the clock asks once, before any note comes.
PACES = Paces(poll=20, tick=3600, overall=10_000, patience=lambda _: 0.05)


class Steps:
    """Counts, once armed, and kills at one of them. Step 0 never comes."""

    def __init__(self, fatal: int) -> None:
        self.fatal = fatal
        self.passed = 0
        self.armed = False

    def step(self) -> None:
        """One step further."""
        self.passed += self.armed
        if self.armed and self.passed == self.fatal:
            os.kill(os.getpid(), signal.SIGKILL)


def live(url: str, token: str, api: str, fatal: int) -> None:
    """Serve until the step, or until told to stop."""
    app = opened(url)
    steps = Steps(fatal)
    bot = bot_of(Settings(url, token, api))
    for name in ("send_message", "answer_callback_query", "edit_message_reply_markup"):
        with bot._unfrozen():
            setattr(bot, name, _watched(getattr(bot, name), steps))
    _arm_when_news_come(app, steps)
    with stopping_at(app._engine, -1, lambda: None), _every_statement(app, steps):
        asyncio.run(_serve(Serving(bot, Counter(app), PACES)))


def _watched(call: Callable[..., Awaitable[Any]], steps: Steps) -> Callable[..., Awaitable[Any]]:
    """A step before the request, and one before its answer is known here."""

    async def watched(*said: Any, **more: Any) -> Any:
        steps.step()
        result = await call(*said, **more)
        steps.step()
        return result

    return watched


async def _serve(serving: Serving) -> None:
    asyncio.get_running_loop().add_signal_handler(signal.SIGTERM, serving.stop)
    try:
        await serving.run()
    finally:
        serving.counter.close()


__all__ = ["intake", "live"]
