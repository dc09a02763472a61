"""Which bucks of a breed to keep: the best proven one, the best young one coming on, and so on to the farm's number.

They are ranked by what their kits make of it, corrected for dam, litter and season, and less for a bad temper or a fault that
bars them. A young buck without kits stands on his own weights and his parents'.
"""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from functools import lru_cache

from core.handbook import flags as figures
from core.handbook import genetics, growth
from core.herd.litters import litters_sired
from core.herd.questions import events, leaving
from core.herd.settings import bucks_a_breed
from core.herd.state import Animal
from core.reckon.curve import weight_at_age
from core.reports.evidence import Evidence
from core.reports.finding import Finding
from core.reports.growth import curve_of
from core.reports.merit import Trait
from core.reports.wording import how_sure, short
from core.words import count, listed

#: From this chance on it is worth saying that another's kits would outgrow his.
TOLD_FROM = 0.6  # not a figure: how sure before it is worth a line


@dataclass(frozen=True, slots=True)
class Ranked:
    """A breed's bucks, best first, and those that the farm's number keeps."""

    wanted: int
    best_first: tuple[Animal, ...]
    kept: tuple[Animal, ...]

    def place(self, buck: Animal) -> int:
        """His place, the best is 1."""
        return [one.key for one in self.best_first].index(buck.key) + 1


def same_breed(one: Animal, other: Animal) -> bool:
    """Whether they count as one breed; unknown is a breed of its own."""
    return (one.breed or "").lower() == (other.breed or "").lower()


def worth(barn: Evidence, animal: Animal) -> float:
    """How good a breeder it is among its breed [standard deviations of what is bred in], faults and temper taken off."""
    mates = barn.mates(animal)
    score = 0.0
    for trait, spread, weight in _scales(barn):
        value = trait.value(animal.key, mates) if trait else None
        score += weight * (value or 0.0) / spread
    return score - _blemishes(animal)


def _scales(barn: Evidence) -> Iterable[tuple[Trait | None, float, float]]:
    """Each trait with its bred-in spread and what it counts: growth whole, litters half."""
    bred_in = growth.WEIGHT_CV.value * genetics.WEIGHT_70D_H2.value**0.5
    return (
        (barn.growth, bred_in, 1.0),
        (barn.born_alive, genetics.BORN_ALIVE_SD.value * genetics.BORN_ALIVE_H2.value**0.5, 0.5),
        (barn.raising, (genetics.SURVIVAL_H2.value * genetics.WEIGHT_CV.value) ** 0.5, 0.5),
    )


def _blemishes(animal: Animal) -> float:
    """What a temper or a fault takes off."""
    last = {str(one.detail.get("fault")): bool(one.detail.get("disqualifies")) for one in events(animal, "fault")}
    bad = sum(1 for one in events(animal, "temper") if one.detail.get("grade") == "bad")
    return 2.0 * any(last.values()) + 1.0 * (bad >= figures.BAD_TEMPER_NOTES.value)


def candidates(barn: Evidence, breed: str) -> list[Animal]:
    """A breed's (in lower case) living junior and senior bucks that are neither for sale nor planned to go."""
    return [
        one
        for one in barn.living
        if one.sex == "buck"
        and (one.breed or "").lower() == breed
        and barn.stages[one.key] in {"junior", "senior"}
        and one.listing is None
        and leaving(one) is None
    ]


def ranked(barn: Evidence, breed_of: Animal) -> Ranked:
    """The bucks of that animal's breed, ranked, and the ones to keep."""
    return _ranked(barn, (breed_of.breed or "").lower())


@lru_cache(maxsize=16)
def _ranked(barn: Evidence, breed: str) -> Ranked:
    order = sorted(candidates(barn, breed), key=lambda one: (-worth(barn, one), one.tag))
    wanted = bucks_a_breed(barn.herd.settings, breed or None)
    return Ranked(wanted, tuple(order), chosen(barn, order, wanted))


def chosen(barn: Evidence, order: Sequence[Animal], wanted: int) -> tuple[Animal, ...]:
    """The best senior, a proven one where there is one, and the best junior; then the next best whoever it is, until the number is full."""
    seniors = [one for one in order if barn.stages[one.key] == "senior"]
    proven = [one for one in seniors if litters_sired(barn.herd, one.key)]
    juniors = [one for one in order if barn.stages[one.key] == "junior"]
    first = [*(proven or seniors)[:1], *juniors[:1]]
    rest = [one for one in order if one not in first]
    return tuple((*first, *rest)[: max(wanted, 0)])


def excess_buck(barn: Evidence, animal: Animal) -> Finding | None:
    """A buck ranked below the number that the farm keeps of his breed."""
    if animal.sex != "buck" or barn.stages[animal.key] not in {"junior", "senior"}:
        return None
    bucks = ranked(barn, animal)
    if animal not in bucks.best_first or animal in bucks.kept:
        return None
    rival = _rival(barn, bucks, animal)
    better = barn.growth.better(rival.key, animal.key) if barn.growth and rival else None
    grams, reliability, kits = growth_merit(barn, animal)
    place, of = bucks.place(animal), len(bucks.best_first)
    breed = f"{animal.breed} " if animal.breed else ""
    text = f"Number {place} of {count(of, f'{breed}buck')}; you keep {bucks.wanted} ({count(kits, 'kit') if kits else 'no kit'} of his weighed)"
    if rival and better is not None and better >= TOLD_FROM:
        sure = how_sure(f"{rival.name or rival.tag}'s kits would", "outgrow his", better)
        text += f". {sure}"
    text += "."
    evidence = {
        "rank": place,
        "count": of,
        "keep": bucks.wanted,
        "weight_70d_grams": grams,
        "reliability": reliability,
        "kits_weighed": kits,
        "better": rival.tag if rival else None,
        "chance_better": better,
    }
    return Finding(animal.key, animal.tag, "excess_buck", text, evidence, heed=2, kinds=("weighed", "bred"))


def _rival(barn: Evidence, bucks: Ranked, animal: Animal) -> Animal | None:
    """The kept buck of his own stage, else the best of those kept."""
    alike = [one for one in bucks.kept if barn.stages[one.key] == barn.stages[animal.key]]
    return next(iter((*alike, *bucks.kept)), None)


def grams_scale(animal: Animal) -> float:
    """What the whole of the breed's curve weighs at the age of comparison [g]."""
    return weight_at_age(growth.COMPARED_AGE_DAYS.value, *curve_of(animal.breed))


def stands_out(barn: Evidence, animal: Animal) -> bool:
    """Whether its growth lies above the breed's mean here by more than half of what is unsure about it."""
    trait = barn.growth
    asked = trait.solved.asked.get(animal.key) if trait else None
    value = trait.value(animal.key, barn.mates(animal)) if trait else None
    return asked is not None and value is not None and value > asked.standard_error / 2


def on_kits(barn: Evidence, *animals: Animal) -> str:
    """What a comparison of growth stands on: `by 84 kits of 3 Ember and 16 of 24 Flicker weighed`."""
    told = {short(one): growth_merit(barn, one)[2] for one in animals}
    weighed = {name: kits for name, kits in told.items() if kits}
    if not weighed:
        return "by their own weights and their families'"
    of = [f"{count(kits, 'kit') if not at else kits} of {name}" for at, (name, kits) in enumerate(weighed.items())]
    without = listed(name for name in told if name not in weighed)
    return f"by {listed(of)} weighed" + (f" and what {without} and family weigh" if without else "")


def growth_merit(barn: Evidence, animal: Animal) -> tuple[float | None, float | None, int]:
    """Breeding value for weight at ten weeks [g] against the breed's living mean, its reliability, and how many kits were weighed."""
    trait = barn.growth
    if trait is None:
        return None, None, 0
    value = trait.value(animal.key, barn.mates(animal))
    return (None if value is None else value * grams_scale(animal)), trait.reliability(animal.key), trait.of_litter.get(animal.key, 0)
