"""How fast messages go out: as fast as the service takes them, and no faster.

The service asks for at most 30 messages a second in all, and about one a second in a chat, but lets short bursts pass and says
when it is too much (Bot API FAQ, from memory: how much exactly it does not say). So a chat is slowed down only once it has complained.
"""

from __future__ import annotations

import asyncio
from collections.abc import Awaitable, Callable

#: Messages a second, over all chats.
OVERALL = 30.0

#: After a complaint a chat gets one message in so many seconds, for so long [s].
SLOW = 1.0
SLOW_FOR = 60.0

Sleep = Callable[[float], Awaitable[object]]


class Pace:
    """The moments at which messages may go out, by a clock in seconds."""

    def __init__(self, clock: Callable[[], float], sleep: Sleep = asyncio.sleep, *, overall: float = OVERALL) -> None:
        self._clock = clock
        self._sleep = sleep
        self._gap = 1 / overall
        self._next = 0.0
        self._slow_until: dict[str, float] = {}
        self._chat_next: dict[str, float] = {}

    async def turn(self, chat: str) -> None:
        """Wait until a message may go out to the chat."""
        now = self._clock()
        at = max(now, self._next, self._chat_next.get(chat, 0.0))
        self._next = max(now, self._next) + self._gap
        if self._slow_until.get(chat, 0.0) > at:
            self._chat_next[chat] = at + SLOW
        if at > now:
            await self._sleep(at - now)

    def complained(self, chat: str, seconds: float) -> None:
        """The service wants nothing for that chat for so long, and then less."""
        free = self._clock() + seconds
        self._chat_next[chat] = free
        self._slow_until[chat] = free + SLOW_FOR
