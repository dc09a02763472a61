"""Starting up is light: the libraries of the reckoning load with the first question that needs them, not before."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

TOP = Path(__file__).parents[2]

EVERY_ROOM = """
import importlib, pkgutil, sys
import bot, core.app
for package in (bot, core.app):
    for each in pkgutil.walk_packages(package.__path__, package.__name__ + "."):
        if not each.name.endswith("__main__"):
            importlib.import_module(each.name)
"""
A_MORNING = """
from datetime import datetime, UTC
from core.app import open_book
from core.app.reading import Message
book = open_book(sys.argv[1])
def hear(text, number):
    return book.hear(Message(text, datetime(2026, 11, 25, 13, number, tzinfo=UTC), "ann", "barn", str(number)))
hear("new doe 14 mini rex born 2025-03-04", 1)
hear("new buck 3 mini rex born 2025-03-04", 2)
hear("bred 14 to 3", 3)
"""
LATER = "{'numpy', 'scipy', 'matplotlib', 'PIL', 'fpdf', 'segno', 'icalendar', 'openpyxl'}"
LOADED = f"print(sorted({LATER} & set(sys.modules)))\n"


def told(program: str, *words: str) -> str:
    """What the program prints, run in a process of its own."""
    done = subprocess.run([sys.executable, "-c", program, *words], cwd=TOP, capture_output=True, encoding="utf-8", check=True)
    return done.stdout


def test_no_shell_loads_the_reckoning() -> None:
    """Every module of the shells and of the door, loaded together: neither numpy nor scipy is among what they drag in."""
    assert told(EVERY_ROOM + LOADED) == "[]\n"


def test_no_shell_loads_what_draws_and_prints() -> None:
    """Pictures, papers, calendars and workbooks: their libraries load with the first that is wanted."""
    loaded = "print(sorted({'matplotlib', 'fpdf', 'segno', 'icalendar', 'openpyxl'} & set(sys.modules)))\n"
    assert told(EVERY_ROOM + loaded) == "[]\n"


def test_notes_are_written_down_without_the_reckoning(tmp_path: Path) -> None:
    """A morning's notes go into the book without it; only a question of who is better loads it."""
    program = EVERY_ROOM + A_MORNING + LOADED + "hear('compare 14 and 3', 4)\n" + LOADED
    assert told(program, f"sqlite:///{tmp_path / 'book'}") == "[]\n['numpy', 'scipy']\n"
