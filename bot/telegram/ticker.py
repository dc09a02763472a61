"""The clock: once a minute it asks the book what is due, and at the start, for what was missed while the machine was off."""

from __future__ import annotations

import logging

from bot.telegram.counter import Counter
from bot.telegram.patience import Bells

log = logging.getLogger("haynote.telegram")

#: How often the book is asked [s].
EVERY_S = 60.0


class Ticker:
    """The loop that asks."""

    def __init__(self, counter: Counter, bells: Bells, every: float = EVERY_S) -> None:
        self._counter = counter
        self._bells = bells
        self._every = every

    async def run(self) -> None:
        """Ask until it is over."""
        while not self._bells.door.over:
            await self._once()
            await self._bells.door.wait(self._every)

    async def _once(self) -> None:
        """Put what is due into the outbox. A report that fails must not end the reminders of tomorrow."""
        try:
            if await self._counter.ask(self._counter.app.tick, self._counter.now()):
                self._bells.letters.ring()
        except Exception:
            log.exception("Could not look up what is due. Trying again in a minute.")
