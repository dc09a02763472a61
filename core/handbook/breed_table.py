"""The breeds and the senior weights of their standards, in pounds as the trade prints them.

A breed a row. `seen` is that of the least trusted figure in the row; where a source was seen for part of it, the note says which
part. Blank: the standard (or the page seen) sets no such limit.
"""

from __future__ import annotations

from typing import Final, NamedTuple


class Row(NamedTuple):
    """name; least and most of a senior buck and a senior doe [lb, as text]; source keys, the main one first; seen; note."""

    name: str
    buck: tuple[str, str]
    doe: tuple[str, str]
    sources: tuple[str, ...]
    seen: str
    note: str = ""


def _any(name: str, both: tuple[str, str], sources: tuple[str, ...], seen: str, note: str = "") -> Row:
    """A breed whose standard has one range for both sexes, or whose page gives only one."""
    return Row(name, both, both, sources, seen, note)


_PAGE: Final = "page"
_WEAK: Final = "weak"
_MEMORY: Final = "memory"
_TRADE: Final = ("TRADE",)
_HOBBY: Final = ("HOBBY",)

ROWS: Final = (
    Row("American", ("9", "11"), ("10", "12"), ("ARBAP",), _PAGE),
    Row("American Chinchilla", ("9", "11"), ("10", "12"), _HOBBY, _WEAK),
    _any("American Fuzzy Lop", ("", "4"), ("ENCY",), _WEAK),
    Row("American Sable", ("7", "9"), ("8", "10"), ("ARBAP",), _PAGE),
    Row("Argente Brun", ("8", "10"), ("8.5", "10.5"), _TRADE, _MEMORY),
    _any("Belgian Hare", ("6", "9.5"), _TRADE, _MEMORY),
    Row("Beveren", ("8", "11"), ("9", "12"), _TRADE, _MEMORY),
    Row("Blanc de Hotot", ("8", "10"), ("9", "11"), _TRADE, _MEMORY),
    _any("Britannia Petite", ("", "2.5"), _HOBBY, _WEAK),
    Row("Californian", ("8", "10"), ("8.5", "10.5"), ("TRADE", "MSX"), _MEMORY, "10.5 lb was seen as the maximum in MSX"),
    Row("Champagne d'Argent", ("9", "11"), ("9.5", "12"), ("TRADE", "MSX"), _MEMORY, "12 lb was seen as the maximum in MSX"),
    _any("Checkered Giant", ("11", ""), _HOBBY, _WEAK),
    _any("Cinnamon", ("8.5", "11"), _HOBBY, _WEAK),
    Row("Creme d'Argent", ("8", "10.5"), ("8.5", "11"), _TRADE, _MEMORY),
    _any("Dutch", ("3.5", "5.5"), ("HOBBY", "MSX"), _WEAK, "5.5 lb was seen as the maximum in MSX"),
    _any("Dwarf Hotot", ("", "3"), _TRADE, _MEMORY),
    _any("English Angora", ("5", "7.5"), ("ENCY",), _WEAK),
    Row("English Lop", ("9", ""), ("10", ""), _TRADE, _MEMORY),
    _any("English Spot", ("5", "8"), _HOBBY, _WEAK),
    Row("Flemish Giant", ("13", ""), ("14", ""), ("TRADE", "SHER20"), _MEMORY, "13 lb was seen in SHER20"),
    _any("Florida White", ("4", "6"), _TRADE, _MEMORY),
    _any("French Angora", ("7.5", "10.5"), _TRADE, _MEMORY),
    Row("French Lop", ("10.5", ""), ("11", ""), _TRADE, _MEMORY),
    Row("Giant Angora", ("9.5", ""), ("10", ""), _TRADE, _MEMORY),
    Row("Giant Chinchilla", ("12", "15"), ("13", "16"), _TRADE, _MEMORY),
    Row("Harlequin", ("6.5", "9"), ("7", "9.5"), _TRADE, _MEMORY),
    _any("Havana", ("4.5", "6.5"), _TRADE, _MEMORY),
    _any("Himalayan", ("2.5", "4.5"), _TRADE, _MEMORY),
    _any("Holland Lop", ("2", "4"), _HOBBY, _WEAK),
    _any("Jersey Wooly", ("", "3.5"), _HOBBY, _WEAK),
    Row("Lilac", ("5.5", "7.5"), ("6", "8"), _TRADE, _MEMORY),
    _any("Lionhead", ("", "3.75"), _TRADE, _MEMORY),
    _any("Mini Lop", ("4.5", "6.5"), ("TRADE", "MSX"), _MEMORY, "6.5 lb was seen as the maximum in MSX"),
    _any("Mini Rex", ("3.5", "4.5"), _HOBBY, _WEAK),
    _any("Mini Satin", ("3.25", "4.75"), _TRADE, _MEMORY),
    _any("Netherland Dwarf", ("", "2.5"), _HOBBY, _WEAK),
    Row("New Zealand", ("9", "11"), ("10", "12"), ("MO13",), _PAGE),
    Row("Palomino", ("8", "10"), ("9", "11"), _TRADE, _MEMORY),
    _any("Polish", ("", "3.5"), _TRADE, _MEMORY),
    Row("Rex", ("7.5", "9.5"), ("8", "10.5"), _HOBBY, _WEAK),
    Row("Rhinelander", ("6.5", "9.5"), ("7", "10"), _TRADE, _MEMORY),
    Row("Satin", ("8.5", "10.5"), ("9", "11"), ("TRADE", "MSX"), _MEMORY, "11 lb was seen as the maximum in MSX"),
    _any("Satin Angora", ("6.5", "9.5"), _TRADE, _MEMORY),
    _any("Silver", ("4", "7"), _TRADE, _MEMORY),
    Row("Silver Fox", ("9", "11"), ("10", "12"), ("TRADE", "HOBBY"), _MEMORY, "a breeder's page says 10 to 12"),
    Row("Silver Marten", ("6", "8.5"), ("7", "9.5"), ("TRADE", "MSX"), _MEMORY, "MSX prints 9.9 as the maximum, where memory says 9.5"),
    Row("Standard Chinchilla", ("5", "7"), ("5.5", "7.5"), _TRADE, _MEMORY),
    _any("Tan", ("4", "6"), _TRADE, _MEMORY),
    _any("Thrianta", ("4", "6"), _TRADE, _MEMORY),
)

#: Other ways to write or say a breed, lower case. What an ear or a phone makes of it is here too.
ALIASES: Final = {
    "American Chinchilla": ("american chin", "am chin", "amchin", "a chin"),
    "American Fuzzy Lop": ("fuzzy lop", "afl", "american fuzzy"),
    "American Sable": ("am sable",),
    "Argente Brun": ("brun d'argent", "argent brun"),
    "Belgian Hare": ("belgian",),
    "Beveren": ("bev", "beverin", "beverens"),
    "Blanc de Hotot": ("hotot", "blanc d'hotot", "blanc de hoto", "blanc hotot"),
    "Britannia Petite": ("brit pet", "britannia", "brittania petite"),
    "Californian": ("cal", "cali", "cals", "calis", "california", "californians", "californa", "californian white", "calli", "cally"),
    "Champagne d'Argent": ("champ", "champs", "champagne", "champagne dargent", "champagne de argent", "champagne d argent", "shampagne"),
    "Checkered Giant": ("checkered", "checker giant", "checkered giants"),
    "Creme d'Argent": ("creme", "creme dargent", "creme d argent", "cream d'argent", "cream dargent"),
    "Dutch": ("dutch rabbit", "dutches"),
    "Dwarf Hotot": ("dwarf hoto", "dh"),
    "English Angora": ("english ang",),
    "English Lop": ("e lop", "english lops"),
    "English Spot": ("english spots", "e spot"),
    "Flemish Giant": ("flemish", "flemmish", "fg", "flemish giants", "flemmish giant", "phlegmish", "flem"),
    "Florida White": ("fw", "florida whites", "florida"),
    "French Angora": ("french ang", "fa"),
    "French Lop": ("f lop", "french lops"),
    "Giant Chinchilla": ("giant chin", "g chin"),
    "Harlequin": ("harlie", "harlequins"),
    "Holland Lop": ("holland", "hollands", "hl", "holland lops", "hollond lop", "holand lop"),
    "Jersey Wooly": ("jw", "jersey woolly", "jersey wooley", "jersey woolie", "jersey woolies"),
    "Lionhead": ("lion head", "lionheads", "lion heads"),
    "Mini Lop": ("ml", "mini lops", "minilop", "mini-lop", "minnie lop"),
    "Mini Rex": (
        "mr", "minirex", "mini-rex", "mini rexes", "mini wrecks", "mini recs", "mini reks", "mini rax", "mini rec", "minnie rex",
        "minny rex", "mini rexs", "mini wrex", "mini ricks",
    ),
    "Mini Satin": ("mini satins", "mini-satin", "minnie satin"),
    "Netherland Dwarf": ("nd", "netherland", "netherlands dwarf", "nether dwarf", "netherland dwarfs", "neverland dwarf", "nethie"),
    "New Zealand": (
        "nz", "nzs", "new zealands", "new zeland", "new zeeland", "new zealend", "new zeland rabbit", "newzealand", "new zee land",
        "n z", "new zeal", "nzx",
    ),
    "Palomino": ("palamino", "palominos", "palomeno"),
    "Polish": ("polish rabbit",),
    "Rex": ("rexes", "standard rex", "std rex", "rex rabbit", "wrecks", "reks", "srex"),
    "Rhinelander": ("rhinlander", "rhineland"),
    "Satin": ("satins", "std satin", "standard satin"),
    "Silver Fox": ("sf", "silver foxes", "silverfox", "silver-fox", "silvr fox"),
    "Silver Marten": ("sm", "silver martin", "silver martens"),
    "Standard Chinchilla": ("standard chin", "std chin", "std chinchilla", "stand chin"),
    "Thrianta": ("trianta", "thriantas"),
}  # fmt: skip

#: Words that say a breed and its colour at once.
COLORED: Final = {
    "nzw": ("New Zealand", "white"),
    "nzr": ("New Zealand", "red"),
    "nzb": ("New Zealand", "black"),
    "nzbl": ("New Zealand", "blue"),
    "new zealand white": ("New Zealand", "white"),
    "new zealand whites": ("New Zealand", "white"),
    "new zealand red": ("New Zealand", "red"),
    "new zealand black": ("New Zealand", "black"),
    "new zealand blue": ("New Zealand", "blue"),
    "new zealand broken": ("New Zealand", "broken"),
    "nz white": ("New Zealand", "white"),
    "nz red": ("New Zealand", "red"),
    "nz black": ("New Zealand", "black"),
    "nz blue": ("New Zealand", "blue"),
    "new zeeland white": ("New Zealand", "white"),
    "new zeland white": ("New Zealand", "white"),
}
