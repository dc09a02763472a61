"""A pedigree of three to five generations: who they were, how they looked, what they weighed, and how inbred they are."""

from __future__ import annotations

from datetime import date

from core.herd.settings import junior_age
from core.herd.state import Animal, Herd
from core.reports.evidence import Evidence, evidence
from core.reports.family import shared_blood, through_whom
from core.reports.papers.calendar import on_one_line
from core.reports.papers.paper import written
from core.reports.papers.tree import Ancestor, PedigreeTree
from core.reports.papers.wanted import Wanted
from core.reports.wording import age, grams, short
from core.words import count

#: How many generations of ancestors a sheet holds.
FEWEST, USUAL, MOST = 3, 4, 5  # not figures: what a sheet holds
#: Common ancestors that are named.
SHARED = 4  # not a figure: what fits in a line


def pedigree_tree(herd: Herd, today: date, wish: Wanted) -> PedigreeTree | None:
    """The pedigree of an animal; None where there is no such animal."""
    one = herd.find(wish.who or "")
    if one is None:
        return None
    barn = evidence(herd, today)
    depth = min(max(wish.generations or USUAL, FEWEST), MOST)
    rows: list[tuple[str | None, ...]] = [barn.book.parents(one.key)]
    while len(rows) < depth:
        rows.append(tuple(parent for key in rows[-1] for parent in (barn.book.parents(key) if key else (None, None))))
    told = tuple(tuple(_ancestor(barn, key, one.breed) if key else None for key in row) for row in rows)
    return PedigreeTree(Ancestor(on_one_line(short(one)), _told(barn, one, None)), told, tuple(_inbreeding(barn, one)))


def _ancestor(barn: Evidence, key: str, breed: str | None) -> Ancestor:
    known = barn.herd.animals.get(key)
    return _animal(barn, known, breed) if known else Ancestor(on_one_line(key), ())


def _animal(barn: Evidence, one: Animal, breed: str | None) -> Ancestor:
    coi = _coi(barn, one)
    return Ancestor(on_one_line(short(one)), (*_told(barn, one, breed), *((coi,) if coi else ())))


def _told(barn: Evidence, one: Animal, breed: str | None) -> tuple[str, ...]:
    """What it is; its breed only where it is not the one named."""
    other = one.breed if (one.breed or "").lower() != (breed or "").lower() else None
    born = f"born {written(one.born)}" if one.born else None
    return tuple(on_one_line(part) for part in (other, one.color, born, _weight(barn, one)) if part)


def _weight(barn: Evidence, one: Animal) -> str | None:
    """The newest weight, with the age of one that was not grown."""
    if not one.weights:
        return None
    newest, settings = one.weights[-1], barn.herd.settings
    days = (newest.on - one.born).days if one.born else None
    young = f" at {age(days)}" if days is not None and days < junior_age(settings) else ""
    return f"{grams(settings, newest.grams)}{young}"


def _coi(barn: Evidence, one: Animal) -> str | None:
    """How inbred it is, where it is."""
    inbred = barn.kinship.inbreeding.get(one.key, 0.0)
    return f"COI {inbred * 100:.1f} %" if inbred else None


def _inbreeding(barn: Evidence, one: Animal) -> list[str]:
    inbred = barn.kinship.inbreeding.get(one.key, 0.0)
    depth = barn.book.generations(one.key)
    if not any(barn.book.parents(one.key)):
        return ["COI unknown: neither sire nor dam is on the book."]
    lines = [f"COI {inbred * 100:.1f} %, all ancestors known for {count(depth, 'generation')}."]
    sire, dam = (barn.herd.animals.get(key or "") for key in barn.book.parents(one.key))
    shared = shared_blood(barn, sire, dam) if inbred and sire and dam else ()
    return [*lines, *([f"Through {through_whom(barn, shared, SHARED)}."] if shared else [])]
