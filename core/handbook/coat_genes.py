"""What makes a coat: the colour genes, which form of each hides which, and what breeders call the outcome.

A row a gene form and a row a pattern, each with its source; what nobody opened a source for says `memory`. Words differ by breed
and country: the genes are the truth, the words a table that a breeder may argue with.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final


@dataclass(frozen=True, slots=True)
class GeneForm:
    """One form (allele) of a colour gene. `hides` tells how it stands to those below it in its locus."""

    locus: str
    symbol: str
    makes: str
    hides: str
    source: str
    note: str = ""


#: Most dominant first within each locus.
GENE_FORMS: Final = (
    GeneForm("A", "A", "agouti: banded hair, pale belly", "hides at and a", "OMIA201"),
    GeneForm("A", "at", "tan pattern: dark back, pale belly (otter, marten)", "hides a", "LETKO20"),
    GeneForm("A", "a", "self: one color all over", "recessive", "FONT10"),
    GeneForm("B", "B", "black pigment", "hides b", "OMIA1249"),
    GeneForm("B", "b", "chocolate pigment", "recessive", "OMIA1249"),
    GeneForm("C", "C", "full color", "hides all below", "OMIA202"),
    GeneForm("C", "cchd", "chinchilla: no yellow", "hides cchl, ch and c", "OMIA202"),
    GeneForm("C", "cchl", "sable: shaded", "hides ch and c; two of it are darker: seal", "common-practice", "no gene test proves it"),
    GeneForm("C", "ch", "himalayan: colored points", "hides c", "OMIA202"),
    GeneForm("C", "c", "albino: white with red eyes", "recessive; two hide every other gene", "OMIA202", "the hiding: common practice"),
    GeneForm("D", "D", "dense color", "hides d", "OMIA31"),
    GeneForm("D", "d", "dilute: blue, lilac", "recessive", "OMIA31"),
    GeneForm("E", "Ed", "dominant black: hides what A does", "hides all below", "FONT21"),
    GeneForm(
        "E", "Es", "steel: one, with agouti, ticks the coat; two make a self", "hides E, ej and e", "ONSLOW22", "its rank from memory"
    ),
    GeneForm("E", "E", "normal extension", "hides ej and e", "FONT21"),
    GeneForm("E", "ej", "harlequin: patches of two colors", "hides e", "FONT21", "on tan and self coats from memory"),
    GeneForm("E", "e", "red: no dark pigment in the coat", "recessive", "FONT21"),
    GeneForm("En", "En", "spotting: one broken, two charlie", "incomplete: both forms show", "OMIA1597", "charlies risk a gut disease"),
    GeneForm("En", "en", "no spotting", "recessive", "OMIA1597"),
    GeneForm("V", "V", "colored", "hides v, but a carrier may show small white marks", "memory"),
    GeneForm("V", "v", "Vienna: white with blue eyes", "recessive; two hide every gene but two c", "memory"),
    GeneForm("Du", "Du", "no Dutch marking", "hides du", "CASTLE32", "a carrier may show small white marks: from memory"),
    GeneForm("Du", "du", "Dutch marking: white front half and blaze", "recessive", "CASTLE32"),
    GeneForm("Si", "Si", "no silvering", "hides si, but a carrier may silver a little", "memory"),
    GeneForm("Si", "si", "silvered: white hairs all through", "recessive", "memory"),
)

#: Forms that stay out of account until some coat on the book shows them: they make A and E hang together.
RARE_FORMS: Final = ("Ed", "Es")

BASE_WORDS: Final = ("black", "blue", "chocolate", "lilac")  # B_D_, B_dd, bbD_, bbdd
SHADE_WORDS: Final = dict(zip(BASE_WORDS, ("sable", "smoke pearl", "chocolate sable", "lilac sable"), strict=True))

#: A word for each base, or one pattern: {x} the base, {sh} the shade.
Words = str | tuple[str, str, str, str]


@dataclass(frozen=True, slots=True)
class CoatPattern:
    """What a pattern is called with full color, with chinchilla and shaded."""

    name: str
    full: Words
    chinchilla: Words
    shaded: Words
    source: str


COAT_PATTERNS: Final = (
    CoatPattern("self", "{x}", "{x}", "siamese {sh}", "common-practice"),
    CoatPattern(
        "agouti",
        ("chestnut", "opal", "chocolate agouti", "lynx"),
        ("chinchilla", "squirrel", "chocolate chinchilla", "lilac chinchilla"),
        "{sh} agouti",
        "common-practice",
    ),
    CoatPattern("tan", "{x} otter", "{x} silver marten", "{sh} marten", "common-practice"),
    CoatPattern("steel", "{x} steel", "{x} silver-tipped steel", "{sh} steel", "memory"),
    CoatPattern("harlequin", "{x} harlequin", "{x} magpie", "{sh} harlequin", "memory"),
    CoatPattern("red", ("orange", "cream", "chocolate orange", "lilac cream"), "{x} frosty", "{sh} frosty", "memory"),
    CoatPattern("tan-tortoise", "{x} tortoise otter", "{x} sallander marten", "{sh} point marten", "memory"),
    CoatPattern("tortoise", "{x} tortoise", "{x} sallander", "{sh} point", "memory"),
)


@dataclass(frozen=True, slots=True)
class TradeWord:
    """A word of the trade under other names: one of `means` (several where the word is loose), or only what it `shows` at some loci.

    {x} stands for any base, {sh} for its shade.
    """

    said: str
    means: tuple[str, ...] = ()
    shows: Mapping[str, tuple[str, ...]] | None = None
    source: str = "common-practice"


TRADE_WORDS: Final = (
    TradeWord("castor", ("chestnut",)),
    TradeWord("agouti", ("chestnut", "opal", "chocolate agouti", "lynx")),
    TradeWord("copper", ("chestnut",), source="memory"),
    TradeWord("amber", ("chocolate agouti",)),
    TradeWord("cinnamon", ("chocolate agouti",)),
    TradeWord("red", ("orange",)),
    TradeWord("fawn", ("orange", "cream")),
    TradeWord("palomino", ("chocolate orange",), source="memory"),
    TradeWord("white", ("REW",)),
    TradeWord("rew", ("REW",)),
    TradeWord("bew", ("BEW",)),
    TradeWord("tortoise", ("black tortoise",)),
    TradeWord("otter", ("black otter",)),
    TradeWord("tan", ("black otter",), source="memory"),
    TradeWord("fox", ("black silver marten",)),
    TradeWord("silver marten", ("black silver marten",)),
    TradeWord("marten", ("black silver marten",)),
    TradeWord("{x} fox", ("{x} silver marten",)),
    TradeWord("{x} marten", ("{x} silver marten",)),
    TradeWord("{x} tan", ("{x} otter",), source="memory"),
    TradeWord("{x} sable", ("siamese {sh}",), source="memory"),
    TradeWord("sable", ("siamese sable",)),
    TradeWord("smoke pearl", ("siamese smoke pearl",)),
    TradeWord("seal", ("black seal",)),
    TradeWord("himalayan", ("black himalayan",)),
    TradeWord("californian", ("black himalayan",)),
    TradeWord("harlequin", ("black harlequin",)),
    TradeWord("magpie", ("black magpie",)),
    TradeWord("tricolor", ("broken black harlequin",), source="memory"),
    TradeWord("steel", ("black steel",)),
    TradeWord("gold-tipped steel", ("black steel",), source="memory"),
    TradeWord("silver-tipped steel", ("black silver-tipped steel",)),
    TradeWord("frosty", ("black frosty",)),
    TradeWord("ermine", ("black frosty",), source="memory"),
    TradeWord("pearl", ("black frosty",), source="memory"),
    TradeWord("sallander", ("black sallander",)),
    TradeWord("champagne", ("silvered black",), source="memory"),
    TradeWord("silver", shows={"Si": ("si/si",)}, source="memory"),
    TradeWord("dutch marked", shows={"Du": ("du/du",)}, source="memory"),
    TradeWord("vienna marked", shows={"V": ("V/v",)}, source="memory"),
    TradeWord("broken", shows={"En": ("En/en",)}),
    TradeWord("charlie", shows={"En": ("En/En",)}),
)

#: Words before a color, with what they say: nothing of the kind where none stands.
MARKING_WORDS: Final[Mapping[str, tuple[str, str]]] = {
    "dutch-marked ": ("Du", "du/du"),
    "broken ": ("En", "En/en"),
    "charlie ": ("En", "En/En"),
    "silvered ": ("Si", "si/si"),
}

#: Genes that lie so close on one chromosome that litters which split both don't fall as the sums say (from memory).
CLOSE_LOCI: Final = (("En", "Du"),)

#: What a rabbit is said to carry that has one of a form unseen.
CARRIED_AS: Final[Mapping[str, str]] = {
    "at": "tan", "a": "self", "b": "chocolate", "cchd": "chinchilla", "cchl": "sable", "ch": "himalayan", "c": "ruby-eyed white",
    "d": "blue", "Es": "steel", "ej": "harlequin", "e": "red", "v": "blue-eyed white", "du": "Dutch marking",
    "si": "silver",
}  # fmt: skip
