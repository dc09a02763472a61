"""The morning sweep over many farms: how long the clock takes and how much it asks the database, and how that grows from 50 farms to 5,000.

    python -m tests.bench.sweep [--farms 50 500 5000] [--due 10]

Each farm has the same dozen animals and litters; so many of them, whatever their number, have a reminder on the morning that is swept. Both
engines, in one process. A minute in which nothing is due on any farm comes after it, and the first look at all farms before it.
"""

from __future__ import annotations

import argparse
import tempfile
import time
from collections.abc import Callable
from datetime import UTC, date, datetime, timedelta
from pathlib import Path

from sqlalchemy import Engine, event

from core.app import House, open_house
from core.notes.fact import Fact
from core.notes.journal import Note
from core.notes.kinds.animal import AnimalNoted
from core.notes.kinds.kindling import Kindled
from core.notes.kinds.mating import Bred
from core.notes.kinds.reminder import Reminder
from core.notes.kinds.weaning import Weaned
from core.store import journal, people
from tests.postgres import server as postgres

START = datetime(2026, 3, 3, 20, tzinfo=UTC)  # a Tuesday
MORNING = datetime(2026, 3, 4, 7, 0, tzinfo=UTC)


def told(*, due: bool) -> tuple[Fact, ...]:
    """A farm's facts: eight does, two bucks, litters weaned long ago; with something to do tomorrow or not."""
    does = [AnimalNoted(tag=str(tag), sex="doe", breed="New Zealand", born=date(2024, 5, 1)) for tag in range(10, 18)]
    bucks = [AnimalNoted(tag=str(tag), sex="buck", breed="New Zealand", born=date(2024, 5, 1)) for tag in (1, 2)]
    litters: list[Fact] = []
    for doe in range(10, 18):
        litters.append(Bred(doe=str(doe), buck="1", on=date(2025, 6, 1)))
        litters.append(Kindled(doe=str(doe), on=date(2025, 7, 2), born=8))
        litters.append(Weaned(doe=str(doe), count=7, on=date(2025, 8, 6)))
        litters.append(Bred(doe=str(doe), buck="2", on=date(2026, 3, 1)))
    return (*does, *bucks, *litters, *((Reminder(text="buy hay", on=MORNING.date()),) if due else ()))


def settle(house: House, number: int, due: int) -> None:
    """So many farms, each with a chat."""
    engine = house._engine
    for farm in range(2, number + 1):
        with engine.begin() as connection:
            people.add_farm(connection, f"farm {farm}")
    for farm in range(1, number + 1):
        note = Note(1, "told", START, "ann", str(farm), facts=told(due=farm <= due))
        with engine.begin() as connection:
            journal.append(connection, farm, note)
            people.know_chat(connection, farm, str(farm))


def counted(engine: Engine, work: Callable[[], object]) -> tuple[float, int]:
    """How long it takes [s], and how many statements the database is told."""
    statements = 0

    def one(*_: object) -> None:
        nonlocal statements
        statements += 1

    event.listen(engine, "before_cursor_execute", one)
    began = time.perf_counter()
    work()
    took = time.perf_counter() - began
    event.remove(engine, "before_cursor_execute", one)
    return took, statements


def sweep(house: House, at: datetime) -> None:
    """All that is due then."""
    while house.tick(at):
        pass


def measure(name: str, url: str, number: int, due: int) -> None:
    """Print one line."""
    house = open_house(url)
    assert isinstance(house, House)
    settle(house, number, due)
    first, first_asked = counted(house._engine, lambda: sweep(house, START))
    before = house.status(START)["outbox"]["waiting"]  # the digest of the week
    house._farms.clear()  # no herd is warm in the morning
    took, asked = counted(house._engine, lambda: sweep(house, MORNING))
    put = house.status(MORNING)["outbox"]["waiting"] - before
    idle, idle_asked = counted(house._engine, lambda: sweep(house, MORNING + timedelta(minutes=1)))
    assert put == due, put
    print(
        f"{name}, {number} farms, {due} with something due: {took * 1000:.0f} ms, {asked} statements; nothing due: {idle * 1000:.1f} ms, "
        f"{idle_asked} statements; the first look at all: {first:.1f} s, {first_asked} statements",
        flush=True,
    )
    house.close()


def main() -> None:
    """Print the figures."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--farms", type=int, nargs="+", default=[50, 500, 5000])
    options.add_argument("--due", type=int, default=10)
    given = options.parse_args()
    for number in given.farms:
        with tempfile.TemporaryDirectory() as folder:
            measure("SQLite", f"sqlite:///{Path(folder) / 'book.sqlite'}", number, given.due)
    for number in given.farms:
        with postgres() as server:
            measure("PostgreSQL", server.render_as_string(hide_password=False), number, given.due)


if __name__ == "__main__":
    main()
