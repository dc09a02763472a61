"""The page of figures: runs each bench in a process of its own and keeps what it printed.

    python -m tests.bench.page [NAME ...]

All benches take more than an hour. With names, only those are run again; what the page holds of the others stays, each with its own day.
"""

from __future__ import annotations

import importlib
import os
import platform
import re
import subprocess
import sys
import time
from datetime import UTC, datetime
from pathlib import Path

PAGE = Path(__file__).parents[2] / "docs" / "reference" / "performance.md"

#: question -> the benches that answer it
ROOMS = {
    "Reading notes": ("reading", "growth", "cold_start"),
    "Answers": ("answers", "winter", "winter_feed"),
    "Is the reckoning right": ("keeping", "coverage", "bucks", "colors"),
    "Beside reference libraries": ("kinship", "mixed_model"),
    "The bot": ("serve_start", "serving", "sweep"),
    "Pictures, papers and moving in": ("pictures", "papers", "moving"),
}
HEAD = """# How fast, how large, how right

<!-- Made by `python -m tests.bench.page`: run that again, don't change figures here. -->

Every figure below was printed by the command above it, on the day and the machine named. A time means little by itself on another machine:
read the ratios against what ran beside it. Nothing here is a promise, and no test waits on a clock.
"""


def machine() -> str:
    """What the figures were made on."""
    told = re.search(r"model name\s*: (.*)", Path("/proc/cpuinfo").read_text(encoding="utf-8"))
    return f"{os.cpu_count()} cores ({told[1] if told else platform.machine()}), Python {platform.python_version()}, {platform.system()}"


def about(name: str) -> str:
    """The first sentence of what the bench says of itself, without its command."""
    first = (importlib.import_module(f"tests.bench.{name}").__doc__ or "").split("\n\n", maxsplit=1)[0]
    said = re.sub(r":? `python -m [^`]*`", "", first.replace("\n", " ")).split(". ")[0].rstrip(". :")
    return said + "."


def ran(name: str) -> str:
    """The bench's part of the page, run now."""
    began, day = time.monotonic(), datetime.now(UTC).date()  # noqa: TID251 - a script, not the program
    told = subprocess.run([sys.executable, "-m", f"tests.bench.{name}"], capture_output=True, text=True, check=False)
    # some close with 1 where less was reached than is wanted, and say so: that is a figure, too
    if told.returncode not in (0, 1) or not told.stdout.strip() or "Traceback" in told.stderr:
        sys.exit(f"{name} did not end well:\n{told.stderr}")
    took = round(time.monotonic() - began)
    shown = f"`python -m tests.bench.{name}` · {day} · {machine()} · {took} s in all"
    return f"{shown}\n\n```text\n{told.stdout.strip(chr(10))}\n```"


def kept(page: str) -> dict[str, str]:
    """bench -> its part, of a page made before."""
    parts = re.findall(r"<!-- bench: (\w+) -->\n(.*?)\n<!-- end -->", page, re.DOTALL)
    return dict(parts)


def page(parts: dict[str, str]) -> str:
    """The whole page, in Markdown, of the parts that there are."""
    lines = [HEAD]
    for room, names in ROOMS.items():
        shown = [name for name in names if name in parts]
        lines += [f"## {room}", ""] if shown else []
        for name in shown:
            lines += [f"### {about(name)}".rstrip("."), "", f"<!-- bench: {name} -->", parts[name], "<!-- end -->", ""]
    return "\n".join(lines).rstrip() + "\n"


def main() -> None:
    """Run those named, or all; the page is written after each."""
    parts = kept(PAGE.read_text(encoding="utf-8")) if PAGE.exists() else {}
    for name in sys.argv[1:] or [each for names in ROOMS.values() for each in names]:
        print(name, file=sys.stderr)
        parts[name] = ran(name)
        PAGE.write_text(page(parts), encoding="utf-8")


if __name__ == "__main__":
    main()
