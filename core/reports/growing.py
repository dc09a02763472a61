"""Where each young one is heading: its own curve among its breed's on this farm, the day of its target, and what it eats until then."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache
from math import ceil, floor
from typing import Any

from core.handbook import growth, stages
from core.herd.settings import target_weight
from core.herd.state import Animal
from core.reckon.feed import eaten_growing, stops_paying
from core.reckon.growing_together import GrowingTogether, GrowthBelief, Young, growing_together
from core.reckon.growth import GrowthFit
from core.reckon.interval import LEVEL
from core.reports.evidence import Evidence
from core.reports.feeding import figures
from core.reports.growth import curve_of, weighings
from core.reports.wording import grams, price, when
from core.words import count

KINDS = {"buck": "buck", "doe": "doe", "": None}
CHANCES = ((1 - LEVEL) / 2, 0.5, (1 + LEVEL) / 2)
G_IN_KG = 1000  # not a figure: grams in a kilogram


@dataclass(frozen=True, slots=True)
class Heading:
    """Where an animal of known age is heading.

    target         what it should weigh at sixteen weeks [g];  `reached` whether it has been weighed at that
    chance_ever    that it will ever weigh so much
    on             the day it most likely does, between `early` and `late` (80 %); None where that is not so before it is grown
    feed, cents    what it eats from today until that day [g], and what that costs [cents]
    costly_week    the first week of age whose feed costs more than its gain is worth; None where none does before it is grown
    of_herd        its newest weight as a share of its breed's and sex's on this farm at that age; None where nobody else was weighed
    of_target      its newest weight as a share of what leads to the target
    chance_light   that at sixteen weeks it is below the target
    weighings      of its own that tell;  `mates` others of its breed that were weighed young here
    """

    target: int
    reached: bool
    chance_ever: float | None = None
    on: date | None = None
    early: date | None = None
    late: date | None = None
    feed: float | None = None
    cents: float | None = None
    costly_week: int | None = None
    of_herd: float | None = None
    of_target: float | None = None
    chance_light: float | None = None
    weighings: int = 0
    mates: int = 0

    @property
    def runt(self) -> bool:
        """Far below its herd mates, or far below what leads to the target."""
        return any(share is not None and share < growth.RUNT_SHARE.value for share in (self.of_herd, self.of_target))

    def document(self) -> dict[str, Any]:
        """The same as numbers."""
        days = {name: on.isoformat() if on else None for name, on in (("on", self.on), ("early", self.early), ("late", self.late))}
        return {
            "target_grams": self.target,
            "target_reached": self.reached,
            "target_chance_ever": self.chance_ever,
            "target_chance_missed_at_16_weeks": self.chance_light,
            **{f"target_{name}": on for name, on in days.items()},
            "feed_grams_to_target": self.feed,
            "feed_cents_to_target": self.cents,
            "costly_from_week": self.costly_week,
            "share_of_herd": self.of_herd,
            "share_of_target": self.of_target,
            "runt": self.runt,
            "weighings": self.weighings,
            "mates_weighed": self.mates,
        }


@lru_cache(maxsize=4)
def curves(barn: Evidence) -> Mapping[str, GrowingTogether]:
    """Each breed's curves on this farm, by the breed in lower case."""
    return {breed: _together(breed, young) for breed, young in _young(barn).items()}


@lru_cache(maxsize=4)
def _young(barn: Evidence) -> Mapping[str, tuple[Young, ...]]:
    """Each breed's animals that were weighed young, the breed in lower case."""
    young: dict[str, list[Young]] = {(one.breed or "").lower(): [] for one in barn.living}
    for animal in barn.herd.animals.values():
        told = tuple(one for one in weighings(animal) if one[0] <= growth.CURVE_UNTIL_DAYS.value and one[1] > 0)
        if told:
            young.setdefault((animal.breed or "").lower(), []).append(Young(animal.key, animal.sex or "", told))
    return {breed: tuple(told) for breed, told in young.items()}


@lru_cache(maxsize=16)
def _together(breed: str, young: tuple[Young, ...]) -> GrowingTogether:
    """A breed's curves, kept for the next notes: only weighings, births and sexes change them."""
    return growing_together(young, _handbook(breed), _belief())


def _handbook(breed: str) -> dict[str, tuple[float, float, float]]:
    return {kind: curve_of(breed or None, sex) for kind, sex in KINDS.items()}


def _belief() -> GrowthBelief:
    def three(*each: Any) -> tuple[float, float, float]:
        ceiling, shape, rate = (one.value for one in each)
        return ceiling, shape, rate

    return GrowthBelief(
        herd=three(growth.FARM_CEILING_CV, growth.FARM_SHAPE_CV, growth.FARM_RATE_CV),
        kind=three(growth.SEX_CEILING_CV, growth.SEX_SHAPE_CV, growth.SEX_RATE_CV),
        own=three(growth.CEILING_PRIOR_CV, growth.SHAPE_PRIOR_CV, growth.RATE_PRIOR_CV),
        weighing=growth.WEIGHING_ERROR_CV.value,
    )


def curve_for(barn: Evidence, animal: Animal) -> GrowthFit:
    """An animal's own curve; where it was never weighed young, its breed's and sex's."""
    found = curves(barn).get((animal.breed or "").lower())
    own = found.animals.get(animal.key) if found else None
    return own or breed_curve(barn, animal.breed, animal.sex)


def breed_curve(barn: Evidence, breed: str | None, sex: str | None = None) -> GrowthFit:
    """The curve of a breed and sex on this farm; of a breed that nobody weighed here, the handbook's."""
    found = curves(barn).get((breed or "").lower()) or growing_together([], _handbook(breed or ""), _belief())
    return found.kinds[sex or ""]


def litter_curve(barn: Evidence, breed: str | None, litter: Young) -> GrowthFit:
    """The curve of a litter's mean kit, weighed all together, among the breed's young here."""
    named = (breed or "").lower()
    return _together(named, (*_young(barn).get(named, ()), litter)).animals[litter.key]


def heading(barn: Evidence, animal: Animal) -> Heading:
    """Where an animal is heading. Without its birth date only the target is known."""
    return _heading(barn, animal.key)


@lru_cache(maxsize=256)
def _heading(barn: Evidence, key: str) -> Heading:
    animal = barn.herd.animals[key]
    target = target_weight(barn.herd.settings, animal.breed)
    known = [one for one in animal.weights if one.on <= barn.today and one.grams > 0]
    reached = any(one.grams >= target for one in known)
    if animal.born is None:
        return Heading(target, reached)
    own, age = curve_for(barn, animal), max((barn.today - animal.born).days, 1)
    until = max(stages.SENIOR_FROM_DAYS.whole, age)
    ages = (None, None, None) if reached else own.ages_when(target, CHANCES, until=until)
    early, on, late = days_told(animal.born, age, ages)
    feed = None if on is None else eaten_growing(own.weight_at, range(age, max((on - animal.born).days, age)), figures())
    cents = barn.cents_a_gram
    of_herd, of_target = _shares(barn, animal, target)
    return Heading(
        target,
        reached,
        chance_ever=1.0 if reached else own.chance_ever(target),
        on=on,
        early=early,
        late=late,
        feed=feed,
        cents=None if feed is None else feed * cents,
        costly_week=_costly_week(own, age, until, cents),
        of_herd=of_herd,
        of_target=of_target,
        chance_light=1 - own.chance_by(growth.LIGHT_AGE_DAYS.value, target),
        weighings=_own_weighings(barn, animal),
        mates=len(_breed_mates(barn, animal)),
    )


def days_told(born: date, age: int, ages: Sequence[float | None]) -> tuple[date | None, ...]:
    """The ages of early, likely and late as whole days, none before today's `age`.

    It makes its target on the first day after it is that old. Both ends of what is told count, so the late one is rounded down.
    """
    early, likely, late = ages
    on = None if likely is None else max(ceil(likely), age)
    whole = (None if early is None else max(ceil(early), age), on, None if late is None or on is None else max(floor(late), on))
    return tuple(None if day is None else born + timedelta(day) for day in whole)


def _own_weighings(barn: Evidence, animal: Animal) -> int:
    found = curves(barn).get((animal.breed or "").lower())
    return found.animals[animal.key].weighings if found and animal.key in found.animals else 0


def _breed_mates(barn: Evidence, animal: Animal) -> list[str]:
    """The others of its breed that were weighed young on this farm."""
    found = curves(barn).get((animal.breed or "").lower())
    return [one for one in found.animals if one != animal.key] if found else []


def _costly_week(own: GrowthFit, age: int, until: int, cents: float) -> int | None:
    """From when feed costs more than the gain is worth; not before growth is at its fastest."""
    ages = range(max(age, round(own.inflection_age)), until)
    return stops_paying(own.weight_at, ages, figures(), feed_cents_a_g=cents, live_cents_a_g=growth.LIVE_VALUE_CENTS_A_KG.value / G_IN_KG)


def _shares(barn: Evidence, animal: Animal, target: int) -> tuple[float | None, float | None]:
    """The newest young weight against the farm's own curve of its breed and sex, and against the curve that ends at the target."""
    told = [one for one in weighings(animal) if one[0] <= growth.CURVE_UNTIL_DAYS.value]
    if not told:
        return None, None
    age, weight = told[-1]
    breed = curves(barn)[(animal.breed or "").lower()]
    usual = GrowthFit(*curve_of(animal.breed, animal.sex), 0.0, 0, breed.kinds[""].spread)
    wanted = target * usual.weight_at(age) / usual.weight_at(growth.LIGHT_AGE_DAYS.value)
    mates = _breed_mates(barn, animal)
    return weight / breed.kinds[animal.sex or ""].weight_at(age) if mates else None, weight / wanted


def heading_lines(barn: Evidence, animal: Animal) -> list[str]:
    """Where a young one is heading, in words: the day of its target, the feed until then, and from when feed costs more than it adds."""
    told = heading(barn, animal)
    if told.reached or told.chance_ever is None:
        return []
    lines = [f"{day_line(barn, told)}, {_by(told)}."]
    if told.costly_week is not None:
        lines.append(f"From week {told.costly_week} a week's feed costs more than the weight it puts on.")
    return [*lines, *([runt_line(told)] if told.runt else [])]


def day_line(barn: Evidence, told: Heading) -> str:
    """The day of the target with its interval, and what it eats until then; or that it will hardly get there."""
    settings, today = barn.herd.settings, barn.today
    aim = grams(settings, told.target)
    if told.on is None or told.early is None or told.feed is None or told.cents is None:
        return f"Not likely to make {aim}: {(told.chance_ever or 0.0) * 100:.0f} chances in 100 that it ever does"
    if told.late == today:
        return f"Should weigh {aim} by now: weigh it"
    end = f"to {when(told.late, today)}" if told.late else "or never"
    cost = f"{grams(settings, told.feed)} of feed ({price(settings, told.cents)})"
    return f"Makes {aim} about {when(told.on, today)} (likely {when(told.early, today)} {end}), on {cost} from now"


def _by(told: Heading) -> str:
    """What that stands on: `by 3 weights of its own and 24 of its breed weighed here`; of one never weighed, to weigh it."""
    mates = f"{told.mates} of its breed weighed here" if told.mates else "the handbook's curve for its breed"
    return f"by {count(told.weighings, 'weight')} of its own and {mates}" if told.weighings else f"by {mates}: weigh it to know better"


def runt_line(told: Heading) -> str:
    """How far a runt is behind, by the herd and by the target."""
    shares = [(told.of_herd, "its herd mates"), (told.of_target, "what leads to the target")]
    of_what = [f"{share * 100:.0f} % of {what}" for share, what in shares if share is not None]
    return f"A runt so far: {', '.join(of_what)}. Check feed and health first."
