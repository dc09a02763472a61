"""How many messages a second go all the way: from the chat service into the book and the answer back, beside bare inserts of the same number.

The service is the stand-in of the tests, over real HTTP on loopback, in the same process: what it costs is in the figures. Each message is a
note; a bare insert is one row in one transaction on the same kind of file. Then the time to an answer while messages come at a steady pace.

    python -m tests.bench.serving [--messages 400] [--pace 20] [--seconds 20]
"""

from __future__ import annotations

import argparse
import sqlite3
import statistics
import tempfile
import time
from contextlib import closing
from pathlib import Path

from tests.bot.telegram.served import Served
from tests.standin import StandIn

PEOPLE = ("Ann", "Bo", "Cy", "Di")


def farm(served: Served) -> None:
    """Four people on the farm, each in a chat of their own, and a few animals."""
    served.owner("Ann")
    for who in PEOPLE[1:]:
        served.owner(who)
    for tag in range(1, 21):
        served.ask("Ann", f"new doe {tag} nz")


def notes(number: int) -> list[tuple[str, str]]:
    """Who says what: weights, each another one."""
    return [(PEOPLE[at % len(PEOPLE)], f"{1 + at % 20} weighed {8 + at % 3}-{at % 16}") for at in range(number)]


def all_answered(standin: StandIn, said: list[dict[str, object]], within: float) -> dict[tuple[int, int], float]:
    """(chat, message) -> when its answer was there."""
    seen: dict[tuple[int, int], float] = {}
    ends = time.monotonic() + within
    wanted = {(note["chat"]["id"], note["message_id"]) for note in said}  # type: ignore[index]
    while len(seen) < len(wanted):
        if time.monotonic() > ends:
            raise TimeoutError(f"{len(wanted) - len(seen)} of {len(wanted)} messages were not answered in {within} s")
        with standin.world.turn:
            for who in PEOPLE:
                chat = standin.person(who)["id"]
                for answer in standin.world.chats[chat].messages.values():
                    number = answer.get("reply_to_message", {}).get("message_id")
                    if number is not None and (chat, number) in wanted:
                        seen.setdefault((chat, number), time.monotonic())
        time.sleep(0.002)
    return seen


def throughput(standin: StandIn, number: int) -> float:
    """Messages a second, all sent at once."""
    began = time.monotonic()
    said = [standin.say(who, text) for who, text in notes(number)]
    seen = all_answered(standin, said, 600)
    return number / (max(seen.values()) - began)


def waits(standin: StandIn, pace: float, seconds: float) -> list[float]:
    """How long each answer took [s], messages coming at that pace a second."""
    told: dict[tuple[int, int], float] = {}
    seen: dict[tuple[int, int], float] = {}
    began = time.monotonic()
    said = []
    for at, (who, text) in enumerate(notes(int(pace * seconds))):
        while time.monotonic() < began + at / pace:
            time.sleep(0.001)
        note = standin.say(who, text)
        told[note["chat"]["id"], note["message_id"]] = time.monotonic()
        said.append(note)
        if at % 5 == 4:
            seen |= {key: when for key, when in _answered(standin).items() if key not in seen}
    for key, when in all_answered(standin, said, 120).items():
        seen.setdefault(key, when)
    return sorted(seen[key] - when for key, when in told.items())


def _answered(standin: StandIn) -> dict[tuple[int, int], float]:
    now = time.monotonic()
    with standin.world.turn:
        return {
            (chat, number): now
            for who in PEOPLE
            for chat in [standin.person(who)["id"]]
            for answer in standin.world.chats[chat].messages.values()
            if (number := answer.get("reply_to_message", {}).get("message_id")) is not None
        }


def bare_inserts(folder: Path, number: int) -> float:
    """Rows a second, one transaction each, as the book's own file is set up."""
    with closing(sqlite3.connect(folder / "bare.sqlite", isolation_level=None)) as bare:
        bare.execute("PRAGMA journal_mode=WAL")
        bare.execute("CREATE TABLE notes (id INTEGER PRIMARY KEY, text TEXT)")
        began = time.monotonic()
        for _, text in notes(number):
            bare.execute("BEGIN IMMEDIATE")
            bare.execute("INSERT INTO notes (text) VALUES (?)", (text,))
            bare.execute("COMMIT")
        return number / (time.monotonic() - began)


def main() -> None:
    """Print the figures."""
    options = argparse.ArgumentParser()
    options.add_argument("--messages", type=int, default=400)
    options.add_argument("--pace", type=float, default=20)
    options.add_argument("--seconds", type=float, default=20)
    told = options.parse_args()
    with tempfile.TemporaryDirectory() as folder, StandIn() as standin, Served(standin, Path(folder) / "book.sqlite") as served:
        farm(served)
        bare = bare_inserts(Path(folder), told.messages)
        whole = throughput(standin, told.messages)
        print(
            f"{told.messages} messages at once from {len(PEOPLE)} chats: {whole:.0f} a second, answered; bare inserts {bare:.0f}: {whole / bare:.4f}"
        )
        times = waits(standin, told.pace, told.seconds)
        last = times[int(len(times) * 0.99)]
        print(f"at {told.pace:.0f} a second: median {statistics.median(times) * 1000:.0f} ms, 99th percentile {last * 1000:.0f} ms")


if __name__ == "__main__":
    main()
