"""Coat colours: what a genotype looks like, what a mating may throw, and what a colour says about the genes.

Seven loci, taken as unlinked (A agouti, B brown, C colour, D dilution, E extension, En spotting, V Vienna). Genes and
dominance are published (OMIA 000201-9986, 001249-9986, 000202-9986, 000031-9986, 001199-9986, 001597-9986); steel, Vienna
and most colour words are common practice and differ by breed and country, so the genotype is the truth and the word a name for it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from fractions import Fraction
from functools import cache
from itertools import combinations_with_replacement, product
from typing import TypeVar

#: Alleles of each locus, most dominant first.
LOCI: Mapping[str, tuple[str, ...]] = {
    "A": ("A", "at", "a"),
    "B": ("B", "b"),
    "C": ("C", "cchd", "cchl", "ch", "c"),
    "D": ("D", "d"),
    "E": ("Ed", "Es", "E", "ej", "e"),
    "En": ("En", "en"),
    "V": ("V", "v"),
}
#: What a locus is when nothing is said of it: a chestnut agouti.
PLAIN: Mapping[str, str] = {"A": "A/A", "B": "B/B", "C": "C/C", "D": "D/D", "E": "E/E", "En": "en/en", "V": "V/V"}
#: Alleles that stay out of account until the herd shows them: they make A and E hang together.
RARE = ("Ed", "Es")

_BASES = ("black", "blue", "chocolate", "lilac")
_SHADES = dict(zip(_BASES, ("sable", "smoke pearl", "chocolate sable", "lilac sable"), strict=True))
#: pattern -> its words with full colour, with chinchilla, and shaded ({x} base, {sh} shade); four words stand for four bases.
_WORDS: Mapping[str, tuple[str | tuple[str, ...], str | tuple[str, ...], str]] = {
    "self": ("{x}", "{x}", "siamese {sh}"),
    "agouti": (
        ("chestnut", "opal", "chocolate agouti", "lynx"),
        ("chinchilla", "squirrel", "chocolate chinchilla", "lilac chinchilla"),
        "{sh} agouti",
    ),
    "tan": ("{x} otter", "{x} silver marten", "{sh} marten"),
    "steel": ("{x} steel", "{x} silver-tipped steel", "{sh} steel"),
    "harlequin": ("{x} harlequin", "{x} magpie", "{sh} harlequin"),
    "red": (("orange", "cream", "chocolate orange", "lilac cream"), "{x} frosty", "{sh} frosty"),
    "tan-tortoise": ("{x} tortoise otter", "{x} sallander marten", "{sh} point marten"),
    "tortoise": ("{x} tortoise", "{x} sallander", "{sh} point"),
}
_PREFIXES = {"En/en": "broken ", "En/En": "charlie "}

Share = TypeVar("Share", Fraction, float)


def spelled(locus: str, genotype: str) -> str:
    """A genotype with its dominant allele first: `a/A` is `A/a`. Raises ValueError on an allele that the locus doesn't have."""
    order = LOCI[locus]
    return "/".join(sorted(genotype.split("/"), key=order.index))


def genotypes(locus: str, alleles: Iterable[str] | None = None) -> tuple[str, ...]:
    """All genotypes of a locus, or of some of its alleles."""
    wanted = LOCI[locus] if alleles is None else [one for one in LOCI[locus] if one in set(alleles)]
    return tuple("/".join(pair) for pair in combinations_with_replacement(wanted, 2))


def named(genotype: Mapping[str, str]) -> str:
    """The colour word of a genotype ({locus: `A/a`}); loci not named are plain. The first rule that applies wins."""
    full = {locus: spelled(locus, genotype.get(locus, plain)) for locus, plain in PLAIN.items()}
    if full["C"] == "c/c":
        return "REW"
    if full["V"] == "v/v":
        return "BEW"
    return _PREFIXES.get(full["En"], "") + _coloured(full["A"], full["B"], full["C"], full["D"], full["E"])


def litter_colours(sire: Mapping[str, str], dam: Mapping[str, str]) -> dict[str, Fraction]:
    """The exact share of each colour among a mating's kits, both genotypes known; the commonest first."""
    pairs = [
        _kits({spelled(locus, sire.get(locus, plain)): Fraction(1)}, {spelled(locus, dam.get(locus, plain)): Fraction(1)}, Fraction(1, 2))
        for locus, plain in PLAIN.items()
    ]
    return _named_shares(pairs, Fraction(1))


def likely_colours(sire: Mapping[str, Mapping[str, float]], dam: Mapping[str, Mapping[str, float]]) -> dict[str, float]:
    """The chance of each colour for a kit, when the parents' genotypes are known as chances ({locus: {genotype: P}}).

    Loci not named are plain. The likeliest first.
    """
    pairs = [_kits(sire.get(locus, {plain: 1.0}), dam.get(locus, {plain: 1.0}), 0.5) for locus, plain in PLAIN.items()]
    return _named_shares(pairs, 1.0)


def at_least_one(share: Fraction | float, kits: int) -> float:
    """The chance that a litter of that many kits has one or more of a colour of that share."""
    return float(1 - (1 - share) ** kits)


def allowed_genotypes(word: str, also: Iterable[str] = ()) -> dict[str, tuple[str, ...]] | None:
    """At each locus the genotypes that a rabbit of this colour may have; None for a word that isn't one of `named`'s.

    `also`: which RARE alleles the herd has. Then A and E of a self black are looser than they truly are together.
    """
    told = tuple(one for one in RARE if one in set(also))
    anything = {locus: genotypes(locus, _in_account(locus, told)) for locus in LOCI}
    if word == "REW":
        return anything | {"C": ("c/c",)}
    if word == "BEW":
        return anything | {"V": ("v/v",), "C": tuple(one for one in anything["C"] if one != "c/c")}
    spotted, bare = next(
        ((spot, word.removeprefix(prefix)) for spot, prefix in _PREFIXES.items() if word.startswith(prefix)), ("en/en", word)
    )
    base = _by_word(told).get(bare)
    return None if base is None else {**base, "En": (spotted,), "V": ("V/V", "V/v")}


def _coloured(a: str, b: str, c: str, d: str, e: str) -> str:
    """The word without its prefix, of a rabbit that is neither albino nor blue-eyed white."""
    at = 2 * (b == "b/b") + (d == "d/d")
    base, top = _BASES[at], _dominant(c)
    if top == "ch":
        return f"{base} himalayan"
    pattern = _pattern(a, e)
    if pattern == "self" and c == "cchl/cchl":
        return f"{base} seal"
    words = _WORDS[pattern][("C", "cchd", "cchl").index(top)]
    return (words if isinstance(words, str) else words[at]).format(x=base, sh=_SHADES[base])


def _dominant(genotype: str) -> str:
    return genotype.partition("/")[0]


def _pattern(a: str, e: str) -> str:
    agouti, extension = _dominant(a), _dominant(e)
    if extension == "Ed" or (extension == "Es" and (agouti != "A" or e == "Es/Es")):
        return "self"
    if extension == "ej":
        return "harlequin"
    if extension == "Es":
        return "steel"
    patterns = {"A": ("agouti", "red"), "at": ("tan", "tan-tortoise"), "a": ("self", "tortoise")}
    return patterns[agouti][extension == "e"]


def _kits(sire: Mapping[str, Share], dam: Mapping[str, Share], half: Share) -> dict[tuple[str, str], Share]:
    """Chances of a kit's (allele from the sire, allele from the dam) at one locus."""
    made: dict[tuple[str, str], Share] = {}
    for (of_sire, p), (of_dam, q) in product(sire.items(), dam.items()):
        for pair in product(of_sire.split("/"), of_dam.split("/")):
            made[pair] = made.get(pair, half * 0) + p * q * half * half
    return made


def _named_shares(pairs: list[dict[tuple[str, str], Share]], one: Share) -> dict[str, Share]:
    found: dict[str, Share] = {}
    loci = [_ordered(locus, kits) for locus, kits in zip(PLAIN, pairs, strict=True)]
    for kit in product(*(locus.items() for locus in loci)):
        share = one
        for _, chance in kit:
            share = share * chance
        word = named(dict(zip(PLAIN, (genotype for genotype, _ in kit), strict=True)))
        found[word] = found.get(word, one * 0) + share
    return dict(sorted(found.items(), key=lambda item: (-item[1], item[0])))


def _ordered(locus: str, kits: Mapping[tuple[str, str], Share]) -> dict[str, Share]:
    """Which parent an allele came from doesn't matter; what can't happen is left out."""
    found: dict[str, Share] = {}
    for pair, share in kits.items():
        genotype = spelled(locus, "/".join(pair))
        if share > 0:
            found[genotype] = found[genotype] + share if genotype in found else share
    return found


def _in_account(locus: str, rare: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(allele for allele in LOCI[locus] if allele not in RARE or allele in rare)


@cache
def _by_word(rare: tuple[str, ...]) -> dict[str, dict[str, tuple[str, ...]]]:
    """For each word without prefix the genotypes at A, B, C, D, E that occur with it."""
    loci = ("A", "B", "C", "D", "E")
    found: dict[str, dict[str, dict[str, None]]] = {}
    for kit in product(*(genotypes(locus, _in_account(locus, rare)) for locus in loci)):
        if kit[2] != "c/c":
            sets = found.setdefault(_coloured(*kit), {locus: {} for locus in loci})
            for locus, genotype in zip(loci, kit, strict=True):
                sets[locus][genotype] = None
    return {word: {locus: tuple(seen) for locus, seen in sets.items()} for word, sets in found.items()}
