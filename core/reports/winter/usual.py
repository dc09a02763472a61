"""What a usual doe of a breed weans in a year on this farm: the measure of everybody's worth."""

from __future__ import annotations

from dataclasses import dataclass
from functools import lru_cache
from math import sqrt
from statistics import fmean

from core.handbook import breeds, genetics, growth, reproduction
from core.handbook import survival as figures
from core.herd.settings import bucks_a_breed
from core.herd.state import Animal
from core.reckon.choose import Guess
from core.reports.evidence import Evidence
from core.reports.growing import breed_curve
from core.reports.litter_size import size_of
from core.reports.merit import Trait


@dataclass(frozen=True, slots=True)
class Usual:
    """A usual doe's year.

    litters       litters a year
    born          live-born a litter, averaged over her litters
    raised        share of them raised
    weaned_g      a kit's weight at weaning [g]
    does_a_buck   does of the breed here for each buck that the farm keeps
    """

    litters: float
    born: float
    raised: float
    weaned_g: float
    does_a_buck: float

    @property
    def kits(self) -> float:
        """Kits weaned a year."""
        return self.litters * self.born * self.raised

    @property
    def grams(self) -> float:
        """Grams of kits weaned a year."""
        return self.kits * self.weaned_g


def usual_of(barn: Evidence, breed: str | None) -> Usual:
    """The usual doe of that breed."""
    return _usual(barn, (breed or "").lower())


@lru_cache(maxsize=16)
def _usual(barn: Evidence, breed: str) -> Usual:
    grown = [one for one in barn.living if (one.breed or "").lower() == breed and barn.stages[one.key] in {"junior", "senior"}]
    does = sum(one.sex == "doe" for one in grown)
    bucks = max(bucks_a_breed(barn.herd.settings, breed or None), 1)
    shared = min(max(does / bucks, 1.0), reproduction.DOES_A_BUCK.value)
    return Usual(reproduction.LITTERS_A_YEAR.value, born_here(barn, breed), raised_here(barn), weaned_weight(barn, breed), shared)


@lru_cache(maxsize=4)
def usual_year(barn: Evidence) -> float:
    """Grams of kits that a usual doe weans in a year, over the breeds of the farm's grown animals; of all where none is grown."""
    grown = [one for one in barn.living if barn.stages[one.key] in {"junior", "senior"}] or barn.living
    return fmean(usual_of(barn, one.breed).grams for one in grown) if grown else usual_of(barn, None).grams


def born_here(barn: Evidence, breed: str) -> float:
    """Live-born of the breed's usual litter here, over a doe's litters; of a breed without does the handbook's."""
    doe = next((one for one in barn.herd.animals.values() if one.sex == "doe" and (one.breed or "").lower() == breed), None)
    if doe is None:
        return breeds.usual_born_alive(breed).value
    size = size_of(barn, doe)
    return (size.at_best - size.level) * fmean(share.value for share in reproduction.LITTER_SIZE_BY_PARITY)


def raised_here(barn: Evidence) -> float:
    """The share of kits that the herd's does raise; of a herd without a finished litter the handbook's."""
    told = [dam.share.estimate for dam in barn.dams.values()]
    return fmean(told) if told else figures.PRIOR_MEAN.value


def weaned_weight(barn: Evidence, breed: str) -> float:
    """A kit's weight at weaning, as the breed's young grow here [g]."""
    return breed_curve(barn, breed).weight_at(reproduction.WEAN_DAY.whole)


def bred_in(trait: Trait | None, barn: Evidence, animal: Animal, prior: float) -> Guess:
    """What an animal carries of a trait against its breed here; of one that the records don't hold nothing is known but the spread."""
    value = trait.value(animal.key, barn.mates(animal)) if trait else None
    asked = trait.solved.asked.get(animal.key) if trait else None
    return Guess(value or 0.0, asked.standard_error if asked else prior)


def growth_spread() -> float:
    """How far animals differ in the growth that they carry [share of the breed's]: one standard deviation."""
    return growth.WEIGHT_CV.value * sqrt(genetics.WEIGHT_70D_H2.value)


def size_spread() -> float:
    """How far animals differ in the litter size that they carry [kits]: one standard deviation."""
    return genetics.BORN_ALIVE_SD.value * sqrt(genetics.BORN_ALIVE_H2.value)


def raising_spread(raised: float) -> float:
    """How far animals differ in how they raise their kits, by what they carry [share]: one standard deviation."""
    return sqrt(raised * (1 - raised) * genetics.SURVIVAL_H2.value / 2)
