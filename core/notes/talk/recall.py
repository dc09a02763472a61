"""Looking back: what was said before a message, and what is still open.

A person in a barn says "5 all alive" and means the doe just spoken of, or says "Flint" and means the buck just asked about.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Sequence
from datetime import datetime, timedelta

from core.handbook.asking import ANSWER_HOURS, SUBJECT_MINUTES
from core.notes.fact import Fact, to_json
from core.notes.journal import Entry, Note, Target
from core.notes.reading import Ask, Context, Draft, Message
from core.notes.replay import Book, reversed_by
from core.notes.talk.answer import NO, plain

#: The chat that lines of a file belong to: its questions are never answered by the next line.
REPLAY = "replay"

#: Fields that hold an animal, the one that a fact is most about first.
ANIMAL_FIELDS = ("who", "doe", "litter_of", "tag", "to", "from", "buck", "with", "sire", "dam")

#: Words for a doe that is at it right now.
KINDLING_NOW = re.compile(
    r"\b(?:kindling|having (?:them|em|her|kits|babies)|giving birth|in labou?r|popping|dropping (?:them|kits|babies))\b", re.IGNORECASE
)

#: Kinds that record nothing of the herd: they leave an open question open.
PASSING = frozenset({"query", "remark"})


def animals_of(fact: Fact) -> tuple[str, ...]:
    """The animals that a fact names, the one it is most about first."""
    said = to_json(fact)
    named = [said[name] for name in ANIMAL_FIELDS if name in said]
    if fact.kind == "tagged":  # `tag` is the kit's new number: the one spoken of from now on
        named.insert(0, said["tag"])
    return tuple(dict.fromkeys(str(tag) for tag in named if fact.kind != "given_away" or tag != said.get("to")))


def subject_of(fact: Fact) -> str | None:
    """The animal that a fact is about."""
    animals = animals_of(fact)
    return animals[0] if animals else None


def sticky_subject(book: Book, message: Message) -> str | None:
    """The animal that this person last spoke of, if that was a short while ago."""
    since = message.at - timedelta(minutes=SUBJECT_MINUTES.value)
    for note in reversed(book.notes):
        if note.at < since:
            break
        if note.author == message.author and note.subject:
            return note.subject
    return None


def context_of(book: Book, message: Message) -> Context:
    """What reading the message needs to know of the conversation."""
    return context_after(last_entries(book, message), book, message)


def context_after(last: Sequence[Entry], book: Book, message: Message) -> Context:
    """The same, with the last entries already looked up."""
    return Context(subject=sticky_subject(book, message), last=tuple(entry.fact for entry in last))


def last_entries(book: Book, message: Message) -> tuple[Entry, ...]:
    """The standing facts of the last note that a correction may be about: this person's, else the last in this chat."""
    mine = next(standing_notes(book, author=message.author), ())
    return mine or next(standing_notes(book, chat=message.chat), ())


def standing_notes(book: Book, author: str | None = None, chat: str | None = None) -> Iterator[tuple[Entry, ...]]:
    """Notes that recorded something which stands, newest first, as their standing facts. Questions and undos are none."""
    gone = reversed_by(book.notes) if any(note.reverses for note in book.notes) else {}
    for note in reversed(book.notes):
        if (author is not None and note.author != author) or (chat is not None and note.chat != chat) or Target(note.id) in gone:
            continue
        stands = tuple(
            Entry(note, index, fact)
            for index, fact in enumerate(note.facts)
            if fact.kind not in ("query", "undo", "correct") and Target(note.id, index) not in gone
        )
        if stands:
            yield stands


def open_question(book: Book, message: Message) -> Note | None:
    """The note whose question this message may answer: the last one asked in this chat, else elsewhere on the farm.

    A full new note in the same chat drops a question; so does a day.
    """
    if message.chat == REPLAY:
        return None
    since = message.at - timedelta(hours=ANSWER_HOURS.value)
    here = _last_asked(book, since, message.chat)
    if here is not None and here.ask is not None and here.ask.draft is None:
        return _asked_elsewhere(book, since, message.chat) or here
    return here or _asked_elsewhere(book, since, message.chat)


def question_of(note: Note) -> Ask | None:
    """The question that stands after a note: the one it asked, or the count awaited where a doe said to have missed is kindling."""
    undoes = bool(note.facts) and note.facts[0].kind == "undo"
    if note.ask is None and undoes and note.subject and KINDLING_NOW.search(note.text):
        return Ask("how_many", f"How many did {note.subject} have?", (), Draft("kindled", {"doe": note.subject}, "born"))
    return note.ask


def _last_asked(book: Book, since: datetime, chat: str) -> Note | None:
    for note in reversed(book.notes):
        if note.at < since:
            break
        if note.chat != chat:
            continue
        if question_of(note) is not None:
            return note
        if any(fact.kind not in PASSING for fact in note.facts) or (not note.facts and plain(note.text) in NO):
            break
    return None


def _asked_elsewhere(book: Book, since: datetime, chat: str) -> Note | None:
    others = dict.fromkeys(note.chat for note in reversed(book.notes) if note.at >= since and note.chat not in (chat, REPLAY))
    asked = [found for other in others if (found := _last_asked(book, since, other)) is not None]
    return max(asked, key=lambda note: note.id, default=None)
