"""What a coat hides: the likely genes behind everybody's colours, the colours to expect of a pairing, and colours that can't be.

Everybody's coat tells: parents, mates, tagged kits, and the colours noted of a whole litter. A coat it has no genes for tells nothing.
Colours that contradict the family are told with the animals concerned, and from then on each colour at that gene may be a slip.

Over 300 lines: building the family's coats and asking them stand together, for they share what is kept between notes.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cached_property, lru_cache
from itertools import product
from typing import Any

from core.handbook import genetics
from core.handbook.coat_genes import CARRIED_AS, CLOSE_LOCI, RARE_FORMS
from core.herd.state import Herd, Litter
from core.reckon.colour import LOCI, PLAIN, TIED, Allowed, named, said_genes
from core.reckon.founders import founder_shares, must_carry
from core.reckon.genotype import Founders, TooTangled, conflicts, joint_chances
from core.reckon.inheritance import Genotypes
from core.reckon.pedigree import Pedigree

Chances = Mapping[str, Mapping[str, float]]  # locus -> genotype -> chance
Loci = tuple[str, ...]
Sums = Mapping[Loci, Mapping[str, Mapping[Genotypes, float]]]  # loci summed together -> animal -> genotype -> chance

#: The key of a kit that is not born yet, and the mark between a litter's key and its untagged kit's colour.
TO_COME = "to come"
KIT = "#"
NEAR = 3  # not a figure: steps to relatives that are summed where the whole family is too tangled


@dataclass(frozen=True, slots=True)
class Mating:
    """A mating's kits: colour -> chance, the likeliest first; and where coats here vary the genes of both parents, and as they were summed."""

    colors: Mapping[str, float]
    genes: Mapping[str, Chances]
    sums: Sums


@dataclass(frozen=True, eq=False)
class Coats:
    """Everybody's colours and the family book, and what they tell of the genes.

    kinds   animal -> its breed: founders are taken to be like those of their breed
    """

    book: Pedigree
    colors: Mapping[str, str | None]
    kinds: Mapping[str, str] = field(default_factory=dict)

    @cached_property
    def rare(self) -> tuple[str, ...]:
        """Rare forms that some coat here must carry: nobody reckons with them before."""
        words = [said_genes(color, RARE_FORMS) for color in set(self.colors.values()) if color]
        shown = must_carry(told.loci["E"] for told in words if told)
        return tuple(form for form in RARE_FORMS if form in shown)

    @cached_property
    def allowed(self) -> Mapping[str, Allowed]:
        """What each coat leaves."""
        words = {color: said_genes(color, self.rare) for color in set(self.colors.values()) if color}
        told = {key: words[color] for key, color in self.colors.items() if color and key in self.book}
        return {key: each for key, each in told.items() if each is not None}

    @cached_property
    def _plainly(self) -> Mapping[str, Allowed]:
        """What each coat leaves if it looks so for the usual reason: a black by two a, not by a rare form."""
        usual = {color: said_genes(color) for color in set(self.colors.values()) if color}
        return {key: usual[self.colors[key] or ""] or each for key, each in self.allowed.items()}

    @cached_property
    def told(self) -> frozenset[str]:
        """Those of whose genes some coat tells: their own, a forebear's, a descendant's, or that of a forebear's descendant."""
        found = set(self.allowed)
        for key in reversed(self.book.ids):
            found.update(parent for parent in self.book.parents(key) if key in found and parent is not None)
        for key in self.book.ids:
            if found & set(self.book.parents(key)):
                found.add(key)
        return frozenset(found)

    @cached_property
    def groups(self) -> tuple[Loci, ...]:
        """Loci that are summed together: A and E where some colour ties them, each other one by itself."""
        if all(each.tied is None for each in self.allowed.values()):
            return tuple((locus,) for locus in LOCI)
        return (TIED, *((locus,) for locus in LOCI if locus not in TIED))

    @cached_property
    def founders(self) -> Founders:
        """How common each allele is where parents are unknown: here, and in each breed."""
        of_kind: dict[str, list[str]] = {}
        for key in self.allowed:
            of_kind.setdefault(self.kinds.get(key, ""), []).append(key)
        common = self._shares(self.allowed, {})
        own = {kind: self._shares(keys, common) for kind, keys in of_kind.items() if kind}
        return Founders(common, {key: own[kind] for key, kind in self.kinds.items() if kind in own})

    def _shares(self, kin: Iterable[str], common: Chances) -> dict[str, Mapping[str, float]]:
        """The founders' shares among these; where no coat of theirs tells of a locus, the common ones."""
        coats = self._plainly
        own = Counter(id(coats[key]) for key in kin if self.book.parents(key) == (None, None))
        told = {id(each): each for each in (coats[key] for key in kin)}.values()
        found: dict[str, Mapping[str, float]] = {}
        for locus, alleles in self.alleles.items():
            shown = must_carry(each.loci[locus] for each in told)
            alike: Counter[tuple[str, ...]] = Counter()
            for each in told:
                alike[tuple(one for one in each.loci[locus] if set(one.split("/")) <= set(alleles))] += own[id(each)]
            none = not shown and locus in common
            found[locus] = common[locus] if none else founder_shares(locus, alleles, shown, tuple(sorted(alike.items())))
        return found

    @cached_property
    def shown(self) -> Mapping[str, frozenset[str]]:
        """At each locus the alleles that some coat must carry."""
        return {locus: must_carry(each.loci[locus] for each in self._plainly.values()) for locus in LOCI}

    @cached_property
    def alleles(self) -> Mapping[str, tuple[str, ...]]:
        """The forms that are reckoned with at each locus. Where loci are summed together, those alone that some coat shows, and the plain one."""
        tied = {locus for loci in self.groups if len(loci) > 1 for locus in loci}
        return {
            locus: tuple(
                form
                for form in forms
                if (form not in RARE_FORMS or form in self.rare)
                and (locus not in tied or form in self.shown[locus] or form in PLAIN[locus].split("/"))
            )
            for locus, forms in LOCI.items()
        }

    @cached_property
    def doubts(self) -> Mapping[Loci, tuple[tuple[str, ...], ...]]:
        """For each group of loci the animals (or a litter's untagged kits) whose colours can't all be true of this family."""
        return {loci: conflicts(self.book, loci, self._told[loci], self.founders) for loci in self.groups}

    @cached_property
    def varied(self) -> tuple[Loci, ...]:
        """The groups of loci at which some coat here shows another form than the plain one."""
        return tuple(loci for loci in self.groups if any(not self.shown[locus] <= set(PLAIN[locus].split("/")) for locus in loci))

    def genes(self, ask: Iterable[str]) -> dict[str, dict[str, dict[str, float]]]:
        """The chance of each genotype at each locus for the animals asked about."""
        asked = [key for key in ask if key in self.book]
        return _apart({loci: self._summed(self.book, loci, asked) for loci in self.groups}, asked)

    @lru_cache(maxsize=64)  # noqa: B019 - a few coats live at a time, and go with the least used
    def mating(self, sire: str, dam: str) -> Mating:
        """What to expect of a kit of these two, and their own genes: a kit to come is put on the book and asked as they are."""
        book = self.book.with_kits([(TO_COME, sire, dam)])
        sums = {loci: self._summed(book, loci, [TO_COME, sire, dam]) for loci in self.varied}
        shares: dict[str, float] = {}
        for kit in product(*(_worth_summing(each.get(TO_COME, {})).items() for each in sums.values())):
            genotype, chance = dict(PLAIN), 1.0
            for loci, (told, one) in zip(sums, kit, strict=True):
                genotype |= dict(zip(loci, told, strict=True))
                chance *= one
            word = named(genotype)
            shares[word] = shares.get(word, 0.0) + chance
        return Mating(dict(sorted(shares.items(), key=lambda each: (-each[1], each[0]))), _apart(sums, [sire, dam]), sums)

    def carries(self, key: str, genes: Chances) -> dict[str, float]:
        """The chance that it has a form that its own coat does not show, for the forms that some coat here has; the likeliest first."""
        own = self.allowed.get(key)
        found = {
            allele: sum(chance for genotype, chance in genes[locus].items() if allele in genotype.split("/"))
            for locus in genes
            for allele in LOCI[locus][1:]
            if allele in CARRIED_AS and allele in self.shown[locus] and not (own and _wears(own.loci[locus], allele))
        }
        return dict(sorted(found.items(), key=lambda each: -each[1]))

    def can_give(self, key: str, color: str, sums: Sums | None = None) -> float | None:
        """The chance that an animal has all that a kit of that colour needs from it; None for a colour of no known genes.

        sums   what was summed already with this animal asked: of a mating
        """
        wanted = said_genes(color, self.rare)
        if wanted is None:
            return None
        known = {loci: self._summed(self.book, loci, [key]) for loci in self.varied} if sums is None else sums
        chance = 1.0
        for loci in self.groups:
            fit = {gamete for each in _over(wanted, loci) for gamete in _gametes(each)}
            if loci in known or not fit & set(_gametes(tuple(PLAIN[locus] for locus in loci))):
                summed = known[loci] if loci in known else self._summed(self.book, loci, [key])
                chance *= sum(each for genotype, each in summed.get(key, {}).items() if fit & set(_gametes(genotype)))
        return chance

    @cached_property
    def _told(self) -> Mapping[Loci, Mapping[str, list[Genotypes]]]:
        """For each group of loci: animal -> genotypes over them that its coat leaves; one list for all coats alike."""
        lists = {(loci, id(each)): _over(each, loci) for loci in self.groups for each in self.allowed.values()}
        return {loci: {key: lists[loci, id(each)] for key, each in self.allowed.items()} for loci in self.groups}

    def _summed(self, book: Pedigree, loci: Loci, asked: Sequence[str]) -> Mapping[str, Mapping[Genotypes, float]]:
        """The chances at these loci; where the colours contradict each other, any of them may be a slip.

        A family too tangled to sum as a whole is cut to each one's near relatives.
        """
        error = genetics.COLOR_ERROR_RATE.value if self.doubts[loci] else 0.0
        found = joint_chances(book, loci, self._told[loci], self.founders, error, asked)
        steps = NEAR
        while isinstance(found, TooTangled) and steps:
            each = [joint_chances(book.near([one], steps), loci, self._told[loci], self.founders, error, [one]) for one in asked]
            found = next((one for one in each if isinstance(one, TooTangled)), _joined(one for one in each if isinstance(one, dict)))
            steps -= 1
        return found if isinstance(found, dict) else {}


def coats(herd: Herd, book: Pedigree) -> Coats:
    """The coats of a herd: its animals', and those of untagged kits whose litter's colours were counted."""
    colors = {one.key: one.color for one in herd.animals.values()}
    kinds = {one.key: one.breed.lower() for one in herd.animals.values() if one.breed}
    kits = [(key, litter, color) for litter in herd.litters.values() for key, color in _untagged(herd, litter)]
    more = book.with_kits((key, litter.sire, litter.dam) for key, litter, _ in kits)
    return _known(more, (*colors.items(), *((key, color) for key, _, color in kits)), tuple(kinds.items()))


@lru_cache(maxsize=8)
def _known(book: Pedigree, colors: tuple[tuple[str, str | None], ...], kinds: tuple[tuple[str, str], ...]) -> Coats:
    """The same coats as long as no note changes a color, a breed or a family."""
    return Coats(book, dict(colors), dict(kinds))


def _untagged(herd: Herd, litter: Litter) -> Iterator[tuple[str, str]]:
    """A key and a colour for each kit that the litter's count of colours tells of beyond its tagged kits.

    A nest that took in kits of another doe's tells nothing: nobody said whose the colours are.
    """
    if litter.colors and not litter.fostered_in:
        tagged = Counter(one.color for one in herd.animals.values() if one.litter == litter.key)
        for color, kits in litter.colors:
            yield from ((f"{litter.key}{KIT}{color}{KIT}{number}", color) for number in range(kits - tagged[color]))


def _over(coat: Allowed, loci: Loci) -> list[Genotypes]:
    """The genotypes over these loci that a coat leaves."""
    return list(coat.tied) if loci == TIED and coat.tied is not None else list(product(*(coat.loci[locus] for locus in loci)))


def _gametes(genotype: Genotypes) -> list[tuple[str, ...]]:
    """What an animal of that genotype may hand on: one allele a locus."""
    return list(product(*(each.split("/") for each in genotype)))


def _wears(left: Iterable[str], allele: str) -> bool:
    """Whether a coat that leaves these genotypes surely shows that allele: it is the dominant one of each."""
    return all(genotype.split("/")[0] == allele for genotype in left)


def _apart(sums: Sums, keys: Iterable[str]) -> dict[str, dict[str, dict[str, float]]]:
    """Each animal's chances at each locus by itself."""
    found: dict[str, dict[str, dict[str, float]]] = {key: {} for key in keys}
    for loci, each in sums.items():
        for key in found.keys() & each.keys():
            for number, locus in enumerate(loci):
                alone = found[key].setdefault(locus, {})
                for genotype, chance in each[key].items():
                    alone[genotype[number]] = alone.get(genotype[number], 0.0) + chance
    return found


def _worth_summing(chances: Mapping[Genotypes, float]) -> dict[Genotypes, float]:
    """A kit's genotypes without the next to impossible ones: they cost time and change no forecast that is told."""
    least = genetics.COLOR_ERROR_RATE.value**2
    kept = {genotype: chance for genotype, chance in chances.items() if chance >= least}
    total = sum(kept.values())
    return {genotype: chance / total for genotype, chance in kept.items()}


def _joined(each: Iterable[dict[str, dict[Genotypes, float]]]) -> dict[str, dict[Genotypes, float]]:
    return {animal: chances for told in each for animal, chances in told.items()}


def close_loci(sire: Chances, dam: Chances) -> bool:
    """Whether one of a pairing probably has two genes mixed that lie close together: then the forecast is less sure than it looks."""
    return any(all(_mixed(one.get(locus, {})) > 1 / 2 for locus in pair) for pair in CLOSE_LOCI for one in (sire, dam))


def _mixed(chances: Mapping[str, float]) -> float:
    return sum(chance for genotype, chance in chances.items() if len(set(genotype.split("/"))) > 1)


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
    words = ((gene_word(color), color) for color in dict.fromkeys(colors) if color)
    return {word: color for word, color in words if word is not None}
