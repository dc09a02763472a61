"""Reads a great many broken, mixed and nonsense messages: none may raise, none may take long.

`python -m tests.faults.fuzz_reading --messages 1000000` takes the notes of the corpora apart and puts them together wrongly; what is
kept as interesting is what reached lines of the reader that nothing had reached before. The seed is printed, so a run can be had again.
"""

from __future__ import annotations

import argparse
import json
import random
import sys
import time
import traceback
from datetime import datetime
from pathlib import Path
from types import FrameType

from core.app import reader
from core.app.reading import Reader

CORPUS = Path(__file__).parent.parent / "corpus"
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
SLOW_MS = 50.0
LONGEST = 4_000
#: One message in so many is traced for the lines that it reaches.
TRACED = 50
SIGNS = "0123456789 -/.,:;#$%()[]?!'\"\n\u00bd\u2153\u00b0\u2019\u2014\u200b\U0001f407\u0661\uff14=+*x@&<>|"
GENERATED = 200


def seeds() -> list[str]:
    """The texts of all corpora, conversations' turns among them."""
    found: list[str] = []
    for file in sorted(CORPUS.glob("*.jsonl")):
        for line in file.read_text(encoding="utf-8").split("\n"):
            case = json.loads(line) if line.strip() else {}
            found += [turn["text"] for turn in case.get("turns", [case]) if "text" in turn]
    return found


def broken(dice: random.Random, pool: list[str]) -> str:
    """A message made of others: cut, doubled, shuffled, joined, with signs thrown in."""
    text = dice.choice(pool)
    for _ in range(dice.randint(1, 4)):
        words = text.split(" ")
        match dice.randrange(9):
            case 0:
                text = text + dice.choice(" ,.;\n") + dice.choice(pool)
            case 1:
                dice.shuffle(words)
                text = " ".join(words)
            case 2:
                at = dice.randrange(len(text) + 1)
                text = text[:at] + dice.choice(SIGNS) * dice.choice((1, 1, 2, 40)) + text[at:]
            case 3:
                at = dice.randrange(len(words))
                words[at] = dice.choice(dice.choice(pool).split(" "))
                text = " ".join(words)
            case 4:
                at = dice.randrange(len(text) + 1)
                text = text[:at] + text[at + 1 :]
            case 5:
                text = (text + " ") * dice.choice((2, 3, 30))
            case 6:
                text = text.replace(" ", "") if dice.random() < 0.5 else text.upper()
            case 7:
                at = dice.randrange(len(words) + 1)
                text = " ".join([*words[:at], str(dice.randrange(10 ** dice.randint(1, 12))), *words[at:]])
            case _:
                text = "".join(chr(dice.choice((dice.randrange(32, 127), dice.randrange(0x110000)))) for _ in range(dice.randrange(40)))
                text = text.encode("utf-8", "replace").decode("utf-8")
    return text[:LONGEST]


class Reached:
    """The lines of the reader that any message has reached so far."""

    def __init__(self) -> None:
        self.lines: set[tuple[str, int]] = set()

    def more(self, ear: Reader, text: str) -> int:
        """How many lines the message is the first to reach."""
        before = len(self.lines)
        sys.settrace(self._entered)
        try:
            ear.read(text, AT)
        finally:
            sys.settrace(None)
        return len(self.lines) - before

    def _entered(self, frame: FrameType, event: str, arg: object) -> object:
        del event, arg
        return self._passed if "/core/notes/" in frame.f_code.co_filename else None

    def _passed(self, frame: FrameType, event: str, arg: object) -> object:
        del arg
        if event == "line":
            self.lines.add((frame.f_code.co_filename, frame.f_lineno))
        return self._passed


def took_ms(ear: Reader, text: str) -> float:
    """How long the message took to read."""
    start = time.process_time()
    ear.read(text, AT)
    return (time.process_time() - start) * 1000


def main() -> int:
    """Run the messages; 1 if any raised or was slow."""
    options = argparse.ArgumentParser(description=__doc__)
    options.add_argument("--messages", type=int, default=1_000_000)
    options.add_argument("--seed", type=int, default=1)
    chosen = options.parse_args()
    dice = random.Random(chosen.seed)
    ear = reader(json.loads((CORPUS / "roster.json").read_text(encoding="utf-8")))
    assert isinstance(ear, Reader)
    pool = seeds()
    kept, reached = len(pool), Reached()
    raised: list[str] = []
    slow: list[tuple[float, str]] = []
    worst = 0.0
    began = time.perf_counter()
    for count in range(chosen.messages):
        text = broken(dice, pool)
        try:
            if count % TRACED == 0:
                if reached.more(ear, text) and len(text) < GENERATED:
                    pool.append(text)
                continue
            took = took_ms(ear, text)
        except Exception:  # noqa: BLE001 - the very thing looked for
            raised.append(text)
            print(f"raised: {text!r}\n{traceback.format_exc(limit=-3)}", flush=True)
            continue
        if took > SLOW_MS:
            took = min(took, took_ms(ear, text))
        worst = max(worst, took)
        if took > SLOW_MS:
            slow.append((took, text))
            print(f"slow, {took:.0f} ms: {text[:200]!r} ({len(text)} characters)", flush=True)
    minutes = (time.perf_counter() - began) / 60
    print(
        f"{chosen.messages} messages, seed {chosen.seed}, {minutes:.1f} min: {len(raised)} raised, {len(slow)} over {SLOW_MS:.0f} ms, "
        f"worst {worst:.0f} ms; {len(reached.lines)} lines reached, {len(pool) - kept} messages kept to build on"
    )
    return 1 if raised or slow else 0


if __name__ == "__main__":
    sys.exit(main())
