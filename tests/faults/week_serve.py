"""A server whose clock is a file, and whose own waiting is as much shorter as that clock is faster."""

from __future__ import annotations

import asyncio
import signal
from datetime import datetime
from pathlib import Path

import core.reports.answers
import core.reports.due  # noqa: F401 - loaded once, before the first fork
from bot.settings import Settings
from bot.telegram.counter import Counter
from bot.telegram.patience import backoff
from bot.telegram.serve import Paces, Serving, bot_of
from bot.telegram.ticker import EVERY_S
from tests.faults.farm import opened

#: The file's clock goes so many times as fast as a real one.
FASTER = 50

PACES = Paces(poll=20, tick=EVERY_S / FASTER, overall=10_000, patience=lambda failures: backoff(failures) / FASTER)


def live(url: str, token: str, api: str, clock: str) -> None:
    """Serve until told to stop."""
    counter = Counter(opened(url), lambda: datetime.fromisoformat(Path(clock).read_text(encoding="utf-8")))
    asyncio.run(_serve(Serving(bot_of(Settings(url, token, api)), counter, PACES)))


async def _serve(serving: Serving) -> None:
    asyncio.get_running_loop().add_signal_handler(signal.SIGTERM, serving.stop)
    try:
        await serving.run()
    finally:
        serving.counter.close()
