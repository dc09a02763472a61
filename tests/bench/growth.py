"""How reading grows: with the length of a message, with the size of the herd, and what a note without a day costs.

Every figure is a ratio against something timed in the same run: a short message, a small herd, a bare
`dateparser.parse("yesterday", languages=["en"])`.
"""

from __future__ import annotations

import json
import statistics
import time
from collections.abc import Callable, Iterator, Mapping
from datetime import datetime
from pathlib import Path
from typing import Any

import dateparser

from core.app import reader
from core.app.reading import Reader

CORPUS = Path(__file__).parent.parent / "corpus"
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
ROUNDS = 7
DAYS = (
    "yesterday",
    "today",
    "tomorrow",
    "night",
    "morning",
    "/",
    "nov",
    "dec",
    "monday",
    "tuesday",
    "wednesday",
    "thursday",
    "friday",
    "saturday",
    "sunday",
)
#: What grows in the first measure: a line of a notebook, many times over.
LINE = "weighed 31 4-2, 32 3-15\n"


def seconds(work: Callable[[], object]) -> float:
    """Processor time of the best of several rounds [s]."""
    best = float("inf")
    for _ in range(ROUNDS):
        began = time.process_time()
        work()
        best = min(best, time.process_time() - began)
    return best


def farm(roster: Mapping[str, Any]) -> Reader:
    """A reader for a roster that is known to be sound."""
    ear = reader(roster)
    assert isinstance(ear, Reader)
    return ear


def crowded(roster: Mapping[str, Any], size: int) -> dict[str, Any]:
    """The roster with animals added until the herd has that many."""
    added = [
        {"tag": f"Q{number}", "name": f"Quarto{number}", "sex": "doe" if number % 2 else "buck", "breed": "Mini Rex", "born": "2026-08-01"}
        for number in range(size - len(roster["animals"]))
    ]
    return {**roster, "animals": [*roster["animals"], *added]}


def notes() -> Iterator[str]:
    """The single notes of the examples."""
    for line in (CORPUS / "examples.jsonl").read_text(encoding="utf-8").splitlines():
        case = json.loads(line)
        if "text" in case:
            yield case["text"]


def main() -> None:
    """Print the three measures."""
    roster = json.loads((CORPUS / "roster.json").read_text(encoding="utf-8"))
    ear = farm(roster)
    texts = list(notes())

    print("length of the message:")
    first = 0.0
    for times in (1, 5, 20, 80, 160):
        text = LINE * times
        each = seconds(lambda text=text: ear.read(text, AT)) / len(text)  # type: ignore[misc]
        first = first or each
        print(f"  {len(text):5d} characters: {each / first:.2f} of the time a character of the shortest")

    print("size of the herd:")
    small = 0.0
    for size in (20, 200, 2_000, 20_000):
        ear_of = farm(crowded(roster, size))
        took = seconds(lambda ear_of=ear_of: [ear_of.read(text, AT) for text in texts])  # type: ignore[misc]
        small = small or took
        print(f"  {size:6d} animals: {took / small:.2f} of the time with 20 (at most 1.5 is wanted)")

    plain = [text for text in texts if not any(word in text.lower() for word in DAYS)]
    peer = statistics.median(seconds(lambda: dateparser.parse("yesterday", languages=["en"])) for _ in range(ROUNDS))
    costs = sorted(seconds(lambda text=text: ear.read(text, AT)) for text in plain)  # type: ignore[misc]
    print(f"{len(plain)} notes without a day, against one bare parse:")
    print(
        f"  median {statistics.median(costs) / peer:.2f} (0.33 is wanted), 99th percentile {costs[int(0.99 * len(costs))] / peer:.2f} (2 is wanted)"
    )


if __name__ == "__main__":
    main()
