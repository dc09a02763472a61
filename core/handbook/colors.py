"""What breeders call a coat, and what they write or an ear makes of it.

The names follow the order of the colour table: base (black, blue, chocolate, lilac) by pattern. They are common practice and differ by
breed and country; what a coat's genes are is `core.reckon`'s business, not the word's.
"""

from __future__ import annotations

from collections.abc import Mapping
from functools import cache
from types import MappingProxyType
from typing import Final

BASES: Final = ("black", "blue", "chocolate", "lilac")
#: Prefixes of spotting: they go before any colour but an all-white one.
SPOTTED: Final = ("broken", "charlie")
WHITES: Final = ("white", "rew", "bew")

_SINGLE: Final = (
    *BASES, *WHITES, *SPOTTED, "castor", "chestnut", "chocolate agouti", "amber", "cinnamon", "opal", "lynx", "agouti", "chinchilla",
    "squirrel", "chocolate chinchilla", "lilac chinchilla", "otter", "marten", "red", "orange", "fawn", "cream", "chocolate orange",
    "lilac cream", "frosty", "tortoise", "himalayan", "californian", "steel", "gold-tipped steel", "silver-tipped steel", "harlequin",
    "magpie", "tricolor", "seal", "sable", "smoke pearl", "sallander",
    "pearl", "ermine", "copper", "fox", "silver", "champagne", "palomino", "gray", "beige", "vienna marked", "dutch marked", "tan",
)  # fmt: skip

#: Patterns that stand behind a base word: "blue otter".
_PATTERNS: Final = (
    "otter", "silver marten", "marten", "steel", "silver-tipped steel", "harlequin", "magpie", "tortoise", "sallander", "himalayan", "seal",
    "frosty", "fox", "tan", "tortoise otter", "sable", "sallander marten",
)  # fmt: skip
#: The shaded coats, and what may stand behind them.
_SHADED: Final = ("sable", "smoke pearl", "chocolate sable", "lilac sable")
_BEHIND_SHADED: Final = ("agouti", "marten", "steel", "harlequin", "frosty", "point", "point marten")

#: Slips, short forms and mishearings, with the handbook's word.
_SLIPS: Final = {
    "blk": "black", "choc": "chocolate", "choco": "chocolate", "chocolat": "chocolate", "lilack": "lilac", "lylac": "lilac",
    "caster": "castor", "castors": "castor", "casters": "castor", "caster oil": "castor", "kastor": "castor", "chesnut": "chestnut",
    "chestnut agouti": "chestnut", "agoutis": "agouti", "agooti": "agouti", "a gouti": "agouti", "aguti": "agouti", "opel": "opal",
    "opals": "opal", "lynks": "lynx", "linx": "lynx", "cinamon": "cinnamon", "cinnimon": "cinnamon", "chin": "chinchilla",
    "chinch": "chinchilla", "chinchila": "chinchilla", "chinchillas": "chinchilla", "squirel": "squirrel", "auter": "otter",
    "oter": "otter", "otters": "otter", "martin": "marten", "reds": "red", "redd": "red", "oranges": "orange", "fawns": "fawn",
    "creme": "cream", "tort": "tortoise", "torts": "tortoise", "torte": "tortoise", "tortoiseshell": "tortoise",
    "tortoise shell": "tortoise", "tortie": "tortoise", "black tort": "black tortoise", "blue tort": "blue tortoise",
    "choc tort": "chocolate tortoise", "chocolate tort": "chocolate tortoise", "lilac tort": "lilac tortoise", "himi": "himalayan",
    "himmy": "himalayan", "himy": "himalayan", "himalaya": "himalayan", "himalayen": "himalayan", "cali marked": "californian",
    "ruby eyed white": "rew", "ruby-eyed white": "rew", "red eyed white": "rew", "red-eyed white": "rew", "r e w": "rew", "rews": "rew",
    "ruby eye white": "rew", "blue eyed white": "bew", "blue-eyed white": "bew", "b e w": "bew", "blue eye white": "bew",
    "albino": "rew", "whites": "white", "wite": "white", "wht": "white", "solid white": "white", "steal": "steel", "steels": "steel",
    "gts": "gold-tipped steel", "gold tipped steel": "gold-tipped steel", "sts": "silver-tipped steel",
    "silver tipped steel": "silver-tipped steel", "harley": "harlequin", "harli": "harlequin", "harl": "harlequin",
    "harlequins": "harlequin", "harlekin": "harlequin", "mag pie": "magpie", "tri": "tricolor", "tri color": "tricolor",
    "tri-color": "tricolor", "tricolour": "tricolor", "siamese": "siamese sable", "sia sable": "siamese sable", "sables": "sable",
    "seals": "seal", "grey": "gray", "blacks": "black", "blues": "blue", "chocolates": "chocolate", "lilacs": "lilac",
    "charlies": "charlie", "vm": "vienna marked", "tans": "tan", "choc otter": "chocolate otter", "self black": "black",
    "self blue": "blue", "solid black": "black", "solid blue": "blue", "silver martin": "silver marten",
    "choc agouti": "chocolate agouti", "blk otter": "black otter", "choc chin": "chocolate chinchilla",
    "chocolate chin": "chocolate chinchilla", "lilac chin": "lilac chinchilla",
}  # fmt: skip

_SPOTTED_SLIPS: Final = {
    "bkn": "broken",
    "brkn": "broken",
    "brokn": "broken",
    "charly": "charlie",
    "charley": "charlie",
    "spotted": "broken",
}


@cache
def color_names() -> tuple[str, ...]:
    """The handbook's names of unspotted colours, lower case."""
    of_base = (f"{base} {pattern}" for base in BASES for pattern in _PATTERNS)
    of_shaded = (f"{shade} {pattern}" for shade in _SHADED for pattern in _BEHIND_SHADED)
    siamese = (f"siamese {shade}" for shade in _SHADED)
    return tuple(dict.fromkeys((*_SINGLE, "silver marten", *of_base, *of_shaded, *siamese)))


@cache
def color_words() -> Mapping[str, str]:
    """Every word or phrase for a colour, lower case, with the handbook's name; spotted ones included (`broken castor`)."""
    plain = {name: name for name in color_names()} | _SLIPS
    spotted = {
        f"{said} {phrase}": f"{prefix} {name}"
        for said, prefix in ({prefix: prefix for prefix in SPOTTED} | _SPOTTED_SLIPS).items()
        for phrase, name in plain.items()
        if name not in (*WHITES, *SPOTTED)
    }
    return MappingProxyType(spotted | _SPOTTED_SLIPS | plain)


def color(said: str) -> str | None:
    """The handbook's name for a colour as somebody said it, in any case; None where it knows none."""
    return color_words().get(" ".join(said.lower().split()))
