"""Who is out of whom: the family book in an order that puts parents before their kits.

The sorting finds what can't be: an animal that is its own ancestor, or told twice with other parents. Such things come
back as values, with the animals concerned, so that a person can be asked. A sire of one written down as the dam of
another is flagged beside the book: the sums still hold. `sound_pedigree` makes the best of a book with such things in it, and
looks at birthdays and sexes as well.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace

Row = tuple[str, str | None, str | None]  # animal, sire, dam


@dataclass(frozen=True, slots=True)
class PedigreeProblem:
    """What can't be in a family book.

    code  `own_parent`, `loop` (its own ancestor), `two_sexes` (sire of one, dam of another), `two_rows` (different parents told twice),
          `one_parent_twice` (the same animal as sire and dam), `wrong_sex` (a doe as sire, a buck as dam), `younger_parent`
    ids   the animals concerned; of the last three the parent first, then the child
    """

    code: str
    ids: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Pedigree:
    """Animals, parents first; `sires` and `dams` are positions in `ids`, -1 for unknown."""

    ids: tuple[str, ...]
    sires: tuple[int, ...]
    dams: tuple[int, ...]
    place: Mapping[str, int] = field(repr=False, compare=False)
    warnings: tuple[PedigreeProblem, ...] = ()

    def __len__(self) -> int:
        return len(self.ids)

    def __contains__(self, animal: object) -> bool:
        return animal in self.place

    def parents(self, animal: str) -> tuple[str | None, str | None]:
        """Sire and dam of an animal."""
        at = self.place[animal]
        sire, dam = self.sires[at], self.dams[at]
        return (self.ids[sire] if sire >= 0 else None, self.ids[dam] if dam >= 0 else None)

    def ancestors(self, animals: Iterable[str]) -> set[str]:
        """Those animals and all their ancestors."""
        found: set[str] = set()
        waiting = list(animals)
        while waiting:
            animal = waiting.pop()
            if animal not in found:
                found.add(animal)
                waiting += [parent for parent in self.parents(animal) if parent is not None]
        return found

    def only(self, animals: Iterable[str]) -> Pedigree:
        """The book cut down to those animals and their ancestors."""
        wanted = self.ancestors(animals)
        return _book([(one, *self.parents(one)) for one in self.ids if one in wanted])

    def near(self, animals: Iterable[str], steps: int) -> Pedigree:
        """The book cut down to those within that many steps from parent to kit or from kit to parent; parents beyond are unknown."""
        kits: dict[str, list[str]] = {}
        for kit in self.ids:
            for parent in self.parents(kit):
                kits.setdefault(parent or "", []).append(kit)
        found, newest = set(animals), set(animals)
        for _ in range(steps):
            next_ = {other for one in newest for other in (*self.parents(one), *kits.get(one, ())) if other is not None}
            newest = next_ - found
            found |= newest
        rows = [(one, *self.parents(one)) for one in self.ids if one in found]
        return _book([(one, sire if sire in found else None, dam if dam in found else None) for one, sire, dam in rows])

    def with_kits(self, rows: Iterable[Row]) -> Pedigree:
        """The book with these kits of animals on it at its end; a parent that it doesn't have is unknown."""
        kits = [(kit, sire if sire in self else None, dam if dam in self else None) for kit, sire, dam in rows]
        return _book([*((one, *self.parents(one)) for one in self.ids), *kits])

    def generations(self, animal: str) -> int:
        """Complete generations of ancestors on the book: 0 when a parent is unknown. Say it beside every COI."""
        known = 0
        level = {animal}
        while True:
            parents = [parent for one in level for parent in self.parents(one)]
            if None in parents:
                return known
            level = {parent for parent in parents if parent is not None}
            known += 1


def pedigree(rows: Iterable[Row]) -> Pedigree | PedigreeProblem:
    """The family book of rows (animal, sire, dam) in any order; parents without a row are founders."""
    told: dict[str, Row] = {}
    for row in rows:
        if told.setdefault(row[0], row) != row:
            return PedigreeProblem("two_rows", (row[0],))
    own = tuple(animal for animal, sire, dam in told.values() if animal in (sire, dam))
    if own:
        return PedigreeProblem("own_parent", own)
    for row in list(told.values()):
        for parent in row[1:]:
            if parent is not None:
                told.setdefault(parent, (parent, None, None))
    ordered = _parents_first(told)
    return replace(_book(ordered), warnings=_two_sexes(told)) if isinstance(ordered, list) else ordered


def sound_pedigree(
    rows: Iterable[Row], born: Mapping[str, int] | None = None, sexes: Mapping[str, str] | None = None
) -> tuple[Pedigree, tuple[PedigreeProblem, ...]]:
    """The book with what can't be left out, and what that was: a parent in doubt counts as unknown, everybody else stays.

    born   birthday of each animal where it is known [any count of days]
    sexes  `buck` or `doe` where it is known

    A parent that is younger than its child or of the wrong sex is told but stays: the day or the sex may be the slip, and the sums hold.
    """
    told: dict[str, Row] = {}
    problems = [PedigreeProblem("two_rows", (row[0],)) for row in rows if told.setdefault(row[0], row) != row]
    for row in list(told.values()):
        found = _impossible(row)
        problems += found
        told[row[0]] = _without(row, {one.ids[0] for one in found})
    while isinstance(book := pedigree(told.values()), PedigreeProblem):
        problems.append(book)
        told |= {animal: _without(told[animal], set(book.ids)) for animal in book.ids}
    wrong = [one for row in told.values() for one in _wrong_sex(row, sexes or {})]
    young = [one for row in told.values() for one in _younger(row, born or {})]
    named = {one.ids[0] for one in wrong}
    both = (one for one in book.warnings if not named & set(one.ids))
    return book, (*problems, *young, *wrong, *both)


def _impossible(row: Row) -> list[PedigreeProblem]:
    """What can't be of an animal's own parents."""
    animal, sire, dam = row
    if animal in {sire, dam}:
        return [PedigreeProblem("own_parent", (animal,))]
    return [PedigreeProblem("one_parent_twice", (sire, animal))] if sire is not None and sire == dam else []


def _younger(row: Row, born: Mapping[str, int]) -> list[PedigreeProblem]:
    animal, *parents = row
    told = [parent for parent in parents if parent in born and animal in born]
    return [PedigreeProblem("younger_parent", (parent, animal)) for parent in told if parent and born[parent] > born[animal]]


def _wrong_sex(row: Row, sexes: Mapping[str, str]) -> list[PedigreeProblem]:
    animal, sire, dam = row
    wrong = [(sire, "doe"), (dam, "buck")]
    return [PedigreeProblem("wrong_sex", (parent, animal)) for parent, sex in wrong if parent is not None and sexes.get(parent) == sex]


def _without(row: Row, parents: set[str]) -> Row:
    """The row with these parents unknown."""
    animal, sire, dam = row
    return animal, None if sire in parents else sire, None if dam in parents else dam


def _book(rows: list[Row]) -> Pedigree:
    place = {row[0]: at for at, row in enumerate(rows)}
    sires = tuple(-1 if row[1] is None else place[row[1]] for row in rows)
    dams = tuple(-1 if row[2] is None else place[row[2]] for row in rows)
    return Pedigree(tuple(place), sires, dams, place)


def _two_sexes(told: Mapping[str, Row]) -> tuple[PedigreeProblem, ...]:
    sires = {row[1] for row in told.values() if row[1] is not None}
    dams = {row[2] for row in told.values() if row[2] is not None}
    wrong = tuple(sorted(sires & dams))
    return (PedigreeProblem("two_sexes", wrong),) if wrong else ()


def _parents_first(told: Mapping[str, Row]) -> list[Row] | PedigreeProblem:
    """The rows sorted; full sibs end up side by side only where they were told so. A walk with its own stack: books are deep."""
    ordered: list[Row] = []
    done: set[str] = set()
    open_: dict[str, None] = {}
    stack: list[str] = list(told)[::-1]
    while stack:
        animal = stack[-1]
        waiting = [parent for parent in told[animal][1:] if parent is not None and parent not in done]
        if animal in done or not waiting:
            stack.pop()
            open_.pop(animal, None)
            if animal not in done:
                done.add(animal)
                ordered.append(told[animal])
            continue
        open_[animal] = None
        caught = [parent for parent in waiting if parent in open_]
        if caught:
            trail = list(open_)
            return PedigreeProblem("loop", tuple(trail[trail.index(caught[0]) :]))
        stack += waiting
    return ordered
