"""The server as a test runs it: in a thread of its own, on a stand-in, with the stand-in's clock."""

from __future__ import annotations

import asyncio
import threading
from contextlib import suppress
from datetime import datetime
from pathlib import Path
from types import TracebackType
from typing import Any, Self

from bot.settings import Settings
from bot.telegram.counter import Counter
from bot.telegram.serve import Paces, Serving, bot_of
from bot.telegram.webhook import Address
from core.app import App, House, open_book
from core.reply import Reply
from tests.standin import StandIn
from tests.standin.people import Message

#: No waiting between tries, more messages a second than any test sends, and polls that end soon after the test.
FAST = Paces(poll=20, tick=0.02, overall=10_000, patience=lambda _: 0.0)


def opened(book: Path) -> App:
    """The book of that file."""
    app = open_book(str(book))
    assert isinstance(app, App), app
    return app


class Served:
    """A running server; use it with `with`. It can be started again on the same book. With a `house` it serves all farms of that."""

    def __init__(self, standin: StandIn, book: Path, paces: Paces = FAST, at: Address | None = None, house: House | None = None) -> None:
        self.standin = standin
        self.book = book
        self.paces = paces
        self.at = at
        self.error: BaseException | None = None
        self.app: Any = house or opened(book)
        self._serving: Serving | None = None
        self._loop: asyncio.AbstractEventLoop | None = None
        self._ready = threading.Event()
        self._thread = threading.Thread(target=self._run, daemon=True)

    def __enter__(self) -> Self:
        self._thread.start()
        assert self._ready.wait(10)
        return self

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        self.stop()
        if kind is None and self.error is not None:
            raise self.error

    def stop(self) -> None:
        """An orderly end."""
        assert self._loop is not None
        assert self._serving is not None
        if self._thread.is_alive():
            self._loop.call_soon_threadsafe(self._serving.stop)
        self._thread.join(10)
        assert not self._thread.is_alive()
        self.app.close()

    def now(self) -> datetime:
        """The stand-in's clock."""
        return self.standin.world.now

    def _run(self) -> None:
        try:
            asyncio.run(self._serve())
        except Exception as error:  # noqa: BLE001 - told where the block ends
            self.error = error
        finally:
            self._ready.set()

    async def _serve(self) -> None:
        self._loop = asyncio.get_running_loop()
        counter = Counter(self.app, self.now)
        settings = Settings("", self.standin.token, self.standin.url)
        self._serving = Serving(bot_of(settings), counter, self.paces, at=self.at)
        try:
            await self._serving.run(self._ready.set)
        finally:
            counter.close()

    # what a test says and hears

    def owner(self, who: str = "Ann") -> str:
        """Let a person in by the set-up code; the welcome."""
        code = self.app.setup_code(self.now(), anew=True)
        assert code is not None
        return self.ask(who, code)

    def ask(self, who: str, text: str, **more: Any) -> str:
        """What the bot answers to a message."""
        answer = self.standin.wait_answer(self.standin.say(who, text, **more))
        return str(answer["text"])

    def reply(self, note: Message, *, timeout: float = 10) -> dict[str, Any]:
        """The bot's reply to that very message, whatever else it says in between."""

        def found() -> dict[str, Any] | None:
            return next((each for each in self.standin.answers(note) if _replied(each) == note["message_id"]), None)

        return self.standin._wait(found, f"a reply to {note['text']}", timeout)

    def send(self, who: str, reply: Reply, *, chat: int | None = None) -> dict[str, Any]:
        """Put a message into the outbox, as reminders are; as it arrived. It is not a reply to anything."""
        number = str(self.standin.person(who)["id"] if chat is None else chat)
        last = self._last(int(number))
        assert self.app.send(f"test:{number}:{last}", number, reply, self.now())
        self.ring()
        return self.standin.wait_answer({"chat": {"id": int(number)}, "message_id": last})

    def later(self, note: Message) -> dict[str, Any]:
        """The first answer to a message, however much of the service's time must pass before it comes."""
        for _ in range(400):
            self.standin.world.pass_time(5)
            self.ring()
            with suppress(TimeoutError):
                return self.standin.wait_answer(note, timeout=0.05)
        raise TimeoutError(f"no answer to {note['text']}")

    def ring(self) -> None:
        """Let the sender look into the outbox."""
        assert self._loop is not None
        assert self._serving is not None
        self._loop.call_soon_threadsafe(self._serving.bells.letters.ring)

    def _last(self, chat: int) -> int:
        with self.standin.world.turn:
            return self.standin.world.chats[chat].last_number

    def notes(self) -> list[str]:
        """The texts in the journal."""
        return [note.text for note in opened_notes(self.book)]


def _replied(message: Message) -> int | None:
    """The number of the message that it replies to."""
    number: int | None = message.get("reply_to_message", {}).get("message_id")
    return number


def opened_notes(book: Path) -> tuple[Any, ...]:
    """The notes of the journal, read by nobody who holds it."""
    app = opened(book)
    try:
        return app._hearing.book().notes
    finally:
        app.close()
