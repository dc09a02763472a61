"""Serving a farm on Telegram: the loops, put together, from the first sign to an orderly end.

    intake    the service's updates into the inbox; or the webhook, where the service brings them
    taking    the inbox through the handlers into the book, answers into the outbox
    ticker    reminders and the digest into the outbox
    sender    the outbox to the service

Each is safe to kill at any point: what it was at is taken up again at the next start.
"""

from __future__ import annotations

import asyncio
import logging
import signal
from collections.abc import Awaitable, Callable
from dataclasses import dataclass, field
from time import monotonic
from typing import TYPE_CHECKING, Protocol

from telegram import Bot, BotCommand
from telegram.error import InvalidToken, TelegramError
from telegram.request import HTTPXRequest

from bot.settings import Settings
from bot.telegram.counter import WORKER, Counter
from bot.telegram.intake import CANT_REACH, POLL_S, Intake
from bot.telegram.pace import OVERALL, Pace
from bot.telegram.patience import Bell, Bells, Patience, backoff
from bot.telegram.sender import Sender
from bot.telegram.signs import INBOX, OUTBOX, Ear, FarBell
from bot.telegram.taking import Taking
from bot.telegram.ticker import EVERY_S, Ticker
from bot.telegram.words import COMMANDS
from core.app import House

if TYPE_CHECKING:
    from bot.telegram.webhook import Address, Hook

log = logging.getLogger("haynote.telegram")

#: An orderly end takes no longer than this [s]; the inbox and the outbox keep the rest.
END_WITHIN_S = 8.0

#: Requests to the service at the same time, long polls apart.
CONNECTIONS = 16


class CantListenError(Exception):
    """The webhook's port is taken, or not ours to listen at."""

    def __init__(self, where: str, why: str) -> None:
        super().__init__(where, why)
        self.where = where
        self.why = why


@dataclass(frozen=True, slots=True)
class Paces:
    """How long things take: real ones, and others for trials. Seconds, but `overall`: messages a second."""

    poll: int = POLL_S
    tick: float = EVERY_S
    overall: float = OVERALL
    end: float = END_WITHIN_S
    patience: Patience = backoff


def bot_of(settings: Settings) -> Bot:
    """The library's client, at the service's address."""
    return Bot(
        settings.bot_token or "",
        base_url=f"{settings.bot_api}/bot",
        base_file_url=f"{settings.bot_api}/file/bot",
        request=HTTPXRequest(connection_pool_size=CONNECTIONS),
        get_updates_request=HTTPXRequest(),
    )


@dataclass
class Serving:
    """One run of the server."""

    bot: Bot
    counter: Counter
    paces: Paces = field(default_factory=Paces)
    met: Callable[[str], object] = lambda _name: None  # told the bot's name once the service said it
    alive: Callable[[], object] = lambda: None  # called as often as the clock asks the book
    at: Address | None = None  # where the service hands updates over; None where they are fetched

    def __post_init__(self) -> None:
        """Its bells: where there are workers beside it, they hear of what comes in."""
        self.far = FarBell()
        self.bells = Bells(work=self.far if self.counter.house.has_workers else Bell(), patience=self.paces.patience)

    async def run(self, ready: Callable[[], object] = lambda: None) -> None:
        """Serve until `stop`. InvalidToken where the service does not know the bot; any other error is a mistake of ours."""
        await self.counter.ask(self.counter.house.begin_work, WORKER)
        try:
            if await introduced(self.bells, self._hello):
                self.met(self.bot.username)
                ready()
                await self._loops()
        finally:
            await self.bot.shutdown()

    def stop(self) -> None:
        """Come to an orderly end: no more news, then what is in hand, then what can go out."""
        self.bells.door.end()

    async def _hello(self) -> None:
        """What the service is told first."""
        await self.bot.initialize()
        if self.at is None:
            await self.bot.delete_webhook(drop_pending_updates=False)
        await self.bot.set_my_commands([BotCommand(*command) for command in COMMANDS])

    def _door(self) -> Intake | Hook:
        """The way in for updates."""
        if self.at is None:
            return Intake(self.bot, self.counter, self.bells, self.paces.poll)
        from bot.telegram.webhook import Hook  # noqa: PLC0415 - an HTTP server, and an extra

        return Hook(self.bot, self.counter, self.bells, self.at)

    async def _loops(self) -> None:
        """Run the loops, and end them in the order in which work passes through them."""
        intake = self._door()
        taking = Taking(self.bot, self.counter, self.bells)
        sender = Sender(self.bot, self.counter, self.bells, Pace(monotonic, overall=self.paces.overall))
        ticker = Ticker(self.counter, self.bells, self.paces.tick, self.alive)
        first, second, last = (asyncio.create_task(loop.run()) for loop in (intake, taking, sender))
        clock = asyncio.create_task(ticker.run())
        others = self._others()
        ended = asyncio.create_task(self.bells.door.ended())
        try:
            await asyncio.wait({first, second, last, clock, ended, *others}, return_when=asyncio.FIRST_COMPLETED)
            self.bells.door.end()
            first.cancel()
            self.bells.work.end()
            ends = monotonic() + self.paces.end
            await asyncio.wait({first, second, clock}, timeout=self.paces.end)
            self.bells.letters.end()
            await asyncio.wait({last}, timeout=max(0.0, ends - monotonic()))
        finally:
            await all_over(first, second, last, clock, ended, *others)

    def _others(self) -> list[asyncio.Task[None]]:
        """What is told to workers beside this server, and heard from them."""
        house = self.counter.house
        if not isinstance(house, House) or not house.has_workers:
            return []
        ear = Ear(house, OUTBOX, self.bells.letters, self.bells)
        return [asyncio.create_task(ear.run()), asyncio.create_task(self.far.tell(house, self.counter, INBOX))]


async def introduced(bells: Bells, hello: Callable[[], Awaitable[object]]) -> bool:
    """Say hello to the service, however long it takes; False when it is over before that. InvalidToken where it does not know the bot."""
    failures = 0
    while not bells.door.over:
        try:
            await hello()
        except InvalidToken:
            raise
        except TelegramError as error:
            failures += 1
            log.warning(CANT_REACH, error, bells.patience(failures))
            await bells.door.wait(bells.patience(failures))
        else:
            return True
    return False


async def all_over(*tasks: asyncio.Task[None]) -> None:
    """End what still runs, and hand on what went wrong."""
    for task in tasks:
        task.cancel()
    for result in await asyncio.gather(*tasks, return_exceptions=True):
        if isinstance(result, Exception):
            raise result


class Runs(Protocol):
    """A server, or a worker beside one."""

    counter: Counter

    async def run(self, ready: Callable[[], object]) -> None:
        """Until it is stopped."""
        ...

    def stop(self) -> None:
        """Come to an orderly end."""
        ...


async def until_told(what: Runs, *, ready: Callable[[], object] = lambda: None) -> None:
    """Run until the process is told to stop (SIGTERM, SIGINT)."""
    loop = asyncio.get_running_loop()
    for sign in (signal.SIGTERM, signal.SIGINT):
        try:
            loop.add_signal_handler(sign, what.stop)
        except NotImplementedError:  # pragma: no cover - Windows
            signal.signal(sign, lambda *_: loop.call_soon_threadsafe(what.stop))
    try:
        await what.run(ready)
    finally:
        what.counter.close()
