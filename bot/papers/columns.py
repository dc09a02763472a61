"""How wide columns are: each as wide as what stands in it; where that is too much the widest give way."""

from __future__ import annotations

import math
from collections.abc import Sequence


def widths(cells: Sequence[Sequence[float]], heads: Sequence[float], room: float, around: float) -> list[float]:
    """The columns' widths, in all the room. `cells` and `heads` are the texts' widths, `around` what each has beside it.

    What is left over goes to the columns without text, which are for the pencil; where there is none, to the last.
    """
    natural = [max(*column) + around for column in zip(heads, *cells, strict=True)]
    left = room - sum(natural)
    if left < 0:
        return _shared(natural, [_weight(column) for column in zip(*cells, strict=True)], room)
    empty = [at for at, column in enumerate(zip(*cells, strict=True)) if not any(column)] or [len(natural) - 1]
    return [width + left / len(empty) if at in empty else width for at, width in enumerate(natural)]


def _weight(column: Sequence[float]) -> float:
    """How much of too little room a column gets: more where its texts are long, but not in proportion, so that names beside tales stay whole."""
    return math.sqrt(1 + sum(column) / len(column))


def _shared(natural: Sequence[float], weights: Sequence[float], room: float) -> list[float]:
    """The room by weight; a column that needs less than its share leaves the rest to the others."""
    given: dict[int, float] = {}
    while left_open := [at for at in range(len(natural)) if at not in given]:
        left, whole = room - sum(given.values()), sum(weights[at] for at in left_open)
        share = {at: left * weights[at] / whole for at in left_open}
        given |= {at: natural[at] for at in left_open if natural[at] < share[at]} or share
    return [given[at] for at in range(len(natural))]
