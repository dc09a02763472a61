"""Waiting: longer after each failure, and never longer than it takes to be told to stop."""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from contextlib import suppress
from dataclasses import dataclass, field

from telegram.error import RetryAfter

#: Seconds before the first new try, how much longer each next one waits, and the longest wait.
FIRST_S = 1.0
GROWTH = 1.5
LONGEST_S = 30.0

#: Seconds to wait after so many failures in a row.
Patience = Callable[[int], float]


def backoff(failures: int) -> float:
    """Seconds to wait after so many failures in a row (one or more)."""
    return float(min(LONGEST_S, FIRST_S * GROWTH ** min(failures - 1, 20)))


def seconds_of(error: RetryAfter) -> float:
    """How long the service wants to be left alone [s]."""
    wanted = error.retry_after
    return float(wanted) if isinstance(wanted, int) else wanted.total_seconds()


class Bell:
    """What wakes a loop: there is work, or the day is over."""

    def __init__(self) -> None:
        self._rung = asyncio.Event()
        self._over = asyncio.Event()

    @property
    def over(self) -> bool:
        """Whether no new work is to be begun."""
        return self._over.is_set()

    def ring(self) -> None:
        """There is work."""
        self._rung.set()

    def end(self) -> None:
        """No more work after what is in hand."""
        self._over.set()
        self._rung.set()

    async def ended(self) -> None:
        """Return when it is over."""
        await self._over.wait()

    async def wait(self, seconds: float) -> None:
        """Return when the bell rings, or after so many seconds. Once it is over it rings for ever."""
        with suppress(TimeoutError):
            await asyncio.wait_for(self._rung.wait(), seconds)
        if not self.over:
            self._rung.clear()


@dataclass(frozen=True, slots=True)
class Bells:
    """The bells of a server: for the door and the clock, for the inbox, for the outbox; and how patient its loops are after failures."""

    door: Bell = field(default_factory=Bell)
    work: Bell = field(default_factory=Bell)
    letters: Bell = field(default_factory=Bell)
    patience: Patience = backoff
