"""Hearing one message: what it becomes in the journal, what is answered, and the book after it. Everything but the storing."""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass, replace
from datetime import datetime

from core.herd.state import Herd
from core.notes.fact import Fact, Fields, from_json, to_json
from core.notes.journal import Note, Target
from core.notes.kinds import KIND_OF
from core.notes.kinds.correction import Correct
from core.notes.kinds.query import Query
from core.notes.meaning import Meaning
from core.notes.reader import read
from core.notes.reading import Ask, Draft, Message, Reading
from core.notes.replay import Book, apply, local_day
from core.notes.talk.amend import corrected, edited
from core.notes.talk.conversation import Reader, understood
from core.notes.talk.doubt import settled
from core.notes.talk.recall import REPLAY, subject_of
from core.reply import Attached, Choice, Reply

AnswerQuery = Callable[[Query, Book, datetime], Reply]

_CONFIRMED = re.compile(r",\s*confirmed\s*[.!]?\s*$", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Heard:
    """What a message came to. `is_new` is false where the journal has it already: nothing is to be stored then."""

    note: Note
    reply: Reply
    book: Book
    is_new: bool = True

    @property
    def herd(self) -> Herd:
        """The herd after the message."""
        return self.book.herd

    @property
    def is_plain(self) -> bool:
        """Whether the answer only says again what the note said: a line a fact, and nothing asked, noticed, shown, left unread or taken back."""
        note, kinds = self.note, [KIND_OF[fact.kind] for fact in self.note.facts]
        more = note.ask or note.reverses or note.unread or self.reply.attached or len(self.reply.lines) > len(kinds)
        return bool(kinds) and not more and all(kind.plain for kind in kinds)


def listen(book: Book, message: Message, answer_query: AnswerQuery, reader: Reader = read) -> Heard:
    """One message heard: the note for the journal, the reply, and the book with it.

    The same message (chat, number, edit) heard again, and an edit that changes no word, leave everything as it is.
    """
    known = _known(_versions(book, message), message)
    if known is not None:
        return Heard(known, _again(known), book, is_new=False)
    note, meaning = _noted(book, message, reader)
    after = book.with_note(note)
    reply = _reply(book, after, note, meaning, answer_query)
    note = replace(note, reply=reply.text)
    return Heard(note, reply, replace(after, notes=(*after.notes[:-1], note)))


def noted(book: Book, message: Message, reader: Reader = read) -> Note:
    """What the journal would get of the message; nothing is answered."""
    return _known(_versions(book, message), message) or _noted(book, message, reader)[0]


def _known(earlier: list[Note], message: Message) -> Note | None:
    """The version that the journal has of the message; None where it is new, or edited."""
    heard = bool(earlier) and (earlier[-1].edit >= message.edit or earlier[-1].text == message.text)
    return earlier[-1] if heard else None


def _noted(book: Book, message: Message, reader: Reader) -> tuple[Note, Meaning]:
    """The note of a message that is new, and what it means. An edit is read as if the message had not been sent before."""
    earlier = _versions(book, message)
    if not earlier:
        meaning = _meaning(book, book, message, reader)
        return _note(book, message, message, meaning, earlier), meaning
    base = edited(book, earlier)
    sent = replace(message, at=earlier[0].at, reply_to=message.reply_to or earlier[0].reply_to)
    meaning = _meaning(_until(base, earlier[0]), base, sent, reader)
    return _note(book, message, sent, meaning, earlier), meaning


def printed(note: Note) -> Reading:
    """The note as `read` prints it: of a correction only the `correct` fact, not what stands by it."""
    corrects = bool(note.facts) and note.facts[0].kind == "correct"
    return Reading(note.facts[:1] if corrects else note.facts, note.ask, note.unread, note.subject)


def entered(book: Book, message: Message, facts: Iterable[Fact]) -> Book:
    """The book with facts that no message told: a roster's."""
    return book.with_note(
        Note(book.last_id + 1, message.text, message.at, message.author, message.chat, message.number, facts=tuple(facts))
    )


def _versions(book: Book, message: Message) -> list[Note]:
    """What the journal has of this message, the first version first."""
    if not message.number:
        return []
    return [note for note in book.notes if note.number == message.number and note.chat == message.chat]


def _until(book: Book, first: Note) -> Book:
    """The book with the conversation as it was before the message was first sent: what an edit is read after."""
    return replace(book, notes=tuple(note for note in book.notes if note.id < first.id))


def _meaning(conversation: Book, book: Book, message: Message, reader: Reader) -> Meaning:
    """What the message means, checked. A trailing ", confirmed" says yes beforehand."""
    confirmed = _CONFIRMED.search(message.text) if "," in message.text else None
    bare = replace(message, text=message.text[: confirmed.start()]) if confirmed else message
    meaning = understood(conversation, bare, reader)
    if confirmed:
        meaning = _agreed_correction(conversation, bare, meaning) or _confirmed(meaning, everything=message.chat == REPLAY)
    return settled(book, bare, meaning)


def _agreed_correction(book: Book, message: Message, meaning: Meaning) -> Meaning | None:
    """A correction that would be asked about, taken as it is; None where the meaning is no such."""
    draft = meaning.ask.draft if meaning.ask is not None else None
    if draft is None or draft.kind != "correct" or draft.wanted != "confirm":
        return None
    put, who = draft.known["set"], draft.known.get("who")
    return corrected(book, message, Correct(set=Fields(tuple(put.items())), who=who), sure=True)


def _confirmed(meaning: Meaning, *, everything: bool) -> Meaning:
    """The meaning with what waited for a yes taken; lines of a file are the book's own words, taken whatever the checks say."""
    ask = meaning.ask
    facts = meaning.facts
    if ask is not None and ask.draft is not None and ask.draft.wanted == "confirm" and ask.draft.kind != "correct":
        drafts = (ask.draft, *ask.draft.rest)
        facts = (*facts, *(from_json(KIND_OF[draft.kind].fact, draft.known) for draft in drafts))
        ask = None
    return replace(meaning, facts=facts, ask=ask, sure=True, settled=everything)


def _note(book: Book, message: Message, sent: Message, meaning: Meaning, earlier: list[Note]) -> Note:
    before = _superseded(book, earlier) if earlier else ()
    subject = meaning.subject or next((found for fact in meaning.facts if (found := subject_of(fact))), None)
    return Note(
        id=book.last_id + 1,
        text=message.text,
        at=message.at,
        author=message.author,
        chat=message.chat,
        number=message.number,
        edit=message.edit,
        reply_to=sent.reply_to,
        facts=meaning.facts,
        reverses=(*before, *meaning.reverses),
        ask=meaning.ask,
        subject=subject or _subject_of_draft(meaning.ask),
        unread=meaning.unread,
    )


def _superseded(book: Book, versions: list[Note]) -> tuple[Target, ...]:
    """The versions that an edit replaces, and the answer that completed the last of them, if one did."""
    last = versions[-1]
    draft = last.ask.draft if last.ask else None
    later = (note for note in book.notes if note.id > last.id and note.chat == last.chat)
    answer = next((note for note in later if draft and any(_holds(fact, draft) for fact in note.facts)), None)
    return tuple(Target(note.id) for note in (*versions, *((answer,) if answer else ())))


def _holds(fact: Fact, draft: Draft) -> bool:
    """Whether the fact is the draft completed."""
    said = to_json(fact)
    return said.pop("kind") == draft.kind and all(said.get(name) == value for name, value in draft.known.items() if name != draft.wanted)


def _subject_of_draft(ask: Ask | None) -> str | None:
    known = ask.draft.known if ask is not None and ask.draft is not None else {}
    found = known.get("who") or known.get("doe")
    return str(found) if found else None


# --- the reply ----------------------------------------------------------------------------------------------------


def _reply(before: Book, after: Book, note: Note, meaning: Meaning, answer_query: AnswerQuery) -> Reply:
    """Each fact's own lines, what was noticed, the answer to a question of the person's, and our question at the end."""
    lines: list[str] = []
    choices = [Choice(each, each) for each in meaning.choices]
    attached: list[Attached] = []
    today = local_day(note.at, before.herd)
    herd = _without_reversed(before, note).on_day(today)
    recorded = [fact for fact in note.facts if fact.kind not in ("query", "undo", "correct")]
    for fact in note.facts:
        if isinstance(fact, Query):
            answer = answer_query(fact, after, note.at)
            lines.extend(answer.lines)
            choices.extend(answer.choices)
            attached.extend(answer.attached)
        elif fact in recorded:
            following = after.herd.on_day(today) if fact is recorded[-1] else apply(fact, herd, today)
            lines.extend(KIND_OF[fact.kind].reply(fact, herd, following))
            herd = following
    lines.extend(meaning.notices)
    if note.ask is not None:
        lines.append(note.ask.text)
        choices = [Choice(choice, choice) for choice in note.ask.choices]
    return Reply(tuple(lines) or (_nothing(note),), tuple(choices), tuple(attached))


def _without_reversed(book: Book, note: Note) -> Herd:
    """The herd as it would be without what the note takes back."""
    return book.with_note(replace(note, facts=(), ask=None)).herd if note.reverses else book.herd


def _nothing(note: Note) -> str:
    """What is said to a message that says nothing for the book."""
    return "Nothing to note there." if note.text.strip() else "That message was empty."


def _again(note: Note) -> Reply:
    """The reply as it was given the first time."""
    choices = tuple(Choice(choice, choice) for choice in note.ask.choices) if note.ask else ()
    return Reply(tuple(note.reply.split("\n")), choices)
