"""A message that answers one note of the farm's, by a button under it or as the chat's own reply: taken back, put right, told anew, or answered.

Such a message is understood as if nothing had been said since: "15 not 14" puts that very note right, "lost one" is about its doe,
"8" answers its question.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

from core.notes.journal import Entry, Note
from core.notes.kinds.undoing import Undo
from core.notes.meaning import Meaning
from core.notes.reading import Ask, Draft, Message, ReplyTo
from core.notes.replay import Book
from core.notes.talk.amend import edited, gone, takes_back, versions_of
from core.notes.talk.answer import NO, affirms, plain
from core.notes.talk.doubt import settled
from core.notes.talk.recall import PASSING

#: What a message means, as if nothing had been said after the book's last note.
Understands = Callable[[Book, Message], Meaning]

#: What such a message names in place of a chore.
NOTE = "note"
#: What the question after "fix" waits for: the note as it should be.
INSTEAD = "instead"
FIX = "fix"

GONE = "Nothing of that note stands any more: it was taken back or put right since."
LEFT = "Left as it was."


def about(note: Note) -> ReplyTo:
    """The note as what a message answers."""
    return ReplyTo(NOTE, None, str(note.id))


def note_meant(book: Book, reply_to: ReplyTo) -> Note | None:
    """The note that is answered, as it was last edited; None where the message answers something else."""
    if reply_to.chore != NOTE:
        return None
    found = next((note for note in book.notes if str(note.id) == reply_to.key), None)
    return versions_of(book, found)[-1] if found is not None else None


def stands(book: Book, note: Note) -> tuple[Entry, ...]:
    """What the note told and nobody took back."""
    return tuple(entry for entry in book.standing() if entry.note.id == note.id and entry.fact.kind not in {"query", "undo", "correct"})


def of_note(book: Book, message: Message, note: Note, understands: Understands) -> Meaning:
    """What the message means to that note. `understands` reads it as if the note had been the last."""
    if note.ask is not None and note.ask.draft is not None and note.ask.draft.wanted == INSTEAD:
        anew = told_anew(book, message, note.ask.draft, understands)
        if anew is not None:
            return anew
    here = stands(book, note)
    if plain(message.text) == FIX:
        return _asks_anew(note) if here else Meaning(notices=(GONE,), settled=True)
    meaning = understands(_until(book, note), replace(message, reply_to=None, author=note.author, chat=note.chat))
    first = meaning.facts[0] if meaning.facts else None
    if isinstance(first, Undo) and first.who is None and first.about is None and here:
        lines = tuple(gone(book, entry.fact) for entry in here)
        return Meaning((first,), None, "", note.subject, takes_back(note), lines, settled=True)
    if first is not None and first.kind in {"undo", "correct"} and not here and _went_on(book, note):
        return Meaning(notices=(GONE,), settled=True)
    return meaning


def told_anew(book: Book, message: Message, draft: Draft, understands: Understands) -> Meaning | None:
    """The note as it should have been, after "fix"; it takes the place of what it said. None where the words tell nothing."""
    note = next(each for each in book.notes if each.id == draft.known["note"])
    said, waiting = plain(message.text), draft.known.get("text")
    if said in NO:
        return Meaning(notices=(LEFT,), settled=True)
    if not stands(book, note):
        return Meaning(notices=(GONE,), settled=True)
    agreed = waiting is not None and affirms(said)
    told = replace(message, text=str(waiting) if agreed else message.text)
    meaning = of_note(book, told, note, understands)
    if not agreed and meaning.facts and meaning.facts[0].kind in {"undo", "correct"}:
        return meaning
    without = edited(book, versions_of(book, note))
    then = replace(told, reply_to=None, at=note.at, author=note.author, chat=note.chat)
    before = replace(without, notes=tuple(each for each in without.notes if each.id < note.id))
    anew = settled(without, then, replace(understands(before, then), sure=agreed))
    if anew.ask is not None:
        return _still_asks(draft, told.text, anew.ask)
    if all(fact.kind in PASSING for fact in anew.facts):
        return None
    was = tuple(f"Was: {gone(book, entry.fact).removeprefix('Taken back: ')}" for entry in stands(book, note))
    return replace(anew, reverses=(*takes_back(note), *anew.reverses), notices=(*was, *anew.notices), settled=True)


def _asks_anew(note: Note) -> Meaning:
    text = f"It says “{note.text.strip()}”. What should it say? Send the whole note as it should be, or what was wrong: “15 not 14”."
    return Meaning(ask=Ask("what", text, (), Draft("correct", {"note": note.id}, INSTEAD)), subject=note.subject, settled=True)


def _still_asks(draft: Draft, text: str, ask: Ask) -> Meaning:
    """What is in doubt about the new wording; until that is settled the note stays as it was."""
    sure = ask.draft is not None and ask.draft.wanted == "confirm"
    waits = (
        Draft("correct", {"note": draft.known["note"], "text": text}, INSTEAD)
        if sure
        else replace(draft, known={"note": draft.known["note"]})
    )
    more = "" if sure else " Send the whole note."
    return Meaning(ask=Ask(ask.why, f"{ask.text}{more} Until then it stays as it was.", ask.choices if sure else (), waits), settled=True)


def _until(book: Book, note: Note) -> Book:
    """The book with the conversation as it was right after the note."""
    return replace(book, notes=tuple(each for each in book.notes if each.id <= note.id))


def _went_on(book: Book, note: Note) -> bool:
    """Whether something was recorded or taken back since, where the note was told."""
    return any(each.id > note.id and each.chat == note.chat and any(fact.kind not in PASSING for fact in each.facts) for each in book.notes)
