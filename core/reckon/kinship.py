"""How close two rabbits are, and how inbred their kits would be.

Kinship f(i, j) [share, 0 to 1]: the chance that a gene drawn from i and one drawn from j are copies of one ancestor's.
F of an animal is the kinship of its parents, and so the COI of a mating is the kinship of the mates. Unknown ancestors
count as unrelated.

Method: the tabular rule (Emik & Terrill 1949; Henderson 1976) for A = 2 f, parents first: a row is the mean of its
parents' rows, the diagonal 1 + F. The table keeps a row only for animals that still are to be parents or are asked about,
so it costs the square of the breeding herd, not of the book (a frontier of 12,000 would fill 1.2 GB).
Checked against the worked examples of Mrode, Linear Models for the Prediction of Animal Breeding Values, 2014, ch. 2.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from core.reckon.pedigree import Pedigree

Floats = npt.NDArray[np.float64]
Places = npt.NDArray[np.int64]


@dataclass(frozen=True, slots=True)
class Kinship:
    """Kinship among some animals, and the inbreeding of everyone on the book.

    among       the animals asked about, in the order of `table`
    table       kinship f [share], symmetric; the diagonal is (1 + F) / 2
    inbreeding  F [share] of every animal of the pedigree
    """

    among: tuple[str, ...]
    table: Floats = field(repr=False, compare=False)
    inbreeding: Mapping[str, float] = field(repr=False)
    place: Mapping[str, int] = field(repr=False, compare=False)

    def of(self, one: str, other: str) -> float:
        """Kinship of two of them: the COI of their kits."""
        return float(self.table[self.place[one], self.place[other]])

    def mean_of(self, animal: str) -> float:
        """Mean kinship of an animal to the whole group, itself included."""
        return float(self.table[self.place[animal]].mean())

    def mean(self) -> float:
        """Mean kinship of the group, each to itself included; 0 for an empty group."""
        return float(self.table.mean()) if self.among else 0.0

    def mean_between(self) -> float:
        """Mean kinship between different animals of the group; 0 for fewer than two."""
        n = len(self.among)
        return float((self.table.sum() - np.trace(self.table)) / (n * (n - 1))) if n > 1 else 0.0


def kinship(pedigree: Pedigree, among: Iterable[str]) -> Kinship:
    """Kinship among these animals."""
    asked = tuple(dict.fromkeys(among))
    sires, dams = _parents(pedigree)
    places = np.array([pedigree.place[animal] for animal in asked], dtype=np.int64)
    inbred, relationship = frontier(sires, dams, places)
    return Kinship(
        asked, relationship / 2, dict(zip(pedigree.ids, inbred.tolist(), strict=True)), {animal: at for at, animal in enumerate(asked)}
    )


def inbreeding(pedigree: Pedigree) -> dict[str, float]:
    """F [share] of every animal."""
    return dict(kinship(pedigree, ()).inbreeding)


def coi(pedigree: Pedigree, sire: str, dam: str) -> float:
    """The inbreeding [share] of kits of that mating. The book is cut to the pair's ancestors first."""
    return kinship(pedigree.only((sire, dam)), (sire, dam)).of(sire, dam)


def inbreeding_array(pedigree: Pedigree) -> Floats:
    """F [share] in the order of `pedigree.ids`."""
    return frontier(*_parents(pedigree), np.empty(0, dtype=np.int64))[0]


def frontier(sires: Places, dams: Places, asked: Places) -> tuple[Floats, Floats]:
    """F of all (parents first, -1 unknown) and the relationships A among `asked` (n x n).

    Full sibs that stand side by side share one look-up of F.
    """
    n = len(sires)
    if n == 0:
        return np.empty(0), np.empty((0, 0))
    starts = np.flatnonzero(np.r_[True, (sires[1:] != sires[:-1]) | (dams[1:] != dams[:-1])])
    ends = np.r_[starts[1:], n]
    last = _last_litters(sires, dams, np.repeat(np.arange(len(starts)), ends - starts))
    last[asked] = len(starts)
    breeders = np.flatnonzero(last >= 0)
    first_breeder = np.searchsorted(breeders, starts)
    shared, table, slots = _walk(sires[starts], dams[starts], (breeders, np.r_[first_breeder, len(breeders)]), last)
    kept = [slots[at] for at in asked.tolist()]
    return np.repeat(shared, ends - starts), table[np.ix_(kept, kept)]


def _last_litters(sires: Places, dams: Places, litter: Places) -> Places:
    """For each animal the number of its last litter, -1 if it has none."""
    last = np.full(len(sires), -1, dtype=np.int64)
    for parents in (sires, dams):
        known = parents >= 0
        np.maximum.at(last, parents[known], litter[known])
    return last


def _walk(sires: Places, dams: Places, breeders: tuple[Places, Places], last: Places) -> tuple[Floats, Floats, dict[int, int]]:
    """One pass over the litters: F of each litter, the table at the end, and each remaining animal's row."""
    who, bounds = breeders[0].tolist(), breeders[1].tolist()
    leaving = last.tolist()
    table = np.zeros((64, 64))
    slots: dict[int, int] = {}
    free = list(range(63, -1, -1))
    shared = np.zeros(len(sires))
    for litter, (sire, dam) in enumerate(zip(sires.tolist(), dams.tolist(), strict=True)):
        inbred = 0.0
        if sire >= 0 and dam >= 0:
            inbred = shared[litter] = 0.5 * table[slots[sire], slots[dam]]
        parents = [slots[parent] for parent in (sire, dam) if parent >= 0]
        for animal in who[bounds[litter] : bounds[litter + 1]]:
            if not free:
                size = len(table)
                table = np.pad(table, ((0, size), (0, size)))
                free = list(range(2 * size - 1, size - 1, -1))
            slot = slots[animal] = free.pop()
            row = 0.5 * table[parents].sum(axis=0)
            table[slot] = row
            table[:, slot] = row
            table[slot, slot] = 1 + inbred
        for parent in {sire, dam} - {-1}:
            if leaving[parent] == litter:
                free.append(slots.pop(parent))
    return shared, table, slots


def _parents(pedigree: Pedigree) -> tuple[Places, Places]:
    return np.array(pedigree.sires, dtype=np.int64), np.array(pedigree.dams, dtype=np.int64)
