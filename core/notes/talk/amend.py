"""Taking back and putting right: what an undo, a "no, 15 not 14" or an edited message reverses, and what stands instead."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import replace
from datetime import date

from core.handbook.reproduction import SIRE_FIRST_DAY, SIRE_LAST_DAY
from core.herd.questions import same_tag
from core.herd.state import Herd
from core.notes.fact import Fact, Fields, Json
from core.notes.journal import Entry, Note, Target
from core.notes.kinds.correction import Correct
from core.notes.kinds.mating import Bred
from core.notes.kinds.remark import Remark
from core.notes.kinds.undoing import Undo
from core.notes.meaning import Meaning
from core.notes.reading import Ask, Draft, Message
from core.notes.replay import TOLD, Book, local_day
from core.notes.talk.answer import day_within
from core.notes.talk.correction_fields import WRONG, amended, field_for, holds, is_priced, senses
from core.notes.talk.doubt import draft_of, echo, problem_with
from core.notes.talk.named import Named, fits, named, offered
from core.notes.talk.recall import animals_of, last_entries, standing_notes, subject_of
from core.words import pounds_and_ounces

_SHOWN = 12  # not a figure: facts that an undo names one by one
#: A number and nothing else belongs to the last note, whatever an older one counted.
_ALONE = re.compile(r"^\W*(?:no|nope|sorry|oops|wait|actually)\b[\s,.:-]*\$?\d+(?:\.\d+)?\W*$", re.IGNORECASE)
_LOOK_BACK = 10  # notes of that person among which "15 not 14" looks for the 14


# --- undo ---------------------------------------------------------------------------------------------------------


def undone(book: Book, message: Message, undo: Undo, asked: Note | None) -> Meaning:
    """What an undo takes back: a question just asked, else this person's last standing note that fits all it names."""
    wanted = named(message.text, undo, book.herd, local_day(message.at, book.herd))
    bare = undo.who is None and undo.about is None and not wanted.anything
    if asked is not None and asked.ask and bare and _is_last_of(book, message.author, asked):
        kept = takes_back(asked)
        lines = (f"Dropped: “{_short(asked.text)}”.", *(gone(book, fact) for fact in asked.facts))
        return Meaning((undo,), None, "", asked.subject, kept if asked.facts else (), lines, settled=True)
    for entries in standing_notes(book, author=message.author):
        fitting = [entry for entry in entries if _fits(undo, entry.fact) and fits(entry.fact, wanted, book.herd)]
        if fitting:
            return _taken_back(book, undo, entries, fitting)
    return _nothing_fits(book, message, undo, wanted)


def _taken_back(book: Book, undo: Undo, entries: Sequence[Entry], fitting: Sequence[Entry]) -> Meaning:
    """The facts of one note that an undo fits, or the whole of it."""
    lines = tuple(gone(book, entry.fact) for entry in fitting[:_SHOWN])
    if len(fitting) > _SHOWN:
        lines = (*lines, f"And {len(fitting) - _SHOWN} more of the same note.")
    whole = len(fitting) == len(entries)
    targets = takes_back(fitting[0].note) if whole else tuple(entry.target for entry in fitting)
    restored = _restored(book, fitting[0].note)
    return Meaning((undo,), None, "", subject_of(fitting[0].fact), targets, lines + restored, settled=True)


def _nothing_fits(book: Book, message: Message, undo: Undo, wanted: Named) -> Meaning:
    """Nothing is taken back; the last notes are shown with the words that take them back."""
    last = offered(standing_notes(book, author=message.author), book.herd)
    if not last:
        return Meaning((undo,), None, "", undo.who, (), (_nothing_to_undo(undo),), settled=True)
    head = f"None of your notes fits “{wanted.said}”, so nothing is taken back. To take back one of the last:"
    lines = (f"“{way}”: {what}" for way, what in last.items())
    return Meaning((undo,), None, "", undo.who, (), (head, *lines), settled=True, choices=tuple(last))


def _is_last_of(book: Book, author: str, note: Note) -> bool:
    """Whether it is the last note of that person."""
    last = next((each for each in reversed(book.notes) if each.author == author), None)
    return last is not None and last.id == note.id


def _fits(undo: Undo, fact: Fact) -> bool:
    kind_fits = undo.about is None or undo.about == fact.kind
    return kind_fits and (undo.who is None or any(same_tag(undo.who, tag) for tag in animals_of(fact)))


def versions_of(book: Book, note: Note) -> tuple[Note, ...]:
    """The note as it was first sent and as it was edited, in that order."""
    return tuple(each for each in book.notes if each.number == note.number and each.chat == note.chat) if note.number else (note,)


def takes_back(note: Note) -> tuple[Target, ...]:
    """A whole note; of an edited message every version, so that none comes back; of a correction only itself."""
    earlier = tuple(target for target in note.reverses if target.index is None) if note.edit else ()
    return (Target(note.id), *earlier)


def gone(book: Book, fact: Fact) -> str:
    """The line that tells of a fact taken back."""
    return f"Taken back: {echo(fact, book.herd)}"


def _restored(book: Book, note: Note) -> tuple[str, ...]:
    """What stands again when a correction is taken back."""
    if not note.facts or note.facts[0].kind != "correct":
        return ()
    by_id = {each.id: each for each in book.notes}
    again = [by_id[target.note].facts[target.index] for target in note.reverses if target.index is not None and target.note in by_id]
    return tuple(f"Stands again: {echo(fact, book.herd)}" for fact in again)


def _nothing_to_undo(undo: Undo) -> str:
    about = f" about {undo.who}" if undo.who else ""
    return f"There is no note of yours{about} to take back."


def _short(text: str) -> str:
    return text if len(text) <= 60 else text[:57] + "..."  # not a figure: letters shown of a note


# --- correct ------------------------------------------------------------------------------------------------------


def corrected(book: Book, message: Message, correct: Correct, *, sure: bool = False) -> Meaning:
    """What a correction puts right: the fact that it fits, of this person's last note; the `correct` fact comes first.

    What it would make is checked as if it were told now; with `sure` a person has said yes to it already.
    """
    entry = _meant(book, message, correct)
    if entry is None:
        return Meaning((correct,), None, "", correct.who, (), ("There is no note of yours to put right yet.",), settled=True)
    without = book_without(book, entry)
    tried = [_tried(without, message, entry, each, sure=sure) for each in senses(entry.fact, correct, message.text, book.herd)]
    good = [each for each in tried if isinstance(each, tuple)]
    if len(good) > 1:
        return _either(good, book.herd)
    if not good:
        return Meaning((), next(each for each in tried if isinstance(each, Ask)), settled=True)
    said, fact = good[0]
    return Meaning((said, fact), None, "", subject_of(fact), (entry.target,), (f"Was: {echo(entry.fact, book.herd)}",), settled=True)


def _tried(book: Book, message: Message, entry: Entry, correct: Correct, *, sure: bool) -> tuple[Correct, Fact] | Ask:
    """The correction in the fact's own names, with the fact as it would be; or what stands against it."""
    named = {field_for(entry.fact, name, value, book.herd): value for name, value in correct.set}
    put = {name: value for name, value in named.items() if name is not None}
    if entry.fact.kind in TOLD:
        put |= _plan_days(put, message, book.herd)
    fact = amended(entry.fact, put) if len(put) == len(correct.set) else None
    if fact is None:
        return Ask("what", _unfit_text(entry, book.herd))
    problem = problem_with(book, message, fact)
    answered = problem is not None and problem.code == "confirm" and (sure or problem == problem_with(book, message, entry.fact))
    if problem is not None and not answered:  # what was asked of the fact as it stood is not asked again
        draft = draft_of(correct, "confirm", book.herd) if problem.code == "confirm" else None
        return Ask(problem.code, f"{problem.text} {problem.remedy}".strip(), problem.choices, draft)
    return replace(correct, set=Fields(tuple(_as_said(correct, put).items()))), fact


def _plan_days(put: Mapping[str, Json], message: Message, herd: Herd) -> dict[str, Json]:
    """The days of a plan, which lie ahead: "make that saturday" is the next one."""
    today = local_day(message.at, herd)
    ahead = day_within(message.text, herd, today, "plan")
    return {name: ahead.isoformat() for name in ("on", "until") if name in put and ahead is not None}


def _either(good: Sequence[tuple[Correct, Fact]], herd: Herd) -> Meaning:
    """A number that may be the animal or the count, or ounces with or without the pounds."""
    first, second = (echo(fact, herd).rstrip(".") for _, fact in good[:2])
    text = f"“{first}” or “{second}”? Send the note as it should be."
    return Meaning((), Ask("which_number", text, tuple(_put_as(said) for said, _ in good)), settled=True)


def _put_as(correct: Correct) -> str:
    """The correction in words that mean only it."""
    name, value = next(iter(correct.set))
    if name == "grams":
        pounds, ounces = pounds_and_ounces(int(value or 0))
        return f"that was {pounds}-{ounces}"
    return f"the animal was {value}" if name == "who" else f"make that {value}"


def _as_said(correct: Correct, put: Mapping[str, Json]) -> Mapping[str, Json]:
    """The set under the corrected fact's own names; an animal stays under `who` where that was said."""
    return {("who" if "who" in dict(correct.set) and dict(correct.set)["who"] == value else name): value for name, value in put.items()}


def book_without(book: Book, entry: Entry) -> Book:
    """The book as if that fact had never been told."""
    note = Note(book.last_id + 1, "", entry.note.at, entry.note.author, reverses=(entry.target,))
    return book.with_note(note)


def _meant(book: Book, message: Message, correct: Correct) -> Entry | None:
    """The fact that the correction is about: of `who` where said, else the one that holds what was wrong ("not 14"), else the last."""
    near = _near(book, message)
    if near and _ALONE.match(message.text):
        near = [entry for entry in near if entry.note.id == near[0].note.id]
    if correct.who is not None:
        near = [entry for entry in near if any(same_tag(correct.who, tag) for tag in animals_of(entry.fact))]
    wrong = WRONG.search(message.text)
    if wrong:
        holding = [entry for entry in near if holds(entry.fact, wrong.group(1), book.herd)]
        near = holding or near
    fitting = [entry for entry in near if _takes(entry, correct, book.herd)]
    return next(iter(fitting or near), None)


def _near(book: Book, message: Message) -> list[Entry]:
    mine = list(standing_notes(book, author=message.author))[:_LOOK_BACK]
    notes: Iterable[tuple[Entry, ...]] = mine or [last_entries(book, message)]
    return [entry for entries in notes for entry in _by_weight(entries)]


def _by_weight(entries: Sequence[Entry]) -> list[Entry]:
    """The facts of one note: what follows from another (a bad nest beside lost kits) after it, the last told first."""
    return sorted(entries, key=lambda entry: (entry.fact.kind in ("nest_manners", "remark"), -entry.index))


def _takes(entry: Entry, correct: Correct, herd: Herd) -> bool:
    """Whether the fact has the fields that the correction sets; of one animal sold or offered a plain number is the price."""
    if [name for name, _ in correct.set] == ["count"] and is_priced(entry.fact):
        return True
    return all(field_for(entry.fact, name, value, herd) for name, value in correct.set)


def _unfit_text(entry: Entry, herd: Herd) -> str:
    return f"What should be put right in “{echo(entry.fact, herd).rstrip('.')}”? Send the whole note as it should be, or “undo”."


def edited(book: Book, versions: Sequence[Note]) -> Book:
    """The book as if the message had never been sent: what its new wording is read against."""
    targets = tuple(Target(version.id) for version in versions)
    return book.with_note(Note(book.last_id + 1, "", versions[0].at, versions[0].author, reverses=targets))


# --- whose kits they are ------------------------------------------------------------------------------------------


def sire_told(book: Book, message: Message, draft: Draft, buck: str | None) -> Meaning | None:
    """The buck named as a litter's sire: the breedings to other bucks that fit it are taken back, and the words kept.

    None where the words name none of the bucks that fit.
    """
    doe = str(draft.known["doe"])
    born = date.fromisoformat(draft.known["on"])
    fitting = [entry for entry in book.standing() if _may_have_sired(entry.fact, doe, born)]
    others = [entry for entry in fitting if not same_tag(getattr(entry.fact, "buck", ""), buck or "")]
    if buck is None or len(others) == len(fitting):
        return None
    kept = Remark(text=f"{buck} is the sire of {doe}'s litter of {born.isoformat()}", who=doe, on=local_day(message.at, book.herd))
    lines = tuple(gone(book, entry.fact) for entry in others)
    return Meaning((kept,), None, "", doe, tuple(entry.target for entry in others), lines, settled=True)


def _may_have_sired(fact: Fact, doe: str, born: date) -> bool:
    """Whether it is a breeding of that doe, as long before the birth as a litter takes."""
    if not isinstance(fact, Bred) or not same_tag(fact.doe, doe):
        return False
    return SIRE_FIRST_DAY.value <= (born - fact.on).days <= SIRE_LAST_DAY.value
