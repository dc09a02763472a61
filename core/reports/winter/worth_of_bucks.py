"""What makes a buck worth more or less than being there: how his kits grow, and what his daughters wean."""

from __future__ import annotations

from math import hypot

from core.handbook import genetics, growth
from core.handbook import worth as figures
from core.herd.state import Animal
from core.reports.evidence import Evidence
from core.reports.winter.factors import Factor, moved_by
from core.reports.winter.usual import Usual, bred_in, growth_spread, raising_spread, size_spread


def buck_factors(barn: Evidence, buck: Animal, usual: Usual) -> list[Factor]:
    """A buck's matters. He hands down half of what he carries, to the kits of all his does."""
    carries = bred_in(barn.growth, barn, buck, growth_spread())
    weighed = barn.growth.of_litter.get(buck.key, 0) if barn.growth else 0
    does = usual.does_a_buck
    return [Factor("kits_grow", 1 + does * carries.value / 2, does * carries.deviation / 2, weighed), _daughters(barn, buck, usual)]


def _daughters(barn: Evidence, buck: Animal, usual: Usual) -> Factor:
    """What the daughters that are kept of him wean the more."""
    size = bred_in(barn.born_alive, barn, buck, size_spread())
    raising = bred_in(barn.raising, barn, buck, raising_spread(usual.raised))
    kept = usual.does_a_buck * figures.DAUGHTERS_KEPT.value * figures.DAUGHTERS_BREED.value
    share = size.value / usual.born + raising.value / usual.raised
    doubt = hypot(size.deviation / usual.born, raising.deviation / usual.raised)
    sired = barn.born_alive.of_litter.get(buck.key, 0) if barn.born_alive else 0
    return Factor("daughters", 1 + kept * share / 2, kept * doubt / 2, sired)


def buck_learns(barn: Evidence, buck: Animal, usual: Usual) -> float:
    """How far one more litter of his, weighed, may be expected to move his worth [share]."""
    known = bred_in(barn.growth, barn, buck, growth_spread()).deviation ** 2
    return usual.does_a_buck * litter_tells(known / 4, usual.born * usual.raised)


def litter_tells(known: float, kits: float) -> float:
    """How far a weighed litter moves what is known (variance) of the growth that its parent hands down."""
    bred, nest = genetics.WEIGHT_70D_H2.value, genetics.WEIGHT_70D_C2.value
    each = 1 - bred / 4 - nest
    return moved_by(known, growth.WEIGHT_CV.value**2 * (nest + each / max(kits, 1.0)))
