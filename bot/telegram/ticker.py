"""The clock: once a minute it asks the book what is due, and at the start, for what was missed while the machine was off."""

from __future__ import annotations

import logging
from collections.abc import Callable
from datetime import date

from bot.telegram.counter import Counter
from bot.telegram.outage import log_trouble
from bot.telegram.patience import Bells

log = logging.getLogger("haynote.telegram")

#: How often the book is asked [s].
EVERY_S = 60.0


class Ticker:
    """The loop that asks."""

    def __init__(self, counter: Counter, bells: Bells, every: float = EVERY_S, alive: Callable[[], object] = lambda: None) -> None:
        self._counter = counter
        self._bells = bells
        self._every = every
        self._alive = alive
        self._no_copy: date | None = None  # the day on which it was said that none could be made

    async def run(self) -> None:
        """Ask until it is over."""
        while not self._bells.door.over:
            await self._once()
            await self._bells.door.wait(self._every)

    async def _once(self) -> None:
        """Put what is due into the outbox. A report that fails must not end the reminders of tomorrow."""
        try:
            self._alive()
            if await self._counter.ask(self._counter.house.release_gone):
                self._bells.work.ring()
            found = 1
            while found and not self._bells.door.over:
                found = await self._counter.ask(self._counter.house.tick, self._counter.now())
                self._bells.letters.ring()
            await self._copy()
        except Exception as error:  # noqa: BLE001 - told, and asked again in a minute
            log_trouble("Could not look up what is due.", error)

    async def _copy(self) -> None:
        """The day's copy of the book, made beside the other work. Why there is none is said once a day."""
        now = self._counter.now()
        problem = await self._counter.make(self._counter.house.copy_of_the_day, now)
        if problem is not None and self._no_copy != now.date():
            self._no_copy = now.date()
            log.error("There is no copy of the book of today. %s %s", problem.text, problem.remedy)
