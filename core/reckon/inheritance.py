"""How colour genes come down a family, and the sums over everybody who can tell anything: exact, loops and all.

Only those who can tell anything about the animals asked are summed: animals without a colour, a question or such a
descendant are left out, a founder without a colour and with one kit is the same as an unknown parent, and kits that look
alike and have no kits of their own are counted and not summed one by one.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Mapping, Sequence
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np
import numpy.typing as npt

from core.reckon.colour import LOCI, genotypes, spelled
from core.reckon.elimination import Factor, Floats, TooLarge, marginals
from core.reckon.pedigree import Pedigree

Places = npt.NDArray[np.int64]
Laws = tuple["Mendel", ...]  # how genes come down, a locus each
Genotypes = tuple[str, ...]  # one genotype a locus
Shares = Mapping[str, Mapping[str, float]]  # locus -> allele -> share of the genes


@dataclass(frozen=True, slots=True, eq=False)
class Mendel:
    """Inheritance at a locus. Tables end in the kit's genotype: [sire, dam, kit], [known parent, kit], [kit]."""

    genotypes: tuple[str, ...]
    both: Floats
    one: Floats
    none: Floats

    def of(self, parents: int) -> Floats:
        """The table for that many known parents."""
        return (self.none, self.one, self.both)[parents]


def laws_of(loci: Sequence[str], shares: Shares) -> Laws:
    alike = {locus: {allele: 1 / len(LOCI[locus]) for allele in LOCI[locus]} for locus in loci}
    return tuple(_mendel(locus, tuple(sorted((shares.get(locus) or alike[locus]).items()))) for locus in loci)


@lru_cache(maxsize=512)
def _mendel(locus: str, told: tuple[tuple[str, float], ...]) -> Mendel:
    shares = dict(told)
    alleles = [allele for allele in LOCI[locus] if allele in shares]
    names = genotypes(locus, alleles)
    gametes = np.array([[name.split("/").count(allele) / 2 for allele in alleles] for name in names])
    joined = np.zeros((len(alleles), len(alleles), len(names)))
    for i, one in enumerate(alleles):
        for j, other in enumerate(alleles):
            joined[i, j, names.index(spelled(locus, f"{one}/{other}"))] = 1.0
    pool = np.array([shares[allele] for allele in alleles])
    both = np.einsum("ia,jb,abk->ijk", gametes, gametes, joined)
    return Mendel(names, both, np.einsum("ia,b,abk->ik", gametes, pool, joined), np.einsum("a,b,abk->k", pool, pool, joined))


@dataclass(frozen=True, slots=True, eq=False)
class Told:
    """What is summed: the book, how genes come down (`own`: where an unknown parent is of another kind), and what colours leave."""

    book: Pedigree
    common: Laws
    own: Mapping[int, Laws]
    seen: Mapping[str, Floats]

    def laws(self, at: int) -> Laws:
        """How an animal's genes come down to it."""
        return self.own.get(at, self.common)

    def only(self, told: Collection[str]) -> Told:
        """The same with these animals' colours alone."""
        return replace(self, seen={one: self.seen[one] for one in told})

    def without(self, left_out: Collection[str]) -> Told:
        """The same without these animals' colours."""
        return replace(self, seen={one: table for one, table in self.seen.items() if one not in left_out})

    def may_all_be_alike(self) -> bool:
        """Whether one pure-bred genotype would do for everybody: then nothing can be wrong."""
        if not self.seen:
            return True
        left = np.minimum.reduce(list({id(table): table for table in self.seen.values()}.values()))
        pure = [[len(set(name.split("/"))) == 1 for name in one.genotypes] for one in self.common]
        return bool((left[np.ix_(*pure)] > 0).any())


def evidence(loci: Sequence[str], laws: Laws, told: Collection[Genotypes], error: float) -> Floats:
    """A table over the loci's genotypes: 1 where the colour allows them, `error` elsewhere."""
    table = np.full([len(one.genotypes) for one in laws], error)
    for each in told:
        names = [spelled(locus, one) for locus, one in zip(loci, each, strict=True)]
        if all(name in one.genotypes for name, one in zip(names, laws, strict=True)):
            table[tuple(one.genotypes.index(name) for name, one in zip(names, laws, strict=True))] = 1.0
    return table


def summed(told: Told, asked: Sequence[str], *, whole: bool = False) -> list[Floats] | TooLarge | None:
    """The joint chances of each animal asked; None when the evidence is impossible. `whole`: test every family of the book."""
    family, laws = _Family.of(told, asked, whole=whole), told.common
    states = [_states(laws, told.seen.get(told.book.ids[at])) for at in family.members]
    if any(len(state) == 0 for each in states for state in each):
        return None
    factors = family.factors(told, states)
    if factors is None:
        return None
    sizes = [len(state) for each in states for state in each]
    place = {at: number for number, at in enumerate(family.members)}
    numbers = [place[told.book.place[animal]] for animal in asked]
    found = marginals(factors, sizes, [tuple(range(n * len(laws), (n + 1) * len(laws))) for n in numbers])
    if not isinstance(found, list):
        return found
    return [_whole(laws, states[number], table) for number, table in zip(numbers, found, strict=True)]


def _states(laws: Laws, evidence: Floats | None) -> list[Places]:
    """The genotypes at each locus that the colour leaves at all."""
    if evidence is None:
        return [np.arange(len(one.genotypes)) for one in laws]
    axes = range(evidence.ndim)
    return [np.flatnonzero(evidence.max(axis=tuple(other for other in axes if other != axis)) > 0) for axis in axes]


def _whole(laws: Laws, states: Sequence[Places], table: Floats) -> Floats:
    """A table over the states left, as one over all genotypes."""
    full = np.zeros([len(one.genotypes) for one in laws])
    full[np.ix_(*states)] = table / table.sum()
    return full


@dataclass(frozen=True, slots=True)
class _Family:
    """Who is summed: places in the book, each one's parents as far as they tell anything, and leaves.

    leaves   kits that look alike and have no kits of their own: parents, laws and colour (by identity) -> how many
    """

    members: tuple[int, ...]
    parents: Mapping[int, tuple[int, ...]]
    leaves: Mapping[tuple[tuple[int, ...], int, int], int]
    like: Mapping[tuple[int, int], tuple[Laws, Floats]]

    @classmethod
    def of(cls, told: Told, asked: Collection[str], *, whole: bool) -> _Family:
        wanted = {told.book.place[animal] for animal in asked}
        parents = _telling_parents(told, wanted | {told.book.place[animal] for animal in told.seen})
        near = parents if whole else _related(parents, wanted)
        stay = wanted | {parent for at in near for parent in parents[at]}
        leaves: Counter[tuple[tuple[int, ...], int, int]] = Counter()
        like: dict[tuple[int, int], tuple[Laws, Floats]] = {}
        members = []
        for at in sorted(near):
            if at in stay or not parents[at]:
                members.append(at)
            else:
                laws, table = told.laws(at), told.seen[told.book.ids[at]]
                like[id(laws), id(table)] = (laws, table)
                leaves[parents[at], id(laws), id(table)] += 1
        return cls(tuple(members), parents, leaves, like)

    def factors(self, told: Told, states: Sequence[Sequence[Places]]) -> list[Factor] | None:
        """Every table of the family; None where a litter can't be that of its parents."""
        loci = len(told.common)
        place = {at: number for number, at in enumerate(self.members)}
        found: list[Factor] = []
        for at in self.members:
            line = (*self.parents[at], at)
            for number, one in enumerate(told.laws(at)):
                scope = tuple(place[who] * loci + number for who in line)
                found.append((scope, one.of(len(line) - 1)[np.ix_(*(states[place[who]][number] for who in line))]))
            if told.book.ids[at] in told.seen:
                scope = tuple(place[at] * loci + number for number in range(loci))
                found.append((scope, told.seen[told.book.ids[at]][np.ix_(*states[place[at]])]))
        for (line, *kind), count in self.leaves.items():
            table = _litter(*self.like[kind[0], kind[1]], [states[place[who]] for who in line])
            height = float(table.max(initial=0.0))
            if height == 0:
                return None
            scope = tuple(place[who] * loci + number for number in range(loci) for who in line)
            found.append((scope, (table / height) ** count))
        return found


def may_be(laws: Laws, kit: Floats, parents: Sequence[Floats]) -> bool:
    """Whether a kit of that colour may be out of parents of those colours, each told by what it leaves."""
    everything = [np.arange(len(one.genotypes)) for one in laws]
    table = _litter(laws, kit, [everything] * len(parents))
    for number, parent in enumerate(parents):
        axes = [size if axis % len(parents) == number else 1 for axis, size in enumerate(table.shape)]
        table = table * parent.reshape(axes)
    return bool((table > 0).any())


def _litter(laws: Laws, evidence: Floats, states: Sequence[Sequence[Places]]) -> Floats:
    """The chance of such a kit for each state of its parents; axes locus by locus, each with the parents in order."""
    table = evidence
    for number, one in enumerate(laws):
        left = one.of(len(states))[np.ix_(*(each[number] for each in states), np.arange(len(one.genotypes)))]
        table = np.tensordot(left, table, axes=([-1], [number * len(states)]))
        table = np.moveaxis(table, range(len(states)), range(number * len(states), (number + 1) * len(states)))
    return table


def _telling_parents(told: Told, telling: Collection[int]) -> dict[int, tuple[int, ...]]:
    """Those with a colour or a question and their ancestors, each with the parents that are summed.

    A founder without a colour and with one kit is left out: it is the same as an unknown parent, if it is of the kit's kind.
    """
    book, needed = told.book, set(telling)
    for at in range(len(book) - 1, -1, -1):
        if at in needed:
            needed.update(parent for parent in (book.sires[at], book.dams[at]) if parent >= 0)
    kits: dict[int, list[int]] = {}
    for at in needed:
        for parent in {book.sires[at], book.dams[at]}:
            kits.setdefault(parent, []).append(at)
    found: dict[int, tuple[int, ...]] = {}
    for at in sorted(needed):
        parents = tuple(parent for parent in (book.sires[at], book.dams[at]) if parent in found)
        if parents or at in telling or len(kits[at]) > 1 or told.laws(kits[at][0]) is not told.laws(at):
            found[at] = parents
    return found


def _related(parents: Mapping[int, tuple[int, ...]], asked: Collection[int]) -> set[int]:
    """Everybody who hangs together with those asked, over kits and parents."""
    near: dict[int, list[int]] = {at: list(told) for at, told in parents.items()}
    for at, told in parents.items():
        for parent in told:
            near[parent].append(at)
    found: set[int] = set()
    waiting = list(asked)
    while waiting:
        at = waiting.pop()
        if at not in found:
            found.add(at)
            waiting += near[at]
    return found
