"""`Do it`, said to the plan: each of its lines becomes a note of its own, which `undo` takes back one by one."""

from __future__ import annotations

import re
from collections.abc import Callable
from dataclasses import replace
from datetime import date, timedelta

from core.app.reckoning import Reckon, here
from core.handbook.asking import SUBJECT_MINUTES
from core.herd.state import Herd
from core.notes.fact import Fact
from core.notes.journal import Note
from core.notes.kinds.query import Query
from core.notes.listen import Heard
from core.notes.reading import Message
from core.notes.replay import Book, local_day
from core.notes.talk.recall import REPLAY
from core.reply import Reply
from core.words import listed

DO_IT = re.compile(
    r"(?:ok(?:ay)?|yes|yep|yeah|please|all right|good)?[\s,.!]*(?:let'?s )?do (?:it|it all|all of it|the plan|that)(?: please)?[\s.!]*",
    re.IGNORECASE,
)

NOTHING = "The plan lets nobody go that you haven't decided on yourself."


def told_to_do(book: Book, message: Message) -> bool:
    """Whether it says to do the plan, which was the last thing told in that conversation, a short while ago."""
    if message.chat == REPLAY or not DO_IT.fullmatch(message.text.strip()):
        return False
    since = message.at - timedelta(minutes=SUBJECT_MINUTES.value)
    last = next((note for note in reversed(book.notes) if note.chat == message.chat and not _of(note, message)), None)
    return last is not None and last.at >= since and any(_tells_plan(fact) for fact in last.facts)


def _of(note: Note, message: Message) -> bool:
    return bool(message.number) and note.number == message.number


def _tells_plan(fact: Fact) -> bool:
    """A question that the whole plan answers."""
    return isinstance(fact, Query) and fact.about in {"winter", "keep"} and (fact.who, fact.scope, fact.breed) == (None, None, None)


def plan_orders(herd: Herd, today: date) -> tuple[tuple[str, ...], tuple[str, ...]]:
    """What the plan would have done that day, as notes; and who has no tag to be named by in one."""
    from core.reports.winter.doing import orders  # noqa: PLC0415 - the reckoning is loaded when it is wanted

    told = orders(herd, today)
    return told.notes, told.untagged


def done(
    book: Book, message: Message, hear: Callable[[Message], Heard], reckon: Reckon = here
) -> tuple[tuple[Heard, ...], tuple[str, ...]]:
    """What each line of the plan came to, heard as a note of the person who said to do it; and who goes without one, having no tag."""
    lines, untagged = reckon(plan_orders, book.herd, local_day(message.at, book.herd))
    each = tuple(
        hear(replace(message, text=line, number=f"{message.number}.{at}" if message.number else "", reply_to=None))
        for at, line in enumerate(lines, 1)
    )
    return each, untagged


def summed_up(heard: Heard, each: tuple[Heard, ...], untagged: tuple[str, ...]) -> Heard:
    """The answer to `do it`: what every line came to, and that nothing happened to any animal yet."""
    lines = [one.reply.lines[0] for one in each]
    if untagged:
        lines.append(f"Not noted, for they have no tags: {listed(untagged)}. Tell me when they go: sold {untagged[0]}.")
    if each:
        lines.append("Planned, not done: tell me when each is gone. Undo takes back one after the other.")
    reply = Reply(tuple(lines) or (NOTHING,))
    note = replace(heard.note, reply=reply.text)
    return replace(heard, note=note, reply=reply, book=replace(heard.book, notes=(*heard.book.notes[:-1], note)))
