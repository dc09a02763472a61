"""What a message comes to, in the light of the book and of what was said before it."""

from __future__ import annotations

from dataclasses import dataclass

from core.notes.fact import Fact
from core.notes.journal import Target
from core.notes.reading import Ask, Reading


@dataclass(frozen=True, slots=True)
class Meaning:
    """The facts to record, what they take back, and the question if there is one.

    sure     a person has confirmed it: what would be asked as `confirm` or `duplicate` is taken
    settled  checked already; nothing more is asked about its facts
    choices  words to send next, where nothing is asked
    notices  lines for the reply beside those of the facts
    """

    facts: tuple[Fact, ...] = ()
    ask: Ask | None = None
    unread: str = ""
    subject: str | None = None
    reverses: tuple[Target, ...] = ()
    notices: tuple[str, ...] = ()
    sure: bool = False
    settled: bool = False
    choices: tuple[str, ...] = ()


def meaning_of(reading: Reading) -> Meaning:
    """A reading taken as it is."""
    return Meaning(reading.facts, reading.ask, reading.unread, reading.subject, (), reading.notices)
