"""A list that comes through a chat: looked at first, asked about, and taken in or left by a button.

A button carries all that it needs to know of the list, so nothing is in between while a person thinks. What is taken in is one note.
"""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from datetime import date
from pathlib import Path
from typing import TYPE_CHECKING, Final

from core.app.letters import Letter, Offer, put
from core.app.moving_in import Brought, come_back, note_of, own_of, understood
from core.app.photos import folder_of, lay_down
from core.app.room import Room
from core.notes.replay import local_day
from core.notes.talk.about_note import about
from core.problem import Problem
from core.reply import Choice, Reply
from core.store import buttons, intake, people
from core.words import count, full_day

if TYPE_CHECKING:
    from core.app.hearing import Turn
    from core.notes.journal import Note
    from core.notes.moving.intake import Intake
    from core.notes.moving.layout import Question
    from core.notes.replay import Book
    from core.store.intake import Update

Progress = Callable[[int, int], None]

#: What the words of such a button begin with: nobody types that.
BUTTON: Final = "list brought:"
LEFT: Final = "Left. Nothing of it is on the book."
GONE: Final = "That list is not here any more. Please send it again."
#: What a list is called that came without a file.
PASTED: Final = "your list"
#: Rows that a message names, of those to look at.
NAMED: Final = 5  # not a figure: rows shown
#: What an answer is called on its button, where its word alone says too little.
LABELS: Final = {
    "MDY": "Month first",
    "DMY": "Day first",
    "YMD": "Year first",
    "decimal": "Tenths of a pound",
    "ounces": "Ounces",
    "oz": "Ounces",
    "g": "Grams",
}


def _silent(_done: int, _all: int) -> None:
    """Progress that nobody watches."""


@dataclass(frozen=True, slots=True)
class Listed:
    """A list that waits: the name of its file in the folder, what its bringer calls it and said with it.

    do         what is to be done: look, take, leave
    decisions  what was answered so far
    """

    file: str
    name: str
    words: str = ""
    decisions: Mapping[str, str] = field(default_factory=dict)
    do: str = "look"

    def says(self) -> str:
        """The words of a button about it."""
        return BUTTON + json.dumps([self.do, self.file, self.name, self.words, dict(self.decisions)], ensure_ascii=False)

    def choice(self, label: str, do: str, **decided: str) -> Choice:
        """A button: it does that with the list, with these answers too."""
        return Choice(label, replace(self, do=do, decisions={**self.decisions, **decided}).says())


def listed(says: str) -> Listed | None:
    """The list that a pressed button is about; None where it is about something else."""
    if not says.startswith(BUTTON):
        return None
    do, file, name, words, decisions = json.loads(says.removeprefix(BUTTON))
    return Listed(file, name, words, decisions, do)


def kept(folder: Path, name: str, content: bytes, words: str = "") -> Listed:
    """The list laid into the folder under what it holds: the same again is there already."""
    file = hashlib.sha256(content).hexdigest()
    lay_down(folder, file, content)
    return Listed(file, name, words)


def is_list(text: str) -> bool:
    """Whether a message is a list of animals or litters, which goes the way of a spreadsheet."""
    from core.notes.moving.pasted import is_list as told  # noqa: PLC0415 - most messages have one line

    return text.count("\n") > 0 and told(text)


class Bringing(Room):
    """Lists that are brought through a chat."""

    def upload_folder(self, spare: Path) -> Path:
        """Where brought files lie: beside the book; of a book that is in no file in the spare place."""
        return folder_of(self._engine.url, "uploads") or spare

    def bring(self, brought: Brought, wanted: Listed, progress: Progress = _silent) -> Reply:
        """What is answered about the list; taken in, where that is wanted."""
        if wanted.do != "take":
            return _looked(self._hearing.book(), brought, wanted, progress)
        with self._hearing.turn() as turn:
            return _taken(turn, brought, wanted, progress)[0]

    def bring_update(
        self, update: Update, brought: Brought, wanted: Listed, *, button: str | None = None, progress: Progress = _silent
    ) -> Reply:
        """The same for a message kept in the inbox: answer, spend the button, and be done with it, all or nothing."""
        looked = None if wanted.do == "take" else _looked(self._hearing.book(), brought, wanted, progress)
        with self._hearing.turn() as turn:
            reply, note = (looked, None) if looked is not None else _taken(turn, brought, wanted, progress)
            offers = [Offer(choice) for choice in reply.choices]
            if note is not None:
                offers.append(Offer(Choice("Undo", "undo"), about(note), apart=True))
            key = f"update:{update.bot_id}:{update.update_id}"
            people.know_chat(turn.connection, self._farm, update.chat)
            put(
                turn.connection,
                self._farm,
                Letter(key, update.chat, reply.lines, tuple(offers), note=note.id if note else None, person=brought.author),
                brought.at,
            )
            if button is not None:
                buttons.spend(turn.connection, self._farm, button, brought.at)
            intake.mark(turn.connection, self._farm, update.id, "done")
        return reply


def _looked(book: Book, brought: Brought, wanted: Listed, progress: Progress) -> Reply:
    """What each row would become, in few lines, and what is to be asked; nothing is recorded."""
    if wanted.do == "leave":
        return Reply((LEFT,))
    own = own_of(brought.sheets)
    if isinstance(own, Problem):
        return _refused(own)
    if own is not None:
        return Reply((come_back(book, own, brought, dry=True)[0].reply.lines[0], "Take it in?"), _take_or_leave(wanted))
    found = understood(book, brought, wanted.decisions, progress)
    if isinstance(found, Problem):
        return _refused(found)
    lines = tuple(found.lines(NAMED, ""))
    if found.questions:
        return _asked(found.questions[0], lines, wanted, local_day(brought.at, book.herd))
    if not found.facts:
        return Reply((*lines, "Nothing new is in it."))
    return Reply((*lines, "Nothing is recorded yet. Take it in?"), _take_or_leave(wanted))


def _refused(problem: Problem) -> Reply:
    return Reply((f"{problem.text} {problem.remedy}".strip(),))


def _take_or_leave(wanted: Listed) -> tuple[Choice, ...]:
    return wanted.choice("Take it in", "take"), wanted.choice("Leave it", "leave")


def _asked(question: Question, lines: tuple[str, ...], wanted: Listed, today: date) -> Reply:
    """The first thing that has to be known, its answers as buttons."""
    if question.key == "tag":
        choices = [wanted.choice(head, "look", **{head: "tag"}) for head in (said.removesuffix("=tag") for said in question.choices)]
    else:
        choices = [
            wanted.choice(_label(question, said), "look", **{question.key: said}) for said in question.choices or (today.isoformat(),)
        ]
    more = ("For another day, write it beside them in the list and send that.",) if question.key in {"weighed", "gone"} else ()
    return Reply((*lines, question.text, *more), (*choices, wanted.choice("Leave it", "leave")))


def _label(question: Question, said: str) -> str:
    """What stands on the button of an answer."""
    if question.key in {"weighed", "gone"}:
        return full_day(date.fromisoformat(said))
    return f"At {said} days" if question.key == "weaned" else LABELS.get(said, said)


def _taken(turn: Turn, brought: Brought, wanted: Listed, progress: Progress) -> tuple[Reply, Note | None]:
    """The list written down, the answer, and the one note that it became."""
    own = own_of(brought.sheets)
    if isinstance(own, Problem):
        return _refused(own), None
    if own is not None:
        told, notes = come_back(turn.book, own, brought, dry=False)
        for note in notes:
            turn.write(note)
        return told.reply, None
    found = understood(turn.book, brought, wanted.decisions, progress)
    if isinstance(found, Problem):
        return _refused(found), None
    if found.questions or not found.facts:
        return _looked(turn.book, brought, wanted, _silent), None
    note = note_of(turn.book, found, brought)
    turn.write(note)
    return Reply((*_counted(found, brought), "It is one note: “undo” takes all of it back.")), note


def _counted(found: Intake, brought: Brought) -> tuple[str, ...]:
    """What was taken in, and how many rows gave nothing."""
    odd = sum(bool(row.doubts) for row in found.rows)
    line = f"Taken in from {brought.name}: {count(len(found.facts), 'note')} out of {count(sum(bool(row.facts) for row in found.rows), 'row')}."
    return (line, f"{count(odd, 'row')} with something to look at, as said above.") if odd else (line,)
