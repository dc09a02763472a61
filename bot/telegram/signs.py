"""Bells that ring in other programs too, where several work on one book; and the ear that hears theirs."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor

from bot.telegram.counter import Counter
from bot.telegram.patience import Bell, Bells
from core.app import House

log = logging.getLogger("haynote.telegram")

#: What there may be a sign of.
INBOX, OUTBOX = "inbox", "outbox"

#: How long an ear listens before it looks whether the day is over [s].
LISTENS_S = 1.0

DEAF = "The other programs on this book can't be heard. Trying again."


class FarBell(Bell):
    """A bell that is heard here and elsewhere. Many rings in a row are one sign."""

    def __init__(self) -> None:
        super().__init__()
        self._far = asyncio.Event()

    def ring(self) -> None:
        """There is work."""
        super().ring()
        self._far.set()

    async def tell(self, house: House, counter: Counter, what: str) -> None:
        """Pass each ring on, until cancelled. One that is not heard does no harm: the others look by themselves."""
        while True:
            await self._far.wait()
            self._far.clear()
            try:
                await counter.ask(house.give_sign, what)
            except Exception:  # noqa: BLE001 - the book is in trouble, and says so elsewhere
                log.info("Could not give a sign of the %s.", what)


class Ear:
    """Hears signs of one thing, and rings a bell for each."""

    def __init__(self, house: House, what: str, bell: Bell, bells: Bells) -> None:
        self._house = house
        self._what = what
        self._bell = bell
        self._bells = bells
        self._thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix="ear")

    async def run(self) -> None:
        """Listen until it is over."""
        loop = asyncio.get_running_loop()
        failures = 0
        try:
            while not self._bells.door.over:
                try:
                    await loop.run_in_executor(self._thread, self._listen, lambda: loop.call_soon_threadsafe(self._bell.ring))
                except Exception:  # the database is out of reach: the loops look by themselves meanwhile
                    failures += 1
                    log.warning(DEAF, exc_info=True)
                    await self._bells.door.wait(self._bells.patience(failures))
        finally:
            self._thread.shutdown(wait=False)

    def _listen(self, ring: Callable[[], object]) -> None:
        with self._house.listening() as heard:
            ring()  # what came before is heard of now
            while not self._bells.door.over:
                if self._what in heard(LISTENS_S):
                    ring()
