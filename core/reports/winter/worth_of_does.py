"""What makes a doe worth more or less than usual: her matings, her litters, how she raises them and how they grow."""

from __future__ import annotations

from math import hypot

from core.handbook import genetics, reproduction
from core.handbook import survival as survival_figures
from core.handbook import worth as figures
from core.herd.state import Animal
from core.reckon.choose import Guess
from core.reports.doe_life import DAYS_IN_YEAR, takes_of
from core.reports.evidence import Evidence
from core.reports.litter_size import size_of
from core.reports.winter.factors import Factor, moved_by
from core.reports.winter.usual import Usual, bred_in, growth_spread, raising_spread, size_spread


def doe_factors(barn: Evidence, doe: Animal, usual: Usual) -> list[Factor]:
    """A doe's matters, or those of a young one whose sex is not known."""
    return [*_takes(barn, doe), *_litter_size(barn, doe, usual), _raises(barn, doe, usual), _kits_grow(barn, doe)]


def _takes(barn: Evidence, doe: Animal) -> list[Factor]:
    """Litters a year, by how often her matings take; of one never mated nothing is said."""
    takes = takes_of(barn).get(doe.key)
    if takes is None:
        return []
    every = DAYS_IN_YEAR / reproduction.LITTERS_A_YEAR.value
    lost = figures.MISSED_COSTS_DAYS.value
    days = every + lost * (1 / takes.estimate - 1 / reproduction.USUAL_CONCEPTION.value)
    return [Factor("takes", every / days, every / days**2 * lost / takes.estimate**2 * takes.deviation, takes.litters)]


def _litter_size(barn: Evidence, doe: Animal, usual: Usual) -> list[Factor]:
    """Her next litter for her number of litters, with her own trend; then her level, by her litters and her family's."""
    size = size_of(barn, doe)
    expected = max(size.following - size.level, 0.0)
    level = _level(barn, doe)
    beside = max(expected, 1.0)
    return [
        Factor("age", expected / usual.born, 0.0, size.litters),
        Factor("litter_size", 1 + level.value / beside, level.deviation / beside, size.litters),
    ]


def _level(barn: Evidence, doe: Animal) -> Guess:
    """Her litters against her breed's [kits]: what she carries, and what is her own beyond that; both by all litters on the book."""
    carries = bred_in(barn.born_alive, barn, doe, size_spread())
    trait = barn.born_alive
    own = trait.solved.effects.get("doe", {}).get(doe.key, 0.0) if trait else 0.0
    size = size_of(barn, doe)
    return Guess(carries.value + own, hypot(size.level_sd, size.slope_sd))


def _raises(barn: Evidence, doe: Animal, usual: Usual) -> Factor:
    """The share of kits that she raises; of one without a litter what her family says."""
    dam = barn.dams.get(doe.key)
    if dam is not None:
        return Factor("raises_kits", dam.share.estimate / usual.raised, dam.share.deviation / usual.raised, len(dam.litters))
    carries = bred_in(barn.raising, barn, doe, raising_spread(usual.raised))
    own = (usual.raised * (1 - usual.raised) / (survival_figures.PRIOR_WEIGHT.value + 1)) ** 0.5
    return Factor("raises_kits", 1 + carries.value / usual.raised, own / usual.raised, 0)


def _kits_grow(barn: Evidence, doe: Animal) -> Factor:
    """How her kits grow: half of what she carries, and her milk."""
    carries = bred_in(barn.growth, barn, doe, growth_spread())
    trait = barn.growth
    milk = trait.solved.effects.get("dam", {}).get(doe.key, 0.0) if trait else 0.0
    return Factor("kits_grow", 1 + carries.value / 2 + milk, carries.deviation / 2, trait.of_litter.get(doe.key, 0) if trait else 0)


def doe_learns(barn: Evidence, doe: Animal, usual: Usual) -> float:
    """How far one more litter may be expected to move her worth [share]."""
    size = size_of(barn, doe)
    scatter = genetics.BORN_ALIVE_SD.value**2 * (1 - genetics.BORN_ALIVE_H2.value - genetics.BORN_ALIVE_P2.value)
    by_size = moved_by(size.level_sd**2, scatter) / usual.born
    dam = barn.dams.get(doe.key)
    weight = survival_figures.PRIOR_WEIGHT.value
    spread = usual.raised * (1 - usual.raised)
    known = dam.share.deviation**2 if dam else spread / (weight + 1)
    kits = max(usual.born, 1.0)
    noise = spread * (1 + (kits - 1) * survival_figures.LITTER_SPREAD.value) / kits
    return hypot(by_size, moved_by(known, noise) / usual.raised)
