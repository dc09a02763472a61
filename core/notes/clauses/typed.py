"""A statement's words as they were typed, slips and capitals and all."""

from __future__ import annotations

from typing import Final

from core.notes.clauses.clause import Clause

#: What parts a statement from the others, and is none of its words.
PARTING: Final = " \n,;:-|"


def as_typed(clause: Clause, text: str) -> str:
    """The part of the message that the statement is; its pieces in order where something else stands between them."""
    tokens = clause.scene.tokens
    runs: list[tuple[int, int]] = []
    for item in clause.items:
        if item.end <= item.start:
            continue  # put in between sentences by the reader
        start, end = tokens[item.start].start, tokens[item.end - 1].end
        if runs and runs[-1][1] <= start and not text[runs[-1][1] : start].strip():
            runs[-1] = (runs[-1][0], end)
        else:
            runs.append((start, end))
    return " ".join(text[start:end] for start, end in runs).rstrip(PARTING).lstrip(PARTING + ".!?")
