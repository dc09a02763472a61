"""What can't be taken as it was said: the checks of each kind against the herd, and the same thing told twice."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date, timedelta

from core.handbook.asking import DUPLICATE_MINUTES
from core.herd.state import Herd
from core.notes.fact import Fact, to_json
from core.notes.journal import Note, Target
from core.notes.kinds import KIND_OF, kindling
from core.notes.kinds.culling import Culled, taken_as
from core.notes.kinds.kindling import Kindled
from core.notes.meaning import Meaning
from core.notes.reading import Ask, Draft, Message
from core.notes.replay import TOLD, Book, local_day, reversed_by
from core.notes.talk.recall import REPLAY, animals_of, subject_of
from core.problem import WHY, Problem

#: Kinds that may be told twice without a question.
REPEATABLE = frozenset({"query", "undo", "correct", "remark", "remind"})

#: Kinds that change nothing but the animal they tell of.
OF_ITS_OWN = frozenset({"weighed", "condition", "temper", "scored", "fault", "shown"})
_ALL_ANIMALS = ("who", "doe", "buck", "dam", "sire", "litter_of", "from_", "to", "with_", "tag")

_AGAIN = re.compile(r"\b(?:another|again)\b", re.IGNORECASE)

#: The field that a question about a problem is answered with, by the kind's own fields.
_COUNTS = ("count", "born")
_ANIMALS = ("who", "litter_of", "from", "to")
_SEXES = {"doe": "doe", "buck": "buck", "dam": "doe", "sire": "buck"}

Doubt = tuple[Problem, Fact]


def settled(book: Book, message: Message, meaning: Meaning) -> Meaning:
    """The meaning with every fact checked: those in doubt are asked about, the others stay."""
    if meaning.settled or not meaning.facts:
        return meaning
    before = [] if meaning.sure else _told_lately(book, message)
    if before and _AGAIN.search(message.text):
        before = []
    kept: list[Fact] = []
    doubts: list[Doubt] = []
    so_far = _Told(book, message)
    for fact in meaning.facts:
        if fact in before and fact.kind not in REPEATABLE:
            doubts.append((_said_before(fact, book.herd), fact))
            continue
        problem = problem_with(so_far.before(fact), message, fact)
        if problem is None or (meaning.sure and problem.code == "confirm"):
            kept.append(fact)
            so_far.takes(fact)
        else:
            doubts.append((problem, fact))
    if doubts:
        return _asking(book.herd, meaning, kept, doubts)
    told_as = [told for fact in kept if isinstance(fact, Culled) and (told := taken_as(fact, message.text)) is not None]
    notices = (*meaning.notices, *told_as)
    ask = meaning.ask or _sire_question(book, message, kept)
    return Meaning(tuple(kept), ask, meaning.unread, meaning.subject, meaning.reverses, notices, meaning.sure, settled=True)


def _sire_question(book: Book, message: Message, facts: Sequence[Fact]) -> Ask | None:
    """Whose kits they are, where several bucks fit a litter that is recorded all the same."""
    for fact in facts:
        if isinstance(fact, Kindled):
            problem = kindling.question_after(fact, herd_at(book, fact, local_day(message.at, book.herd)))
            if problem is not None:
                draft = Draft("kindled", {"doe": fact.doe, "on": fact.on.isoformat()}, "sire")
                return Ask(problem.code, f"{problem.text} {problem.remedy}", problem.choices, draft)
    return None


def problem_with(book: Book, message: Message, fact: Fact) -> Problem | None:
    """What stands against the fact, in the herd as it was on its day."""
    today = local_day(message.at, book.herd)
    return KIND_OF[fact.kind].check(fact, herd_at(book, fact, today), today)


def herd_at(book: Book, fact: Fact, today: date) -> Herd:
    """The herd that a fact told today falls into: as it was on its day, or today's where an animal was not on the book yet."""
    on = None if fact.kind in TOLD else getattr(fact, "on", None)
    if not isinstance(on, date) or on >= today:
        return book.herd.on_day(today)
    herd = book.before(on, book.last_id + 1)
    known = all(herd.find(tag) is not None or book.herd.find(tag) is None for tag in animals_of(fact))
    return (herd if known else book.herd).on_day(on)


class _Told:
    """The book with what the same message has told so far, each fact taken in once."""

    def __init__(self, book: Book, message: Message) -> None:
        self._start = self._book = book
        self._message = message
        self._told = 0  # so many facts of the message are in the book
        self._kept: list[Fact] = []
        self._told_of: set[str | None] = set()
        self._of_their_own = True  # whether each fact changed nothing but its animal

    def takes(self, fact: Fact) -> None:
        """One more fact of the message stands."""
        self._kept.append(fact)
        self._told_of.add(getattr(fact, "who", None))
        self._of_their_own = self._of_their_own and fact.kind in OF_ITS_OWN

    def before(self, fact: Fact) -> Book:
        """The book that the fact falls into; as it was before the message where the rest can't bear on the fact."""
        if not self._kept or (self._of_their_own and not any(getattr(fact, field, None) in self._told_of for field in _ALL_ANIMALS)):
            return self._start
        if len(self._kept) > self._told:
            said = self._message
            note = Note(self._start.last_id + 1, said.text, said.at, said.author, facts=tuple(self._kept))
            self._book = self._book.with_note(note, self._told)
            self._told = len(self._kept)
        return self._book


def _told_lately(book: Book, message: Message) -> list[Fact]:
    """The facts that stand of the last quarter of an hour, from anybody on the farm."""
    if not is_timed(message.chat, message.number):
        return []
    since = message.at - timedelta(minutes=DUPLICATE_MINUTES.value)
    lately: list[Note] = []
    for note in reversed(book.notes):
        if note.at < since:
            break
        if is_timed(note.chat, note.number):
            lately.append(note)
    gone = reversed_by(book.notes) if lately and any(note.reverses for note in lately) else {}
    return [
        fact
        for note in lately
        for index, fact in enumerate(note.facts)
        if Target(note.id) not in gone and Target(note.id, index) not in gone
    ]


def is_timed(chat: str, number: str) -> bool:
    """Whether the message's clock time is known: a line of a file may have none (its identity then says `--:--`)."""
    return chat != REPLAY or " --:-- " not in number


def echo(fact: Fact, herd: Herd) -> str:
    """A fact in one line, as the person was answered."""
    kind = KIND_OF[fact.kind]
    return next(iter(kind.reply(fact, herd, herd)), "") or str(kind.show(fact, herd))


#: Kinds that say how things are, and can't happen a second time.
_LASTING = frozenset({"setting", "animal", "ration", "color", "planned", "for_sale", "moved", "died", "tagged"})


def _said_before(fact: Fact, herd: Herd) -> Problem:
    known = f"Already on the book: “{echo(fact, herd).rstrip('.')}”."
    if fact.kind in _LASTING:
        return Problem("duplicate", known, ("yes", "no"), "Nothing changes, so say no; yes notes it once more.")
    return Problem("duplicate", known, ("yes", "no"), "Say yes if it happened once more, no if it is the same.")


def _asking(herd: Herd, meaning: Meaning, kept: Sequence[Fact], doubts: Sequence[Doubt]) -> Meaning:
    """The question of the first doubt by the contract's order; the facts that share its answer wait with it, others are told."""
    asked, about = min(doubts, key=lambda doubt: WHY.index(doubt[0].code))
    ask = meaning.ask
    waiting: list[Fact] = []
    others: list[str] = []
    if ask is None or WHY.index(asked.code) < WHY.index(ask.why):
        shared = asked.code in ("confirm", "duplicate")
        waiting = [fact for problem, fact in doubts if fact is about or (shared and problem.code == asked.code)]
        others = [f"Not recorded: {ask.text}"] if ask is not None else []
        ask = _question(asked, [doubt for doubt in doubts if doubt[1] in waiting], herd)
    others += [f"Not recorded: {problem.text}" for problem, fact in doubts if fact not in waiting]
    subject = meaning.subject or next(iter(_subjects([*kept, *(fact for _, fact in doubts)])), None)
    return replace(meaning, facts=tuple(kept), ask=ask, subject=subject, notices=(*meaning.notices, *others), settled=True)


def _question(asked: Problem, doubts: Sequence[Doubt], herd: Herd) -> Ask:
    """The question about these facts, one answer for all."""
    drafts = [draft_of(fact, asked.code, herd) for _, fact in doubts]
    texts = dict.fromkeys(problem.text for problem, _ in doubts)
    return Ask(asked.code, " ".join([*texts, asked.remedy]).strip(), asked.choices, replace(drafts[0], rest=tuple(drafts[1:])))


def _subjects(facts: Iterable[Fact]) -> list[str]:
    return [subject for fact in facts if (subject := subject_of(fact)) is not None]


def draft_of(fact: Fact, why: str, herd: Herd) -> Draft:
    """The fact as a draft that an answer to such a question completes."""
    known = {name: value for name, value in to_json(fact).items() if name != "kind"}
    if why in ("confirm", "duplicate"):
        return Draft(fact.kind, known, "confirm")
    if why == "when":
        return Draft(fact.kind, known, "on")
    animals = sorted((name for name in (*_ANIMALS, *_SEXES) if name in known), key=lambda name: _is_right(herd, name, known[name]))
    counts = [name for name in _COUNTS if name in known]
    order = [*counts, *animals] if why in ("impossible", "how_many", "which_number") else [*animals, *counts]
    return Draft(fact.kind, known, next(iter(order), "confirm"))


def _is_right(herd: Herd, name: str, tag: str) -> bool:
    """Whether the animal is there, and of the sex that its field wants."""
    animal = herd.find(tag)
    return animal is not None and animal.sex in (None, _SEXES.get(name, animal.sex))
