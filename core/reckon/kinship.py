"""How close two rabbits are, and how inbred their kits would be.

Kinship f(i, j) [share, 0 to 1]: the chance that a gene drawn from i and one drawn from j are copies of one ancestor's.
F of an animal is the kinship of its parents, and so the COI of a mating is the kinship of the mates. Unknown ancestors
count as unrelated.

Method: the tabular rule (Emik & Terrill 1949; Henderson 1976) for A = 2 f, parents first: a row is the mean of its
parents' rows, the diagonal 1 + F. The table keeps a row only for animals that still are to be parents or are asked about,
so it costs the square of the breeding herd, not of the book; and litters whose parents are all born earlier enter it together.
Checked against the worked examples of Mrode, Linear Models for the Prediction of Animal Breeding Values, 2014, ch. 2.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field

import numpy as np
import numpy.typing as npt

from core.reckon.pedigree import Pedigree
from core.reckon.tracing import inbreeding_by_tracing

Floats = npt.NDArray[np.float64]
Places = npt.NDArray[np.int64]

#: Rows of the largest table: 12,000 fill 1.2 GB.
LARGEST = 12_000


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


def frontier(sires: Places, dams: Places, asked: Places, largest: int = LARGEST) -> tuple[Floats, Floats]:
    """F of all (parents first, -1 unknown) and the relationships A among `asked` (n x n).

    `largest`: rows that the table may have; where the breeders need more, F is traced animal by animal instead.
    MemoryError where the animals asked about alone are more than that.
    """
    if not len(sires):
        return np.empty(0), np.empty((0, 0))
    if len(asked) > largest:
        raise MemoryError(f"kinship among {len(asked)} animals: ask for {largest} at most")
    walk = _plan(sires, dams, asked)
    if walk.rows > largest:
        return inbreeding_by_tracing(sires, dams), _among_few(sires, dams, asked, largest)
    shared, table, slots = _walk(walk)
    kept = slots[asked]
    return np.repeat(shared, walk.sizes), table[np.ix_(kept, kept)]


@dataclass(frozen=True, slots=True)
class _Plan:
    """Who takes a row when, and who gives it up: worked out before anything is summed.

    A litter is a run of full sibs that stand side by side. A block is a run of litters none of whose parents is born in it,
    so that the whole block is reckoned at once.

    sizes         kits of each litter
    sires, dams   parents of each litter
    blocks        first litter of each block, and the number of litters at the end
    breeders      animals that need a row, in order; `litter` the litter each was born in
    arrivals      how many breeders were born before each block (one more than blocks)
    leavers       breeders in the order in which they give up their row; `departures` how many did before each block's end
    rows          the most rows that are needed at once, one of them for the unknown parent
    """

    sizes: Places
    sires: Places
    dams: Places
    blocks: Places
    breeders: Places
    litter: Places
    arrivals: Places
    leavers: Places
    departures: Places
    rows: int


def _plan(sires: Places, dams: Places, asked: Places) -> _Plan:
    n = len(sires)
    starts = np.flatnonzero(np.r_[True, (sires[1:] != sires[:-1]) | (dams[1:] != dams[:-1])])
    sizes = np.diff(np.r_[starts, n])
    litter = np.repeat(np.arange(len(starts)), sizes)
    last = _last_litters(sires, dams, litter)
    last[asked] = len(starts)
    breeders = np.flatnonzero(last >= 0)
    born = np.r_[litter, -1]  # the place -1 of an unknown parent is the last
    blocks = _blocks(np.maximum(born[sires[starts]], born[dams[starts]]))
    arrivals = np.searchsorted(litter[breeders], blocks)
    leavers = breeders[np.argsort(last[breeders], kind="stable")]
    departures = np.searchsorted(last[leavers], blocks[1:])
    rows = 1 + int((arrivals[1:] - np.r_[0, departures[:-1]]).max())
    return _Plan(sizes, sires[starts], dams[starts], blocks, breeders, litter[breeders], arrivals, leavers, departures, rows)


def _last_litters(sires: Places, dams: Places, litter: Places) -> Places:
    """For each animal the number of its last litter, -1 if it has none."""
    last = np.full(len(sires), -1, dtype=np.int64)
    for parents in (sires, dams):
        known = parents >= 0
        np.maximum.at(last, parents[known], litter[known])
    return last


def _blocks(newest: Places) -> Places:
    """Where the blocks begin, by the litter in which each litter's younger parent was born; and the end."""
    begins = [0]
    begin = 0
    for litter, parent in enumerate(newest.tolist()):
        if parent >= begin and litter:
            begin = litter
            begins.append(litter)
    return np.array([*begins, len(newest)], dtype=np.int64)


def _walk(plan: _Plan) -> tuple[Floats, Floats, Places]:
    """F of each litter, the table of relationships at the end, and each animal's row in it. Row 0 is the unknown parent's."""
    table = np.zeros((plan.rows, plan.rows))
    slots = np.zeros(int(plan.sizes.sum()) + 1, dtype=np.int64)
    free = np.arange(plan.rows - 1, 0, -1)  # a stack: its first `unused` are free
    unused = len(free)
    shared = np.zeros(len(plan.sires))
    gone = 0
    bounds = zip(plan.blocks[:-1].tolist(), plan.blocks[1:].tolist(), plan.arrivals[:-1].tolist(), plan.arrivals[1:].tolist(), strict=True)
    for (begin, end, first, after), leaving in zip(bounds, plan.departures.tolist(), strict=True):
        shared[begin:end] = 0.5 * table[slots[plan.sires[begin:end]], slots[plan.dams[begin:end]]]
        if after > first:
            who, of = plan.breeders[first:after], plan.litter[first:after]
            new = free[unused - (after - first) : unused]
            unused -= after - first
            _enter(table, new, slots[plan.sires[of]], slots[plan.dams[of]], shared[of])
            slots[who] = new
        if leaving > gone:
            free[unused : unused + leaving - gone] = slots[plan.leavers[gone:leaving]]
            unused += leaving - gone
            gone = leaving
    return shared, table, slots


def _enter(table: Floats, new: Places, sires: Places, dams: Places, inbred: Floats) -> None:
    """Write the rows of new breeders into the table: means of their parents' rows, among themselves too, with 1 + F in the diagonal."""
    rows = table[sires]
    rows += table[dams]
    rows *= 0.5
    among = 0.5 * (rows[:, sires] + rows[:, dams])
    np.fill_diagonal(among, 1 + inbred)
    rows[:, new] = among
    table[new] = rows
    table[:, new] = rows.T


def _among_few(sires: Places, dams: Places, asked: Places, largest: int) -> Floats:
    """Relationships among a few animals of a book whose breeders are too many for one table: the book cut to their ancestors."""
    wanted = np.zeros(len(sires), dtype=bool)
    wanted[asked] = True
    for at in range(len(sires) - 1, -1, -1):
        if wanted[at]:
            wanted[[parent for parent in (sires[at], dams[at]) if parent >= 0]] = True
    renamed = np.r_[np.cumsum(wanted) - 1, -1]
    plan = _plan(renamed[sires[wanted]], renamed[dams[wanted]], renamed[asked])
    if plan.rows > largest:
        raise MemoryError(f"kinship among {len(asked)} animals needs a table of {plan.rows} breeders: {largest} at most")
    _, table, slots = _walk(plan)
    kept = slots[renamed[asked]]
    return table[np.ix_(kept, kept)]


def _parents(pedigree: Pedigree) -> tuple[Places, Places]:
    return np.array(pedigree.sires, dtype=np.int64), np.array(pedigree.dams, dtype=np.int64)
