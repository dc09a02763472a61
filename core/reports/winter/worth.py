"""What an animal adds in a year to a farm that keeps it, in grams of kits weaned, each matter named with its grams and its doubt.

A doe stands on what a year of hers weans: matings that take, litter size, kits raised, how these grow. A buck stands on being there
and on what his kits and daughters gain by him. A young one stands on its family, for the part of the year in which it will breed.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from functools import lru_cache
from math import hypot

from core.handbook import worth as figures
from core.herd.settings import junior_age
from core.herd.state import Litter
from core.reckon.choose import Guess
from core.reports.evidence import Evidence
from core.reports.winter.blemishes import blemishes
from core.reports.winter.factors import Factor
from core.reports.winter.usual import usual_of, usual_year
from core.reports.winter.worth_of_bucks import buck_factors, buck_learns
from core.reports.winter.worth_of_does import doe_factors, doe_learns
from core.reports.winter.worth_of_young import family_factors, light, one_of_many, waiting, young_learns


@dataclass(frozen=True, slots=True)
class Term:
    """One matter of a worth: how much it adds or takes [g of kits weaned a year], how far that may be off, by how many notes."""

    code: str
    grams: float
    deviation: float
    count: int


@dataclass(frozen=True, slots=True)
class Worth:
    """What an animal is worth, and by what; the terms add up to it.

    one_more   how far one more litter, or one more weighing, may be expected to move it [g of kits weaned a year]
    beside     what a gram of it counts for beside other breeds: which breeds a farm keeps is its own choice, and none goes for being small
    """

    guess: Guess
    terms: tuple[Term, ...]
    one_more: float
    beside: float = 1.0

    def alike(self) -> Worth:
        """The same in the measure in which a usual animal of every breed counts alike."""
        by = self.beside
        terms = tuple(replace(one, grams=one.grams * by, deviation=one.deviation * by) for one in self.terms)
        return Worth(Guess(self.guess.value * by, self.guess.deviation * by), terms, self.one_more * by)


@lru_cache(maxsize=8)
def worths(barn: Evidence) -> Mapping[str, Worth]:
    """Everybody past weaning by key, and weaned litters' untagged kits by the litter's key."""
    animals = {key: _worth(barn, key) for key, stage in barn.stages.items() if stage != "kit"}
    told = animals | {litter.key: _of_litter(barn, litter, kits) for litter, kits in barn.weaned_litters}
    return {key: replace(one, beside=_beside(barn, key)) for key, one in told.items()}


def _beside(barn: Evidence, key: str) -> float:
    """The usual year of the farm's breeding stock over that of its own breed."""
    return usual_year(barn) / usual_of(barn, _breed_of(barn, key)).grams


def _breed_of(barn: Evidence, key: str) -> str | None:
    """An animal's breed; a litter's is its dam's."""
    animal = barn.herd.animals.get(key) or barn.herd.animals.get(barn.herd.litters[key].dam)
    return animal.breed if animal else None


def _worth(barn: Evidence, key: str) -> Worth:
    animal = barn.herd.animals[key]
    usual = usual_of(barn, animal.breed)
    young = [*waiting(barn, animal), *light(barn, animal), *one_of_many(barn, animal)]
    if animal.sex == "buck":
        factors, learns = buck_factors(barn, animal, usual), buck_learns(barn, animal, usual)
        return summed(usual.grams * figures.BUCK_IN_RESERVE.value, "reserve", [*factors, *young, *blemishes(barn, animal)], learns)
    factors, learns = doe_factors(barn, animal, usual), doe_learns(barn, animal, usual)
    return summed(usual.grams, "usual_year", [*factors, *young, *blemishes(barn, animal)], learns)


def _of_litter(barn: Evidence, litter: Litter, kits: int) -> Worth:
    """Of a litter's kits the one that may yet be picked to breed, as good as its parents' mean; past breeding age nobody picks one."""
    usual = usual_of(barn, _breed_of(barn, litter.key))
    old = (barn.today - litter.born_on).days >= junior_age(barn.herd.settings)
    kept = 0.0 if old else min(figures.KITS_KEPT.value, kits)
    factors = [*family_factors(barn, litter, usual), *waiting(barn, litter)]
    return summed(usual.grams * kept, "usual_year", factors, young_learns())


def summed(start: float, code: str, factors: Iterable[Factor], learns: float) -> Worth:
    """The start times every factor, and what each of them added in its turn. `learns`: how far one more note moves it [share]."""
    value, terms = start, [Term(code, start, 0.0, 0)]
    for factor in factors:
        after = value * max(factor.times, 0.0)
        terms.append(Term(factor.code, after - value, value * factor.deviation, factor.count))
        value = after
    return Worth(Guess(value, hypot(*(term.deviation for term in terms))), tuple(terms), value * learns)
