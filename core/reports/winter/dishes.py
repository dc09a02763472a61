"""Every dish from today on: each animal, each litter that is weaned, under its dam or still to come, with what is known of its days.

A dish has the animal's key, or the litter's; a litter that may come has the key it would get, `dam@day`.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import lru_cache

from core.handbook import breeds, feeding, reproduction, stages, survival
from core.herd.litters import alive_now, nursed_litter, untagged
from core.herd.questions import age_days
from core.herd.settings import junior_age
from core.herd.state import Animal, Litter
from core.reckon.curve import weight_at_age
from core.reckon.eating import Diner, Nursing, Spell
from core.reports.doe_life import takes_of
from core.reports.evidence import Evidence
from core.reports.feeding import figures, in_grams, in_kindle, kit_weight, ration_of, weight_of
from core.reports.growing import breed_curve, curve_for
from core.reports.litter_size import size_of

_WEAN = timedelta(reproduction.WEAN_DAY.whole)
_CARRY = timedelta(reproduction.GESTATION_DAYS.whole)


@dataclass(frozen=True, slots=True)
class Coming:
    """A litter that a mating, done or planned, may give.

    kits    expected to be born alive;  raised  of these expected to be weaned;  chance  that the mating settles
    """

    dam: str
    on: date
    chance: float
    kits: float
    raised: float

    @property
    def key(self) -> str:
        """The key it would get."""
        return f"{self.dam}@{self.on.isoformat()}"


@lru_cache(maxsize=4)
def coming_litters(barn: Evidence) -> tuple[Coming, ...]:
    """The litters to come: of the does in kindle, and of the matings that somebody planned with a day, the earliest first."""
    does = [one for one in barn.living if one.sex == "doe"]
    found = [_coming(barn, doe, *told) for doe in does for told in _apart(_births(barn, doe))]
    return tuple(sorted(found, key=lambda one: (one.on, one.dam)))


def _apart(births: Iterable[tuple[date, float]]) -> list[tuple[date, float]]:
    """Births of one doe that can follow one another: a mating planned for while she carries, or twice, brings no litter of its own."""
    told: list[tuple[date, float]] = []
    for born, chance in sorted(births, key=lambda birth: birth[0]):
        if not told or born - told[-1][0] >= _CARRY:
            told.append((born, chance))
    return told


def _births(barn: Evidence, doe: Animal) -> Iterator[tuple[date, float]]:
    """When she may kindle, and how likely it is."""
    mating = in_kindle(barn.herd, doe.key, barn.today)
    if mating is not None:
        felt = mating.palpated[-1][1] if mating.palpated else None
        yield max(mating.on + _CARRY, barn.today + timedelta(1)), 1.0 if felt == "bred" else _takes(barn, doe)
    for plan in doe.intentions:
        if plan.what == "breed" and plan.on is not None and plan.on >= barn.today:
            yield plan.on + _CARRY, _takes(barn, doe)


def _takes(barn: Evidence, doe: Animal) -> float:
    told = takes_of(barn).get(doe.key)
    return told.estimate if told else reproduction.USUAL_CONCEPTION.value


def _coming(barn: Evidence, doe: Animal, on: date, chance: float) -> Coming:
    kits = size_of(barn, doe).following
    raises = barn.dams[doe.key].share.estimate if doe.key in barn.dams else survival.PRIOR_MEAN.value
    return Coming(doe.key, on, chance, kits, kits * raises)


@lru_cache(maxsize=4)
def diners(barn: Evidence) -> tuple[Diner, ...]:
    """Every dish, the animals by tag, then the litters by birth."""
    young = sorted((one for one in barn.herd.litters.values() if untagged(barn.herd, one)), key=lambda one: (one.born_on, one.key))
    animals = [_of_animal(barn, one) for one in barn.living]
    return (*animals, *(_of_litter(barn, one) for one in young), *(_of_coming(barn, one) for one in coming_litters(barn)))


def _day(barn: Evidence, on: date) -> int:
    """A day as so many from today, not before it."""
    return max((on - barn.today).days, 0)


def _weaned(barn: Evidence, litter: Litter) -> int:
    """The day from which a litter's kits have a dish of their own; one that should be weaned by now is weaned tomorrow."""
    return 0 if litter.weaned_on is not None else max((litter.born_on + _WEAN - barn.today).days, 1)


def _of_animal(barn: Evidence, animal: Animal) -> Diner:
    """An animal's dish: a kit's from its weaning on, a grower's along its curve until it counts as a junior."""
    told, age, at_stage = _rations(barn, animal), age_days(animal, barn.today), barn.stages[animal.key]
    one = Diner(key=animal.key, weight_g=weight_of(animal, barn.today), told=told[0], told_grown=told[1])
    one = replace(one, gains=_put_on(barn, animal, one.weight_g))
    if age is not None and age < stages.SENIOR_FROM_DAYS.whole:
        one = _young(barn, animal, one, age)
    if at_stage == "kit":
        litter = barn.herd.litters.get(animal.litter or "")
        one = replace(one, first=_weaned(barn, litter) if litter else max(reproduction.WEAN_DAY.whole - (age or 0), 1))
    return _as_a_doe(barn, animal, one) if animal.sex == "doe" else one


def _young(barn: Evidence, animal: Animal, one: Diner, age: int) -> Diner:
    """A young one, from the weight that its last weighing leads to, else its breed's at that age, on along its own curve."""
    own = curve_for(barn, animal)
    growing = barn.stages[animal.key] in {"kit", "grow-out"}
    weight = one.weight_g if animal.weights or not growing else _breed_weight(animal.breed, animal.sex, age)
    return replace(
        one,
        weight_g=weight,
        age_days=float(age),
        heading_g=max(own.adult_g, weight),
        rate=own.k,
        grown_from=max(junior_age(barn.herd.settings) - age, 0) if growing else None,
        stays_from=stages.SENIOR_FROM_DAYS.whole - age,
        gains=() if growing else one.gains,
    )


def _breed_weight(breed: str | None, sex: str | None, age: float) -> float:
    """What the handbook's curve gives at that age [g]."""
    return weight_at_age(age, breeds.growth_ceiling_g(breed, sex), figures().curve_b, figures().curve_k)


def _rations(barn: Evidence, animal: Animal) -> tuple[float | None, float | None]:
    """What the farm said it gets, while it is what it is and once it is grown [g a day]."""
    young = "grow-out" if barn.stages[animal.key] == "kit" else barn.stages[animal.key]
    told = [ration_of(barn.herd, animal, at_stage) for at_stage in (young, "junior")]
    now, grown = (None if one is None else in_grams(one, barn.herd) for one in told)
    return now, grown


def _put_on(barn: Evidence, animal: Animal, weight: float) -> tuple[tuple[Spell, float], ...]:
    """What a thin one takes beside its need to get its flesh back, and how many days more; one scored long ago has had the time."""
    scored = [each for each in sorted(animal.conditions) if each[0] <= barn.today]
    if not scored or scored[-1][1] >= feeding.CONDITION_THIN_BELOW.value:
        return ()
    points = feeding.CONDITION_IDEAL.value - scored[-1][1]
    left = round(points * feeding.CONDITION_REGAIN_DAYS.value) - (barn.today - scored[-1][0]).days
    a_point = feeding.CONDITION_POINT_SHARE.value * weight * feeding.FEED_A_GRAM_OF_CONDITION.value
    return ((Spell(0, left), a_point / feeding.CONDITION_REGAIN_DAYS.value),) if left > 0 else ()


def _as_a_doe(barn: Evidence, doe: Animal, one: Diner) -> Diner:
    """The dish of a doe that carries or nurses, or will."""
    litter = nursed_litter(barn.herd, doe.key, barn.today)
    nursing = [] if litter is None else [Nursing(Spell(0, _weaned(barn, litter)), alive_now(litter), (barn.today - litter.born_on).days)]
    pregnant = []
    for come in (each for each in coming_litters(barn) if each.dam == doe.key):
        born = _day(barn, come.on)
        pregnant.append(Spell(max(born - _CARRY.days, 0), born))
        nursing.append(Nursing(Spell(born, born + _WEAN.days, come.chance), come.raised, 0))
    return replace(one, pregnant=tuple(pregnant), nursing=tuple(nursing))


def _of_litter(barn: Evidence, litter: Litter) -> Diner:
    """The dish of a litter's untagged kits, from their weaning on."""
    dam = barn.herd.animals.get(litter.dam)
    kits, age = untagged(barn.herd, litter), (barn.today - litter.born_on).days
    one = _kits(barn, litter.key, dam.breed if dam else None, kits, age, _weaned(barn, litter))
    weighed = kit_weight(barn.herd, litter, barn.today)
    return one if weighed is None else replace(one, weight_g=weighed, heading_g=max(one.heading_g or weighed, weighed))


def _of_coming(barn: Evidence, one: Coming) -> Diner:
    """The dish of a litter to come, as far as it is expected."""
    breed = barn.herd.animals[one.dam].breed
    return _kits(barn, one.key, breed, one.chance * one.raised, (barn.today - one.on).days, _day(barn, one.on + _WEAN))


def _kits(barn: Evidence, key: str, breed: str | None, heads: float, age: int, first: int) -> Diner:  # noqa: PLR0913, PLR0917 - a litter's numbers
    ration, curve = barn.herd.rations.get("grow-outs") or barn.herd.rations.get("all"), breed_curve(barn, breed)
    grown = barn.herd.rations.get("all")
    weight = curve.weight_at(age) if first else _breed_weight(breed, None, age)
    return Diner(
        key=key,
        heads=heads,
        weight_g=weight,
        age_days=float(age),
        heading_g=max(curve.adult_g, weight),
        rate=curve.k,
        grown_from=max(junior_age(barn.herd.settings) - age, 0),
        stays_from=stages.SENIOR_FROM_DAYS.whole - age,
        first=first,
        told=None if ration is None else in_grams(ration, barn.herd),
        told_grown=None if grown is None else in_grams(grown, barn.herd),
    )
