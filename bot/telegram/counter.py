"""The way from the chat's one busy thread to the book: every call to `core.app` runs in a single thread of its own.

A book on SQLite has one writer; a slow answer must not keep messages from being taken in or sent.
"""

from __future__ import annotations

import asyncio
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime
from typing import ParamSpec, TypeVar

from core.app import App

P = ParamSpec("P")
Found = TypeVar("Found")

#: Who holds what is being worked on. One server a book, so a name that stays the same takes up again what it held before.
WORKER = "serve"


def clock() -> datetime:
    """The moment it is. The one place in this shell that reads the clock."""
    return datetime.now(UTC)  # noqa: TID251 - a server lives in real time


class Counter:
    """One farm's book, as the chat's thread may use it."""

    def __init__(self, app: App, now: Callable[[], datetime] = clock) -> None:
        self.app = app
        self.now = now
        self._thread = ThreadPoolExecutor(max_workers=1, thread_name_prefix="book")
        self._bench = ThreadPoolExecutor(max_workers=1, thread_name_prefix="files")

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
