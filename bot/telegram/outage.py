"""What is said while the book can't be used: to the operator in plain words, and to those who write meanwhile, once, past the outbox that can't be used either."""

from __future__ import annotations

import logging
from collections.abc import Iterable

from telegram import Bot
from telegram.error import TelegramError

from bot.telegram.counter import Counter
from core.app import trouble

log = logging.getLogger("haynote.telegram")

WAIT = "I can't write anything down just now. {why} Your message is not lost: it waits, and is answered once I can."


def log_trouble(what: str, error: Exception) -> None:
    """A line for the operator: what could not be done, and why; of a mistake of ours all that helps to find it."""
    known = trouble(error)
    if known is None:
        log.error("%s Trying again.", what, exc_info=error)
    else:
        log.error("%s %s %s Trying again.", what, known.text, known.remedy)


class Outage:
    """A time in which nothing can be written down."""

    def __init__(self, bot: Bot, counter: Counter) -> None:
        self._bot = bot
        self._counter = counter
        self._told: set[str] = set()

    def over(self) -> None:
        """All is well: in the next one everybody is told anew."""
        self._told.clear()

    async def tell(self, error: Exception, chats: Iterable[str]) -> None:
        """Tell the chats that belong to a farm why they have to wait, where it is the machine's fault. Pleasant, not needed."""
        known = trouble(error)
        if known is None:
            return
        for chat in set(chats) - self._told:
            self._told.add(chat)
            try:
                if await self._counter.ask(self._counter.house.knows_chat, chat):
                    await self._bot.send_message(int(chat), WAIT.format(why=known.text))
            except TelegramError as refused:
                log.info("Could not tell a chat that it has to wait: %s", refused)
            except Exception as other:  # noqa: BLE001 - the book does not even say who belongs to it
                log_trouble("Could not look up who waits.", other)
