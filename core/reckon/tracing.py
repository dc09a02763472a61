"""Inbreeding one animal at a time, for a family book with more breeders at once than a table can hold.

Slower than the table of `core.reckon.kinship`, but it needs no more room than the book itself.

Reference: Meuwissen & Luo 1992, Genetics Selection Evolution 24:305: F + 1 of an animal is the sum over its ancestors of
(its share of their blood) squared times their own Mendelian part, ancestors taken from the youngest back. Worked on six animals in
Mrode, Linear Models for the Prediction of Animal Breeding Values, 2014, ch. 2.
"""

from __future__ import annotations

from heapq import heappop, heappush

import numpy as np
import numpy.typing as npt


def inbreeding_by_tracing(sires: npt.NDArray[np.int64], dams: npt.NDArray[np.int64]) -> npt.NDArray[np.float64]:
    """F [share] of all, parents first, -1 unknown."""
    fathers, mothers = sires.tolist(), dams.tolist()
    inbred: list[float] = []
    own: list[float] = []  # Mendelian part of each animal [share of the variance]
    for animal, (sire, dam) in enumerate(zip(fathers, mothers, strict=True)):
        own.append(1 - sum((1 + inbred[parent]) / 4 for parent in (sire, dam) if parent >= 0))
        if sire < 0 or dam < 0:
            inbred.append(0.0)
        elif animal and (fathers[animal - 1], mothers[animal - 1]) == (sire, dam):
            inbred.append(inbred[-1])
        else:
            inbred.append(_traced(animal, fathers, mothers, own) - 1)
    return np.array(inbred)


def _traced(animal: int, fathers: list[int], mothers: list[int], own: list[float]) -> float:
    """1 + F of one animal."""
    blood = {animal: 1.0}
    waiting = [-animal]
    total = 0.0
    while waiting:
        one = -heappop(waiting)
        share = blood.pop(one)
        total += share * share * own[one]
        for parent in (fathers[one], mothers[one]):
            if parent >= 0:
                if parent not in blood:
                    heappush(waiting, -parent)
                blood[parent] = blood.get(parent, 0.0) + share / 2
    return total
