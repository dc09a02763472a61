"""Lines as wide as the screen, broken between words; what goes into a file or another program stays as it is."""

from __future__ import annotations

import shutil
import sys
import textwrap

#: Narrower than this a terminal is only somebody's mistake.
LEAST = 40


def on_screen(text: str) -> str:
    """The text as it is best read where it goes: broken at words on a screen, whole anywhere else."""
    return broken(text, shutil.get_terminal_size().columns) if sys.stdout.isatty() else text


def broken(text: str, columns: int) -> str:
    """No line wider than the columns, but for a word that is; what goes on is set in."""
    return "\n".join(_broken(line, max(columns, LEAST)) for line in text.split("\n"))


def _broken(line: str, columns: int) -> str:
    if len(line) <= columns:
        return line
    indent = line[: len(line) - len(line.lstrip())]
    return textwrap.fill(line, columns, subsequent_indent=f"{indent}  ", break_long_words=False, break_on_hyphens=False)
