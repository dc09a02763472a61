"""What goes into a reading and what comes out of it, as values."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from datetime import datetime

from core.notes.fact import Fact, Json


@dataclass(frozen=True, slots=True)
class ReplyTo:
    """The reminder that a message answers: its chore, and its doe or animal."""

    chore: str
    who: str | None = None
    key: str | None = None


@dataclass(frozen=True, slots=True)
class Message:
    """One message as it was sent. `at` is aware; `chat` names the conversation; (chat, number, edit) is its identity."""

    text: str
    at: datetime
    author: str = "me"
    chat: str = ""
    number: str = ""
    edit: int = 0  # 0 as first sent, then 1, 2, ... for each edit
    reply_to: ReplyTo | None = None


@dataclass(frozen=True, slots=True)
class Draft:
    """A fact that lacks one thing: what is known of it (in JSON form), and the field that the question is about.

    wanted  a field's name in JSON form, or `confirm` where only yes or no is missing
    """

    kind: str
    known: Mapping[str, Json]
    wanted: str
    rest: tuple[Draft, ...] = ()  # facts of the same message that wait for the same answer


@dataclass(frozen=True, slots=True)
class Ask:
    """The question about a message. `draft` is what an answer completes; None where only a new note can help."""

    why: str
    text: str
    choices: tuple[str, ...] = ()
    draft: Draft | None = None


@dataclass(frozen=True, slots=True)
class Reading:
    """What a message means: the facts that are safe, the question if there is one, and the words that no fact uses."""

    facts: tuple[Fact, ...] = ()
    ask: Ask | None = None
    unread: str = ""
    subject: str | None = None  # the animal last spoken of: the next message's subject
    notices: tuple[str, ...] = field(default=())  # lines for the reply, such as how a date was understood


@dataclass(frozen=True, slots=True)
class Context:
    """What was said before a message, so far as reading it needs to know. The reader gets the herd as it was on the day."""

    subject: str | None = None  # tag of the animal that this person last spoke of, within the time it sticks
    last: tuple[Fact, ...] = ()  # the facts of this person's last standing note: what a correction is about
