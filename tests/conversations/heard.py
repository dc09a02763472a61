"""A transcript as the domain hears it, without a shell and without a store."""

from __future__ import annotations

import json
from collections.abc import Callable
from datetime import datetime
from functools import lru_cache
from pathlib import Path

from core.herd.state import Herd
from core.notes.kinds.query import Query
from core.notes.listen import Heard, listen
from core.notes.reading import Message, ReplyTo
from core.notes.replay import Book, book
from core.notes.roster import herd_of
from core.reply import Reply
from core.reports.answers import answer
from tests.conversations.transcript import Turn

ROSTER = Path(__file__).parent.parent / "corpus" / "roster.json"


@lru_cache(maxsize=1)
def farm() -> Herd:
    """The invented farm."""
    return herd_of(json.loads(ROSTER.read_text(encoding="utf-8")))


def echo(query: Query, _book: Book, _at: datetime) -> Reply:
    """Questions are answered by the reports; here it is enough to see what was asked."""
    asked = " ".join(each for each in (query.about, query.who, query.with_, query.scope) if each)
    return Reply((f"(asked: {asked})",))


def answering(path: Path) -> Callable[[Query, Book, datetime], Reply]:
    """Who answers the questions of that transcript: the reports, where it is about the winter plan."""
    return answer if path.stem.startswith("winter_") else echo


def hear(turns: list[Turn], asked: Callable[[Query, Book, datetime], Reply] = echo) -> list[Heard]:
    """What each message came to, one after the other; questions answered so."""
    kept = book(farm())
    heard: list[Heard] = []
    edits: dict[int, int] = {}
    for place, turn in enumerate(turns):
        number = place if turn.edits is None else turn.edits
        edits[number] = edits.get(number, -1) + 1
        reply_to = ReplyTo(*turn.answers) if turn.answers else None
        message = Message(turn.text, turn.at, turn.author, "barn", str(number), edits[number], reply_to)
        heard.append(listen(kept, message, asked))
        kept = heard[-1].book
    return heard
