"""The invented farm's rabbits, each with what is true of it and never written in a note.

The program only ever sees the notes. What stands here (how well a doe mothers, how fast a buck's kits grow) is what a good
reckoning should find out from them. All numbers are the story's, not the trade's.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

ADULT_G = {"New Zealand": 4500, "Mini Rex": 1900, "Satin": 4200}
CEILING = {"New Zealand": 0.78, "Mini Rex": 0.92, "Satin": 0.78}  # a growing rabbit heads for this share of its adult weight at first


@dataclass
class Rabbit:
    """A rabbit of the story. Shares are chances; `size` multiplies its adult weight; `merit` its kits' growth."""

    tag: str
    name: str | None
    sex: str
    breed: str
    color: str
    born: date
    sire: Rabbit | None = None
    dam: Rabbit | None = None
    litter_size: float = 7.0
    shrinks: float = 0.0  # kits fewer each litter
    rearing: float = 0.9  # chance that a live-born kit is weaned, weather apart
    takes: float = 0.85  # chance that a mating settles
    merit: float = 1.0
    size: float = 1.0
    ways_to_lose: tuple[str, ...] = ("", "", "found outside", "starved")
    last_mating: date | None = None  # none after this day
    runt: bool = False
    stays: bool = False
    gone: bool = False
    litters: int = 0
    busy_until: date = date.min  # in kindle or with a young litter

    @property
    def called(self) -> str:
        """Its name, or its tag."""
        return self.name or self.tag


def founders() -> list[Rabbit]:
    """The herd on the first day."""
    nz, mr, sa = "New Zealand", "Mini Rex", "Satin"

    def buck(tag: str, name: str, breed: str, color: str, born: date, **true: float) -> Rabbit:
        return Rabbit(tag, name, "buck", breed, color, born, **true)  # type: ignore[arg-type]  # numbers only

    def doe(tag: str, name: str, breed: str, color: str, born: date, **true: object) -> Rabbit:
        return Rabbit(tag, name, "doe", breed, color, born, **true)  # type: ignore[arg-type]  # as the fields say

    small = {"litter_size": 5.3}
    careless = {"rearing": 0.38, "ways_to_lose": ("scattered", "stepped on", "ate", "scattered")}
    return [
        buck("1", "Boulder", nz, "white", date(2023, 11, 4), merit=0.90),
        buck("2", "Anvil", nz, "white", date(2024, 5, 19), merit=1.08),
        buck("3", "Ember", mr, "castor", date(2023, 8, 27), merit=0.93),
        buck("4", "Baron", sa, "copper", date(2024, 2, 11), merit=1.0, size=1.08),
        buck("5", "Tinder", sa, "black", date(2024, 7, 6), merit=1.0),
        doe("6", "Hazel", nz, "white", date(2023, 12, 2), litter_size=10.2, shrinks=1.25),
        doe("7", "Magpie", nz, "white", date(2024, 4, 15), litter_size=8.6, rearing=0.93),
        doe("8", "Bramble", nz, "red", date(2024, 6, 1), litter_size=8.0),
        doe("9", "Nettle", nz, "white", date(2024, 3, 23), litter_size=8.0, **careless),
        doe("10", "Dimity", nz, "black", date(2024, 8, 18), litter_size=7.6, last_mating=date(2026, 4, 20)),
        doe("11", "Wren", mr, "castor", date(2024, 1, 29), litter_size=6.4, rearing=0.96),
        doe("13", "Pewter", mr, "blue", date(2024, 5, 5), **small),
        doe("15", "Saffron", mr, "red", date(2024, 7, 21), **small),
        doe("17", "Plum", mr, "black", date(2024, 9, 8), last_mating=date(2026, 5, 10), **small),
        doe("18", "Sprig", mr, "opal", date(2024, 6, 30), litter_size=5.0, takes=0.8, last_mating=date(2026, 7, 1)),
        doe("19", "Velvet", sa, "black", date(2024, 2, 25), litter_size=7.4),
        doe("20", "Copperkettle", sa, "copper", date(2024, 4, 7), litter_size=7.0),
        doe("21", "Tallow", sa, "white", date(2024, 8, 3), litter_size=7.0, rearing=0.85, last_mating=date(2026, 6, 1)),
        doe("23", "Inkwell", sa, "black", date(2024, 9, 29), litter_size=6.6),
    ]
