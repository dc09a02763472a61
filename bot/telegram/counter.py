"""The way from the chat's one busy thread to the book: every call to `core.app` runs in a thread of its own.

A book on SQLite has one writer, and so one thread; a slow answer must not keep messages from being taken in or sent.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from copy import copy
from datetime import UTC, datetime
from typing import ParamSpec, TypeVar

from core.app import App, House

P = ParamSpec("P")
Found = TypeVar("Found")

#: Who holds what the server works on. One server a book, so a name that stays the same takes up again what it held before.
WORKER = "serve"

#: A database that takes several writers is asked so many things at once: a farm that is looked at holds up no message.
THREADS = 4


def clock() -> datetime:
    """The moment it is. The one place in this shell that reads the clock."""
    return datetime.now(UTC)  # noqa: TID251 - a server lives in real time


class Counter:
    """The book of one farm, or of a house of many, as the chat's thread may use it."""

    def __init__(self, house: App | House, now: Callable[[], datetime] = clock) -> None:
        self.house = house
        self.now = now
        self._farm = 0
        self._thread = ThreadPoolExecutor(max_workers=THREADS if house.has_workers else 1, thread_name_prefix="book")
        self._bench = ThreadPoolExecutor(max_workers=1, thread_name_prefix="files")

    @property
    def app(self) -> App:
        """The book of the farm that this counter is for."""
        return self.house.of(self._farm)

    def of(self, farm: int) -> Counter:
        """The same counter for that farm."""
        other = copy(self)
        other._farm = farm  # noqa: SLF001 - of this class
        return other

    async def ask(self, what: Callable[P, Found], *args: P.args, **kwargs: P.kwargs) -> Found:
        """What the call gives, waited for without holding up the chat."""
        return await asyncio.get_running_loop().run_in_executor(self._thread, lambda: what(*args, **kwargs))

    async def make(self, what: Callable[P, Found], *args: P.args, **kwargs: P.kwargs) -> Found:
        """The same for what asks the book nothing, such as drawing: it holds up neither the chat nor the book."""
        return await asyncio.get_running_loop().run_in_executor(self._bench, lambda: what(*args, **kwargs))

    def close(self) -> None:
        """No more calls; one that is running is waited for."""
        self._thread.shutdown(wait=True, cancel_futures=True)
        self._bench.shutdown(wait=True, cancel_futures=True)
