"""How long reading a note takes, against one bare `dateparser.parse("yesterday", languages=["en"])` in the same run.

The single notes of tests/corpus/examples.jsonl are read over and over; nothing remembers whole texts.
"""

from __future__ import annotations

import json
import statistics
import time
from collections.abc import Callable
from datetime import datetime
from pathlib import Path

import dateparser

from core.app import reader
from core.app.reading import Reader

CORPUS = Path(__file__).parent.parent / "corpus"
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
ROUNDS = 9


def seconds(work: Callable[[], object]) -> float:
    """Processor time that the work takes [s]."""
    began = time.process_time()
    work()
    return time.process_time() - began


def main() -> None:
    """Print the median of several rounds, the two taking turns."""
    roster = json.loads((CORPUS / "roster.json").read_text(encoding="utf-8"))
    lines = (CORPUS / "examples.jsonl").read_text(encoding="utf-8").splitlines()
    texts = [case["text"] for case in map(json.loads, lines) if "text" in case]
    ear = reader(roster)
    assert isinstance(ear, Reader)

    def read_all() -> None:
        for text in texts:
            ear.read(text, AT)

    def parse_often() -> None:
        for _ in texts:
            dateparser.parse("yesterday", languages=["en"])

    read_all()
    parse_often()
    pairs = [(seconds(read_all) / len(texts), seconds(parse_often) / len(texts)) for _ in range(ROUNDS)]
    note, peer = (statistics.median(column) for column in zip(*pairs, strict=True))
    ratio = statistics.median(one / other for one, other in pairs)
    print(f"{len(texts)} notes, {ROUNDS} rounds: {note * 1000:.3f} ms a note ({1 / note:.0f} a second)")
    print(f"dateparser.parse('yesterday'): {peer * 1000:.3f} ms")
    print(f"a note takes {ratio:.2f} of one bare parse (at most 1 is wanted)")


if __name__ == "__main__":
    main()
