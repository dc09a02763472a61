"""What an animal passes on: growth, live-born kits and their survival, corrected for litter, dam, season and relatives.

A buck is not judged by his kits' raw weights: a good dam, a small litter or a mild spring flatters any sire. The mixed model
takes these off. Growth is reckoned as a share of the breed's curve, so that a herd of several breeds stands on one scale.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from statistics import fmean

from core.handbook import genetics, growth
from core.herd.litters import live_born
from core.herd.state import Herd
from core.reckon.curve import weight_at_age
from core.reckon.mixed_model import BreedingValues, Record, Variances, breeding_values
from core.reckon.pedigree import Pedigree
from core.reports.growth import curve_of
from core.reports.survival import DamSurvival

MONTHS_A_QUARTER = 3  # not a figure: months in a quarter
UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class Trait:
    """One trait's breeding values. `values` are deviations from the base; `records` how many animals or litters were measured."""

    solved: BreedingValues
    records: int
    of_litter: Mapping[str, int]  # animal -> records of its own kits or litters

    def value(self, animal: str, mates: Iterable[str]) -> float | None:
        """The animal's value less the mean of its mates; None for an animal that the model does not hold."""
        values = self.solved.values
        told = [values[mate] for mate in mates if mate in values]
        return values[animal] - fmean(told) if animal in values and told else None

    def reliability(self, animal: str) -> float | None:
        """How far the value may be trusted, 0 to 1."""
        asked = self.solved.asked.get(animal)
        return None if asked is None else min(max(asked.reliability_inbred, 0.0), 1.0)

    def better(self, one: str, other: str) -> float | None:
        """The chance that the first truly is the better one."""
        asked = self.solved.asked
        return self.solved.better(one, other) if one in asked and other in asked else None


def quarter(on: date) -> str:
    """The quarter of the year: what was born in it fared alike."""
    return f"{on.year}-{(on.month - 1) // MONTHS_A_QUARTER}"


def weight_trait(herd: Herd, book: Pedigree, standard: Mapping[str, float], ask: Iterable[str]) -> Trait | None:
    """Weight at the age of comparison, as a share of the breed's curve; None with nothing weighed."""
    weighed = {key: herd.animals[key] for key in standard if key in book}
    if not weighed:
        return None
    age = growth.COMPARED_AGE_DAYS.value
    records = [
        Record(
            key,
            standard[key] / weight_at_age(age, *curve_of(animal.breed)),
            {"sex": animal.sex or UNKNOWN, "breed": (animal.breed or UNKNOWN).lower()},
            {
                "litter": animal.litter or f"{animal.dam or key}@{animal.born}",
                "dam": animal.dam or key,
                "season": quarter(animal.born) if animal.born else UNKNOWN,
            },
        )
        for key, animal in weighed.items()
    ]
    variance = (growth.WEIGHT_CV.value * fmean(record.value for record in records)) ** 2
    shares = {"litter": genetics.WEIGHT_70D_C2.value, "dam": genetics.WEIGHT_35D_DAM.value, "season": genetics.SEASON_SHARE.value}
    solved = breeding_values(book, records, _variances(variance, genetics.WEIGHT_70D_H2.value, shares), ask)
    return Trait(solved, len(records), _kits_of(herd, weighed))


def born_alive_trait(herd: Herd, book: Pedigree, ask: Iterable[str], today: date) -> Trait | None:
    """Kits born alive a litter; None with no litter."""
    told = [
        one for one in herd.litters.values() if one.dam in book and one.born_on <= today and (one.alive is not None or one.born is not None)
    ]
    if not told:
        return None
    records = [_litter_record(herd, litter.dam, litter.born_on, float(live_born(litter))) for litter in told]
    shares = {"doe": genetics.BORN_ALIVE_P2.value, "season": genetics.SEASON_SHARE.value}
    variances = _variances(genetics.BORN_ALIVE_SD.value**2, genetics.BORN_ALIVE_H2.value, shares)
    return Trait(breeding_values(book, records, variances, ask), len(records), _litters_a_parent(herd, (one.key for one in told)))


def survival_trait(herd: Herd, book: Pedigree, dams: Mapping[str, DamSurvival], likeness: float, ask: Iterable[str]) -> Trait | None:
    """The share of kits raised a litter, weather and predators apart; None with no finished litter."""
    told = [one for dam in dams.values() for one in dam.litters if one.alive > 0 and one.litter.dam in book]
    if not told:
        return None
    records = [_litter_record(herd, one.litter.dam, one.litter.born_on, one.kept / one.alive) for one in told]
    mean = fmean([*(record.value for record in records), 0.5])
    kits = fmean(one.alive for one in told)
    variance = mean * (1 - mean) * (1 + (kits - 1) * likeness) / kits
    shares = {"doe": genetics.SURVIVAL_P2.value, "season": genetics.SEASON_SHARE.value}
    solved = breeding_values(book, records, _variances(variance, genetics.SURVIVAL_H2.value, shares), ask)
    return Trait(solved, len(records), _litters_a_parent(herd, (one.litter.key for one in told)))


def _litter_record(herd: Herd, doe: str, born: date, value: float) -> Record:
    breed = herd.animals[doe].breed if doe in herd.animals else None
    return Record(doe, value, {"breed": (breed or UNKNOWN).lower()}, {"doe": doe, "season": quarter(born)})


def _variances(total: float, bred_in: float, shares: Mapping[str, float]) -> Variances:
    """The trait's variance shared out: bred in, the further effects, and the rest."""
    others = {effect: share * total for effect, share in shares.items()}
    return Variances(bred_in * total, total * (1 - bred_in - sum(shares.values())), others)


def _kits_of(herd: Herd, weighed: Iterable[str]) -> dict[str, int]:
    """How many weighed kits each parent has."""
    counts: dict[str, int] = {}
    for key in weighed:
        for parent in (herd.animals[key].sire, herd.animals[key].dam):
            if parent is not None:
                counts[parent] = counts.get(parent, 0) + 1
    return counts


def _litters_a_parent(herd: Herd, keys: Iterable[str]) -> dict[str, int]:
    counts: dict[str, int] = {}
    for key in keys:
        litter = herd.litters[key]
        for parent in (litter.sire, litter.dam):
            if parent is not None:
                counts[parent] = counts.get(parent, 0) + 1
    return counts
