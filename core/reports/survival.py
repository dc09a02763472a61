"""How a doe raises her kits: what she was given, what she weaned, and what the weather or a fox took.

Kits count where they were nursed: those fostered to her are hers to raise, those fostered away are not. Losses laid to
cold, heat or a predator are not held against her; they are told apart. A few kits say little, so her share leans on the herd's.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from core.handbook import survival as figures
from core.herd.litters import alive_now, live_born
from core.herd.state import Herd, Litter
from core.reckon.survival import Prior, Survival, herd_prior, likeness, survival

#: Causes of loss that lie with the weather or with what got in, not with the doe.
NOT_HERS = frozenset({"cold", "heat", "predator"})


@dataclass(frozen=True, slots=True)
class Raised:
    """One litter as it was nursed.

    given    live-born, less those fostered away, plus those fostered in
    excused  of them lost to weather or predator
    kept     of them weaned, or alive past weaning age
    """

    litter: Litter
    given: int
    excused: int
    kept: int

    @property
    def alive(self) -> int:
        """The kits that count: given less excused."""
        return max(self.given - self.excused, self.kept)


@dataclass(frozen=True, slots=True)
class DamSurvival:
    """A doe's record of raising kits, litter by litter, and what it says of her."""

    doe: str
    litters: tuple[Raised, ...]
    share: Survival

    @property
    def alive(self) -> int:
        """Live-born in finished litters, less losses laid to weather or predator."""
        return self.share.alive

    @property
    def kept(self) -> int:
        """Of them weaned."""
        return self.share.kept

    @property
    def excused(self) -> int:
        """Kits lost to weather or predator, held against nobody."""
        return sum(one.excused for one in self.litters)

    @property
    def enough(self) -> bool:
        """Whether she has raised enough to be judged."""
        return len(self.litters) >= figures.JUDGED_FROM_LITTERS.value or self.alive >= figures.JUDGED_FROM_LIVE_BORN.value

    def document(self) -> dict[str, Any]:
        """The contract's `survival` object."""
        share = self.share
        return {
            "alive": share.alive,
            "kept": share.kept,
            "estimate": share.estimate,
            "low": share.low,
            "high": share.high,
            "litters": len(self.litters),
            "excused": self.excused,
        }


def finished(litter: Litter, today: date) -> bool:
    """Whether it was weaned, or is past weaning age."""
    return litter.weaned_on is not None or today > _weaning_day(litter)


def nursed(litter: Litter) -> int:
    """Kits that were hers to raise: live-born, less those fostered away, plus those fostered in."""
    return max(live_born(litter) + sum(one.count for one in litter.fostered_in) - sum(one.count for one in litter.fostered_out), 0)


def raised(litter: Litter) -> Raised | None:
    """The litter as it was nursed; None where nobody told how many were born alive."""
    if litter.alive is None and litter.born is None:
        return None
    given = nursed(litter)
    excused = sum(one.count for one in litter.losses if one.cause in NOT_HERS)
    kept = litter.weaned if litter.weaned is not None else alive_now(litter, _weaning_day(litter))
    return Raised(litter, given, min(excused, given), kept)


def _weaning_day(litter: Litter) -> date:
    return litter.weaned_on or litter.born_on + timedelta(days=figures.FINISHED_DAYS.whole)


def litters_by_dam(herd: Herd) -> Mapping[str, tuple[Litter, ...]]:
    """Each doe's litters, the first one first."""
    found: dict[str, list[Litter]] = {}
    for litter in sorted(herd.litters.values(), key=lambda one: one.born_on):
        found.setdefault(litter.dam, []).append(litter)
    return {doe: tuple(litters) for doe, litters in found.items()}


def default_prior() -> Prior:
    """What is believed of a herd's does before their litters tell."""
    mean, kits = figures.PRIOR_MEAN.value, figures.PRIOR_WEIGHT.value
    return Prior(mean * kits, (1 - mean) * kits)


def dam_survivals(herd: Herd, today: date) -> Mapping[str, DamSurvival]:
    """Every doe with a finished litter, and what her litters say of her next to the herd's."""
    told = {doe: _finished(litters, today) for doe, litters in litters_by_dam(herd).items()}
    told = {doe: litters for doe, litters in told.items() if litters}
    counts = {doe: [(one.alive, one.kept) for one in litters] for doe, litters in told.items()}
    totals = [(sum(alive for alive, _ in each), sum(kept for _, kept in each)) for each in counts.values()]
    prior = herd_prior(totals, default_prior(), least=figures.PRIOR_FROM_DOES.whole, cap=figures.PRIOR_WEIGHT_LARGEST.value)
    alike = likeness(list(counts.values()), figures.LITTER_SPREAD.value)
    level = figures.INTERVAL.value
    return {doe: DamSurvival(doe, told[doe], survival(counts[doe], prior, alike, level)) for doe in told}


def _finished(litters: tuple[Litter, ...], today: date) -> tuple[Raised, ...]:
    each = (raised(litter) for litter in litters if finished(litter, today))
    return tuple(one for one in each if one is not None)
