"""What genes a rabbit carries unseen: the chance of each genotype at one locus, from everyone's colours and the family book.

Exact: each kit's genotype depends on its parents' by Mendel's rule, founders are in Hardy-Weinberg proportions of the
allele frequencies, a colour leaves only some genotypes. The animals are summed out one by one, the cheapest first, and
the messages then run back, so that one pass gives everybody's chances.
Method: Lauritzen & Spiegelhalter 1988, Journal of the Royal Statistical Society B 50 (from memory).
"""

from __future__ import annotations

from collections.abc import Collection, Mapping
from dataclasses import dataclass
from math import prod

import numpy as np
import numpy.typing as npt

from core.reckon.colour import LOCI, genotypes, spelled
from core.reckon.pedigree import Pedigree

Floats = npt.NDArray[np.float64]
Places = npt.NDArray[np.int64]
Factor = tuple[tuple[int, ...], Floats]  # animals' places, their joint table

#: The largest table [cells] that is worked with: 24 MB.
MOST_CELLS = 3_000_000


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
) -> dict[str, dict[str, float]] | Impossible | TooTangled:
    """The chance of each possible genotype for every animal of the pedigree.

    allowed      animal -> genotypes that its colour leaves; animals not named may be anything
    frequencies  allele -> share among founders (sum 1); only these alleles exist. None: all alleles of the locus alike
    error        the chance, beside 1, that a colour belongs to a genotype outside its list [0: colours are always right]
    """
    shares = frequencies or {allele: 1 / len(LOCI[locus]) for allele in LOCI[locus]}
    mendel = _Mendel.of(locus, shares)
    seen = {animal: _evidence(locus, mendel, told, error) for animal, told in allowed.items() if animal in pedigree}
    marginals = _summed(pedigree, mendel, seen)
    if marginals is None:
        return Impossible(_conflict(pedigree, mendel, seen))
    if isinstance(marginals, int):
        return TooTangled(marginals)
    return {
        animal: {one: float(p) for one, p in zip(mendel.genotypes, marginal, strict=True) if p > 0}
        for animal, marginal in zip(pedigree.ids, marginals, strict=True)
    }


@dataclass(frozen=True, slots=True, eq=False)
class _Mendel:
    """Inheritance at the locus. Tables end in the kit's genotype: [sire, dam, kit], [known parent, kit], [kit]."""

    genotypes: tuple[str, ...]
    both: Floats
    one: Floats
    none: Floats

    @classmethod
    def of(cls, locus: str, shares: Mapping[str, float]) -> _Mendel:
        alleles = [allele for allele in LOCI[locus] if allele in shares]
        names = genotypes(locus, alleles)
        gametes = np.array([[name.split("/").count(allele) / 2 for allele in alleles] for name in names])
        joined = np.zeros((len(alleles), len(alleles), len(names)))
        for i, one in enumerate(alleles):
            for j, other in enumerate(alleles):
                joined[i, j, names.index(spelled(locus, f"{one}/{other}"))] = 1.0
        pool = np.array([shares[allele] for allele in alleles])
        both = np.einsum("ia,jb,abk->ijk", gametes, gametes, joined)
        return cls(names, both, np.einsum("ia,b,abk->ik", gametes, pool, joined), np.einsum("a,b,abk->k", pool, pool, joined))


@dataclass(frozen=True, slots=True, eq=False)
class _Step:
    """An animal summed out: its joint table with the animals next to it (its own axis first), and what is left of them."""

    animal: int
    rest: tuple[int, ...]
    table: Floats
    message: Floats


def _evidence(locus: str, mendel: _Mendel, told: Collection[str], error: float) -> Floats:
    left = {spelled(locus, one) for one in told}
    return np.array([1.0 if one in left else error for one in mendel.genotypes])


def _summed(pedigree: Pedigree, mendel: _Mendel, seen: Mapping[str, Floats]) -> list[Floats] | int | None:
    """Everyone's marginal chances; None when the evidence is impossible, the number of cells when a table grows too large."""
    states = [np.flatnonzero(seen[animal] > 0) if animal in seen else np.arange(len(mendel.genotypes)) for animal in pedigree.ids]
    if any(len(state) == 0 for state in states):
        return None
    steps = _forward([_factor(pedigree, at, mendel, seen, states) for at in range(len(pedigree))], [len(state) for state in states])
    if not isinstance(steps, list):
        return steps
    full = []
    for state, marginal in zip(states, _backward(steps), strict=True):
        full.append(np.zeros(len(mendel.genotypes)))
        full[-1][state] = marginal
    return full


def _factor(pedigree: Pedigree, at: int, mendel: _Mendel, seen: Mapping[str, Floats], states: list[Places]) -> Factor:
    """The chances of an animal's genotype given its parents', times what its colour says; only states that are allowed."""
    parents = [parent for parent in (pedigree.sires[at], pedigree.dams[at]) if parent >= 0]
    table = (mendel.none, mendel.one, mendel.both)[len(parents)]
    scope = (*parents, at)
    table = table[np.ix_(*(states[one] for one in scope))]
    if pedigree.ids[at] in seen:
        table = table * seen[pedigree.ids[at]][states[at]]
    return scope, table


def _forward(factors: list[Factor], sizes: list[int]) -> list[_Step] | int | None:
    """Sum the animals out, cheapest first. None: no state of the family is possible. A number: the cells one would need."""
    of_animal: list[list[Factor]] = [[] for _ in sizes]
    near: list[set[int]] = [{at} for at in range(len(sizes))]
    for factor in factors:
        for at in factor[0]:
            of_animal[at].append(factor)
            near[at].update(factor[0])
    costs = {at: prod(sizes[one] for one in around) for at, around in enumerate(near)}
    steps: list[_Step] = []
    while costs:
        animal = min(costs, key=lambda at: (costs[at], at))
        if costs.pop(animal) > MOST_CELLS:
            return prod(sizes[one] for one in near[animal])
        rest = tuple(sorted(near[animal] - {animal}))
        table = _product(of_animal[animal], (animal, *rest), sizes)
        height = float(table.max())
        if height == 0:
            return None
        step = _Step(animal, rest, table / height, (table / height).sum(axis=0))
        steps.append(step)
        gone = {id(factor) for factor in of_animal[animal]}
        for one in rest:
            of_animal[one] = [factor for factor in of_animal[one] if id(factor) not in gone]
            near[one] = (near[one] | near[animal]) - {animal}
            costs[one] = prod(sizes[other] for other in near[one])
        message = (rest, step.message)
        for one in rest:
            of_animal[one].append(message)
    return steps


def _backward(steps: list[_Step]) -> list[Floats]:
    """Everybody's marginal, from the last animal summed out to the first."""
    when = {step.animal: at for at, step in enumerate(steps)}
    beliefs: dict[int, Factor] = {}
    marginals: list[Floats] = [np.empty(0)] * len(steps)
    for step in reversed(steps):
        given = np.divide(step.table, step.message, out=np.zeros_like(step.table), where=step.message > 0)
        if step.rest:
            scope, belief = beliefs[min(step.rest, key=when.__getitem__)]
            given = given * _onto(scope, belief, step.rest)
        beliefs[step.animal] = ((step.animal, *step.rest), given)
        marginals[step.animal] = given.sum(axis=tuple(range(1, given.ndim)))
    return marginals


def _product(factors: list[Factor], scope: tuple[int, ...], sizes: list[int]) -> Floats:
    """The product of tables over a scope. (einsum would take 32 tables at most; a busy buck sends more.)"""
    product = np.ones([sizes[at] for at in scope])
    for places, table in factors:
        ordered = _onto(places, table, tuple(at for at in scope if at in places))
        product *= ordered.reshape([sizes[at] if at in places else 1 for at in scope])
    return product


def _onto(scope: tuple[int, ...], table: Floats, wanted: tuple[int, ...]) -> Floats:
    """A table summed down to some of its animals, in that order."""
    left = [at for at in scope if at in wanted]
    small = table.sum(axis=tuple(axis for axis, at in enumerate(scope) if at not in wanted))
    return np.transpose(small, [left.index(at) for at in wanted])


def _conflict(pedigree: Pedigree, mendel: _Mendel, seen: Mapping[str, Floats]) -> tuple[str, ...]:
    """A smallest set of animals whose colours can't stand together: one kit with its parents if that tells it, else by leaving out."""
    for kit in pedigree.ids:
        family = [one for one in (kit, *pedigree.parents(kit)) if one is not None]
        if _summed(pedigree.only(family), mendel, {one: seen[one] for one in family if one in seen}) is None:
            return _least(pedigree.only(family), mendel, {one: seen[one] for one in family if one in seen})
    return _least(pedigree, mendel, seen)


def _least(pedigree: Pedigree, mendel: _Mendel, seen: Mapping[str, Floats]) -> tuple[str, ...]:
    """Leave out each animal's colour in turn; those without which the rest would be possible stay."""
    left = dict(seen)
    for animal in seen:
        fewer = {one: told for one, told in left.items() if one != animal}
        if _summed(pedigree, mendel, fewer) is None:
            left = fewer
    return tuple(left)
