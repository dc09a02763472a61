"""What makes a young one worth less than a grown one: it breeds only for a part of the year, and it may stay light. And a litter's family."""

from __future__ import annotations

from math import hypot

from core.handbook import genetics, growth, stages
from core.handbook import worth as figures
from core.herd.questions import age_days
from core.herd.settings import junior_age
from core.herd.state import Animal, Litter
from core.reports.doe_life import DAYS_IN_YEAR
from core.reports.evidence import Evidence
from core.reports.growing import heading
from core.reports.winter.factors import Factor, moved_by
from core.reports.winter.usual import Usual, bred_in, growth_spread, raising_spread, size_spread


def waiting(barn: Evidence, young: Animal | Litter) -> list[Factor]:
    """The part of the year that is left once it can breed."""
    age = (barn.today - young.born_on).days if isinstance(young, Litter) else age_days(young, barn.today)
    later = stages.BUCK_LATER_DAYS.whole if isinstance(young, Animal) and young.sex == "buck" else 0
    if age is None or (isinstance(young, Animal) and barn.stages[young.key] == "senior"):
        return []
    wait = junior_age(barn.herd.settings) + later - age
    if wait <= 0:
        return []
    return [Factor("breeds_later", max(1 - wait / DAYS_IN_YEAR, 0.0), 0.0, 0)]


def light(barn: Evidence, young: Animal) -> list[Factor]:
    """That a grow-out may be light at sixteen weeks."""
    if barn.stages[young.key] != "grow-out":
        return []
    told = heading(barn, young)
    if told.reached or not told.chance_light:
        return []
    return [Factor("may_stay_light", 1 - told.chance_light * figures.LIGHT_TAKES.value, 0.0, told.weighings)]


def one_of_many(barn: Evidence, young: Animal) -> list[Factor]:
    """That few young bucks are ever used."""
    if young.sex != "buck" or barn.stages[young.key] != "grow-out":
        return []
    return [Factor("one_of_many", figures.YOUNG_BUCK.value, 0.0, 0)]


def family_factors(barn: Evidence, litter: Litter, usual: Usual) -> list[Factor]:
    """What a litter's parents hand down, half of each."""
    parents = [barn.herd.animals[key] for key in (litter.dam, litter.sire) if key is not None and key in barn.herd.animals]
    traits = (
        ("kits_grow", barn.growth, growth_spread(), 2.0),
        ("litter_size", barn.born_alive, size_spread(), usual.born),
        ("raises_kits", barn.raising, raising_spread(usual.raised), usual.raised),
    )
    told = []
    for code, trait, spread, of in traits:
        carried = [bred_in(trait, barn, one, spread) for one in parents]
        doubt = hypot(spread / 2**0.5, *(one.deviation / 2 for one in carried))
        told.append(Factor(code, 1 + sum(one.value for one in carried) / 2 / of, doubt / of, trait.records if trait else 0))
    return told


def young_learns() -> float:
    """How far weighing a young one may be expected to move its worth [share]."""
    bred = genetics.WEIGHT_70D_H2.value
    return moved_by(growth_spread() ** 2 / 4, growth.WEIGHT_CV.value**2 * (1 - bred))
