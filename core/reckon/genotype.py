"""What genes a rabbit carries unseen: the chance of each genotype, from everyone's colours and the family book.

Exact, loops and all: each kit's genotype depends on its parents' by Mendel's rule, founders are in Hardy-Weinberg proportions
of the allele frequencies, a colour leaves only some genotypes. Own coat, parents, mates and all offspring tell, however far.
Two loci that one colour ties together (a black by Ed whatever A) are summed jointly, else each locus by itself.

Only those who can tell anything about the animals asked are summed: animals without a colour, a question or such a
descendant are left out, a founder without a colour and with one kit is the same as an unknown parent, and kits that look
alike and have no kits of their own are counted and not summed one by one.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Callable, Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import product

import numpy as np
import numpy.typing as npt

from core.reckon.colour import LOCI, genotypes, spelled
from core.reckon.elimination import Factor, Floats, TooLarge, marginals
from core.reckon.pedigree import Pedigree

Places = npt.NDArray[np.int64]
Genotypes = tuple[str, ...]  # one genotype a locus


@dataclass(frozen=True, slots=True)
class Impossible:
    """The colours can't all be true of this family: a recording error or a wrong parent. `animals` can't stand together."""

    animals: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TooTangled:
    """The family is too tangled to sum exactly: one table would need that many cells. Cut the book to nearer relatives."""

    cells: int


def genotype_chances(
    pedigree: Pedigree,
    locus: str,
    allowed: Mapping[str, Collection[str]],
    frequencies: Mapping[str, float] | None = None,
    error: float = 0.0,
    ask: Iterable[str] | None = None,
) -> dict[str, dict[str, float]] | Impossible | TooTangled:
    """The chance of each possible genotype at one locus for the animals asked (None: every animal of the pedigree).

    allowed      animal -> genotypes that its colour leaves; animals not named may be anything
    frequencies  allele -> share among founders (sum 1); only these alleles exist. None: all alleles of the locus alike
    error        the chance, beside 1, that a colour belongs to a genotype outside its list [0: colours are always right]
    """
    told = {animal: [(one,) for one in each] for animal, each in allowed.items()}
    found = joint_chances(pedigree, (locus,), told, {locus: frequencies} if frequencies else {}, error, ask)
    if not isinstance(found, dict):
        return found
    return {animal: {one: p for (one,), p in each.items()} for animal, each in found.items()}


def joint_chances(  # noqa: PLR0913, PLR0917 - as genotype_chances
    pedigree: Pedigree,
    loci: Sequence[str],
    allowed: Mapping[str, Collection[Genotypes]],
    frequencies: Mapping[str, Mapping[str, float]],
    error: float = 0.0,
    ask: Iterable[str] | None = None,
) -> dict[str, dict[Genotypes, float]] | Impossible | TooTangled:
    """The chance of each genotype over several loci together; `allowed` and the answer name one genotype a locus."""
    mendel = tuple(_mendel(locus, tuple(sorted(_shares(locus, frequencies).items()))) for locus in loci)
    seen = {animal: _evidence(loci, mendel, told, error) for animal, told in allowed.items() if animal in pedigree}
    asked = [animal for animal in (pedigree.ids if ask is None else dict.fromkeys(ask)) if animal in pedigree]
    found = _summed(pedigree, mendel, seen, asked)
    if found is None:
        return Impossible(_conflict(pedigree, mendel, seen))
    if isinstance(found, TooLarge):
        return TooTangled(found.cells)
    names = list(product(*(one.genotypes for one in mendel)))
    return {
        animal: {name: float(p) for name, p in zip(names, table.ravel(), strict=True) if p > 0}
        for animal, table in zip(asked, found, strict=True)
    }


def conflict(
    pedigree: Pedigree, locus: str, allowed: Mapping[str, Collection[str]], frequencies: Mapping[str, float] | None = None
) -> tuple[str, ...]:
    """Animals whose colours can't stand together at this locus, anywhere in the book; none where all can be true."""
    shares = {locus: frequencies} if frequencies else {}
    mendel = (_mendel(locus, tuple(sorted(_shares(locus, shares).items()))),)
    seen = {animal: _evidence((locus,), mendel, [(one,) for one in told], 0.0) for animal, told in allowed.items() if animal in pedigree}
    return _conflict(pedigree, mendel, seen) if _summed(pedigree, mendel, seen, (), whole=True) is None else ()


@dataclass(frozen=True, slots=True, eq=False)
class _Mendel:
    """Inheritance at a locus. Tables end in the kit's genotype: [sire, dam, kit], [known parent, kit], [kit]."""

    genotypes: tuple[str, ...]
    both: Floats
    one: Floats
    none: Floats

    def of(self, parents: int) -> Floats:
        """The table for that many known parents."""
        return (self.none, self.one, self.both)[parents]


def _shares(locus: str, frequencies: Mapping[str, Mapping[str, float]]) -> Mapping[str, float]:
    return frequencies.get(locus) or {allele: 1 / len(LOCI[locus]) for allele in LOCI[locus]}


@lru_cache(maxsize=64)
def _mendel(locus: str, told: tuple[tuple[str, float], ...]) -> _Mendel:
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
    return _Mendel(names, both, np.einsum("ia,b,abk->ik", gametes, pool, joined), np.einsum("a,b,abk->k", pool, pool, joined))


def _evidence(loci: Sequence[str], mendel: Sequence[_Mendel], told: Collection[Genotypes], error: float) -> Floats:
    """A table over the loci's genotypes: 1 where the colour allows them, `error` elsewhere."""
    table = np.full([len(one.genotypes) for one in mendel], error)
    for each in told:
        names = [spelled(locus, one) for locus, one in zip(loci, each, strict=True)]
        if all(name in one.genotypes for name, one in zip(names, mendel, strict=True)):
            table[tuple(one.genotypes.index(name) for name, one in zip(names, mendel, strict=True))] = 1.0
    return table


def _summed(
    pedigree: Pedigree, mendel: Sequence[_Mendel], seen: Mapping[str, Floats], asked: Sequence[str], *, whole: bool = False
) -> list[Floats] | TooLarge | None:
    """The joint chances of each animal asked; None when the evidence is impossible. `whole`: test every family of the book."""
    family = _Family.of(pedigree, seen, asked, whole=whole)
    states = [_states(mendel, seen.get(pedigree.ids[at])) for at in family.members]
    factors = family.factors(pedigree, mendel, seen, states)
    if factors is None or any(len(state) == 0 for each in states for state in each):
        return None
    sizes = [len(state) for each in states for state in each]
    place = {at: number for number, at in enumerate(family.members)}
    numbers = [place[pedigree.place[animal]] for animal in asked]
    found = marginals(factors, sizes, [tuple(range(n * len(mendel), (n + 1) * len(mendel))) for n in numbers])
    if not isinstance(found, list):
        return found
    return [_whole(mendel, states[number], table) for number, table in zip(numbers, found, strict=True)]


def _states(mendel: Sequence[_Mendel], evidence: Floats | None) -> list[Places]:
    """The genotypes at each locus that the colour leaves at all."""
    if evidence is None:
        return [np.arange(len(one.genotypes)) for one in mendel]
    axes = range(evidence.ndim)
    return [np.flatnonzero(evidence.max(axis=tuple(other for other in axes if other != axis)) > 0) for axis in axes]


def _whole(mendel: Sequence[_Mendel], states: Sequence[Places], table: Floats) -> Floats:
    """A table over the states left, as one over all genotypes."""
    full = np.zeros([len(one.genotypes) for one in mendel])
    full[np.ix_(*states)] = table / table.sum()
    return full


@dataclass(frozen=True, slots=True)
class _Family:
    """Who is summed: places in the book, each one's parents as far as they tell anything, and alike leaves with their number."""

    members: tuple[int, ...]
    parents: Mapping[int, tuple[int, ...]]
    leaves: Mapping[tuple[tuple[int, ...], bytes], int]
    like: Mapping[bytes, Floats]

    @classmethod
    def of(cls, pedigree: Pedigree, seen: Mapping[str, Floats], asked: Collection[str], *, whole: bool) -> _Family:
        telling = {pedigree.place[animal] for animal in (*seen, *asked)}
        parents = _telling_parents(pedigree, telling)
        near = parents if whole else _related(parents, {pedigree.place[animal] for animal in asked})
        with_kits = {parent for at in near for parent in parents[at]}
        wanted = {pedigree.place[animal] for animal in asked}
        leaves: Counter[tuple[tuple[int, ...], bytes]] = Counter()
        like: dict[bytes, Floats] = {}
        members = []
        for at in sorted(near):
            if at in with_kits or at in wanted or not parents[at]:
                members.append(at)
            else:
                table = seen[pedigree.ids[at]]
                like[table.tobytes()] = table
                leaves[parents[at], table.tobytes()] += 1
        return cls(tuple(members), parents, leaves, like)

    def factors(
        self, pedigree: Pedigree, mendel: Sequence[_Mendel], seen: Mapping[str, Floats], states: Sequence[Sequence[Places]]
    ) -> list[Factor] | None:
        """Every table of the family; None where a litter can't be that of its parents."""
        loci = len(mendel)
        place = {at: number for number, at in enumerate(self.members)}
        found: list[Factor] = []
        for at in self.members:
            line = (*self.parents[at], at)
            for number, one in enumerate(mendel):
                scope = tuple(place[who] * loci + number for who in line)
                found.append((scope, one.of(len(line) - 1)[np.ix_(*(states[place[who]][number] for who in line))]))
            if pedigree.ids[at] in seen:
                scope = tuple(place[at] * loci + number for number in range(loci))
                found.append((scope, seen[pedigree.ids[at]][np.ix_(*states[place[at]])]))
        for (line, key), count in self.leaves.items():
            table = _litter(mendel, self.like[key], [states[place[who]] for who in line])
            height = float(table.max(initial=0.0))
            if height == 0:
                return None
            scope = tuple(place[who] * loci + number for number in range(loci) for who in line)
            found.append((scope, (table / height) ** count))
        return found


def _litter(mendel: Sequence[_Mendel], evidence: Floats, states: Sequence[Sequence[Places]]) -> Floats:
    """The chance of such a kit for each state of its parents; axes locus by locus, each with the parents in order."""
    table = evidence
    for number, one in enumerate(mendel):
        left = one.of(len(states))[(*np.ix_(*(each[number] for each in states)), slice(None))]
        table = np.tensordot(left, table, axes=([-1], [number * len(states)]))
        table = np.moveaxis(table, range(len(states)), range(number * len(states), (number + 1) * len(states)))
    return table


def _telling_parents(pedigree: Pedigree, telling: Collection[int]) -> dict[int, tuple[int, ...]]:
    """Those with a colour or a question and their ancestors, each with the parents that are summed."""
    needed = set(telling)
    for at in range(len(pedigree) - 1, -1, -1):
        if at in needed:
            needed.update(parent for parent in (pedigree.sires[at], pedigree.dams[at]) if parent >= 0)
    kits = Counter(parent for at in needed for parent in {pedigree.sires[at], pedigree.dams[at]})
    found: dict[int, tuple[int, ...]] = {}
    for at in sorted(needed):
        parents = tuple(parent for parent in (pedigree.sires[at], pedigree.dams[at]) if parent in found)
        if parents or at in telling or kits[at] > 1:
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


def _conflict(pedigree: Pedigree, mendel: Sequence[_Mendel], seen: Mapping[str, Floats]) -> tuple[str, ...]:
    """A smallest set of animals whose colours can't stand together: one kit with its parents if that tells it, else by leaving out."""

    def impossible(told: Collection[str], book: Pedigree) -> bool:
        return _summed(book, mendel, {one: seen[one] for one in told}, (), whole=True) is None

    for kit in pedigree.ids:
        family = [one for one in (kit, *pedigree.parents(kit)) if one is not None and one in seen]
        if kit in seen:
            book = pedigree.only([kit])
            if impossible(family, book):
                return _least(family, lambda told, book=book: impossible(told, book))  # type: ignore[misc]
    return _least(list(seen), lambda told: impossible(told, pedigree))


def _least(told: list[str], impossible: Callable[[Collection[str]], bool]) -> tuple[str, ...]:
    """Leave out as many as still leave the rest impossible: halves first, then smaller lots, at last one by one."""
    lot = max(len(told) // 2, 1)
    while True:
        at = 0
        while at < len(told):
            fewer = told[:at] + told[at + lot :]
            if fewer and impossible(fewer):
                told = fewer
            else:
                at += lot
        if lot == 1:
            return tuple(told)
        lot = lot // 2
