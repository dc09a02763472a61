"""One page for the barn wall, what to text when: `python -m core.notes.crib_page > docs/reference/crib.md`."""

from __future__ import annotations

import sys
from typing import Final

from core.notes.situations import SITUATIONS, Situation

WIDTH: Final = 80  # not a figure: letters in a line, what fits a sheet of paper upright
INDENT: Final = 24  # not a figure: letters
BETWEEN: Final = "  ·  "

_HEAD: Final = """# Crib

Print it and hang it in the barn. Made by `python -m core.notes.crib_page`; don't edit it by hand. More of each: [Notes](notes.md)."""

FOOT: Final = """\
Several at once: "doe 14 kindled 8, 2 dead. 31 4-6, 32 3-15". Pounds and ounces:
4-6. When: today, unless you say yesterday, last night, on friday, 3/4.
Short: k kindled, d dead, wn weaned, NB nest box, palp palpated, bcs condition.
Medicine: add the withdrawal days that the label or your vet gives.
Wrong? undo, or: no, 15 not 14. Lost? help, or help and a word from the left."""


def page() -> str:
    """The whole page, in Markdown."""
    return "\n".join((_HEAD, "", "```text", *crib(), "```")) + "\n"


def crib() -> list[str]:
    """The lines for the wall."""
    return [*(line for one in SITUATIONS for line in lines_of(one)), "", *FOOT.splitlines()]


def lines_of(situation: Situation) -> list[str]:
    """One situation: its name on the left, its notes beside it. A note is never broken."""
    rows: list[str] = []
    for saying in situation.sayings:
        if rows and len(rows[-1]) + len(BETWEEN) + len(saying) <= WIDTH - INDENT:
            rows[-1] += BETWEEN + saying
        else:
            rows.append(saying)
    return [f"{situation.name.upper() if row is rows[0] else '':{INDENT}}{row}" for row in rows]


if __name__ == "__main__":  # pragma: no cover - the page itself is tested; this only prints it
    sys.stdout.write(page())
