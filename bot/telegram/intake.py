"""The door: updates are fetched, written down, and only then confirmed, which asking for the next ones does."""

from __future__ import annotations

import logging

from telegram import Bot, Update
from telegram.error import Conflict, InvalidToken, RetryAfter, TelegramError

from bot.telegram.counter import Counter
from bot.telegram.hints import hint_of
from bot.telegram.outage import Outage, log_trouble
from bot.telegram.patience import Bells, seconds_of
from bot.telegram.updates import ALLOWED, chat_of

log = logging.getLogger("haynote.telegram")

#: How long the service may let a question for news hang, and how much longer an answer may take than that [s].
POLL_S = 30
SLACK_S = 10

BOTH_READ = "Another program reads this bot's messages. Stop it, or give this one a bot of its own. Trying again."
CANT_REACH = "Telegram can't be reached (%s). Trying again in %.0f s."


class Intake:
    """The loop that fetches. It runs until it is cancelled: what it has fetched but not yet written down comes again."""

    def __init__(self, bot: Bot, counter: Counter, bells: Bells, poll: int = POLL_S) -> None:
        self._bot = bot
        self._counter = counter
        self._bells = bells
        self._poll = poll
        self._offset: int | None = None
        self._failures = 0
        self._outage = Outage(bot, counter)

    async def run(self) -> None:
        """Fetch for ever. InvalidToken where the service does not know the bot (any more)."""
        while not self._bells.door.over:
            pause = await self._once()
            if pause:
                await self._bells.door.wait(pause)

    async def _once(self) -> float:
        """One question for news; how long to wait before the next [s]."""
        updates: tuple[Update, ...] = ()
        try:
            updates = await self._bot.get_updates(self._offset, timeout=self._poll, read_timeout=SLACK_S, allowed_updates=ALLOWED)
            await self._keep(updates)
        except InvalidToken:
            raise
        except RetryAfter as error:
            return seconds_of(error)
        except Conflict:
            log.warning(BOTH_READ)
            return self._failed()
        except TelegramError as error:
            log.warning(CANT_REACH, error, self._bells.patience(self._failures + 1))
            return self._failed()
        except Exception as error:  # noqa: BLE001 - whatever the book's trouble is, an update that is not written down must not be confirmed
            log_trouble("Could not write down what came.", error)
            await self._outage.tell(error, [chat_of(update.to_dict()) for update in updates])
            return self._failed()
        self._failures = 0
        self._outage.over()
        return 0.0

    def _failed(self) -> float:
        self._failures += 1
        return self._bells.patience(self._failures)

    async def _keep(self, updates: tuple[Update, ...]) -> None:
        """Write the updates down, then let the next question confirm them."""
        if not updates:
            return
        rows = [(update.update_id, chat_of(update.to_dict()), update.to_json()) for update in updates]
        await self._counter.ask(self._counter.house.take_updates, str(self._bot.id), rows, hint_of, self._counter.now())
        self._offset = updates[-1].update_id + 1
        self._bells.work.ring()
