"""The family book as a breeder reads it: what in it can't be, with the notes that say so, and whose blood two animals share."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from core.herd.state import Animal
from core.notes.journal import Entry
from core.reckon.ancestry import CommonAncestor, common_ancestors
from core.reckon.pedigree import PedigreeProblem
from core.reports.behind import Behind, notes_behind
from core.reports.evidence import Evidence
from core.reports.wording import short, when
from core.words import listed

#: Notes that tell who is out of whom, how old and of which sex.
KINDS = ("animal", "tagged", "kindled", "bred", "correct")
#: Letters of a note that are shown.
LETTERS = 60  # not a figure: letters on a line


@dataclass(frozen=True, slots=True)
class FamilyProblem:
    """What can't be in the family book, in words, and the notes that tell it."""

    code: str
    tags: tuple[str, ...]
    text: str
    notes: tuple[Behind, ...]

    def lines(self, barn: Evidence) -> list[str]:
        """The problem, and under it its notes."""
        told = [(when(one.on, barn.today), " ".join(one.text.split())) for one in self.notes]
        return [self.text, *(f"  {on[:1].upper()}{on[1:]}: {_cut(text)}" for on, text in told)]

    def document(self) -> dict[str, Any]:
        """The problem as a value."""
        return {"code": self.code, "tags": list(self.tags), "text": self.text, "notes": [one.document() for one in self.notes]}


def family_problems(barn: Evidence, entries: Iterable[Entry] = (), about: Animal | None = None) -> tuple[FamilyProblem, ...]:
    """What can't be in the family book, or only what concerns one animal."""
    told = tuple(entries)
    return tuple(_worded(barn, one, told) for one in barn.book_problems if about is None or about.key in one.ids)


def _worded(barn: Evidence, problem: PedigreeProblem, entries: tuple[Entry, ...]) -> FamilyProblem:
    tags = tuple(_name(barn, key) for key in problem.ids)
    text = _SAYS[problem.code].format(one=tags[0], other=tags[-1], all=listed(tags))
    animals = [barn.herd.animals[key] for key in problem.ids if key in barn.herd.animals]
    notes = {note.note: note for one in animals for note in notes_behind(entries, one.tag, KINDS)}
    return FamilyProblem(
        problem.code, tuple(one.tag for one in animals), text, tuple(sorted(notes.values(), key=lambda one: (one.on, one.note)))
    )


_SAYS = {
    "own_parent": "{one} is told as its own parent. Send who it is out of: {one} is out of 14 by 3",
    "one_parent_twice": "{one} is told as both sire and dam of {other}. Send the right ones: {other} is out of 14 by 3",
    "younger_parent": "{one} is told as a parent of {other} but is younger. Send the right birthday, or the right parent of {other}.",
    "wrong_sex": "{one} is of the wrong sex to be that parent of {other}. Send its sex, or the right parent of {other}.",
    "loop": "{all} are told as each other's ancestors. Send the right parents of one of them; till then these parents count as unknown.",
    "two_sexes": "{all} is told as a sire of one and a dam of another. Send the right parents.",
    "two_rows": "{one} is told with two pairs of parents. Send the right ones.",
}


def _name(barn: Evidence, key: str) -> str:
    animal = barn.herd.animals.get(key)
    return short(animal) if animal else key


def shared_blood(barn: Evidence, one: Animal, other: Animal) -> tuple[CommonAncestor, ...]:
    """The ancestors in which their lines meet, the weightiest first."""
    return common_ancestors(barn.book, one.key, other.key)


def through_whom(barn: Evidence, shared: Iterable[CommonAncestor], most: int) -> str:
    """The weightiest common ancestors, each with what it adds to the COI: `3 Flint 12.5 %, 14 6.2 %`."""
    told = [f"{_name(barn, each.animal)} {each.through * 100:.1f} %" for each in shared]
    more = [f"{len(told) - most} more"] if len(told) > most else []
    return listed([*told[:most], *more])


def _cut(text: str) -> str:
    """A note cut to what a phone shows."""
    return text if len(text) <= LETTERS else f"{text[: LETTERS - 1]}…"
