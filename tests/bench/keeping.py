"""Whom to keep over winter, in simulated herds whose truth is known: `python -m tests.bench.keeping [HERDS]` (default 200).

Each herd (`tests/keeping_herds.py`) is two years of notes, with half as many cages for the winter as there are animals, two of them for
bucks. Five breeders choose by the same notes:
- ours       the worths of the reports and the program's choice
- plan       the whole plan as `keep` tells it, flags, holds and all: those that are to stay
- raw        does by kits weaned a litter and by how their kits weigh, bucks by their kits' bare weights, young ones by dam, sire and own weight
- last       the same by the last litter only
- random     anybody, two of them bucks
Told is what next year brings of the kept set by the truth: as a share of the best set's, and the gain over keeping at random as a share
of the best set's gain; and a paired signed-rank test of ours against each other.
"""

from __future__ import annotations

import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from statistics import fmean

import numpy as np
from scipy.stats import wilcoxon

from core.herd.litters import litters_of, litters_sired
from core.herd.settings import changed
from core.herd.state import Animal, Litter
from core.reckon.winter.choose import best
from core.reckon.winter.types import Candidate, Choice, Limits
from core.reports.evidence import Evidence
from core.reports.keep_or_cull import keep_or_cull
from core.reports.winter.worth import worths
from tests.keeping_herds import BREEDING_AGE, Rabbitry, Year, rabbitry, seen

BUCKS = 2
LIMITS = {"highest_coi": 0.125, "caution": 0.5, "coi_cost": 14000.0, "unmated": 7000.0}
DRAWS = 200
#: Reasons to go for want of room.
NO_PLACE = frozenset({"no_room", "excess_buck", "excess_doe"})
#: How a breeder looks at an animal: what it is worth to him.
Look = Callable[[Animal], float]


def ours(barn: Evidence, cages: int) -> list[str]:
    """The tags that the program's choice keeps."""
    worth = worths(barn)
    candidates = [
        Candidate(
            one.key,
            one.sex,  # type: ignore[arg-type]
            "breed",
            worth[one.key].guess,
            grown=barn.stages[one.key] != "grow-out",
            one_more=worth[one.key].one_more,
        )
        for one in barn.living
        if one.key in worth
    ]
    may = may_stay(barn)
    pool = [one for one in candidates if barn.herd.animals[one.key].tag in may]
    found = best(pool, Limits(cages=cages, bucks={"breed": BUCKS}, **LIMITS), barn.kinship.of)  # type: ignore[arg-type]
    kept = found.kept if isinstance(found, Choice) else found.choice.kept
    return [barn.herd.animals[key].tag for key in kept]


def planned(barn: Evidence, cages: int) -> list[str]:
    """The tags that the whole plan lets stay: kept, or watched and not for want of room."""
    herd = replace(barn.herd, settings=changed(barn.herd.settings, "cages", cages))
    stay = [one for one in keep_or_cull(herd, barn.today).verdicts if one.tag and one.verdict in {"keep", "watch"}]
    return [one.tag for one in stay if one.tag and not any(reason.code in NO_PLACE for reason in one.reasons)]


def may_stay(barn: Evidence) -> frozenset[str]:
    """Who may be kept: does past weaning, and bucks that can sire in spring."""
    stages = barn.stages
    return frozenset(
        one.tag for one in barn.living if stages[one.key] in {"junior", "senior"} or (one.sex == "doe" and stages[one.key] == "grow-out")
    )


def by_look(barn: Evidence, cages: int, look: Look) -> list[str]:
    """The two bucks and the does that look best."""
    may = may_stay(barn)
    order = sorted((one for one in barn.living if one.tag in may), key=lambda one: (-look(one), one.tag))
    bucks = [one.tag for one in order if one.sex == "buck"][:BUCKS]
    return [*bucks, *[one.tag for one in order if one.sex == "doe"][: cages - len(bucks)]]


@dataclass
class Raw:
    """A breeder with a notebook: averages of what was written, or of the last litter only."""

    barn: Evidence
    last: bool = False

    def _of(self, litters: tuple[Litter, ...]) -> tuple[Litter, ...]:
        told = tuple(one for one in litters if one.weaned_on is not None)
        return told[-1:] if self.last else told

    def weight(self, litters: tuple[Litter, ...]) -> float:
        """The mean weight of the kits weighed of these litters, over the herd's."""
        keys = {one.key for one in litters}
        mine = [grams for key, grams in self.barn.standard.items() if self.barn.herd.animals[key].litter in keys]
        every = fmean(self.barn.standard.values())
        return fmean(mine) / every if mine else 1.0

    def doe(self, doe: str) -> float:
        """Kits weaned a litter times how they weigh; of one without a litter the herd's mean."""
        litters = self._of(litters_of(self.barn.herd, doe))
        weaned = fmean(one.weaned or 0 for one in litters) if litters else self.mean
        return weaned * self.weight(litters)

    @property
    def mean(self) -> float:
        """Kits weaned a litter, over the herd."""
        return fmean(one.weaned or 0 for one in self.barn.herd.litters.values() if one.weaned_on is not None)

    def look(self, one: Animal) -> float:
        """Old ones by their litters; young ones as half dam and half sire, by their own weight, for the part of the year that is left."""
        own = self.barn.standard.get(one.key)
        heavy = own / fmean(self.barn.standard.values()) if own else 1.0
        if one.sex == "buck":
            sired = self._of(litters_sired(self.barn.herd, one.key))
            return self.weight(sired) if sired else heavy
        if litters_of(self.barn.herd, one.key) or one.dam is None:
            return self.doe(one.key)
        age = (self.barn.today - one.born).days if one.born else BREEDING_AGE
        return self.doe(one.dam) * heavy * (1 - max(BREEDING_AGE - age, 0) / 365)


@dataclass
class Kept:
    """What each breeder's set brings, herd by herd: share of the best, and share of the best's gain over random."""

    whole: dict[str, list[float]] = field(default_factory=dict)
    gain: dict[str, list[float]] = field(default_factory=dict)

    def add(self, farm: Rabbitry, rng: np.random.Generator) -> None:
        """One more herd."""
        barn = seen(farm)
        cages = max(len(may_stay(barn)) // 2, BUCKS + 2)
        year = Year(farm, BUCKS, cages)
        top = year.grams(year.best(may_stay(barn)))
        looks = {"raw": Raw(barn).look, "last": Raw(barn, last=True).look}
        sets = {
            "ours": ours(barn, cages),
            "plan": planned(barn, cages),
            **{name: by_look(barn, cages, look) for name, look in looks.items()},
        }
        chance = [year.grams(by_look(barn, cages, lambda _: float(rng.random()))) for _ in range(DRAWS)]
        brought = {name: year.grams(kept) for name, kept in sets.items()} | {"random": chance[0]}
        for name, grams in brought.items():
            self.whole.setdefault(name, []).append(grams / top)
            self.gain.setdefault(name, []).append((grams - fmean(chance)) / (top - fmean(chance)))

    def lines(self) -> Iterator[str]:
        """The report."""
        for name, shares in self.whole.items():
            gains = np.array(self.gain[name])
            error = gains.std(ddof=1) / len(gains) ** 0.5
            yield f"{name:<8} brings {fmean(shares) * 100:5.1f} % of the best set; gain over random {gains.mean() * 100:6.1f} % of the best (+/- {error * 100:.1f})"
        for name in [each for each in self.gain if each not in {"ours", "plan"}]:
            ahead = np.array(self.gain["ours"]) - np.array(self.gain[name])
            test = wilcoxon(ahead, alternative="greater")
            yield f"ours ahead of {name} in {(ahead > 0).sum()} of {len(ahead)} herds, mean {ahead.mean() * 100:.1f} points, signed-rank p = {test.pvalue:.2g}"


def kept_in(herds: int, seed: int = 20261126) -> Kept:
    """That many herds."""
    rng, told = np.random.default_rng(seed), Kept()
    for at in range(herds):
        told.add(rabbitry(seed + at), rng)
    return told


if __name__ == "__main__":
    for line in kept_in(int(sys.argv[1]) if len(sys.argv) > 1 else 200).lines():
        print(line)
