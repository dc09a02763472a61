"""The family book as a breeder reads it: what in it can't be, with the notes that say so, and whose blood two animals share."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any

from core.herd.state import Animal
from core.notes.journal import Entry
from core.reckon.ancestry import CommonAncestor, common_ancestors, founders
from core.reckon.kinship import kinship
from core.reckon.pedigree import PedigreeProblem
from core.reports.behind import Behind, notes_behind
from core.reports.coat import KIT
from core.reports.evidence import Evidence
from core.reports.wording import short, when
from core.words import count, listed, share

#: Notes that tell who is out of whom, how old and of which sex.
KINDS = ("animal", "tagged", "kindled", "bred", "correct")
#: Notes that tell colors.
COLOR_KINDS = (*KINDS, "color", "litter_colors")
#: Founders that are named.
FOUNDERS = 3  # not a figure: names on a line
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
    """What can't be in the family book, colors included, or only what concerns one animal."""
    told = tuple(entries)
    book = [_worded(barn, one, told) for one in barn.book_problems if about is None or about.key in one.ids]
    colors = [_color_problem(barn, keys, told) for keys in impossible_colors(barn) if about is None or about.key in keys]
    return (*book, *colors)


def impossible_colors(barn: Evidence) -> tuple[tuple[str, ...], ...]:
    """Families whose colors can't all be right: animals by key, and a litter's untagged kits. Of several with one animal in common, one."""
    left = [set(group) for groups in barn.coats.doubts.values() for group in groups]
    found: list[tuple[str, ...]] = []
    while left:
        counted = Counter(key for group in left for key in group)
        common = max(counted, key=lambda key: (counted[key], barn.coats.book.place[key]))
        family = set().union(*(group for group in left if common in group))
        found.append(tuple(sorted(family, key=barn.coats.book.place.__getitem__)))
        left = [group for group in left if common not in group]
    return tuple(found)


def _color_problem(barn: Evidence, keys: tuple[str, ...], entries: tuple[Entry, ...]) -> FamilyProblem:
    animals = [barn.herd.animals[key] for key in keys if key in barn.herd.animals]
    kits = Counter(key.rpartition(KIT)[0] for key in keys if key not in barn.herd.animals)
    told = [f"{short(one)} ({one.color})" for one in animals] + [_kits(barn, key, many) for key, many in kits.items()]
    note = "".join(f": {one.tag} is {'blue' if one.color == 'black' else 'black'}" for one in animals[-1:])
    text = f"{listed(told)}: these colors can't all be right in one family. Send the right parents, or the right color{note}"
    return FamilyProblem("colors", tuple(one.tag for one in animals), text, _notes(animals, entries, COLOR_KINDS))


def _kits(barn: Evidence, key: str, many: int) -> str:
    """Untagged kits of one color: `2 opal kits of 14's litter of Tue 3 Nov`."""
    litter, _, color = key.partition(KIT)
    told = barn.herd.litters[litter]
    return f"{count(many, f'{color} kit')} of {_name(barn, told.dam)}'s litter of {when(told.born_on, barn.today)}"


def _notes(animals: Iterable[Animal], entries: tuple[Entry, ...], kinds: tuple[str, ...]) -> tuple[Behind, ...]:
    """The notes of these kinds about any of the animals, each once, by day."""
    found = {note.note: note for one in animals for note in notes_behind(entries, one.tag, kinds)}
    return tuple(sorted(found.values(), key=lambda one: (one.on, one.note)))


def _worded(barn: Evidence, problem: PedigreeProblem, entries: tuple[Entry, ...]) -> FamilyProblem:
    tags = tuple(_name(barn, key) for key in problem.ids)
    animals = [barn.herd.animals[key] for key in problem.ids if key in barn.herd.animals]
    text = _SAYS[problem.code].format(
        one=tags[0], other=tags[-1], all=listed(tags), note="".join(parents_note(one) for one in animals[-1:])
    )
    return FamilyProblem(problem.code, tuple(one.tag for one in animals), text, _notes(animals, entries, KINDS))


_SAYS = {
    "own_parent": "{one} is told as its own parent. Send who it is out of: {note}",
    "one_parent_twice": "{one} is told as both sire and dam of {other}. Send the right ones: {note}",
    "younger_parent": "{one} is told as a parent of {other} but is younger. Send the right birthday, or the right parents: {note}",
    "wrong_sex": "{one} is of the wrong sex to be that parent of {other}. Send its sex, or the right parents: {note}",
    "loop": "{all} are told as each other's ancestors. Till that is put right these parents count as unknown. Send the right ones: {note}",
    "two_sexes": "{all} is told as a sire of one and a dam of another. Send the right parents of one of its kits.",
    "two_rows": "{one} is told with two pairs of parents. Send the right ones: {note}",
}


def parents_note(animal: Animal) -> str:
    """A note that tells an animal's parents, as an example: `new doe 33 out of 14 by 3`."""
    dam, sire = ("14" if animal.tag != "14" else "15"), ("3" if animal.tag != "3" else "7")
    return f"new {animal.sex or 'doe'} {animal.tag} out of {dam} by {sire}"


def _name(barn: Evidence, key: str) -> str:
    animal = barn.herd.animals.get(key)
    return short(animal) if animal else key


def shared_blood(barn: Evidence, one: Animal, other: Animal) -> tuple[CommonAncestor, ...]:
    """The ancestors in which their lines meet, the weightiest first."""
    return common_ancestors(barn.book, one.key, other.key)


def diversity_lines(barn: Evidence) -> list[str]:
    """How akin each breed's breeding animals are on average, and whose blood they carry."""
    breeds: dict[str, list[Animal]] = {}
    for one in barn.living:
        if barn.stages[one.key] in {"junior", "senior"}:
            breeds.setdefault((one.breed or "").lower(), []).append(one)
    return [line for _, group in sorted(breeds.items()) for line in _diversity(barn, group)]


def _diversity(barn: Evidence, group: list[Animal]) -> list[str]:
    """Nothing where fewer than two of them have a known parent."""
    keys = [one.key for one in group]
    behind = founders(barn.book, keys)
    if behind is None or sum(1 for key in keys if any(barn.book.parents(key))) < 2:  # not a figure: two make a pair
        return []
    akin = kinship(barn.book, keys).mean_between()
    who = f"{len(group)} breeding {group[0].breed or 'animals of unknown breed'}"
    heavy = [f"{_name(barn, key)} {share(part)}" for key, part in behind.shares.items() if part > 0][:FOUNDERS]
    named = f"; most of it: {listed(heavy)}" if heavy else ""
    return [
        f"{who}: any two are {akin * 100:.1f} % akin on average, the blood of about {behind.effective:.1f} founders of equal share{named}."
    ]


def through_whom(barn: Evidence, shared: Iterable[CommonAncestor], most: int) -> str:
    """The weightiest common ancestors, each with what it adds to the COI: `3 Flint 12.5 %, 14 6.2 %`."""
    told = [f"{_name(barn, each.animal)} {each.through * 100:.1f} %" for each in shared]
    more = [f"{len(told) - most} more"] if len(told) > most else []
    return listed([*told[:most], *more])


def _cut(text: str) -> str:
    """A note cut to what a phone shows."""
    return text if len(text) <= LETTERS else f"{text[: LETTERS - 1]}…"
