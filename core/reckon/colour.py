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
from math import prod

from core.handbook.coat_genes import BASE_WORDS, COAT_PATTERNS, GENE_FORMS, MARKING_WORDS, RARE_FORMS, SHADE_WORDS, TRADE_WORDS, TradeWord

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
_TRADE = {
    one.said.format(x=base): TradeWord(
        one.said, tuple(each.format(x=base, sh=SHADE_WORDS[base]) for each in one.means), one.shows, one.source
    )
    for one in TRADE_WORDS
    for base in BASE_WORDS
}


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
    loci = [_kits(locus, sire.get(locus, plain), dam.get(locus, plain)) for locus, plain in PLAIN.items()]
    found: dict[str, Fraction] = {}
    for kit in product(*(each.items() for each in loci)):
        word = named(dict(zip(PLAIN, (genotype for genotype, _ in kit), strict=True)))
        found[word] = found.get(word, Fraction(0)) + prod(share for _, share in kit)
    return dict(sorted(found.items(), key=lambda item: (-item[1], item[0])))


def _kits(locus: str, sire: str, dam: str) -> dict[str, Fraction]:
    """The share of each genotype at one locus; which parent an allele came from doesn't matter."""
    found: dict[str, Fraction] = {}
    for pair in product(sire.split("/"), dam.split("/")):
        genotype = spelled(locus, "/".join(pair))
        found[genotype] = found.get(genotype, Fraction(0)) + Fraction(1, 4)
    return found


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
    marks, bare = _marks(said.lower())
    trade = _TRADE.get(bare)
    if trade is not None and trade.shows is not None:
        anything = {locus: genotypes(locus, _in_account(locus, tuple(also))) for locus in LOCI}
        return Allowed(_seen_coloured(anything) | dict(trade.shows) | _marked(marks))
    found = [allowed(word, also) for word in words_meant(said)]
    told = [one for one in found if one is not None]
    return _either(told) if told else None


def words_meant(said: str) -> tuple[str, ...]:
    """The words of `named`'s that a colour may be, marks and all; none for a word that only tells a marking or nothing."""
    marks, bare = _marks(said.lower())
    trade = _TRADE.get(bare)
    return tuple(_remarked(marks, word) for word in (trade.means if trade else (bare,)))


def _remarked(marks: tuple[str, ...], word: str) -> str:
    """A word with marks before it; of two for one gene the outer one holds: a charlie tricolor is no broken."""
    inner, bare = _marks(word)
    outer = {MARKING_WORDS[mark][0] for mark in marks}
    kept = {*marks, *(mark for mark in inner if MARKING_WORDS[mark][0] not in outer)}
    return "".join(mark for mark in MARKING_WORDS if mark in kept) + bare


def _marked(marks: Iterable[str]) -> dict[str, tuple[str, ...]]:
    return {locus: (genotype,) for locus, genotype in (MARKING_WORDS[mark] for mark in marks)}


def _either(told: list[Allowed]) -> Allowed:
    """What one or another of several words leaves: those of a loose trade word differ at B and D alone."""
    if len(told) == 1:
        return told[0]
    return Allowed({locus: tuple(dict.fromkeys(one for each in told for one in each.loci[locus])) for locus in LOCI}, told[0].tied)


def _seen_coloured(anything: Mapping[str, tuple[str, ...]]) -> dict[str, tuple[str, ...]]:
    """Neither all-white: else its marking could not be seen."""
    return {**anything, "C": tuple(one for one in anything["C"] if one != "c/c"), "V": ("V/V", "V/v")}


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
    plain = {"En": ("en/en",), "V": ("V/V", "V/v"), "Du": ("Du/Du", "Du/du"), "Si": ("Si/Si", "Si/si")}
    loci, tied = coat
    return Allowed(loci | plain | _marked(marks), tied)


def _marks(word: str) -> tuple[tuple[str, ...], str]:
    """The marking words that a colour begins with, and the rest."""
    for mark in MARKING_WORDS:
        if word.startswith(mark):
            more, bare = _marks(word.removeprefix(mark))
            return (mark, *more), bare
    return (), word


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
