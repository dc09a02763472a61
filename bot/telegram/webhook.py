"""The other door: the service hands updates over by itself, at an address of this server. 200 says that an update is written down.

Whoever calls without the secret that only the service was told is refused before anything of theirs is looked at.
"""

from __future__ import annotations

import hmac
import json
import logging
import re
import socket
from dataclasses import dataclass
from hashlib import sha256
from urllib.parse import urlsplit

from telegram import Bot
from telegram.error import InvalidToken, TelegramError
from tornado.httpserver import HTTPServer
from tornado.web import Application, RequestHandler

from bot.telegram.counter import Counter
from bot.telegram.hints import hint_of
from bot.telegram.outage import Outage, log_trouble
from bot.telegram.patience import Bells
from bot.telegram.serve import CantListenError
from bot.telegram.updates import ALLOWED, chat_of

log = logging.getLogger("haynote.telegram")

#: The longest body that is read [bytes]: an update is text and numbers, files are fetched apart.
LONGEST = 1024 * 1024

#: The service sends one update after the other, so that a chat's messages come in their order.
AT_ONCE = 1

HEADER = "X-Telegram-Bot-Api-Secret-Token"
STRANGER = "Refused a call to the webhook without the right secret, from %s."
NO_UPDATE = "Refused a call to the webhook that holds no update."
NOT_SET = "Telegram has not taken the webhook's address (%s). Trying again in %.0f s."


@dataclass(frozen=True, slots=True)
class Address:
    """`url`: what the service is told. `host` and `port`: where this server listens for what is sent there."""

    url: str
    host: str
    port: int


def secret(token: str) -> str:
    """What the service says with each update: made of the bot's token, so that it needs no keeping, and tells nothing of it."""
    return hmac.new(token.encode(), b"haynote webhook", sha256).hexdigest()


class Slot(RequestHandler):
    """Where one update is put in."""

    def initialize(self, hook: Hook) -> None:
        """Tornado's way of handing over."""
        self.hook = hook

    async def post(self) -> None:
        """403 without the secret, 400 for what is no update, 503 where it could not be written down: then the service sends it again."""
        if not hmac.compare_digest(self.request.headers.get(HEADER, "").encode(), self.hook.secret.encode()):
            log.warning(STRANGER, self.request.remote_ip)
            self.set_status(403)
            return
        try:
            number, chat, raw = _update(self.request.body)
        except (ValueError, TypeError, KeyError, AttributeError):
            log.warning(NO_UPDATE)
            self.set_status(400)
            return
        self.set_status(200 if await self.hook.keep(number, chat, raw) else 503)


def _update(body: bytes) -> tuple[int, str, str]:
    """An update's number, its chat and its JSON text. ValueError, TypeError, KeyError or AttributeError where it is none."""
    said = json.loads(body)
    number = said["update_id"]
    if type(number) is not int:
        raise TypeError(number)
    return number, chat_of(said), json.dumps(said)


class Hook:
    """The loop that listens, in place of the one that fetches."""

    def __init__(self, bot: Bot, counter: Counter, bells: Bells, at: Address) -> None:
        self.secret = secret(bot.token)
        self._bot = bot
        self._counter = counter
        self._bells = bells
        self._at = at
        self._outage = Outage(bot, counter)

    async def run(self) -> None:
        """Listen until it is over. CantListenError; InvalidToken where the service does not know the bot.

        The service goes on knowing the address: what comes while nobody listens it keeps, and sends again.
        """
        path = urlsplit(self._at.url).path or "/"
        rooms = Application([(re.escape(path), Slot, {"hook": self})], log_function=lambda _: None)
        server = HTTPServer(rooms, max_body_size=LONGEST, max_buffer_size=2 * LONGEST)
        server.add_socket(self._listening())
        try:
            await self._tell()
            await self._bells.door.ended()
        finally:
            server.stop()
            await server.close_all_connections()

    def _listening(self) -> socket.socket:
        """The port, ours from now on. CantListenError where it can't be."""
        family = socket.AF_INET6 if ":" in self._at.host else socket.AF_INET
        try:
            ours = socket.create_server((self._at.host, self._at.port), family=family, backlog=128)
        except OSError as error:
            raise CantListenError(f"{self._at.host}:{self._at.port}", error.strerror or str(error)) from error
        ours.settimeout(0.0)  # the loop waits, not the socket
        return ours

    async def _tell(self) -> None:
        """Tell the service the address, however long it takes."""
        failures = 0
        while not self._bells.door.over:
            try:
                await self._bot.set_webhook(self._at.url, secret_token=self.secret, allowed_updates=ALLOWED, max_connections=AT_ONCE)
            except InvalidToken:
                raise
            except TelegramError as error:
                failures += 1
                log.warning(NOT_SET, error, self._bells.patience(failures))
                await self._bells.door.wait(self._bells.patience(failures))
            else:
                return

    async def keep(self, number: int, chat: str, raw: str) -> bool:
        """Write an update down; False where that can't be done now."""
        try:
            rows, now = [(number, chat, raw)], self._counter.now()
            await self._counter.ask(self._counter.house.take_updates, str(self._bot.id), rows, hint_of, now)
        except Exception as error:  # noqa: BLE001 - whatever the book's trouble is, an update that is not written down must not be confirmed
            log_trouble("Could not write down what came.", error)
            await self._outage.tell(error, [chat])
            return False
        self._outage.over()
        self._bells.work.ring()
        return True
