"""What a note becomes on the sample farm, in a short form for tables of notes."""

from __future__ import annotations

import json
from datetime import datetime
from functools import lru_cache
from pathlib import Path
from typing import Any

from core.app import reader
from core.app.reading import Reader
from core.notes.reading import Message

ROSTER = json.loads((Path(__file__).parents[3] / "corpus" / "roster.json").read_text(encoding="utf-8"))
AT = datetime.fromisoformat("2026-11-25T07:10:00-06:00")
TODAY = ("on", "2026-11-25")

UNRECORDED = "no record, asked or not"

Note = tuple[str, list[dict[str, Any]], str | None]


def note(text: str, *facts: dict[str, Any], ask: str | None = None) -> Note:
    """A row of a table: the text, the facts it gives and the reason of its question."""
    return text, list(facts), ask


def fact(kind: str, **fields: Any) -> dict[str, Any]:
    """A fact of today unless it says when; a name that Python keeps for itself has a low line behind it."""
    return {"kind": kind, **{name.rstrip("_"): value for name, value in fields.items()}}


def remark(text: str, who: str | None = None) -> Note:
    """A note that is kept as it was said."""
    return note(text, fact("remark", text=text, **({"who": who} if who else {})))


def unrecorded(text: str) -> Note:
    """A note that becomes no fact but a remark; whether it is asked about is left open."""
    return note(text, ask=UNRECORDED)


@lru_cache(maxsize=1)
def farm() -> Reader:
    """The sample farm's reader, checks and all."""
    found = reader(ROSTER)
    assert isinstance(found, Reader)
    return found


def read(text: str) -> tuple[list[dict[str, Any]], str | None]:
    """The facts of a note and the reason of its question."""
    return _short(farm().read(text, AT))


def read_after(*texts: str) -> tuple[list[dict[str, Any]], str | None]:
    """What the last of some notes becomes in the light of those before it."""
    found = reader(ROSTER)
    assert isinstance(found, Reader)
    told: list[dict[str, Any]] = [found.read_in("barn", Message(text, AT)) for text in texts]
    return _short(told[-1])


def _short(document: dict[str, Any]) -> tuple[list[dict[str, Any]], str | None]:
    facts = [{name: value for name, value in fact.items() if value is not None and (name, value) != TODAY} for fact in document["facts"]]
    return in_order(facts), document["ask"] and document["ask"]["why"]


def in_order(facts: list[dict[str, Any]]) -> list[dict[str, Any]]:
    """The facts in an order of their own."""
    return sorted(facts, key=lambda each: json.dumps(each, sort_keys=True))


def holds(row: Note) -> None:
    """Assert that a row's note gives exactly its facts and asks for its reason."""
    text, facts, ask = row
    if ask == UNRECORDED:
        assert {fact["kind"] for fact in read(text)[0]} <= {"remark"}
    else:
        assert read(text) == (in_order(facts), ask)
