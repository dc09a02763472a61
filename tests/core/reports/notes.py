"""Journal entries for the reports' tests: a note's words with the facts that it gave."""

from __future__ import annotations

from datetime import UTC, datetime
from itertools import count

from core.notes.journal import Entry, Note
from tests.farm import ago, fact

_ids = count(1)


def entry(text: str, kind: str, days_ago: int = 0, author: str = "ann", **fields: object) -> Entry:
    """One note of one fact, told so many days ago about that day."""
    on = ago(days_ago)
    of = fact(kind, **({"on": on} | fields if kind not in {"planned", "animal", "setting", "query"} else fields))
    number = next(_ids)
    return Entry(Note(number, text, datetime(on.year, on.month, on.day, 12, tzinfo=UTC), author, facts=(of,)), 0, of)
