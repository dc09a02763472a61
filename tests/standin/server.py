"""The stand-in itself: HTTP on the loopback address, the log of requests, scripted faults, and the people's side.

    with StandIn() as standin:
        bot talks to standin.url with standin.token
        note = standin.say("Ann", "doe 14 kindled 8, 2 dead")
        answer = standin.wait_answer(note)

Leaving the block fails when the bot sent anything that the Bot API's documentation does not allow.
"""

from __future__ import annotations

import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import datetime
from time import monotonic
from types import TracebackType
from typing import Any, Self, TypeVar

from tests.standin import checking
from tests.standin.bodies import Fields, Upload
from tests.standin.carrying import carry
from tests.standin.faults import Fault, take
from tests.standin.methods import METHODS
from tests.standin.people import Message, People
from tests.standin.texts import Dropped, Refused
from tests.standin.wire import Listener
from tests.standin.world import DAY_ONE, World

Found = TypeVar("Found")


@dataclass(slots=True)
class Call:
    """One request of the bot.

    status  the answer's HTTP status; None while it is held, and for good when the connection was cut
    """

    number: int
    method: str
    params: dict[str, Any]
    uploads: dict[str, Upload] = field(default_factory=dict)
    status: int | None = None
    answer: dict[str, Any] | None = None

    def as_json(self) -> dict[str, Any]:
        """The call with its uploads named but not shown."""
        sizes = {name: len(upload.content) for name, upload in self.uploads.items()}
        shown = ("number", "method", "params", "status", "answer")
        return {name: getattr(self, name) for name in shown} | {"uploads": sizes}


class StandIn(People):
    """A Bot API server for one bot, with the world behind it."""

    def __init__(
        self,
        *,
        token: str = "7000001:stand-in-token",  # noqa: S107 - a token for nothing
        username: str = "barn_notes_bot",
        reads_all: bool = False,
        now: datetime = DAY_ONE,
        port: int = 0,
    ) -> None:
        super().__init__(World(token=token, username=username, reads_all=reads_all, now=now))
        self.token = token
        self.violations: list[str] = []
        self._log: list[Call] = []
        self._faults: list[Fault] = []
        self._released = 0
        self._server = Listener(("127.0.0.1", port), self)
        self.brought: list[tuple[int, int | None]] = []
        self._carrier = threading.Thread(target=carry, args=(self.world, self.brought), daemon=True)
        self._thread = threading.Thread(target=self._server.serve_forever, kwargs={"poll_interval": 0.05}, daemon=True)

    @property
    def port(self) -> int:
        """The port that it serves on."""
        return int(self._server.server_address[1])

    @property
    def url(self) -> str:
        """The base address: what a bot is given in place of the real service's."""
        return f"http://127.0.0.1:{self.port}"

    def start(self) -> Self:
        """Begin to serve."""
        self._thread.start()
        self._carrier.start()
        return self

    def stop(self) -> None:
        """End every wait and every connection."""
        self.world.close()
        self._server.shutdown()
        self._server.cut_all()
        self._server.server_close()
        self._thread.join()
        self._carrier.join()

    def __enter__(self) -> Self:
        return self.start()

    def __exit__(self, kind: type[BaseException] | None, error: BaseException | None, trace: TracebackType | None) -> None:
        self.stop()
        if kind is None:
            assert not self.violations, "requests that the Bot API's documentation does not allow:\n" + "\n".join(self.violations)

    # trouble

    def fail(self, method: str, kind: str, **more: Any) -> None:
        """Script trouble for the next calls of a method: see faults.Fault."""
        with self.world.turn:
            self._faults.append(Fault(method, kind, **more))

    def release(self) -> None:
        """Let go of every call that a `hold` or `hang` keeps."""
        with self.world.turn:
            self._released += 1
            self.world.turn.notify_all()

    def forgive(self) -> list[str]:
        """The violations so far, no longer held against the bot: for tests that provoke them."""
        with self.world.turn:
            forgiven, self.violations = self.violations, []
            return forgiven

    # what the bot did

    def calls(self, method: str | None = None, *, since: int = 0, answered: bool = False) -> list[Call]:
        """The bot's requests in order, those numbered above `since`; `answered` leaves out held and cut ones."""
        with self.world.turn:
            found = [call for call in self._log[since:] if method in (None, call.method)]
            return [call for call in found if call.status is not None] if answered else found

    def pending(self) -> int:
        """How many updates the bot has not confirmed."""
        with self.world.turn:
            return len(self.world.waiting)

    def answers(self, to: Message | str, *, after: int = 0) -> list[Message]:
        """The bot's messages below a message, or all in a person's private chat (numbered above `after`), as they stand now."""
        with self.world.turn:
            chat_id, number = (self.person(to)["id"], after) if isinstance(to, str) else (to["chat"]["id"], to["message_id"])
            messages = self.world.chats[chat_id].messages.values()
            return [m for m in messages if m["message_id"] > number and m["from"]["id"] == self.world.me["id"]]

    def wait_answer(self, to: Message | str, *, after: int = 0, timeout: float = 10) -> Message:
        """The bot's first message below that one; TimeoutError when none comes."""
        return self._wait(lambda: next(iter(self.answers(to, after=after)), None), f"answer to {to}", timeout)

    def wait_calls(self, method: str, *, count: int = 1, since: int = 0, answered: bool = True, timeout: float = 10) -> list[Call]:
        """The bot's requests of a method once there are `count`; TimeoutError when they don't come."""

        def found() -> list[Call] | None:
            calls = self.calls(method, since=since, answered=answered)
            return calls if len(calls) >= count else None

        return self._wait(found, f"{count} calls of {method}", timeout)

    def wait_confirmed(self, *, timeout: float = 10) -> None:
        """Return when the bot has confirmed every update."""
        self._wait(lambda: not self.world.waiting or None, "every update to be confirmed", timeout)

    def _wait(self, found: Callable[[], Found | None], what: str, timeout: float) -> Found:
        ends = monotonic() + timeout
        with self.world.turn:
            while (value := found()) is None:
                left = ends - monotonic()
                if left <= 0:
                    seen = [f"{call.method} {call.status}" for call in self._log[-8:]]
                    raise TimeoutError(f"waited {timeout} s for {what}; the last calls were {seen}")
                self.world.turn.wait(left)
            return value

    # serving

    def serve(self, method: str, fields: Fields) -> tuple[int, dict[str, Any] | bytes]:
        """Carry out one call: status and body. Dropped when the connection is to be cut."""
        params, violations = checking.check_request(method, fields)
        with self.world.turn:
            call = Call(len(self._log) + 1, method, params, fields.uploads)
            self._log.append(call)
            fault = take(self._faults, method, params)
            self.violations += [f"{method}: {violation.text}" for violation in violations]
            self.world.turn.notify_all()
        refusal = violations[0].refusal if violations else None
        status, body = self._spoiled(fault, call, refusal) if fault else self._carried_out(call, refusal)
        with self.world.turn:
            call.status, call.answer = status, None if isinstance(body, bytes) else body
            self.world.turn.notify_all()
        return status, body

    def _carried_out(self, call: Call, refusal: Refused | None) -> tuple[int, dict[str, Any]]:
        try:
            if refusal is not None:
                raise refusal
            with self.world.turn:
                return 200, {"ok": True, "result": METHODS[call.method](self.world, call.params, call.uploads)}
        except Refused as refused:
            return refused.code, refused.answer()

    def _spoiled(self, fault: Fault, call: Call, refusal: Refused | None) -> tuple[int, dict[str, Any] | bytes]:
        kept = self._carried_out(call, refusal) if fault.after else None
        if fault.kind in ("hang", "hold"):
            self._until_released()
        if fault.kind == "hold":
            return kept or self._carried_out(call, refusal)
        if fault.kind in ("drop", "hang"):
            raise Dropped
        if fault.kind == "broken":
            return fault.code, f"<html><body><h1>{fault.code} {fault.text}</h1></body></html>".encode()
        return fault.refusal().code, fault.refusal().answer()

    def _until_released(self) -> None:
        with self.world.turn:
            round_now = self._released
            while self._released == round_now:
                if self.world.closing:
                    raise Dropped
                self.world.turn.wait()
