"""Short ways to talk to the domain in tests: messages of two people on the invented farm, read by the small reader."""

from __future__ import annotations

from dataclasses import dataclass, field
from datetime import datetime, timedelta
from typing import Any

from core.herd.state import Herd
from core.notes.fact import to_json
from core.notes.listen import Heard, listen, printed
from core.notes.reading import Message, ReplyTo
from core.notes.replay import Book, book
from tests.conversations.heard import echo, farm
from tests.conversations.transcript import DAY, FARM
from tests.core.notes import small_reader

NOW = datetime(DAY.year, DAY.month, DAY.day, 7, 10, tzinfo=FARM)


@dataclass(slots=True)
class Barn:
    """A farm that is talked to, message by message."""

    book: Book = field(default_factory=lambda: book(farm()))
    heard: list[Heard] = field(default_factory=list)

    def say(
        self,
        text: str,
        author: str = "ann",
        *,
        minutes: float = 0,
        chat: str = "barn",
        reply_to: tuple[str, ...] | None = None,
        number: str = "",
        edit: int = 0,
    ) -> Heard:
        """Send a message so many minutes after 07:10."""
        at = NOW + timedelta(minutes=minutes)
        answering = ReplyTo(*reply_to) if reply_to else None
        message = Message(text, at, author, chat, number or str(len(self.heard)), edit, answering)
        heard = listen(self.book, message, echo, small_reader.read)
        self.book = heard.book
        self.heard.append(heard)
        return heard

    @property
    def herd(self) -> Herd:
        """The herd now."""
        return self.book.herd

    def stands(self) -> list[dict[str, Any]]:
        """The facts that stand, without questions and talk."""
        talk = ("query", "undo", "correct", "remark")
        return [to_json(entry.fact) for entry in self.book.standing() if entry.fact.kind not in talk]


def facts(heard: Heard) -> list[dict[str, Any]]:
    """What a message recorded, as the contract prints it, without the day where that is today."""
    told = [to_json(fact) for fact in printed(heard.note).facts]
    return [{name: value for name, value in fact.items() if (name, value) != ("on", DAY.isoformat())} for fact in told]


def why(heard: Heard) -> str | None:
    """The reason of the question; None where nothing was asked."""
    return heard.note.ask.why if heard.note.ask else None
