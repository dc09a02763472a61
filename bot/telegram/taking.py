"""Working off the inbox: each chat's updates in order. One that can't be worked off is tried again, then set aside and the person told."""

from __future__ import annotations

import asyncio
import logging
from functools import partial

from telegram import Bot

from bot.telegram.counter import WORKER, Counter
from bot.telegram.handlers import Desk
from bot.telegram.outage import Outage, log_trouble
from bot.telegram.patience import Bells
from bot.telegram.updates import is_sound, read
from bot.telegram.voices import Voices
from core.app import Update as Kept
from core.app import trouble

log = logging.getLogger("haynote.telegram")

#: Without a sign from the door the inbox is looked at so often [s]: something may wait for a claim to end.
LOOK_EVERY_S = 30.0


class Taking:
    """The loop that takes updates from the inbox to their handlers."""

    def __init__(self, bot: Bot, counter: Counter, bells: Bells, worker: str = WORKER) -> None:
        self._bot = bot
        self._counter = counter
        self._bells = bells
        self._worker = worker
        self._voices = Voices(bot)
        self._outage = Outage(bot, counter)
        self._desks: dict[int, Desk] = {}
        self._aside: dict[int, asyncio.Task[float]] = {}  # what takes long, by its number in the inbox: others need not wait for it
        self._left: Kept | None = None  # what was claimed when the book failed: still ours to work off
        self._failures = 0

    async def run(self) -> None:
        """Work until the bell says that it is over; what is at hand then is finished, but for recordings: those are kept for the next start."""
        try:
            while not self._bells.work.over:
                pause = await self._once()
                if pause:
                    await self._bells.work.wait(pause)
        finally:
            await self._leave_aside()

    async def _leave_aside(self) -> None:
        """End what is still being listened to."""
        self._voices.close()
        for task in self._aside.values():
            task.cancel()
        await asyncio.gather(*self._aside.values(), return_exceptions=True)

    async def _once(self) -> float:
        """Work off one update; how long to wait before the next [s]."""
        try:
            kept = self._left or await self._counter.ask(self._counter.house.next_update, self._worker, self._counter.now())
            if kept is None:
                return LOOK_EVERY_S
            if not self._goes_aside(kept):
                self._left = kept
                pause = await self._work_off(kept)
                self._left = None
            else:
                pause = 0.0
        except Exception as error:  # noqa: BLE001 - the book itself is in trouble: wait for better times
            log_trouble("Could not work off the inbox.", error)
            await self._outage.tell(error, [self._left.chat] if self._left else [])
            self._failures += 1
            return self._bells.patience(self._failures)
        self._failures = 0
        self._outage.over()
        return pause

    def _goes_aside(self, kept: Kept) -> bool:
        """Whether it is a recording: it is listened to while others are answered; its own chat waits for it, as for any other."""
        if kept.id in self._aside:  # its lease is over, and it is still being listened to
            return True
        if not is_sound(kept.raw):
            return False
        task = asyncio.create_task(self._work_off(kept))
        self._aside[kept.id] = task
        task.add_done_callback(partial(self._arrived, kept.id))
        return True

    def _arrived(self, number: int, task: asyncio.Task[float]) -> None:
        """The chat's next update may be worked on."""
        del self._aside[number]
        if not task.cancelled() and task.exception() is not None:
            log.error("A recording could not be put down.", exc_info=task.exception())
        self._bells.work.ring()

    def _desk(self, farm: int) -> Desk:
        """The farm's own desk."""
        if farm not in self._desks:
            self._desks[farm] = Desk(self._bot, self._counter.of(farm), self._voices)
        return self._desks[farm]

    async def _work_off(self, kept: Kept) -> float:
        """Handle one update; how long to wait before the next [s]. What goes wrong is its own trouble, not that of those behind it."""
        try:
            await self._desk(kept.farm).handle(kept, read(kept.raw))
        except Exception as error:  # a mistake of ours, whatever it is, must not stop the barn's messages
            if trouble(error) is not None:
                raise  # the machine's fault and not the message's: it counts as no try
            log.exception("Update %s could not be worked off.", kept.update_id)
            parked = await self._counter.ask(self._counter.of(kept.farm).app.failed, kept, self._counter.now())
            self._bells.letters.ring()
            return 0.0 if parked else self._bells.patience(kept.tries + 1)
        self._bells.letters.ring()
        return 0.0
