"""What is measured of growth and litters, each record with what it must be corrected for before animals are compared.

A kit's weight tells of its sire only when its sex, the season, its litter mates, the milk it shared and its dam are allowed for.
Growth is reckoned as a share of the breed's curve, so that a herd of several breeds stands on one scale.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from datetime import date
from statistics import fmean

from core.handbook import genetics
from core.herd.litters import live_born
from core.herd.state import Animal, Herd, Litter
from core.reckon.curve import weight_at_age
from core.reckon.growth import standard_weight
from core.reckon.mixed_model import Record
from core.reports.growth import curve_of, weighings
from core.reports.survival import Raised, nursed

MONTHS_IN_QUARTER = 3  # not a figure: months in a quarter
MONTHS_IN_YEAR = 12  # not a figure: months in a year
SEASONS = ("winter", "spring", "summer", "autumn")  # from December on
UNKNOWN = "unknown"


def season(on: date | None) -> str:
    """The season of the year, the same every year."""
    return UNKNOWN if on is None else SEASONS[on.month % MONTHS_IN_YEAR // MONTHS_IN_QUARTER]


def quarter(on: date) -> str:
    """The quarter of that year: what was born in it fared alike."""
    return f"{on.year}-{(on.month - 1) // MONTHS_IN_QUARTER}"


def weights_at(herd: Herd, age: float) -> Mapping[str, float]:
    """Weights brought to that age [g] along the breed's curve, of all that were weighed near it, living or gone."""
    within = genetics.WEIGHT_WITHIN_DAYS.value
    told = {one.key: standard_weight(weighings(one), age, curve_of(one.breed), within) for one in herd.animals.values() if one.weights}
    return {key: grams for key, grams in told.items() if grams is not None}


def weight_shares(herd: Herd, weights: Mapping[str, float], age: float) -> dict[str, float]:
    """Those weights over what the breed's curve weighs at that age."""
    return {key: grams / weight_at_age(age, *curve_of(herd.animals[key].breed)) for key, grams in weights.items()}


def gain_shares(herd: Herd) -> dict[str, float]:
    """Daily gain of each grow-out that was weighed twice, over the gain of its breed's curve between the same ages."""
    told = {one.key: _gain_share(one) for one in herd.animals.values() if len(one.weights) > 1}
    return {key: share for key, share in told.items() if share is not None}


def _gain_share(animal: Animal) -> float | None:
    first, last = genetics.GAIN_FROM_DAYS.value, genetics.GAIN_UNTIL_DAYS.value
    aged = [each for each in weighings(animal) if first <= each[0] <= last]
    if not aged or aged[-1][0] - aged[0][0] < genetics.GAIN_OVER_DAYS.value:
        return None
    (young, light), (old, heavy) = aged[0], aged[-1]
    curve = curve_of(animal.breed)
    return (heavy - light) / (weight_at_age(old, *curve) - weight_at_age(young, *curve))


def usual_gain(animal: Animal) -> float:
    """The breed's daily gain over the weeks in which it is counted [g a day]."""
    first, last = genetics.GAIN_FROM_DAYS.value, genetics.GAIN_UNTIL_DAYS.value
    curve = curve_of(animal.breed)
    return (weight_at_age(last, *curve) - weight_at_age(first, *curve)) / (last - first)


def usual_weight(animal: Animal, age: float) -> float:
    """What the breed's curve weighs at that age [g]."""
    return weight_at_age(age, *curve_of(animal.breed))


def growth_records(herd: Herd, shares: Mapping[str, float]) -> list[Record]:
    """A record for each grow-out: sex, breed, season, its dam's first litter or a later one and the size of the nest are allowed for."""
    orders = litter_order(herd)
    sizes = {key: float(nursed(litter)) for key, litter in herd.litters.items()}
    known = [sizes[one.litter] for one in (herd.animals[key] for key in shares) if one.litter in sizes]
    usual = fmean(known) if known else 0.0
    return [_growth_record(herd.animals[key], share, orders, sizes, usual) for key, share in shares.items()]


def _growth_record(animal: Animal, share: float, orders: Mapping[str, str], sizes: Mapping[str, float], usual: float) -> Record:
    litter = animal.litter or ""
    return Record(
        animal.key,
        share,
        {
            "sex": animal.sex or UNKNOWN,
            "breed": (animal.breed or UNKNOWN).lower(),
            "season": season(animal.born),
            "parity": orders.get(litter, UNKNOWN),
        },
        {
            "litter": litter or f"{animal.dam or animal.key}@{animal.born}",
            "dam": animal.dam or animal.key,
            "quarter": quarter(animal.born) if animal.born else UNKNOWN,
        },
        {"nest": sizes.get(litter, usual) - usual},
    )


def litter_order(herd: Herd) -> dict[str, str]:
    """Each litter's key -> whether it is its dam's first on the book or a later one. Of a doe that came grown it is not known."""
    told: dict[str, str] = {}
    seen: set[str] = set()
    for litter in sorted(herd.litters.values(), key=lambda one: one.born_on):
        dam = herd.animals.get(litter.dam)
        first = UNKNOWN if dam is None or dam.origin == "bought" else "first"
        told[litter.key] = "later" if litter.dam in seen else first
        seen.add(litter.dam)
    return told


def litter_record(herd: Herd, litter: Litter, value: float, order: str, weight: float = 1.0) -> Record:
    """A doe's record of one litter: breed, season and first or later litter are allowed for."""
    doe = herd.animals.get(litter.dam)
    breed = (doe.breed if doe else None) or UNKNOWN
    fixed = {"breed": breed.lower(), "season": season(litter.born_on), "parity": order}
    return Record(litter.dam, value, fixed, {"doe": litter.dam, "quarter": quarter(litter.born_on)}, weight=weight)


def born_alive_records(herd: Herd, today: date, book: Iterable[str]) -> list[tuple[Litter, Record]]:
    """Kits born alive in each litter whose count somebody told."""
    orders, on_book = litter_order(herd), set(book)
    told = [one for one in herd.litters.values() if one.dam in on_book and one.born_on <= today]
    told = [one for one in told if one.alive is not None or one.born is not None]
    return [(one, litter_record(herd, one, float(live_born(one)), orders[one.key])) for one in told]


def weaned_records(herd: Herd, finished: Iterable[Raised]) -> list[tuple[Litter, Record]]:
    """Kits weaned of each litter: those that weather or a predator took count as the rest of the nest fared."""
    orders = litter_order(herd)
    told = [(one.litter, one.kept * one.given / one.alive if one.alive else 0.0) for one in finished if one.given]
    return [(litter, litter_record(herd, litter, weaned, orders[litter.key])) for litter, weaned in told]


def raised_records(herd: Herd, finished: Iterable[Raised], likeness: float) -> list[tuple[Litter, Record]]:
    """The share of kits raised in each litter, weather and predators apart.

    A large litter weighs more than a small one, but not by its kits, for one nest's kits share a fate (`likeness`).
    """
    told = [one for one in finished if one.alive]
    orders = litter_order(herd)
    usual = fmean(one.alive for one in told) if told else 1.0
    return [
        (one.litter, litter_record(herd, one.litter, one.kept / one.alive, orders[one.litter.key], _worth(one.alive, usual, likeness)))
        for one in told
    ]


def _worth(kits: float, usual: float, likeness: float) -> float:
    """How much a litter of so many kits tells, over one of the usual size."""
    return kits * (1 + (usual - 1) * likeness) / (usual * (1 + (kits - 1) * likeness))
