"""What a coat hides: the likely genes behind everybody's colours, and the colours to expect of a pairing.

The words of the trade differ by breed; those that the reckoning knows under another name are put so first. A coat it has no genes for
tells nothing, and that is said. Dominance and defaults are `core.reckon.colour`'s.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable, Mapping
from typing import Any

from core.handbook import genetics
from core.reckon.colour import LOCI, RARE, allowed_genotypes, likely_colours
from core.reckon.genotype import genotype_chances
from core.reckon.pedigree import Pedigree

#: Trade words under which the reckoning knows another name. Common practice; breeds differ.
KNOWN_AS = {
    "castor": "chestnut",
    "agouti": "chestnut",
    "red": "orange",
    "fawn": "orange",
    "white": "REW",
    "rew": "REW",
    "bew": "BEW",
    "amber": "chocolate agouti",
    "cinnamon": "chocolate agouti",
    "tortoise": "black tortoise",
    "otter": "black otter",
    "sable": "siamese sable",
    "harlequin": "black harlequin",
    "magpie": "black magpie",
    "silver marten": "black silver marten",
    "marten": "black silver marten",
    "steel": "black steel",
    "frosty": "black frosty",
    "smoke pearl": "siamese smoke pearl",
}
#: A herd with this in a coat has the rare alleles too.
STEEL = "steel"

Chances = Mapping[str, Mapping[str, float]]  # locus -> genotype -> chance


def gene_word(color: str | None) -> str | None:
    """The colour as the reckoning names it; None where it has no genes for it."""
    if color is None:
        return None
    said = color.lower()
    prefix = next((one for one in ("broken ", "charlie ") if said.startswith(one)), "")
    bare = said.removeprefix(prefix)
    word = prefix + KNOWN_AS.get(bare, bare)
    return word if allowed_genotypes(word, RARE) is not None else None


def posterior(book: Pedigree, colors: Mapping[str, str | None], ask: Iterable[str]) -> dict[str, dict[str, dict[str, float]]]:
    """The chance of each genotype at each locus for the animals asked about, from everybody's colours and the family book.

    A locus where the colours contradict the family, or the family is too tangled, is left out.
    """
    asked = [one for one in ask if one in book]
    words = {key: gene_word(color) for key, color in colors.items() if key in book}
    also = RARE if any(word and STEEL in word for word in words.values()) else ()
    allowed = {key: allowed_genotypes(word, also) for key, word in words.items() if word is not None}
    found: dict[str, dict[str, dict[str, float]]] = {key: {} for key in asked}
    for locus in LOCI:
        told = {key: set(each[locus]) for key, each in allowed.items() if each is not None}
        chances = genotype_chances(book, locus, told, frequencies(locus, told.values(), also), genetics.COLOR_ERROR_RATE.value)
        if isinstance(chances, dict):
            for key in asked:
                found[key][locus] = chances[key]
    return found


def frequencies(locus: str, told: Iterable[Collection[str]], also: Iterable[str]) -> dict[str, float]:
    """The founders' share of each allele: those that some coat on the book must carry alike, the others rare."""
    alleles = [allele for allele in LOCI[locus] if allele not in RARE or allele in set(also)]
    shown = set.union(set(), *(set.intersection(*(set(one.split("/")) for one in each)) for each in told if each))
    shown = shown or {alleles[0]}
    rare = genetics.UNSEEN_ALLELE_SHARE.value
    common = (1 - rare * sum(1 for allele in alleles if allele not in shown)) / sum(1 for allele in alleles if allele in shown)
    return {allele: common if allele in shown else rare for allele in alleles}


def expected(sire: Chances, dam: Chances) -> dict[str, float]:
    """The colours to expect of the pairing, the likeliest first."""
    return likely_colours(*({locus: _likely(each) for locus, each in one.items()} for one in (sire, dam)))


def _likely(chances: Mapping[str, float]) -> dict[str, float]:
    """A locus without its next to impossible genotypes: they cost time and change no forecast that is told."""
    least = genetics.COLOR_ERROR_RATE.value
    kept = {genotype: chance for genotype, chance in chances.items() if chance >= least}
    total = sum(kept.values())
    return {genotype: chance / total for genotype, chance in kept.items()}


def genotype_document(chances: Chances) -> dict[str, Any] | None:
    """The genotype object of the herd document: locus -> genotype -> chance; None where nothing is known."""
    return {locus: dict(each) for locus, each in chances.items()} or None


def said_as(colors: Iterable[str | None]) -> dict[str, str]:
    """How this farm says the reckoning's words, from the colors that it uses: `chestnut` is its `castor`."""
    words = ((gene_word(color), color) for color in colors if color)
    return {word: color for word, color in words if word is not None}
