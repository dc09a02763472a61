"""Questions about litters: which one is meant, how many kits live, how many have no tag yet."""

from __future__ import annotations

from datetime import date

from core.handbook import weather as figures
from core.herd.state import Herd, Litter


def litters_of(herd: Herd, doe: str) -> tuple[Litter, ...]:
    """The litters that a doe (by key) bore, the earliest first."""
    return tuple(sorted((litter for litter in herd.litters.values() if litter.dam == doe), key=lambda litter: litter.born_on))


def litters_sired(herd: Herd, buck: str) -> tuple[Litter, ...]:
    """The litters that a buck (by key) sired, the earliest first."""
    return tuple(sorted((litter for litter in herd.litters.values() if litter.sire == buck), key=lambda litter: litter.born_on))


def parity(herd: Herd, doe: str) -> int:
    """How many litters the doe has borne."""
    return len(litters_of(herd, doe))


def live_born(litter: Litter) -> int:
    """Live-born kits; alive not said is born less dead."""
    if litter.alive is not None:
        return litter.alive
    return max(0, (litter.born or 0) - (litter.dead or 0))


def alive_now(litter: Litter, on: date | None = None) -> int:
    """Kits alive in the nest, tagged or not: those weaned once it is weaned; with `on`, as it stood at the end of that day."""
    told = [kits for day, kits in litter.tally if on is None or day <= on]
    if told:
        return told[-1]
    return 0 if on is not None and on < litter.born_on else _counted(litter)


def _counted(litter: Litter) -> int:
    """Kits alive of a litter that came on the book without its history."""
    came = sum(each.count for each in litter.fostered_in) - sum(each.count for each in litter.fostered_out)
    return max(0, live_born(litter) + came - sum(loss.count for loss in litter.losses))


def untagged(herd: Herd, litter: Litter) -> int:
    """Kits of the litter on the farm that have no tag."""
    tagged = [herd.animals[key] for key in litter.tagged if key in herd.animals]
    if litter.weaned_on is None:
        return max(0, alive_now(litter) - sum(1 for kit in tagged if kit.living))
    left = litter.left - litter.left_unweaned
    return max(0, (litter.weaned or 0) - left - sum(1 for kit in tagged if kit.weaned_on is not None))


def on_book(herd: Herd, litter: Litter) -> int:
    """Kits that the book knows of the litter: in the nest, or once weaned those with no tag."""
    return alive_now(litter) if litter.weaned_on is None else untagged(herd, litter)


def the_litter(herd: Herd, doe: str, on: date | None = None) -> Litter | None:
    """What "the litter" of a doe means: her youngest one with untagged kits."""
    return next((litter for litter in _youngest_first(herd, doe, on) if untagged(herd, litter)), None)


def newest_litter(herd: Herd, doe: str, on: date | None = None) -> Litter | None:
    """The doe's youngest litter, whatever became of it."""
    return next(iter(_youngest_first(herd, doe, on)), None)


def nursed_litter(herd: Herd, doe: str, on: date | None = None) -> Litter | None:
    """The litter under a doe: her youngest one that is not weaned and has kits."""
    return next((litter for litter in _youngest_first(herd, doe, on) if litter.weaned_on is None and alive_now(litter)), None)


def litter_meant(herd: Herd, doe: str, on: date | None = None) -> Litter | None:
    """The litter that a note on a doe's kits is about: the one under her, else the one with untagged kits, else the youngest."""
    return nursed_litter(herd, doe, on) or the_litter(herd, doe, on) or newest_litter(herd, doe, on)


def _youngest_first(herd: Herd, doe: str, on: date | None) -> list[Litter]:
    return [litter for litter in reversed(litters_of(herd, doe)) if on is None or litter.born_on <= on]


def litter_born(herd: Herd, dam: str, born: date) -> Litter | None:
    """The dam's litter of that birth date; a day's difference is one night."""
    return next((litter for litter in litters_of(herd, dam) if abs((litter.born_on - born).days) <= 1), None)


def nests_at_risk(herd: Herd, on: date) -> tuple[tuple[Litter, int, bool], ...]:
    """Unweaned litters that cold can kill, youngest first: litter, age in days, whether they leave the nest already."""
    last, leaving = figures.KIT_COLD_RISK_UNTIL_DAYS.whole, figures.NEST_LEAVING_FROM_DAYS.whole
    ages = ((litter, (on - litter.born_on).days) for litter in herd.litters.values() if litter.weaned_on is None)
    at_risk = [(litter, age, age >= leaving) for litter, age in ages if 0 <= age <= last and alive_now(litter)]
    return tuple(sorted(at_risk, key=lambda each: (each[1], each[0].key)))
