"""A message that says how far something long is."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Callable

from telegram import Bot
from telegram.error import TelegramError

log = logging.getLogger("haynote.telegram")

#: A person is told in so many steps.
STEPS = 5


class Progress:
    """One message that changes. It is pleasant and not needed: trouble with it holds nothing up."""

    def __init__(self, bot: Bot, chat: int, words: Callable[[float, float], str], long: float) -> None:
        """`words` tells how much of how much is done; of less than `long` nobody is told."""
        self._bot = bot
        self._chat = chat
        self._words = words
        self._long = long
        self._told = -1
        self._number: int | None = None
        self._turn = asyncio.Lock()

    def watch(self) -> Callable[[float, float], None]:
        """Who is told from another thread how far it is, and writes it into the chat."""
        loop = asyncio.get_running_loop()

        def told(done: float, of: float) -> None:
            if self._is_news(done, of):
                asyncio.run_coroutine_threadsafe(self._tell(done, of), loop)

        return told

    def _is_news(self, done: float, of: float) -> bool:
        """Whether it is long, and a step further than was told."""
        step = int(done * STEPS // of)
        if of < self._long or step == self._told:
            return False
        self._told = step
        return True

    async def _tell(self, done: float, of: float) -> None:
        """Write it, each word after the one before."""
        async with self._turn:
            text = self._words(done, of)
            try:
                if self._number is None:
                    self._number = (await self._bot.send_message(self._chat, text)).message_id
                else:
                    await self._bot.edit_message_text(text, self._chat, self._number)
            except TelegramError as error:
                log.info("Could not tell how far it is: %s", error)
