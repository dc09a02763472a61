"""A whole book, served by one bot: the door behind which many farms live. What comes in is laid before the farm that it is for.

Each farm is an `App` of its own, with its herd kept warm; those not asked for longest are let go. All else is as with one farm.
"""

from __future__ import annotations

import threading
from collections import OrderedDict
from collections.abc import Callable, Iterable, Iterator
from contextlib import AbstractContextManager, contextmanager
from datetime import datetime, timedelta
from typing import Any

from core.app import daily_copies, looking_after
from core.app.book import App
from core.app.post import HintOf
from core.app.reckoning import Reckon, here
from core.problem import Problem
from core.store import intake, looking, outgoing, people, serving, signs, whose
from core.store.intake import Came, Update
from core.store.names import Engine
from core.store.outgoing import Outgoing
from core.store.signs import Ear
from core.store.whose import Hint

#: So many farms are kept warm: one with a season of 1,900 notes takes 2 MB (measured), a small one a fortieth of that.
WARM = 100

#: The clock looks at so many farms before it lets others at the book.
AT_A_TIME = 20

#: A farm whose reminders could not be looked up is tried again after so long.
AFTER_TROUBLE = timedelta(minutes=15)


class House:
    """The book with all its farms. Each call is a transaction of its own; times are aware."""

    def __init__(self, engine: Engine) -> None:
        """No farm is read until it is asked for. `troubled` is told of a farm whose reminders could not be looked up, and why."""
        self.troubled: Callable[[str, Exception], object] = lambda _farm, _error: None
        self.reckon: Reckon = here
        self._engine = engine
        self._farms: OrderedDict[int, App] = OrderedDict()
        self._lock = threading.Lock()

    def close(self) -> None:
        """Let go of the database."""
        self._engine.dispose()

    def of(self, farm: int) -> App:
        """The farm of that number."""
        with self._lock:
            app = self._farms.pop(farm, None) or App(self._engine, farm, self._name(farm))
            app.reckon = self.reckon
            self._farms[farm] = app
            while len(self._farms) > WARM:
                self._farms.popitem(last=False)
            return app

    def _name(self, farm: int) -> str:
        with self._engine.begin() as connection:
            return people.farm_name(connection, farm)

    # what comes in and goes out

    def begin_work(self, worker: str) -> None:
        """Take up again what this worker held when it last went down. To be called once, when it starts."""
        with self._engine.begin() as connection:
            intake.release(connection, None, worker)
            outgoing.release(connection, None, worker)

    def take_updates(self, bot_id: str, updates: Iterable[tuple[int, str, str]], hint: HintOf, now: datetime) -> int:
        """Keep updates (number, chat, raw JSON) as they came, each for the farm that it is for. How many were new."""
        with self._engine.begin() as connection:
            new = 0
            for number, chat, raw in updates:
                farm = whose.farm_of(connection, hint(raw) or Hint("", chat, group=True), now)
                new += farm is not None and intake.take(connection, farm, Came(bot_id, number, chat, raw))
            return new

    def next_update(self, worker: str, now: datetime) -> Update | None:
        """The next update to work on, of whatever farm, in each chat's order; one that keeps killing the program is set aside instead."""
        while True:
            with self._engine.begin() as connection:
                update = intake.next_update(connection, None, worker, now)
            if update is None or update.tries < intake.TRIES:
                return update
            self.of(update.farm).park(update, now)

    def claim_outgoing(self, worker: str, now: datetime) -> Outgoing | None:
        """The next message to send, of whatever farm."""
        with self._engine.begin() as connection:
            return outgoing.claim(connection, None, worker, now)

    def mark_sent(self, out: Outgoing, number: str | None = None) -> None:
        """The service has it, under that number."""
        self.of(out.farm).mark_sent(out, number)

    def retry_at(self, out: Outgoing, when: datetime) -> None:
        """It could not be sent; try again, not before that moment."""
        self.of(out.farm).retry_at(out, when)

    def drop(self, out: Outgoing, *, chat_gone: bool = False, moved_to: str | None = None) -> None:
        """It can never be sent."""
        self.of(out.farm).drop(out, chat_gone=chat_gone, moved_to=moved_to)

    def knows_chat(self, chat: str) -> bool:
        """Whether the chat belongs to any farm."""
        with self._engine.begin() as connection:
            return people.knows_chat(connection, None, chat)

    # what goes out by itself

    def tick(self, now: datetime) -> int:
        """Put what is due into the outbox, on some of the farms that it is time to look at. How many were looked at: with 0 all are."""
        with self._engine.begin() as connection:
            ripe = looking.ripe(connection, now, AT_A_TIME)
        return sum(self._looked(farm, now) for farm in ripe)

    def _looked(self, farm: int, now: datetime) -> bool:
        """Whether the farm was looked at. One in trouble waits a while: it must not keep the others from their reminders."""
        try:
            return self.of(farm).look(now)
        except Exception as error:  # noqa: BLE001 - whatever it is, it is told
            self.troubled(self.of(farm).name, error)
            with self._engine.begin() as connection:
                looking.look_again(connection, farm, now + AFTER_TROUBLE)
            return True

    def copy_of_the_day(self, now: datetime) -> Problem | None:
        """Today's copy beside the book; None where it is there, or why it is not."""
        return daily_copies.copy_of_the_day(self._engine, now.date())

    # the programs that work on it

    @property
    def place(self) -> str:
        """Where the book is."""
        return looking_after.place(self._engine.url)

    def serving(self, bot: str) -> AbstractContextManager[bool]:
        """Hold the whole book and the bot for one server, wherever it runs; False while another holds any of it."""
        return serving.serving(self._engine, None, bot)

    @contextmanager
    def working(self) -> Iterator[str]:
        """A worker's name, as long as it works; what its like held before is free again."""
        with serving.working(self._engine) as name:
            self.begin_work(name)
            yield name

    def release_gone(self) -> tuple[str, ...]:
        """Let others have what workers held that are no more; their names."""
        if not self.has_workers:
            return ()
        with self._engine.begin() as connection:
            names = serving.gone(connection, intake.held(connection))
            for name in names:
                intake.release(connection, None, name)
        return names

    @property
    def has_workers(self) -> bool:
        """Whether programs beside the server can work on it: in a file only one writes."""
        return self._engine.dialect.name == "postgresql"

    def give_sign(self, what: str) -> None:
        """Let the other programs know that there is something in the `inbox` or the `outbox`."""
        if self.has_workers:
            signs.give(self._engine, what)

    def listening(self) -> AbstractContextManager[Ear]:
        """Hear the signs of the others."""
        return signs.listening(self._engine)

    def status(self, now: datetime) -> dict[str, Any]:
        """The book in numbers."""
        with self._engine.begin() as connection:
            return {
                "book": self.place,
                "database": connection.dialect.name,
                "farms": people.counted(connection),
                "inbox": intake.waiting(connection, None),
                "held": intake.held(connection),
                "outbox": outgoing.waiting(connection, None),
                "to_look_at": looking.counted(connection, now),
                "last_copy": looking_after.last_copy(self._engine.url),
            }
