"""A worker beside the server: it takes messages from the same inbox to the same book, and leaves fetching and sending to the server.

Any number may run, on one machine or several. Killed at any point: what it held is free again at once for whoever comes in its place.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from dataclasses import dataclass, field

from telegram import Bot

from bot.telegram.counter import Counter
from bot.telegram.patience import Bells
from bot.telegram.serve import Paces, all_over, introduced
from bot.telegram.signs import INBOX, OUTBOX, Ear, FarBell
from bot.telegram.taking import Taking
from core.app import House


@dataclass
class Working:
    """One run of a worker, under the name that it has while it works."""

    bot: Bot
    counter: Counter
    house: House
    name: str
    paces: Paces = field(default_factory=Paces)

    def __post_init__(self) -> None:
        """Its bells: letters are sent elsewhere."""
        self.letters = FarBell()
        self.bells = Bells(letters=self.letters, patience=self.paces.patience)

    async def run(self, ready: Callable[[], object] = lambda: None) -> None:
        """Work until `stop`. InvalidToken where the service does not know the bot."""
        try:
            if await introduced(self.bells, self.bot.initialize):
                ready()
                await self._loops()
        finally:
            await self.bot.shutdown()

    def stop(self) -> None:
        """Come to an orderly end: what is in hand is finished."""
        self.bells.door.end()
        self.bells.work.end()

    async def _loops(self) -> None:
        ear = Ear(self.house, INBOX, self.bells.work, self.bells)
        works = asyncio.create_task(Taking(self.bot, self.counter, self.bells, self.name).run())
        rest = [asyncio.create_task(ear.run()), asyncio.create_task(self.letters.tell(self.house, self.counter, OUTBOX))]
        ended = asyncio.create_task(self.bells.door.ended())
        try:
            await asyncio.wait({works, *rest, ended}, return_when=asyncio.FIRST_COMPLETED)
            self.stop()
            await asyncio.wait({works}, timeout=self.paces.end)
        finally:
            await all_over(works, *rest, ended)
