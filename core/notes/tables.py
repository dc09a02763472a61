"""A table of several columns, its heading row first: each row told as a line of its own, in the words of the barn.

    Tag | Weight | BCS
    31  | 4-6    | 3            reads as `31 weighed 4-6, bcs 3`

Only a table whose every column is known is told so; any other is read as it stands.
"""

from __future__ import annotations

import re
from typing import Final

ANIMALS: Final = frozenset({"tag", "doe", "buck", "animal", "rabbit", "id", "no", "number", "ear tag", "who", "name", "tag no", "#"})
DAYS: Final = frozenset({"date", "day", "on", "when"})
#: Column -> how its value is told.
COLUMNS: Final = {
    "weight": "weighed {}", "wt": "weighed {}", "weighed": "weighed {}", "bcs": "bcs {}", "condition": "bcs {}", "cond": "bcs {}", "score": "bcs {}",
    "born": "kindled {}", "kindled": "kindled {}", "total": "kindled {}", "alive": "{} alive", "live": "{} alive", "living": "{} alive", "dead": "{} dead",
    "doa": "{} dead", "cage": "moved to cage {}", "pen": "moved to cage {}", "palpated": "palpated {}", "result": "palpated {}",
    "falls": "{} falls", "type": "type {}", "fur": "fur {}", "size": "size {}", "overall": "overall {}", "placing": "placed {}", "temper": "{}",
}  # fmt: skip
_CELLS: Final = re.compile(r"\s*[|\t;]\s*|\s*,\s+| {2,}")
PAIR: Final = ["buck", "doe"]  # a table of matings
EMPTY: Final = frozenset({"", "-", "--", "n/a", "none", "."})
LEAST: Final = 2  # columns


def table_told(text: str) -> str | None:
    """The note with its table told line by line; None where it holds none."""
    lines = [line.strip().strip("|").strip() for line in text.split("\n")]
    for place, line in enumerate(lines[:-1]):
        heads = [head.strip().lower().rstrip(".:") for head in _CELLS.split(line)]
        if len(heads) < LEAST or not _is_heading(heads):
            continue
        rows: list[str] = []
        for row in lines[place + 1 :]:
            if row and not row.strip("-|=+: "):
                continue  # a ruled line
            cells = _CELLS.split(row)
            if len(cells) != len(heads):
                break
            rows.append(_told(heads, cells))
        if rows:
            end = place + 1 + sum(1 for row in lines[place + 1 :] if row and not row.strip("-|=+: ")) + len(rows)
            return "\n".join([*lines[:place], *rows, *lines[end:]])
    return None


def _is_heading(heads: list[str]) -> bool:
    named = [head for head in heads if head in ANIMALS]
    return (len(named) == 1 or sorted(named) == PAIR) and all(head in COLUMNS or head in DAYS or head in ANIMALS for head in heads)


def _told(heads: list[str], cells: list[str]) -> str:
    by_head = list(zip(heads, (cell.strip() for cell in cells), strict=True))
    animals = sorted((head, cell) for head, cell in by_head if head in ANIMALS)
    who = " bred to ".join(f"{head} {cell}" if head in PAIR else cell for head, cell in reversed(animals))
    day = next((f"{cell}: " for head, cell in by_head if head in DAYS and cell not in EMPTY), "")
    said = [COLUMNS[head].format(cell) for head, cell in by_head if head in COLUMNS and cell.lower() not in EMPTY]
    return f"{day}{who} {', '.join(said)}".rstrip()
