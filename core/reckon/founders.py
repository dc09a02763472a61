"""How common each form of a colour gene is among animals whose parents nobody knows: what their own coats show, a little beyond, no more."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from functools import lru_cache

from core.handbook import genetics
from core.reckon.colour import PLAIN

_ROUNDS = 200  # not a figure: rounds of counting genes at most
_SETTLED = 1e-9  # not a figure: a share that moves less in a round is settled

Alike = tuple[tuple[tuple[str, ...], int], ...]  # genotypes that a coat leaves, and how many founders wear such a one


def must_carry(told: Iterable[Collection[str]]) -> frozenset[str]:
    """Alleles that some of these coats can't do without; each is told by the genotypes that it leaves."""
    each = {tuple(one) for one in told}
    return frozenset().union(*(frozenset.intersection(*(frozenset(one.split("/")) for one in left)) for left in each if left))


@lru_cache(maxsize=256)
def founder_shares(locus: str, alleles: tuple[str, ...], shown: frozenset[str], founders: Alike) -> Mapping[str, float]:
    """The founders' share of each allele.

    shown     alleles that some coat of their kind must carry: alike at first, the others rare; none: the plain form alone is common
    founders  what the coats of those without parents on the book leave

    The first guess counts as one founder more. Gene counting: expected genes under the shares, and again (from memory: Ceppellini,
    Siniscalco and Smith 1955).
    """
    first = _guess(locus, alleles, shown)
    shares = first
    for _ in range(_ROUNDS):
        genes = {allele: 2 * share for allele, share in first.items()}
        for left, number in founders:
            for genotype, chance in _drawn(left, shares).items():
                for allele in genotype.split("/"):
                    genes[allele] += number * chance
        total = sum(genes.values())
        last, shares = shares, {allele: gene / total for allele, gene in genes.items()}
        if all(abs(shares[allele] - last[allele]) < _SETTLED for allele in shares):
            break
    return shares


def _guess(locus: str, alleles: Iterable[str], shown: frozenset[str]) -> dict[str, float]:
    common = shown or set(PLAIN[locus].split("/"))
    rare = genetics.UNSEEN_ALLELE_SHARE.value
    told = list(alleles)
    share = (1 - rare * sum(allele not in common for allele in told)) / sum(allele in common for allele in told)
    return {allele: share if allele in common else rare for allele in told}


def _drawn(left: Iterable[str], shares: Mapping[str, float]) -> dict[str, float]:
    """The chance of each of these genotypes for a founder, Hardy-Weinberg proportions taken, one of them being true."""
    chances = {}
    for genotype in left:
        one, other = genotype.split("/")
        chances[genotype] = shares[one] * shares[other] * (1 if one == other else 2)
    total = sum(chances.values())
    return {genotype: chance / total for genotype, chance in chances.items()}
