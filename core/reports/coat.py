"""What a coat hides: the likely genes behind everybody's colours, the colours to expect of a pairing, and colours that can't be.

Everybody's coat tells: parents, mates, tagged kits, and the colours noted of a whole litter. A coat it has no genes for tells nothing.
Colours that contradict the family are told with the animals concerned, and from then on each colour at that gene may be a slip.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Mapping
from dataclasses import dataclass
from functools import cached_property
from itertools import product
from typing import Any

from core.handbook import genetics
from core.handbook.coat_genes import CARRIED_AS, CLOSE_LOCI, RARE_FORMS
from core.herd.state import Herd, Litter
from core.reckon.colour import LOCI, PLAIN, TIED, Allowed, genotypes, named, said_genes
from core.reckon.genotype import Genotypes, Impossible, joint_chances
from core.reckon.pedigree import Pedigree, pedigree

Chances = Mapping[str, Mapping[str, float]]  # locus -> genotype -> chance

#: The key of a kit that is not born yet, and the mark between a litter's key and its untagged kit's colour.
TO_COME = "to come"
KIT = "#"
_ROUNDS = 20  # not a figure: rounds of counting genes; they settle long before


@dataclass(frozen=True, slots=True)
class Contradiction:
    """Animals (or `litter#color` kits) whose colours can't all be true of this family."""

    locus: str
    animals: tuple[str, ...]


@dataclass(frozen=True, eq=False)
class Coats:
    """Everybody's colours and the family book, and what they tell of the genes."""

    book: Pedigree
    colors: Mapping[str, str | None]

    @cached_property
    def rare(self) -> tuple[str, ...]:
        """Rare forms that some coat here must carry: nobody reckons with them before."""
        words = [said_genes(color, RARE_FORMS) for color in set(self.colors.values()) if color]
        sets = [{one.split("/")[0] for one in told.loci["E"]} for told in words if told]
        return tuple(form for form in RARE_FORMS if any(one <= set(RARE_FORMS) and form in one for one in sets))

    @cached_property
    def allowed(self) -> Mapping[str, Allowed]:
        """What each coat leaves."""
        words = {color: said_genes(color, self.rare) for color in set(self.colors.values()) if color}
        told = {key: words[color] for key, color in self.colors.items() if color and key in self.book}
        return {key: each for key, each in told.items() if each is not None}

    @cached_property
    def groups(self) -> tuple[tuple[str, ...], ...]:
        """Loci that are summed together: A and E where some colour ties them, each other one by itself."""
        if all(each.tied is None for each in self.allowed.values()):
            return tuple((locus,) for locus in LOCI)
        return (TIED, *((locus,) for locus in LOCI if locus not in TIED))

    @cached_property
    def frequencies(self) -> Mapping[str, Mapping[str, float]]:
        """Each locus's share of each allele among the founders."""
        founders = [key for key in self.allowed if self.book.parents(key) == (None, None)]
        return {
            locus: frequencies(
                locus, (self.allowed[key].loci[locus] for key in self.allowed), (self.allowed[key].loci[locus] for key in founders), self.rare
            )
            for locus in LOCI
        }

    def genes(self, ask: Iterable[str]) -> dict[str, dict[str, dict[str, float]]]:
        """The chance of each genotype at each locus for the animals asked about; a locus too tangled to sum is left out."""
        asked = [one for one in ask if one in self.book]
        found: dict[str, dict[str, dict[str, float]]] = {key: {} for key in asked}
        for loci in self.groups:
            for key, chances in self._summed(self.book, loci, asked).items():
                for number, locus in enumerate(loci):
                    alone = found[key].setdefault(locus, {})
                    for genotype, chance in chances.items():
                        alone[genotype[number]] = alone.get(genotype[number], 0.0) + chance
        return found

    def expected(self, sire: str, dam: str) -> dict[str, float]:
        """The colours to expect of a kit of these two, the likeliest first: a kit to come is put on the book and asked for its genes."""
        rows = [(one, *self.book.parents(one)) for one in self.book.ids]
        book = pedigree([*rows, (TO_COME, sire, dam)])
        if not isinstance(book, Pedigree):
            return {}
        shown = [loci for loci in self.groups if self._varies(loci)]
        sums = [self._summed(book, loci, [TO_COME]).get(TO_COME, {}) for loci in shown]
        shares: dict[str, float] = {}
        for kit in product(*(_worth_summing(each).items() for each in sums)):
            genotype, chance = dict(PLAIN), 1.0
            for loci, (told, one) in zip((loci for loci, each in zip(shown, sums, strict=True) if each), kit, strict=False):
                genotype |= dict(zip(loci, told, strict=True))
                chance *= one
            word = named(genotype)
            shares[word] = shares.get(word, 0.0) + chance
        return dict(sorted(shares.items(), key=lambda each: (-each[1], each[0])))

    def contradictions(self) -> tuple[Contradiction, ...]:
        """What can't be true of this family, each with the animals that can't stand together."""
        found = []
        for loci in self.groups:
            summed = joint_chances(self.book, loci, self._told(loci), self._shares(loci), 0.0, self.allowed)
            if isinstance(summed, Impossible):
                found.append(Contradiction(" and ".join(loci), summed.animals))
        return tuple(found)

    def carries(self, genes: Chances) -> dict[str, float]:
        """The chance that an animal of these genes has one of a form that its coat does not show, for forms that some coat here has."""
        return {
            allele: sum(chance for genotype, chance in genes[locus].items() if hides(locus, genotype, allele))
            for locus in genes
            for allele in LOCI[locus][1:]
            if allele in CARRIED_AS and allele in self.shown[locus]
        }

    @cached_property
    def shown(self) -> Mapping[str, frozenset[str]]:
        """At each locus the alleles that some coat must carry."""
        return {locus: _must_carry(each.loci[locus] for each in self.allowed.values()) for locus in LOCI}

    def _varies(self, loci: Iterable[str]) -> bool:
        """Whether any coat shows something other than the plain form at these loci."""
        return any(not each <= set(PLAIN[locus].split("/")) for locus in loci for each in (self.shown[locus],))

    def _told(self, loci: tuple[str, ...]) -> dict[str, list[Genotypes]]:
        """Animal -> genotypes over these loci that its coat leaves."""
        return {
            key: list(each.tied) if loci == TIED and each.tied is not None else list(product(*(each.loci[locus] for locus in loci)))
            for key, each in self.allowed.items()
        }

    def _shares(self, loci: tuple[str, ...]) -> dict[str, Mapping[str, float]]:
        return {locus: self.frequencies[locus] for locus in loci}

    def _summed(self, book: Pedigree, loci: tuple[str, ...], asked: list[str]) -> Mapping[str, Mapping[Genotypes, float]]:
        """The chances at these loci; where the colours contradict each other, any of them may be a slip."""
        told, shares = self._told(loci), self._shares(loci)
        found = joint_chances(book, loci, told, shares, 0.0, asked)
        if isinstance(found, Impossible):
            found = joint_chances(book, loci, told, shares, genetics.COLOR_ERROR_RATE.value, asked)
        return found if isinstance(found, dict) else {}


def coats(herd: Herd, book: Pedigree) -> Coats:
    """The coats of a herd: its animals', and those of untagged kits whose litter's colours were counted."""
    colors = {one.key: one.color for one in herd.animals.values()}
    kits = [(key, litter, color) for litter in herd.litters.values() for key, color in _untagged(herd, litter)]
    rows = [(one, *book.parents(one)) for one in book.ids]
    more = pedigree([*rows, *((key, litter.sire, litter.dam) for key, litter, _ in kits if litter.dam in book)])
    return Coats(more if isinstance(more, Pedigree) else book, colors | {key: color for key, _, color in kits})


def _untagged(herd: Herd, litter: Litter) -> Iterable[tuple[str, str]]:
    """A key and a colour for each kit that the litter's count of colours tells of beyond its tagged kits."""
    tagged = Counter(one.color for one in herd.animals.values() if one.litter == litter.key)
    for color, kits in litter.colors:
        yield from ((f"{litter.key}{KIT}{color}{KIT}{number}", color) for number in range(max(kits - tagged[color], 0)))


def hides(locus: str, genotype: str, allele: str) -> bool:
    """Whether the genotype has the allele beside one that hides it."""
    one, other = genotype.split("/")
    return allele == other and LOCI[locus].index(one) < LOCI[locus].index(other)


def frequencies(
    locus: str, told: Iterable[Collection[str]], founders: Iterable[Collection[str]], also: Iterable[str]
) -> dict[str, float]:
    """The founders' share of each allele: first those that some coat here must carry alike and others rare, then as founders' coats show.

    told, founders   the genotypes that each coat leaves: of all, and of those without parents on the book
    The first guess counts as one founder more. Gene counting: expected genes under the shares, and again (from memory: Ceppellini 1955).
    """
    alleles = [allele for allele in LOCI[locus] if allele not in RARE_FORMS or allele in set(also)]
    shown = _must_carry(told) or {alleles[0]}
    rare = genetics.UNSEEN_ALLELE_SHARE.value
    common = (1 - rare * sum(1 for allele in alleles if allele not in shown)) / sum(1 for allele in alleles if allele in shown)
    first = {allele: common if allele in shown else rare for allele in alleles}
    shares, alike = first, Counter(tuple(each) for each in founders)
    for _ in range(_ROUNDS):
        genes = {allele: 2 * share for allele, share in first.items()}
        for each, number in alike.items():
            chances = {one: _drawn(one, shares) for one in each}
            total = sum(chances.values())
            for one, chance in chances.items():
                for allele in one.split("/"):
                    genes[allele] += number * chance / total
        shares = {allele: gene / sum(genes.values()) for allele, gene in genes.items()}
    return shares


def _drawn(genotype: str, shares: Mapping[str, float]) -> float:
    one, other = genotype.split("/")
    return shares[one] * shares[other] * (1 if one == other else 2)


def _must_carry(told: Iterable[Collection[str]]) -> frozenset[str]:
    """Alleles that some of these coats can't do without."""
    return frozenset().union(*(frozenset.intersection(*(frozenset(one.split("/")) for one in each)) for each in set(map(tuple, told)) if each))


def _worth_summing(chances: Mapping[Genotypes, float]) -> dict[Genotypes, float]:
    """A kit's genotypes without the next to impossible ones: they cost time and change no forecast that is told."""
    least = genetics.COLOR_ERROR_RATE.value**2
    kept = {genotype: chance for genotype, chance in chances.items() if chance >= least}
    total = sum(kept.values())
    return {genotype: chance / total for genotype, chance in kept.items()}


def close_loci(sire: Chances, dam: Chances) -> bool:
    """Whether the pairing splits two genes that lie close together, so that the forecast is less sure than it looks."""
    return any(
        all(sum(chance for genotype, chance in one.get(locus, {}).items() if len(set(genotype.split("/"))) > 1) > 0.5 for locus in pair)
        for pair in CLOSE_LOCI
        for one in (sire, dam)
    )


def genotype_document(chances: Chances) -> dict[str, Any] | None:
    """The genotype object of the herd document: locus -> genotype -> chance; None where nothing is known."""
    return {locus: dict(each) for locus, each in chances.items()} or None


def gene_word(color: str | None) -> str | None:
    """The colour as `named` spells it; None where it has no genes or may be several."""
    told = said_genes(color, RARE_FORMS) if color else None
    if told is None:
        return None
    words = {named({locus: each[0] for locus, each in told.loci.items()}), named({locus: each[-1] for locus, each in told.loci.items()})}
    return words.pop() if len(words) == 1 else None


def said_as(colors: Iterable[str | None]) -> dict[str, str]:
    """How this farm says the reckoning's words, from the colours that it uses: `chestnut` is its `castor`."""
    words = ((gene_word(color), color) for color in colors if color)
    return {word: color for word, color in words if word is not None}
