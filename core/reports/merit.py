"""What an animal passes on: weights, gain, live-born and weaned kits and their survival, corrected for litter, dam, season, relatives.

A buck is not judged by his kits' raw weights: a good dam, a small litter or a mild spring flatters any sire. The mixed model
takes these off. How much of a trait is bred in comes from the handbook, and from the herd's own records when they are many.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from statistics import fmean
from typing import Final

from core.handbook import genetics, growth
from core.handbook.figure import Figure
from core.herd.state import Animal, Herd, Litter
from core.reckon.mixed_model import BreedingValues, Record, Variances, breeding_values
from core.reckon.pedigree import Pedigree
from core.reckon.reml import Published, estimated
from core.reports import traits
from core.reports.survival import DamSurvival

#: Shares of variance of a trait: `animal` is what is bred in.
Shares = Mapping[str, Figure]

WEIGHTS: Final[Mapping[int, Shares]] = {
    56: {"animal": genetics.WEIGHT_56D_H2, "litter": genetics.WEIGHT_56D_C2},  # not a figure: the ages at which the handbook weighs
    70: {"animal": genetics.WEIGHT_70D_H2, "litter": genetics.WEIGHT_70D_C2},  # not a figure: as above
    84: {"animal": genetics.WEIGHT_84D_H2, "litter": genetics.WEIGHT_84D_C2},  # not a figure: as above
    112: {"animal": genetics.WEIGHT_112D_H2, "litter": genetics.WEIGHT_112D_C2},  # not a figure: as above
}
GAIN: Final[Shares] = {"animal": genetics.GAIN_H2, "litter": genetics.GAIN_C2}
REARING: Final[Shares] = {"dam": genetics.WEIGHT_DAM, "quarter": genetics.SEASON_SHARE}
BORN_ALIVE: Final[Shares] = {"animal": genetics.BORN_ALIVE_H2, "doe": genetics.BORN_ALIVE_P2, "quarter": genetics.SEASON_SHARE}
WEANED: Final[Shares] = {"animal": genetics.WEANED_H2, "doe": genetics.WEANED_P2, "quarter": genetics.SEASON_SHARE}
SURVIVAL: Final[Shares] = {"animal": genetics.SURVIVAL_H2, "doe": genetics.SURVIVAL_P2, "quarter": genetics.SEASON_SHARE}


@dataclass(frozen=True, slots=True)
class Trait:
    """One trait's breeding values.

    solved     values as deviations from the base, and the errors of those asked about
    records    how many animals or litters were measured
    of_litter  animal -> records of its own kits or litters
    own        whether the shares of variance lean on the herd's own records, not on the published ones alone
    """

    solved: BreedingValues
    records: int
    of_litter: Mapping[str, int]
    own: bool = False

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


def weight_trait(herd: Herd, book: Pedigree, weights: Mapping[str, float], age: float, ask: Iterable[str]) -> Trait | None:
    """Weight at an age, as a share of the breed's curve; `weights` brought to that age [g]. None with nothing weighed."""
    shares = min(WEIGHTS.items(), key=lambda each: abs(each[0] - age))[1]
    told = traits.weight_shares(herd, {key: grams for key, grams in weights.items() if key in book}, age)
    return _growth_trait(herd, book, told, {**shares, **REARING}, ask)


def gain_trait(herd: Herd, book: Pedigree, ask: Iterable[str]) -> Trait | None:
    """Daily gain as a share of the breed's; None where no grow-out was weighed twice."""
    told = {key: share for key, share in traits.gain_shares(herd).items() if key in book}
    return _growth_trait(herd, book, told, {**GAIN, **REARING}, ask)


def _growth_trait(herd: Herd, book: Pedigree, told: Mapping[str, float], shares: Shares, ask: Iterable[str]) -> Trait | None:
    if not told:
        return None
    spread = growth.WEIGHT_CV.value * fmean(told.values())
    born = [herd.animals[key].born for key in told]
    return _trait(book, traits.growth_records(herd, told), born, _Spread(spread**2, shares), ask, _kits_of(herd, told))


def born_alive_trait(herd: Herd, book: Pedigree, ask: Iterable[str], today: date) -> Trait | None:
    """Kits born alive a litter; None with no litter."""
    told = traits.born_alive_records(herd, today, book.ids)
    return _litter_trait(book, told, _Spread(genetics.BORN_ALIVE_SD.value**2, BORN_ALIVE), ask)


def weaned_trait(herd: Herd, book: Pedigree, dams: Mapping[str, DamSurvival], ask: Iterable[str]) -> Trait | None:
    """Kits weaned a litter, weather and predators apart; None with no finished litter."""
    finished = [one for dam in dams.values() for one in dam.litters if one.litter.dam in book]
    return _litter_trait(book, traits.weaned_records(herd, finished), _Spread(genetics.WEANED_SD.value**2, WEANED), ask)


def survival_trait(herd: Herd, book: Pedigree, dams: Mapping[str, DamSurvival], ask: Iterable[str]) -> Trait | None:
    """The share of kits raised a litter, weather and predators apart; None with no finished litter."""
    likeness = max((dam.share.likeness for dam in dams.values()), default=0.0)
    finished = [one for dam in dams.values() for one in dam.litters if one.litter.dam in book and one.alive]
    told = traits.raised_records(herd, finished, likeness)
    mean = fmean([*(record.value for _, record in told), 0.5])
    kits = fmean(one.alive for one in finished) if finished else 1.0
    return _litter_trait(book, told, _Spread(mean * (1 - mean) * (1 + (kits - 1) * likeness) / kits, SURVIVAL), ask)


@dataclass(frozen=True, slots=True)
class _Spread:
    """How much a trait varies [unit squared] and how the variance is shared out."""

    total: float
    shares: Shares

    def variances(self) -> Variances:
        """The published variances."""
        told = {effect: figure.value for effect, figure in self.shares.items()}
        bred_in = told.pop("animal")
        rest = 1 - bred_in - sum(told.values())
        return Variances(bred_in * self.total, rest * self.total, {effect: share * self.total for effect, share in told.items()})

    def published(self) -> dict[str, Published]:
        """What holds the herd's own shares back."""
        spreads = genetics.PUBLISHED_RANGE_SPREADS.value
        return {effect: Published(told.value, (told.high - told.low) / spreads) for effect, told in self.shares.items()}


def _litter_trait(book: Pedigree, told: Sequence[tuple[Litter, Record]], spread: _Spread, ask: Iterable[str]) -> Trait | None:
    if not told:
        return None
    born = [litter.born_on for litter, _ in told]
    return _trait(book, [record for _, record in told], born, spread, ask, _litters_a_parent(litter for litter, _ in told))


def _trait(  # noqa: PLR0913, PLR0917 - the whole of one trait's model
    book: Pedigree,
    records: Sequence[Record],
    born: Sequence[date | None],
    spread: _Spread,
    ask: Iterable[str],
    of_litter: Mapping[str, int],
) -> Trait:
    told = [(record, day) for record, day in zip(records, born, strict=True) if day is not None]
    own = _own_variances(book, told, spread)
    asked = (animal for animal in ask if animal in book)
    solved = breeding_values(book, records, own or spread.variances(), asked, worth=genetics.PUBLISHED_SPREAD_WORTH.value)
    return Trait(solved, len(records), of_litter, own is not None)


def _own_variances(book: Pedigree, told: Sequence[tuple[Record, date]], spread: _Spread) -> Variances | None:
    """The herd's own variances; None while its records are few.

    Those of the newest quarter are left out: so the shares change four times a year, not with every note, and one estimate serves
    all reports of the quarter.
    """
    newest = max((traits.quarter(day) for _, day in told), default="")
    settled = tuple(record for record, day in told if traits.quarter(day) != newest)
    if len(settled) < genetics.REML_FROM_RECORDS.value:
        return None
    return _estimated(_Held(book.only(record.animal for record in settled), settled, spread))


@dataclass(frozen=True)
class _Held:
    """What variances are estimated from, known by its records."""

    book: Pedigree
    records: tuple[Record, ...]
    spread: _Spread

    def __hash__(self) -> int:
        return hash((self.book.ids, tuple((record.animal, record.value) for record in self.records)))


@lru_cache(maxsize=16)
def _estimated(held: _Held) -> Variances | None:
    found = estimated(held.book, held.records, held.spread.variances(), held.spread.published())
    return found.variances if found.settled else None


def _kits_of(herd: Herd, weighed: Iterable[str]) -> dict[str, int]:
    """How many weighed kits each parent has."""
    return _credited(herd.animals[key] for key in weighed)


def _litters_a_parent(litters: Iterable[Litter]) -> dict[str, int]:
    """How many of these litters each parent has."""
    return _credited(litters)


def _credited(children: Iterable[Animal | Litter]) -> dict[str, int]:
    counts: dict[str, int] = {}
    for each in children:
        for parent in (each.sire, each.dam):
            if parent is not None:
                counts[parent] = counts.get(parent, 0) + 1
    return counts
