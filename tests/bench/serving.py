"""How many messages a second go all the way: from the chat service into the book and the answer back, beside bare inserts of the same number.

The service is the stand-in of the tests, over real HTTP on loopback, in this process; the server and each worker is a process of its own, as in
earnest, but sends as fast as it can. PostgreSQL keeps its promises (fsync). Each message is a note; a bare insert is one row with the same text in
one transaction on the same engine. Then the time to an answer while messages come at a steady pace.

    python -m tests.bench.serving [--messages 600] [--pace 20] [--seconds 20]
"""

from __future__ import annotations

import argparse
import asyncio
import os
import signal
import sqlite3
import statistics
import subprocess
import sys
import tempfile
import time
from collections.abc import Iterator
from contextlib import closing, contextmanager
from pathlib import Path
from typing import Any

import psycopg
from sqlalchemy import make_url

from bot.settings import Settings
from bot.telegram.counter import Counter
from bot.telegram.serve import Paces, Serving, bot_of, until_told
from bot.telegram.work import Working
from core.app import App, House, Member, open_book, open_house
from core.store.people import add_member
from tests.postgres import server as postgres
from tests.standin import StandIn

PEOPLE = {"Ann": "Hill", "Bo": "Hill", "Cy": "Dale", "Di": "Dale", "Ed": "Brook", "Flo": "Brook", "Gus": "Moor", "Hal": "Moor"}
WORKERS = (1, 2, 4)
UNSLOWED = Paces(overall=10_000)


class Watch:
    """When each message was answered, seen where the answer arrives."""

    def __init__(self, standin: StandIn) -> None:
        self.seen: dict[tuple[int, int], float] = {}
        self._add = standin.world.add_message
        standin.world.add_message = self._watch  # type: ignore[method-assign]

    def _watch(self, chat: Any, sender: Any, content: dict[str, Any]) -> dict[str, Any]:
        replied = content.get("reply_to_message", {}).get("message_id")
        if replied is not None:
            self.seen.setdefault((chat.about["id"], replied), time.monotonic())
        return self._add(chat, sender, content)

    def answered(self, said: list[dict[str, Any]], within: float) -> list[float]:
        """When each was answered, once all are."""
        wanted = [(note["chat"]["id"], note["message_id"]) for note in said]
        ends = time.monotonic() + within
        while not all(key in self.seen for key in wanted):
            if time.monotonic() > ends:
                raise TimeoutError(f"{sum(key not in self.seen for key in wanted)} of {len(wanted)} were not answered in {within} s")
            time.sleep(0.01)
        return [self.seen[key] for key in wanted]


def settle(url: str, standin: StandIn) -> None:
    """Four farms with two people each, every one in a chat of their own, and a few animals."""
    for farm in dict.fromkeys(PEOPLE.values()):
        app = open_book(url, farm, create=True)
        assert isinstance(app, App)
        app.replay("\n".join(f"2026-03-01 08:{tag:02d} new doe {tag} nz" for tag in range(1, 21)))
        with app._engine.begin() as connection:
            for who in [who for who, where in PEOPLE.items() if where == farm]:
                add_member(connection, app._farm, Member(f"telegram:{standin.person(who)['id']}", who, "owner"), standin.world.now)
        app.close()


def notes(number: int) -> list[tuple[str, str]]:
    """Who says what: weights, each another one."""
    who = list(PEOPLE)
    return [(who[at % len(who)], f"{1 + at // 8 % 20} weighed {8 + at % 3}-{at % 16}") for at in range(number)]


def throughput(standin: StandIn, watch: Watch, number: int) -> float:
    """Messages a second, all sent at once."""
    began = time.monotonic()
    said = [standin.say(who, text) for who, text in notes(number)]
    return number / (max(watch.answered(said, 600)) - began)


def waits(standin: StandIn, watch: Watch, pace: float, seconds: float) -> list[float]:
    """How long each answer took [s], messages coming at that pace a second."""
    told, said = [], []
    began = time.monotonic()
    for at, (who, text) in enumerate(notes(int(pace * seconds))):
        time.sleep(max(0.0, began + at / pace - time.monotonic()))
        told.append(time.monotonic())
        said.append(standin.say(who, text))
    return sorted(seen - when for seen, when in zip(watch.answered(said, 120), told, strict=True))


def bare_inserts(url: str, number: int) -> float:
    """Rows a second, one transaction each."""
    if url.startswith("sqlite"):
        with closing(sqlite3.connect(str(make_url(url).database) + ".bare", isolation_level=None)) as bare:
            for pragma in ("journal_mode=WAL", "synchronous=FULL"):
                bare.execute(f"PRAGMA {pragma}")
            bare.execute("CREATE TABLE bare (id INTEGER PRIMARY KEY, text TEXT)")
            began = time.monotonic()
            for _, text in notes(number):
                bare.execute("BEGIN IMMEDIATE")
                bare.execute("INSERT INTO bare (text) VALUES (?)", (text,))
                bare.execute("COMMIT")
            return number / (time.monotonic() - began)
    plain = make_url(url).set(drivername="postgresql").render_as_string(hide_password=False)
    with psycopg.connect(plain, autocommit=True) as other:
        other.execute("create table bare (id bigserial primary key, text text)")
        began = time.monotonic()
        for _, text in notes(number):
            other.execute("insert into bare (text) values (%s)", (text,))
        return number / (time.monotonic() - began)


def live(what: str, url: str, api: str, token: str) -> None:
    """A server or a worker, in its own process."""
    house = open_house(url)
    assert isinstance(house, House)
    bot = bot_of(Settings(url, token, api))
    if what == "serve":
        asyncio.run(until_told(Serving(bot, Counter(house), UNSLOWED)))
    else:
        with house.working() as name:
            asyncio.run(until_told(Working(bot, Counter(house), house, name, UNSLOWED)))


@contextmanager
def running(url: str, standin: StandIn, workers: int) -> Iterator[None]:
    """A server, which works too, and so many workers less one beside it."""
    calls = len(standin.calls())
    command = [sys.executable, "-m", "tests.bench.serving", "--url", url, "--api", standin.url, "--token", standin.token, "--live"]
    started = [subprocess.Popen([*command, what], env=os.environ) for what in ["serve", *["work"] * (workers - 1)]]
    standin.wait_calls("getMe", count=workers, since=calls, timeout=60)
    standin.wait_calls("getUpdates", since=calls, answered=False, timeout=60)
    yield
    for process in started:
        process.send_signal(signal.SIGTERM)
    assert [process.wait(20) for process in started] == [0] * workers


def measure(url: str, workers: tuple[int, ...], told: argparse.Namespace) -> None:
    """Print one engine's figures."""
    engine = make_url(url).get_backend_name()
    with StandIn() as standin:
        watch = Watch(standin)
        settle(url, standin)
        bare = bare_inserts(url, told.messages)
        print(f"{engine}: bare inserts {bare:.0f} a second")
        for number in workers:
            with running(url, standin, number):
                throughput(standin, watch, 8 * len(PEOPLE))  # herds are read, code is loaded
                whole = throughput(standin, watch, told.messages)
                times = waits(standin, watch, told.pace, told.seconds)
            last = times[int(len(times) * 0.99)]
            print(
                f"{engine}, {number} at work: {told.messages} messages at once from {len(PEOPLE)} chats of 4 farms: {whole:.0f} a second, answered; "
                f"to bare inserts {whole / bare:.3f}; at {told.pace:.0f} a second an answer takes {statistics.median(times) * 1000:.0f} ms, "
                f"99 of 100 under {last * 1000:.0f} ms",
                flush=True,
            )


def main() -> None:
    """Print the figures."""
    options = argparse.ArgumentParser()
    for name, default in (("messages", 600), ("pace", 20.0), ("seconds", 20.0)):
        options.add_argument(f"--{name}", type=type(default), default=default)
    for name in ("live", "url", "api", "token"):
        options.add_argument(f"--{name}", help=argparse.SUPPRESS)
    told = options.parse_args()
    if told.live:
        live(told.live, told.url, told.api, told.token)
        return
    with tempfile.TemporaryDirectory() as folder:
        measure(f"sqlite:///{Path(folder) / 'book.sqlite'}", (1,), told)
    with postgres(durable=True) as server:
        measure(server.render_as_string(hide_password=False), WORKERS, told)


if __name__ == "__main__":
    main()
