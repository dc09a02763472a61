"""How long a cold `haynote read --roster` takes, against a script that imports dateparser and parses once. Whole processes, in turns.

Both run from compiled files, as an installed program does, even where the shell tells Python to write none: the first run, which is not
counted, compiles them.
"""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time
from pathlib import Path

CORPUS = Path(__file__).parent.parent / "corpus"
READ = [
    sys.executable,
    "-m",
    "bot",
    "read",
    "--roster",
    str(CORPUS / "roster.json"),
    "--at",
    "2026-11-25T07:10:00-06:00",
    "--json",
    "14 k7 1d",
]
PEER = [sys.executable, "-c", "import dateparser; dateparser.parse('yesterday', languages=['en'])"]
ROUNDS = 11
COMPILING = {name: value for name, value in os.environ.items() if name != "PYTHONDONTWRITEBYTECODE"}


def seconds(command: list[str]) -> float:
    """Wall time of a whole process [s]."""
    began = time.perf_counter()
    subprocess.run(command, check=True, capture_output=True, env=COMPILING)
    return time.perf_counter() - began


def main() -> None:
    """Print the median of several rounds, the two taking turns."""
    for command in (READ, PEER):
        seconds(command)
    pairs = [(seconds(READ), seconds(PEER)) for _ in range(ROUNDS)]
    read, peer = (statistics.median(column) for column in zip(*pairs, strict=True))
    ratio = statistics.median(one / other for one, other in pairs)
    print(f"haynote read: {read:.3f} s; dateparser once: {peer:.3f} s; ratio {ratio:.2f} (at most 1.5 is wanted)")


if __name__ == "__main__":
    main()
