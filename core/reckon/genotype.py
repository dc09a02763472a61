"""What genes a rabbit carries unseen: the chance of each genotype, from everyone's colours and the family book.

Exact, loops and all: each kit's genotype depends on its parents' by Mendel's rule, founders are in Hardy-Weinberg proportions
of the allele frequencies, a colour leaves only some genotypes. Own coat, parents, mates and all offspring tell, however far.
Two loci that one colour ties together (a black by Ed whatever A) are summed jointly, else each locus by itself.
"""

from __future__ import annotations

from collections.abc import Callable, Collection, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from itertools import product

from core.reckon.elimination import TooLarge
from core.reckon.inheritance import Genotypes, Shares, Told, evidence, laws_of, may_be, summed
from core.reckon.pedigree import Pedigree


@dataclass(frozen=True, slots=True)
class Impossible:
    """The colours can't all be true of this family: a recording error or a wrong parent. `animals` can't stand together."""

    animals: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class TooTangled:
    """The family is too tangled to sum exactly: one table would need that many cells. Cut the book to nearer relatives."""

    cells: int


def genotype_chances(  # noqa: PLR0913, PLR0917 - each has a default that serves
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
    found = joint_chances(pedigree, (locus,), told, Founders({locus: frequencies} if frequencies else {}), error, ask)
    if not isinstance(found, dict):
        return found
    return {animal: {one: p for (one,), p in each.items()} for animal, each in found.items()}


@dataclass(frozen=True, slots=True)
class Founders:
    """How common each allele is where parents are unknown.

    common  for everybody; a locus that is not named has all its alleles alike
    own     animal -> the shares among its own kind (its breed's), of the same alleles
    """

    common: Shares
    own: Mapping[str, Shares] = field(default_factory=dict)


def joint_chances(  # noqa: PLR0913, PLR0917 - as genotype_chances
    pedigree: Pedigree,
    loci: Sequence[str],
    allowed: Mapping[str, Collection[Genotypes]],
    founders: Founders,
    error: float = 0.0,
    ask: Iterable[str] | None = None,
) -> dict[str, dict[Genotypes, float]] | Impossible | TooTangled:
    """The chance of each genotype over several loci together; `allowed` and the answer name one genotype a locus."""
    told = _told(pedigree, loci, allowed, founders, error)
    asked = [animal for animal in (pedigree.ids if ask is None else dict.fromkeys(ask)) if animal in pedigree]
    found = summed(told, asked)
    if found is None:
        return Impossible(_conflict(told))
    if isinstance(found, TooLarge):
        return TooTangled(found.cells)
    names = list(product(*(one.genotypes for one in told.common)))
    return {
        animal: {name: float(p) for name, p in zip(names, table.ravel(), strict=True) if p > 0}
        for animal, table in zip(asked, found, strict=True)
    }


def conflicts(
    pedigree: Pedigree, loci: Sequence[str], allowed: Mapping[str, Collection[Genotypes]], founders: Founders
) -> tuple[tuple[str, ...], ...]:
    """The groups of animals whose colours can't stand together over these loci, each as small as it can be.

    Every kit that can't be its parents'; then, those kits' colours left aside, what can't be over more generations. A book too
    tangled to sum is tested kit by kit alone.
    """
    told = _told(pedigree, loci, allowed, founders, 0.0)
    if told.may_all_be_alike():
        return ()
    groups = list(_conflicts_of_kits(told))
    told = told.without({_youngest(told, group) for group in groups})
    while summed(told, (), whole=True) is None:
        groups.append(_conflict(told))
        told = told.without({_youngest(told, groups[-1])})
    return tuple(groups)


def _youngest(told: Told, group: Collection[str]) -> str:
    return max(group, key=told.book.place.__getitem__)


def _told(pedigree: Pedigree, loci: Sequence[str], allowed: Mapping[str, Collection[Genotypes]], founders: Founders, error: float) -> Told:
    common = laws_of(loci, founders.common)
    kinds = {each: laws_of(loci, shares) for each, shares in {id(shares): shares for shares in founders.own.values()}.items()}
    own = {pedigree.place[one]: kinds[id(shares)] for one, shares in founders.own.items() if one in pedigree}
    tables = {each: evidence(loci, common, told, error) for each, told in {id(told): told for told in allowed.values()}.items()}
    return Told(pedigree, common, own, {one: tables[id(told)] for one, told in allowed.items() if one in pedigree})


def _conflict(told: Told) -> tuple[str, ...]:
    """A smallest group of animals whose colours can't stand together: one kit with its parents if that tells it, else by leaving out."""
    return next(iter(_conflicts_of_kits(told)), ()) or _least(list(told.seen), lambda left: summed(told.only(left), (), whole=True) is None)


def _conflicts_of_kits(told: Told) -> Iterator[tuple[str, ...]]:
    """Each kit with a colour that can't be its parents': those of the three whose colours can't stand together."""
    fine: set[tuple[int, ...]] = set()  # whoever looks like this family may be one
    for kit, table in told.seen.items():
        parents = [parent for parent in told.book.parents(kit) if parent is not None and parent in told.seen]
        alike = (id(table), *(id(told.seen[parent]) for parent in parents))
        if alike in fine:
            continue
        if may_be(told.common, table, [told.seen[parent] for parent in parents]):
            fine.add(alike)
        else:
            yield _least_of_kit(told, kit, parents)


def _least_of_kit(told: Told, kit: str, parents: Sequence[str]) -> tuple[str, ...]:
    """The kit with as few of its parents as can't stand together."""
    some = ([], *([one] for one in parents), list(parents))
    group = next(each for each in some if not may_be(told.common, told.seen[kit], [told.seen[one] for one in each]))
    return (*group, kit)


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
