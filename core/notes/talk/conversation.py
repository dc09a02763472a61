"""A message in its conversation: an answer to a question or a reminder, a correction, or a note that stands on its own.

Over 300 lines: the order in which a message is tried against the conversation, told once from top to bottom.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Final

from core.herd.questions import fitting
from core.herd.state import Herd
from core.notes.fact import Fact, Fields, Json, to_json
from core.notes.journal import Entry, Note
from core.notes.kinds.correction import Correct
from core.notes.kinds.kindling import Kindled
from core.notes.kinds.setting import SettingChanged
from core.notes.kinds.undoing import Undo
from core.notes.meaning import Meaning, meaning_of
from core.notes.reading import Ask, Context, Draft, Message, Reading
from core.notes.replay import Book, local_day, local_time
from core.notes.slots.tokens import tokens
from core.notes.talk.about_note import INSTEAD, NOTE, note_meant, of_note, told_anew
from core.notes.talk.amend import corrected, sire_told, undone
from core.notes.talk.answer import NO, YES, animal_said, answered, carried, completed, plain, whole_number
from core.notes.talk.birth_correction import birth_numbers
from core.notes.talk.chore_replies import chore_reply
from core.notes.talk.correction_fields import birth_agreed, field_for
from core.notes.talk.dotted import dot_told
from core.notes.talk.not_so import denied_leaving
from core.notes.talk.put_right import put_right, unmarked
from core.notes.talk.recall import KINDLING_NOW, PASSING, context_after, context_of, last_entries, open_question, question_of, subject_of

Reader = Callable[..., Reading]  # read(message, herd, context)

_WORDS_OF_NUMBER = 4  # "one hundred and twelve" has as many
_LONGEST_CORRECTION = 60  # not a figure: letters: what is longer is a note of its own
_LONGEST_NUMBER = 24  # not a figure: letters: no number in words is longer
_DENIES = re.compile(r"^\W*(?:(?:no|nope|sorry|actually|oops|correction|wait|i mean|it was|that was|not)\b[\s,.:-]*)+", re.IGNORECASE)
_FIELD_WAS = re.compile(
    r"^(?:no,?\s+)?(?:the |her |his |its )?(buck|doe|dam|sire|mother|father|animal|rabbit|tag)\s+(?:was|is|should be|should have been)\s+(.+?)[.!]?$",
    re.IGNORECASE,
)
_MORE = re.compile(r"\b(?:more|another|again|also|too)\b", re.IGNORECASE)
_AFTER_ALL = re.compile(r"\b(?:wait|no|nope|actually|oops|scratch|never ?mind|hold on|after all|sorry|spoke too soon)\b", re.IGNORECASE)


@dataclass(frozen=True, slots=True)
class Talk:
    """One message with all that is needed to understand it: the herd on its day, and the note whose question is open."""

    book: Book
    message: Message
    reader: Reader
    today: date
    herd: Herd
    asked: Note | None = None

    def reads(self, text: str) -> Reading:
        """The words as a note on its own."""
        return self.reader(replace(self.message, text=text, reply_to=None), self.herd, Context())


def understood(book: Book, message: Message, reader: Reader) -> Meaning:
    """What the message means; its facts are not yet checked against the herd."""
    today = local_day(message.at, book.herd)
    talk = Talk(book, message, reader, today, book.herd.on_day(today))
    if message.reply_to is not None and (note := note_meant(book, message.reply_to)) is not None:
        return of_note(book, message, note, _as_then(reader, note))
    if message.reply_to is not None and message.reply_to.chore != NOTE:
        return _resolved(talk, chore_reply(talk.herd, message.reply_to, message.text, local_time(message.at, book.herd), talk.reads))
    last = last_entries(book, message)
    taken_back = _kindling_after_all(book, message, last) or denied_leaving(book, message, last)
    if taken_back is not None:
        return taken_back
    asked = open_question(book, message)
    if asked is not None:
        talk = replace(talk, asked=asked)
    put_right = _birth_put_right(talk, last)
    if put_right is not None:
        return _resolved(talk, put_right)
    answer = _answer(talk)
    if answer is not None:
        return answer
    named = _put_right_by_field(talk, last)
    if named is not None:
        return _resolved(talk, named)
    meaning = meaning_of(reader(message, talk.herd, context_after(last, book, message)))
    if meaning.ask is None and all(fact.kind == "remark" for fact in meaning.facts):
        meaning = _put_right_in_words(talk) or meaning
    meaning = _told_again(talk, last, meaning)
    return _with_open_question(talk, _resolved(talk, _not_from_a_bare_number(message, meaning)))


def _as_then(reader: Reader, note: Note) -> Callable[[Book, Message], Meaning]:
    """Understanding as right after the note, with its animal as the one spoken of."""

    def reads(message: Message, herd: Herd, context: Context = Context()) -> Reading:  # noqa: B008 - frozen
        return reader(message, herd, replace(context, subject=note.subject or context.subject))

    return lambda book, message: understood(book, message, reads)


def _answer(talk: Talk) -> Meaning | None:
    """The message as the answer to the open question; None where there is none or it is something else."""
    ask = question_of(talk.asked) if talk.asked else None
    if talk.asked is None or ask is None or not _may_answer(talk.asked, talk.message, ask):
        return None
    if ask.draft is not None and ask.draft.wanted == INSTEAD:
        note = next(each for each in talk.book.notes if each.id == ask.draft.known["note"])
        return told_anew(talk.book, talk.message, ask.draft, _as_then(talk.reader, note))
    if ask.draft is not None and ask.draft.kind == "correct":
        return _correction_answered(talk, talk.asked, ask.draft)
    if ask.draft is not None and ask.draft.wanted == "sire":
        return sire_told(talk.book, talk.message, ask.draft, animal_said(talk.herd, talk.message.text))
    way = dot_told(ask, plain(talk.message.text))
    if way is not None:
        return _dot_remembered(talk, talk.asked, way)
    return answered(ask, talk.message.text, talk.herd, talk.today, talk.reads)


def _dot_remembered(talk: Talk, asked: Note, way: str) -> Meaning:
    """The farm's way with dots as a setting, and the note asked about read once more with it."""
    herd = replace(talk.herd, settings=replace(talk.herd.settings, dotted_weight=way))
    told = replace(talk.message, text=asked.text, at=asked.at, reply_to=None)
    reading = talk.reader(told, herd, Context(subject=asked.subject))
    news = tuple(fact for fact in reading.facts if fact not in asked.facts)
    return replace(meaning_of(reading), facts=(SettingChanged(name="dotted_weight", value=way), *news))


def _correction_answered(talk: Talk, asked: Note, draft: Draft) -> Meaning | None:
    """Yes or no to a correction that was asked about; None where the words are something else."""
    said = plain(talk.message.text)
    if said in NO:
        return Meaning(subject=asked.subject, notices=("Left as it was.",), settled=True)
    if said not in YES:
        return None
    as_told = replace(talk.message, text=asked.text, author=asked.author)
    set_, who = draft.known["set"], draft.known.get("who")
    return corrected(talk.book, as_told, Correct(set=Fields(tuple(set_.items())), who=who), sure=True)


def _birth_put_right(talk: Talk, last: Sequence[Entry]) -> Meaning | None:
    """ "No, 2 dead" right after a kindling: the birth put right, not kits lost since; None where the words are something else."""
    draft, asked_at = (talk.asked.ask.draft, talk.asked.id) if talk.asked is not None and talk.asked.ask is not None else (None, 0)
    asked = draft is not None and draft.kind == "kindled" and draft.wanted != "sire"
    births = [(entry.note.id, entry.fact) for entry in last if isinstance(entry.fact, Kindled)]
    if not asked and (not births or (draft is not None and draft.kind != "correct" and asked_at > births[-1][0])):
        return None
    denied = _DENIES.match(talk.message.text)
    words = unmarked(talk.message.text[denied.end() :] if denied else talk.message.text)
    if denied is None and words == talk.message.text.lstrip().rstrip(" .!"):
        return None
    if draft is not None and asked:
        return _birth_asked_put_right(talk, draft, words)
    numbers = birth_numbers(words, births[-1][1].doe, talk.herd)
    return Meaning((Correct(set=Fields(tuple(numbers.items()))),)) if numbers else None


def _put_right_by_field(talk: Talk, last: Sequence[Entry]) -> Meaning | None:
    """The last note's field that a few words put right; None where they are something else."""
    if len(talk.message.text) > _LONGEST_CORRECTION or talk.asked is not None:
        return None
    put = put_right(
        [entry.fact for entry in last], talk.message.text, talk.herd, talk.today, lambda said: _denied_reads(talk, said), talk.reads
    )
    return Meaning((put,)) if put else None


def _denied_reads(talk: Talk, said: str) -> dict[str, Json]:
    """What "no, ..." before the words puts right."""
    context = context_of(talk.book, talk.message)
    reading = talk.reader(replace(talk.message, text=f"no, {said}", reply_to=None), talk.herd, context)
    first = reading.facts[0] if reading.facts and reading.ask is None else None
    return dict(first.set) if isinstance(first, Correct) else {}


def _birth_asked_put_right(talk: Talk, draft: Draft, words: str) -> Meaning | None:
    """The birth just asked about, with the numbers that the words put right."""
    numbers = birth_numbers(words, str(draft.known.get("doe")), talk.herd)
    if numbers is None:
        return None
    known = birth_agreed(draft.known, {**draft.known, **numbers}, numbers)
    return completed(replace(draft, known=known, rest=()), {}, talk.today)


#: The plan's own yes, with no plan before it.
PLAN_FIRST: Final = "Send \u201cwinter\u201d first: then \u201cdo it\u201d plans what stands there."


def _with_open_question(talk: Talk, meaning: Meaning) -> Meaning:
    """Where neither an answer nor a note came of it, the person is told what is still open."""
    ask = question_of(talk.asked) if talk.asked else None
    silent = meaning.ask is None and all(fact.kind == "remark" and subject_of(fact) is None for fact in meaning.facts)
    if ask is None or talk.asked is None or talk.asked.chat != talk.message.chat or not silent:
        return meaning
    return replace(meaning, notices=(*meaning.notices, f"Still open: {ask.text}"))


def _put_right_in_words(talk: Talk) -> Meaning | None:
    """Words that are no note, but put the last one right; or a yes or a no to nothing."""
    if plain(talk.message.text) in YES | NO and talk.asked is None:
        told = PLAN_FIRST if plain(talk.message.text) == "do it" else "Nothing is waiting for an answer."
        return Meaning(notices=(told,), settled=True)
    last = last_entries(talk.book, talk.message)
    if not last:
        return None
    put = _field_named(talk, last[-1].fact) or _told_otherwise(talk, last[-1].fact)
    return Meaning((Correct(set=Fields(put)),)) if put else None


def _told_again(talk: Talk, last: Sequence[Entry], meaning: Meaning) -> Meaning:
    """ "No, 10F", "make that a cup": the same thing of the same animal said again behind a "no" or a "sorry" puts the last note right."""
    if len(meaning.facts) != 1 or meaning.ask is not None or unmarked(talk.message.text) == talk.message.text.strip(" .!"):
        return meaning
    fact = meaning.facts[0]
    same = [entry.fact for entry in last if entry.fact.kind == fact.kind and subject_of(entry.fact) == subject_of(fact)]
    if len(same) != 1 or fact.kind in PASSING or _MORE.search(talk.message.text):
        return meaning
    said, today = to_json(same[0]), talk.today.isoformat()
    put = {name: value for name, value in to_json(fact).items() if said.get(name) != value and not (name == "on" and value == today)}
    another = "trait" in put or (fact.kind == "setting" and "name" in put)  # "no biters" behind "4 litters wanted" is a wish of its own
    whose = subject_of(fact) if len(last) > 1 else None  # "no, tulip 5-9" behind the weights of three
    return Meaning((Correct(set=Fields(tuple(put.items())), who=whose),)) if put and not another else meaning


def _field_named(talk: Talk, last: Fact) -> tuple[tuple[str, Json], ...]:
    """ "The buck was Moss": the field and its animal, where the last fact has such a one."""
    found = _FIELD_WAS.match(talk.message.text.strip())
    tag = animal_said(talk.herd, found.group(2)) if found else None
    if found is None or tag is None:
        return ()
    name = found.group(1).lower()
    own = field_for(last, "who" if name in ("animal", "rabbit", "tag") else name, tag, talk.herd)
    return ((own, tag),) if own else ()


def _told_otherwise(talk: Talk, last: Fact) -> tuple[tuple[str, Json], ...]:
    """ "No, it was a rat": read as the rest of the last fact's sentence; what differs."""
    denied = _DENIES.match(talk.message.text)
    if denied is None:
        return ()
    said = to_json(last)
    draft = Draft(last.kind, {name: value for name, value in said.items() if name != "kind"}, "")
    otherwise = carried(draft, talk.message.text[denied.end() :], talk.today, talk.reads)
    own = next((to_json(fact) for fact in otherwise.facts if fact.kind == last.kind), {}) if otherwise else {}
    return tuple((name, value) for name, value in own.items() if said.get(name) != value)


def _may_answer(asked: Note, message: Message, ask: Ask) -> bool:
    """A bare number, yes or no answers only where the question was seen; an animal, a day or more words from anywhere on the farm."""
    if asked.chat == message.chat:
        return True
    bare = whole_number(plain(message.text)) is not None
    return not bare and ask.draft is not None and ask.draft.wanted != "confirm"


def _not_from_a_bare_number(message: Message, meaning: Meaning) -> Meaning:
    """A number alone, with no question open, records nothing."""
    if (
        len(message.text) > _LONGEST_NUMBER
        or message.text.count(" ") >= _WORDS_OF_NUMBER
        or whole_number(plain(message.text)) is None
        or not any(fact.kind != "query" for fact in meaning.facts)
    ):
        return meaning
    number = plain(message.text)
    text = f"{number} of what? Send the whole note, for example “14 kindled {number}” or “{number} 4-6” for the weight of {number}."
    return Meaning((), Ask("what", text), "", meaning.subject, settled=True)


def _resolved(talk: Talk, meaning: Meaning) -> Meaning:
    """The meaning with an undo or a correction turned into what it reverses and what stands instead."""
    first = meaning.facts[0] if meaning.facts else None
    if isinstance(first, Undo):
        return undone(talk.book, talk.message, first, talk.asked)
    if isinstance(first, Correct):
        return _completes(talk, first) or corrected(talk.book, talk.message, first)
    return meaning


# --- "i mean R22": a note that could not be taken, put right ------------------------------------------------------


def _completes(talk: Talk, correct: Correct) -> Meaning | None:
    """The note just asked about, with what the correction says; None where the correction is about something recorded."""
    asked = talk.asked
    if (
        asked is None
        or asked.ask is None
        or (asked.ask.draft is not None and asked.ask.draft.kind == "correct")
        or not _is_latest(talk.book, asked, talk.message)
    ):
        return None
    draft = asked.ask.draft
    put_right = _draft_put_right(talk, draft, correct) if draft is not None else None
    return put_right or _reread(talk, asked, correct)


def _is_latest(book: Book, asked: Note, message: Message) -> bool:
    """Whether nothing that this person recorded came after the question."""
    last = last_entries(book, message)
    return not last or last[0].note.id <= asked.id


def _draft_put_right(talk: Talk, draft: Draft, correct: Correct) -> Meaning | None:
    """The draft with the corrected fields; None where it has no such field."""
    put = {}
    for name, value in correct.set:
        own = _draft_field(draft, name, value, talk.book)
        if own is None or (own in {"born", "alive", "dead", "count", "falls", "grams", "bucks", "does"} and not isinstance(value, int)):
            return None
        put[own] = value
    return completed(replace(draft, known=dict(draft.known) | put, rest=()), {}, talk.today)


def _draft_field(draft: Draft, name: str, value: object, book: Book) -> str | None:
    if name == "who":
        animal = book.herd.find(str(value))
        if animal is not None and animal.sex == "buck" and ("buck" in draft.known or draft.wanted == "buck"):
            return "buck"
        return next((each for each in ("who", "doe", "litter_of", "from") if each in draft.known or each == draft.wanted), None)
    if name == "count":
        return next((each for each in ("count", "born") if each in draft.known or each == draft.wanted), None)
    return name if name in draft.known or name == draft.wanted else None


def _reread(talk: Talk, asked: Note, correct: Correct) -> Meaning | None:
    """The note's own words with the animal changed, where only one way of changing it can be read."""
    tag = dict(correct.set).get("who")
    if tag is None:
        return None
    found: dict[tuple[Fact, ...], Meaning] = {}
    for token in tokens(asked.text):
        if token.sort == "p" or not (token.key[:1].isdigit() or fitting(talk.herd, token.key)):
            continue
        reading = talk.reads(f"{asked.text[: token.start]}{tag}{asked.text[token.end :]}")
        if reading.facts and reading.ask is None and any(subject_of(fact) == tag for fact in reading.facts):
            found[reading.facts] = meaning_of(reading)
    return next(iter(found.values())) if len(found) == 1 else None


# --- "wait, she's kindling now" -----------------------------------------------------------------------------------


def _kindling_after_all(book: Book, message: Message, last: Sequence[Entry]) -> Meaning | None:
    """After a doe was said to have missed, her kindling takes that back."""
    missed = [entry for entry in last if entry.fact.kind == "missed"]
    if not missed or not (KINDLING_NOW.search(message.text) and _AFTER_ALL.search(message.text)):
        return None
    if re.search(r"\d", message.text):
        return None
    meaning = undone(book, message, Undo(), None)
    more = f"Send the number when she is done: “{subject_of(missed[0].fact)} kindled 8, 2 dead”."
    return replace(meaning, notices=(*meaning.notices, more))
