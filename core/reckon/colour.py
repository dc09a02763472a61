"""Coat colours: what a genotype looks like, what a mating may throw, and what a colour says about the genes.

Nine loci, taken as unlinked: A agouti, B brown, C colour, D dilution, E extension, En spotting, V Vienna, Du Dutch, Si silver.
Which form hides which, and what the outcome is called, stands in `core.handbook.coat_genes` with its sources; words differ by breed
and country, so the genotype is the truth and the word a name for it.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import cache
from itertools import combinations_with_replacement, product
from typing import TypeVar

from core.handbook.coat_genes import BASE_WORDS, COAT_PATTERNS, GENE_FORMS, MARKING_WORDS, RARE_FORMS, SHADE_WORDS, TRADE_WORDS

#: Alleles of each locus, most dominant first.
LOCI: Mapping[str, tuple[str, ...]] = {
    locus: tuple(one.symbol for one in GENE_FORMS if one.locus == locus) for locus in dict.fromkeys(one.locus for one in GENE_FORMS)
}
#: What a locus is when nothing is said of it: a chestnut agouti.
PLAIN: Mapping[str, str] = {
    "A": "A/A", "B": "B/B", "C": "C/C", "D": "D/D", "E": "E/E", "En": "en/en", "V": "V/V", "Du": "Du/Du", "Si": "Si/Si"
}  # fmt: skip
#: Loci whose outcome stands in the word itself; the others mark it.
WORDED = ("A", "B", "C", "D", "E")
#: Loci that one colour may tie together.
TIED = ("A", "E")

_PATTERNS = {one.name: (one.full, one.chinchilla, one.shaded) for one in COAT_PATTERNS}
_TRADE = {one.said: one for one in TRADE_WORDS}

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
    marks = "".join(mark for mark, (locus, genotype) in MARKING_WORDS.items() if full[locus] == genotype)
    return marks + _coloured(*(full[locus] for locus in WORDED))


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


@dataclass(frozen=True, slots=True)
class Allowed:
    """What a colour leaves. `loci`: the genotypes at each locus; `tied`: (A, E) pairs where these two are not free of each other."""

    loci: Mapping[str, tuple[str, ...]]
    tied: tuple[tuple[str, str], ...] | None = None


def said_genes(said: str, also: Iterable[str] = ()) -> Allowed | None:
    """What a colour as breeders say it leaves: a word of `named`'s or of the trade, marked or not. None for a word of no known genes."""
    told = said.lower()
    if told in _TRADE and _TRADE[told].shows is not None:
        anything = {locus: genotypes(locus, _in_account(locus, tuple(also))) for locus in LOCI}
        return Allowed(_seen_coloured(anything) | dict(_TRADE[told].shows or {}))
    marks, bare = _marks(told)
    means = _TRADE[bare].means if bare in _TRADE else (bare,)
    found = [allowed(marks + word, also) for word in means or (bare,)]
    return None if None in found else _either([one for one in found if one is not None])


def _either(told: list[Allowed]) -> Allowed:
    """What one or another of several words leaves: those of a loose trade word differ at B and D alone."""
    if len(told) == 1:
        return told[0]
    return Allowed({locus: tuple(dict.fromkeys(one for each in told for one in each.loci[locus])) for locus in LOCI}, told[0].tied)


def _seen_coloured(anything: Mapping[str, tuple[str, ...]]) -> dict[str, tuple[str, ...]]:
    """Neither all-white: else its marking could not be seen."""
    return {**anything, "C": tuple(one for one in anything["C"] if one != "c/c"), "V": ("V/V", "V/v")}


def allowed_genotypes(word: str, also: Iterable[str] = ()) -> dict[str, tuple[str, ...]] | None:
    """At each locus the genotypes that a rabbit of this colour may have; None for a word that isn't one of `named`'s."""
    found = allowed(word, also)
    return None if found is None else dict(found.loci)


def allowed(word: str, also: Iterable[str] = ()) -> Allowed | None:
    """What a word of `named`'s leaves, A and E tied where it does. `also`: which RARE_FORMS the herd has."""
    told = tuple(one for one in RARE_FORMS if one in set(also))
    anything = {locus: genotypes(locus, _in_account(locus, told)) for locus in LOCI}
    if word == "REW":
        return Allowed(anything | {"C": ("c/c",)})
    if word == "BEW":
        return Allowed(anything | {"V": ("v/v",), "C": tuple(one for one in anything["C"] if one != "c/c")})
    marks, bare = _marks(word)
    coat = _by_word(told).get(bare)
    if coat is None:
        return None
    marked = {locus: genotype for mark, (locus, genotype) in MARKING_WORDS.items() if mark in marks}
    plain = {"En": ("en/en",), "V": ("V/V", "V/v"), "Du": ("Du/Du", "Du/du"), "Si": ("Si/Si", "Si/si")}
    loci, tied = coat
    return Allowed(loci | plain | {locus: (genotype,) for locus, genotype in marked.items()}, tied)


def _marks(word: str) -> tuple[str, str]:
    """The marking words that a colour begins with, and the rest."""
    bare = word
    for mark in MARKING_WORDS:
        bare = bare.removeprefix(mark)
    return word[: len(word) - len(bare)], bare


def _coloured(a: str, b: str, c: str, d: str, e: str) -> str:
    """The word without its prefix, of a rabbit that is neither albino nor blue-eyed white."""
    at = 2 * (b == "b/b") + (d == "d/d")
    base, top = BASE_WORDS[at], _dominant(c)
    if top == "ch":
        return f"{base} himalayan"
    pattern = _pattern(a, e)
    if pattern == "self" and c == "cchl/cchl":
        return f"{base} seal"
    words = _PATTERNS[pattern][("C", "cchd", "cchl").index(top)]
    return (words if isinstance(words, str) else words[at]).format(x=base, sh=SHADE_WORDS[base])


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
    return tuple(allele for allele in LOCI[locus] if allele not in RARE_FORMS or allele in rare)


@cache
def _by_word(rare: tuple[str, ...]) -> dict[str, tuple[dict[str, tuple[str, ...]], tuple[tuple[str, str], ...] | None]]:
    """For each word without marks the genotypes that occur with it, and its (A, E) pairs where not every pair occurs."""
    found: dict[str, dict[str, dict[str, None]]] = {}
    pairs: dict[str, dict[tuple[str, str], None]] = {}
    for kit in product(*(genotypes(locus, _in_account(locus, rare)) for locus in WORDED)):
        if kit[WORDED.index("C")] != "c/c":
            word = _coloured(*kit)
            sets = found.setdefault(word, {locus: {} for locus in WORDED})
            pairs.setdefault(word, {})[kit[0], kit[-1]] = None
            for locus, genotype in zip(WORDED, kit, strict=True):
                sets[locus][genotype] = None
    return {
        word: (
            {locus: tuple(seen) for locus, seen in sets.items()},
            tuple(pairs[word]) if len(pairs[word]) < len(sets["A"]) * len(sets["E"]) else None,
        )
        for word, sets in found.items()
    }
