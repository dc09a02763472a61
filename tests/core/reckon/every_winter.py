"""Every set of a small herd looked at, one by one: what the best choice of the winter must agree with. And random small herds to ask about.

Written from what `core/reckon/winter/types.py` says, not from the programme: no bound, no row and no solver here.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

import numpy as np
import numpy.typing as npt

from core.reckon.choose import Guess
from core.reckon.winter.types import Candidate, Limits

Floats = npt.NDArray[np.float64]
Flags = npt.NDArray[np.bool_]
Kinships = Mapping[tuple[str, str], float]
CLOSE = 1e-6


@dataclass
class EverySet:
    """All sets of a herd: which animals each keeps, what it is worth, and which it lets down."""

    animals: list[Candidate]
    limits: Limits
    kinships: Kinships

    def __post_init__(self) -> None:
        """Look at each set."""
        n = len(self.animals)
        self.keeps: Flags = (np.arange(2**n)[:, None] >> np.arange(n)) & 1 == 1
        self.mated = {one.key: self._mates(one) for one in self.animals if one.grown and one.sex == "doe"}
        self.worth = self._worth()
        self.unable = self._unable()

    def kept(self, at: int) -> list[str]:
        """The keys of one set."""
        return [one.key for one, stays in zip(self.animals, self.keeps[at], strict=True) if stays]

    def place(self, keys: list[str] | tuple[str, ...]) -> int:
        """The number of the set with these keys."""
        return sum(1 << at for at, one in enumerate(self.animals) if one.key in keys)

    def _bucks(self, doe: Candidate) -> list[tuple[int, float]]:
        pairs = [(at, self.kinships[one.key, doe.key]) for at, one in enumerate(self.animals) if self._may_sire(one, doe)]
        return [(at, coi) for at, coi in pairs if coi <= self.limits.highest_coi]

    @staticmethod
    def _may_sire(buck: Candidate, doe: Candidate) -> bool:
        return buck.grown and buck.sex == "buck" and buck.breed == doe.breed

    def _mates(self, doe: Candidate) -> Flags:
        """In which sets she stays and has a mate."""
        mine = self.keeps[:, self.animals.index(doe)]
        return mine & np.any([np.zeros(len(mine), bool), *(self.keeps[:, at] for at, _ in self._bucks(doe))], axis=0)

    def _worth(self) -> Floats:
        told = self.limits
        worth = np.zeros(len(self.keeps))
        for at, one in enumerate(self.animals):
            own = one.worth.value - told.caution * one.worth.deviation - told.feed_worth * one.feed_g
            loss = np.zeros(len(self.keeps))
            if one.grown and one.sex == "doe":
                loss += told.unmated
                for buck, coi in self._bucks(one):
                    loss = np.where(self.keeps[:, buck], np.minimum(loss, told.coi_cost * coi), loss)
            worth += np.where(self.keeps[:, at], own - loss, 0.0)
        return worth

    def _unable(self) -> npt.NDArray[np.int64]:
        """How many breeds with grown stock have no mated pair in each set."""
        breeds = sorted({one.breed for one in self.animals if one.grown and one.sex})
        return np.sum([~self.mated_of(breed).astype(bool) for breed in breeds], axis=0) if breeds else np.zeros(len(self.keeps), int)

    def mated_of(self, breed: str) -> npt.NDArray[np.int64]:
        """How many of the breed's does have a mate in each set."""
        nobody = np.zeros(len(self.keeps), int)
        return np.sum([nobody, *(self.mated[one.key] for one in self.animals if one.breed == breed and one.key in self.mated)], axis=0)

    def sums(self, of: str) -> Floats:
        """Cages, mouths or feed of each set."""
        return self.keeps @ np.array([float(getattr(one, of)) for one in self.animals])

    def heads(self, breed: str, sex: str) -> npt.NDArray[np.int64]:
        """Grown ones of a breed and sex in each set."""
        return self.keeps @ np.array([int(one.grown and one.breed == breed and one.sex == sex) for one in self.animals])

    def within(self, limits: Limits | None = None) -> Flags:
        """The sets within the limits, pins apart."""
        told = limits or self.limits
        fits = np.ones(len(self.keeps), bool)
        for name, most in (("places", told.cages), ("mouths", told.mouths), ("feed_g", told.feed_g)):
            fits &= most is None or self.sums(name) <= most + CLOSE
        for sex, a_breed in (("buck", told.bucks), ("doe", told.does)):
            for breed, number in a_breed.items():
                fits &= number is None or self.heads(breed, sex) <= number
        for breed, number in told.litters.items():
            fits &= self.mated_of(breed) >= number
        return fits

    def as_pinned(self, without: str | None = None) -> Flags:
        """The sets that keep to the pins, one of them lifted."""
        held = np.ones(len(self.keeps), bool)
        for at, one in enumerate(self.animals):
            if one.pin is not None and one.key != without:
                held &= self.keeps[:, at] == (one.pin == "keep")
        return held

    def best(self, among: Flags) -> int | None:
        """The best of these sets: fewest breeds unable to breed on, then most worth; None of none."""
        if not among.any():
            return None
        among = among & (self.unable == self.unable[among].min())
        return int(np.flatnonzero(among)[np.argmax(self.worth[among])])

    def flips(self) -> list[str]:
        """Who changes place when its worth moves by its `one_more`."""
        fitting = self.within() & self.as_pinned()
        best = self.best(fitting)
        assert best is not None
        alike = fitting & (self.unable == self.unable[best])
        told = []
        for at, one in enumerate(self.animals):
            other = alike & (self.keeps[:, at] != self.keeps[best, at])
            if one.pin is None and other.any() and self.worth[other].max() > self.worth[best] - one.one_more:
                told.append(one.key)
        return told


def some_herd(chance: np.random.Generator) -> tuple[list[Candidate], Limits, Kinships]:
    """A random herd of one to fourteen, with limits that bite, pins and relatives."""
    breeds = ["A", "B", "C"][: chance.integers(1, 4)]
    animals = [_animal(chance, f"{at:02d}", breeds) for at in range(int(chance.integers(1, 15)))]
    many = len(animals)
    degrees = np.array([0.0, 0.0, 0.03125, 0.0625, 0.125, 0.25])
    kinships = {(one.key, other.key): float(chance.choice(degrees)) for one in animals for other in animals}
    limits = Limits(
        cages=_perhaps(chance, int(chance.integers(1, many + 1))),
        mouths=_perhaps(chance, int(chance.integers(1, 2 * many + 1))),
        feed_g=_perhaps(chance, float(chance.uniform(0.2, 1.0)) * sum(one.feed_g for one in animals)),
        bucks={breed: int(chance.integers(0, 3)) for breed in breeds if chance.random() < 0.5},
        does={breed: _perhaps(chance, int(chance.integers(0, 4))) for breed in breeds if chance.random() < 0.4},
        litters={breed: int(chance.integers(0, 3)) for breed in breeds if chance.random() < 0.3},
        highest_coi=float(chance.choice([0.05, 0.1, 0.2, 1.0])),
        caution=float(chance.choice([0.0, 0.5, 1.0])),
        feed_worth=float(chance.choice([0.0, 0.05, 0.2])),
        coi_cost=float(chance.choice([0.0, 4000.0, 20000.0])),
        unmated=float(chance.choice([0.0, 1000.0, 5000.0])),
    )
    return animals, limits, kinships


def _animal(chance: np.random.Generator, key: str, breeds: list[str]) -> Candidate:
    sex = (None, "buck", "doe", "doe")[chance.integers(0, 4)]
    one = Candidate(
        key,
        sex,  # type: ignore[arg-type]
        str(chance.choice(breeds)),
        Guess(float(chance.normal(4000, 3000)), float(chance.uniform(0, 2000))),
        grown=sex is not None and chance.random() < 0.8,
        feed_g=float(chance.uniform(5000, 30000)),
        places=int(chance.choice([0, 1, 1, 1, 2])),
        mouths=int(chance.choice([1, 1, 1, 4])),
        one_more=float(chance.choice([0.0, 500.0, 2000.0])),
    )
    return replace(one, pin=("keep", "go")[chance.integers(0, 2)]) if chance.random() < 0.15 else one  # type: ignore[arg-type]


def _perhaps(chance: np.random.Generator, value: Any) -> Any:
    return value if chance.random() < 0.6 else None


def alone(every: EverySet) -> dict[tuple[str, str | None], float]:
    """Each limit that alone could give so that some set fits -> the least it must give, measured against what was set."""
    told = every.limits
    pinned = every.as_pinned()
    sums = {"cages": every.sums("places"), "mouths": every.sums("mouths"), "feed_g": every.sums("feed_g")}
    limits: list[tuple[str, str | None, Limits, npt.NDArray[np.float64]]] = []
    limits += [(name, None, replace(told, **{name: None}), of) for name, of in sums.items() if getattr(told, name) is not None]
    for name, sex in (("bucks", "buck"), ("does", "doe")):
        for breed, number in getattr(told, name).items():
            if number is not None:
                rest = {one: most for one, most in getattr(told, name).items() if one != breed}
                limits.append((name, breed, replace(told, **{name: rest}), every.heads(breed, sex)))
    for breed in told.litters:
        rest = {one: most for one, most in told.litters.items() if one != breed}
        limits.append(("litters", breed, replace(told, litters=rest), -every.mated_of(breed)))
    least = {}
    for name, breed, without, of in limits:
        fits = every.within(without) & pinned
        was = getattr(told, name) if breed is None else getattr(told, name)[breed]
        if fits.any():
            least[name, breed] = (of[fits].min() - (-was if name == "litters" else was)) / max(abs(was), 1000 if name == "feed_g" else 1)
    return least
