"""How long papers take: sixty cage cards with codes, and each other paper of a herd of sixty: `python -m tests.bench.papers`.

In a new process from the first import to the finished file, and warm. Processor time counts. Sixty cards are wanted in 3 s, warm and new.
`--folder NAME` keeps the files, to be looked at.
"""

from __future__ import annotations

import sys
import time
from datetime import UTC, datetime
from pathlib import Path

from bot.papers.pdf import pdf
from core.app.papers import PAPERS, Paper, Wanted
from core.herd.state import Herd
from tests.bench.fresh import fresh
from tests.farm import ago, tell

CARDS = 60
WANTED = 3.0
ROUNDS = 3
NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)
BOT = "barn_notes_bot"

_FRESH = """
import json, time
began = time.process_time()
from tests.bench.papers import made
content = made({about!r})
print(json.dumps([time.process_time() - began, len(content)]))
"""


def sixty() -> Herd:
    """Fifteen bucks and forty-five does, most of them out of the first ones, each weighed, each third doe bred."""
    herd = Herd()
    for number in range(1, CARDS + 1):
        buck, parents = number % 4 == 0, {"sire": "4", "dam": str(number % 3 + 1)} if number > 8 else {}
        tag, name = str(number), f"Number {number} of the Hill"
        herd = tell(herd, "animal", tag=tag, name=name, sex="buck" if buck else "doe", breed="Mini Rex", born=ago(900 - number), **parents)
        herd = tell(herd, "weighed", who=tag, grams=1900 + number, on=ago(100))
        if number > 4 and number % 4 == 1:
            herd = tell(herd, "bred", doe=tag, buck="4", on=ago(60))
            herd = tell(herd, "kindled", doe=tag, born=7, on=ago(29))
    return herd


def made(about: str, herd: Herd | None = None) -> bytes:
    """That paper."""
    from core.reports.papers.press import paper

    told = paper(herd or sixty(), "hill farm", about, Wanted(who="60") if about == "pedigree" else Wanted(), NOW)
    assert isinstance(told, Paper)
    return pdf(told, BOT).content


def main() -> None:
    """Print the times, of the best of several rounds."""
    herd = sixty()
    for about in PAPERS:
        new = min(fresh(_FRESH.format(about=about))[0] for _ in range(ROUNDS))
        warm = []
        for _ in range(ROUNDS):
            began = time.process_time()
            content = made(about, herd)
            warm.append(time.process_time() - began)
        wanted = f" (wanted: {WANTED:.0f})" if about == "cards" else ""
        sys.stdout.write(f"{about:10} new {new:5.2f} s{wanted}, warm {min(warm):5.2f} s, {len(content) / 1000:4.0f} kB\n")
        if "--folder" in sys.argv:
            (Path(sys.argv[sys.argv.index("--folder") + 1]) / f"{about}.pdf").write_bytes(content)


if __name__ == "__main__":
    main()
