"""How long `haynote serve` takes until it asks for news, and how much memory it holds when nothing happens: an empty book, and the demo's season.
Then what a question that takes the reckoning costs: the time to its answer, the first and the second time, and the memory meanwhile and four minutes later,
beside a program that asks the same of the same book in its own process.

    python -m tests.bench.serve_start [--rounds 7] [--idle 10]

Whole processes, from compiled files as an installed program has them; the first run, which is not counted, compiles them. Beside it, a script that
only imports what the server is built on and ends.
"""

from __future__ import annotations

import argparse
import os
import statistics
import subprocess
import sys
import tempfile
import threading
import time
from pathlib import Path

from bot.commands.demo import season_of_notes
from core.app import App, Member, open_book
from core.store.people import add_member, know_chat
from tests.standin import StandIn

COMPILING = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}
PEER = [sys.executable, "-c", "import sqlalchemy, telegram"]


def held(process: int) -> float:
    """The memory that a process holds [MB] (`VmRSS` of Linux)."""
    lines = Path(f"/proc/{process}/status").read_text(encoding="utf-8").splitlines()
    return int(next(line for line in lines if line.startswith("VmRSS")).split()[1]) / 1024


def served(book: Path, standin: StandIn, idle: float) -> tuple[float, float]:
    """Seconds until the server listens, and what it holds after so many idle seconds [MB]."""
    calls = len(standin.calls())
    outside = {"HAYNOTE_BOT_TOKEN": standin.token, "HAYNOTE_BOT_API": standin.url, "HAYNOTE_DATA": str(book.parent)}
    began = time.perf_counter()
    process = subprocess.Popen(
        [sys.executable, "-m", "bot", "serve", "--book", str(book)],
        env=COMPILING | outside,
        stdout=subprocess.DEVNULL,
        stderr=subprocess.DEVNULL,
    )
    standin.wait_calls("getUpdates", since=calls, answered=False, timeout=60)
    took = time.perf_counter() - began
    threading.Event().wait(idle)
    holds = held(process.pid)
    process.terminate()
    process.wait(20)
    return took, holds


def children(process: int) -> list[int]:
    """The processes that it began."""
    listed = Path(f"/proc/{process}/task/{process}/children").read_text(encoding="utf-8")
    other = [path.read_text(encoding="utf-8") for path in Path(f"/proc/{process}/task").glob("*/children")]
    return sorted({int(each) for each in " ".join((listed, *other)).split()})


def asked(book: Path, standin: StandIn, rest: float) -> str:
    """What a question costs a running server."""
    outside = {"HAYNOTE_BOT_TOKEN": standin.token, "HAYNOTE_BOT_API": standin.url, "HAYNOTE_DATA": str(book.parent)}
    calls = len(standin.calls())
    process = subprocess.Popen(
        [sys.executable, "-m", "bot", "serve", "--book", str(book)], env=COMPILING | outside, stderr=subprocess.DEVNULL
    )
    standin.wait_calls("getUpdates", since=calls, answered=False, timeout=60)
    took = []
    for text in ("swept the aisle", "swept it again", "who should I keep", "who should I keep"):  # the first note reads the journal, too
        began = time.perf_counter()
        standin.wait_answer(standin.say("Ann", text), timeout=60)
        took.append(time.perf_counter() - began)
    holds, beside = held(process.pid), sum(held(child) for child in children(process.pid))
    threading.Event().wait(rest)
    after, left = held(process.pid), len(children(process.pid))
    process.terminate()
    process.wait(20)
    return (
        f"a note is answered after {took[1]:.2f} s, a question about keeping after {took[2]:.2f} s, once more after {took[3]:.2f} s; meanwhile the server holds {holds:.0f} MB and the process "
        f"beside it {beside:.0f} MB; {rest:.0f} s later the server holds {after:.0f} MB, and {left} such processes are left"
    )


#: The same question in a process of its own that does nothing else.
ALONE = """
import sys, time
from core.app import Message, open_book

app = open_book(sys.argv[1])
for number in (1, 2):
    began = time.perf_counter()
    app.hear(Message("who should I keep", app.newest(), "me", "bench", str(number)))
    print(f"{time.perf_counter() - began:.2f}", end=" ")
print([line.split()[1] for line in open("/proc/self/status") if line.startswith("VmRSS")][0])
"""


def alone(book: Path) -> str:
    """What it costs there."""
    first, second, holds = subprocess.run(
        [sys.executable, "-c", ALONE, str(book)], env=COMPILING, check=True, capture_output=True, text=True
    ).stdout.split()
    return f"  the same in a program's own process: {first} s, once more {second} s; it holds {int(holds) / 1024:.0f} MB from then on"


def measure(name: str, book: Path, standin: StandIn, told: argparse.Namespace) -> None:
    """Print one book's figures."""
    served(book, standin, 0)
    times = [served(book, standin, 0)[0] for _ in range(told.rounds)]
    _, holds = served(book, standin, told.idle)
    peers = []
    for _ in range(told.rounds):
        began = time.perf_counter()
        subprocess.run(PEER, check=True, env=COMPILING)
        peers.append(time.perf_counter() - began)
    print(
        f"{name}: listens after {statistics.median(times):.2f} s (longest {max(times):.2f}), {statistics.median(times) / statistics.median(peers):.2f} "
        f"of the bare imports' {statistics.median(peers):.2f} s; after {told.idle:.0f} idle seconds it holds {holds:.0f} MB",
        flush=True,
    )


def main() -> None:
    """Print the figures."""
    options = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    options.add_argument("--rounds", type=int, default=7)
    options.add_argument("--idle", type=float, default=10)
    options.add_argument("--rest", type=float, default=250)
    told = options.parse_args()
    with tempfile.TemporaryDirectory() as folder, StandIn() as standin:
        measure("an empty book", Path(folder) / "empty.sqlite", standin, told)
        book = Path(folder) / "season.sqlite"
        app = open_book(str(book))
        assert isinstance(app, App)
        app.replay(season_of_notes())
        with app._engine.begin() as connection:
            know_chat(connection, 1, str(standin.person("Ann")["id"]))
            add_member(connection, 1, Member(f"telegram:{standin.person('Ann')['id']}", "Ann", "owner"), standin.world.now)
        app.close()
        measure("the demo's season", book, standin, told)
        print(asked(book, standin, told.rest), flush=True)
        print(alone(book))


if __name__ == "__main__":
    main()
