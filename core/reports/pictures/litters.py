"""A doe's litters over her life: born alive, born dead, weaned, and what to expect of the next."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from core.herd.litters import litters_of, litters_sired, live_born
from core.herd.state import Animal, Litter
from core.problem import Problem
from core.reports.evidence import Evidence
from core.reports.litter_size import next_litter, size_lines, size_of
from core.reports.pictures.values import Born, Litters
from core.reports.wording import called
from core.words import count, listed

#: Litters that fit beside each other; of more, the newest.
LITTERS_SHOWN = 12  # not a figure: columns that fit on a phone


def litter_sizes(barn: Evidence, animal: Animal) -> Litters | Problem:
    """The picture of the litters that a doe bore, or a buck sired; a Problem where there is none."""
    hers = litters_of(barn.herd, animal.key)
    found = [one for one in hers or litters_sired(barn.herd, animal.key) if one.born_on <= barn.today and _told(one)]
    if not found:
        text = f"{called(animal)} has no litter on the book whose kits were counted."
        return Problem("nothing_to_show", text, remedy="Tell me: doe 14 kindled 8, 2 dead")
    shown = found[-LITTERS_SHOWN:]
    expecting = bool(hers) and animal.living
    following = _following(barn, animal) if expecting else None
    return Litters(
        title=f"Litters of {called(animal)}",
        note=_note(animal, found, shown),
        alt="\n".join(_words(barn, animal, found, expecting=expecting)),
        litters=tuple(_born(one, shown) for one in shown),
        following=following,
    )


def _told(litter: Litter) -> bool:
    return litter.alive is not None or litter.born is not None


def _born(one: Litter, shown: Sequence[Litter]) -> Born:
    """A litter, by its day; with the year where it is the first or a new year's first."""
    before = next((each for each in reversed(shown) if each.born_on < one.born_on), None)
    new = before is None or before.born_on.year != one.born_on.year
    return Born(_day(one.born_on, year=new), live_born(one), _dead(one), one.weaned if one.weaned_on else None)


def _day(on: date, *, year: bool) -> str:
    return f"{on.day} {on:%b}\n{on.year}" if year else f"{on.day} {on:%b}"


def _dead(one: Litter) -> int:
    """Kits born dead; where only born and alive are told, what is missing."""
    return one.dead if one.dead is not None else max((one.born or 0) - live_born(one), 0)


def _following(barn: Evidence, doe: Animal) -> tuple[float, float, float]:
    """What to expect of her next litter, with its bounds."""
    size = size_of(barn, doe)
    low, high = next_litter(size)
    return low, size.following, high


def _note(animal: Animal, found: Sequence[Litter], shown: Sequence[Litter]) -> str:
    told = [animal.breed] if animal.breed else []
    told += [f"the newest {len(shown)} of {count(len(found), 'litter')}" if len(found) > len(shown) else count(len(found), "litter")]
    return ", ".join(told)


def _words(barn: Evidence, animal: Animal, found: Sequence[Litter], *, expecting: bool) -> list[str]:
    """Each litter's live-born in order, the weaned, and the next one."""
    alive = listed(str(live_born(one)) for one in found)
    dead = sum(_dead(one) for one in found)
    weaned = [one for one in found if one.weaned_on is not None and one.weaned is not None]
    lines = [f"{called(animal)}: {count(len(found), 'litter')}; {alive} born alive{f', {dead} born dead' if dead else ''}."]
    lines += [f"Weaned: {listed(str(one.weaned) for one in weaned)}."] if weaned else []
    return [*lines, *(size_lines(barn, animal) if expecting else [])]
