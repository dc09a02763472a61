"""What a breed should weigh: its standard's senior range, its size, its target at sixteen weeks, when it may first be mated."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from functools import cache
from types import MappingProxyType

from core.handbook import growth, reproduction, stages
from core.handbook.breed_table import ALIASES, COLORED, ROWS, Row
from core.handbook.figure import Figure
from core.words import grams_of


@dataclass(frozen=True, slots=True)
class Range:
    """Senior weights of a standard [g]; None where it sets no limit."""

    least: int | None
    most: int | None


@dataclass(frozen=True, slots=True)
class Breed:
    """One breed.

    name     the handbook's spelling
    buck     senior bucks' weights
    doe      senior does' weights
    size     dwarf, small, medium, large or giant
    sources  keys into SOURCES, the main one first
    seen     how far the least trusted of the four weights was seen
    note     what was seen and what was not
    """

    name: str
    buck: Range
    doe: Range
    size: str
    sources: tuple[str, ...]
    seen: str
    note: str

    @property
    def highest_maximum_g(self) -> int:
        """The heaviest senior the standard allows, of either sex [g]; where it sets no maximum, a reckoned one (OPEN_ENDED_MAXIMUM)."""
        return max(_most(self.buck), _most(self.doe))

    def maximum_g(self, sex: str | None) -> int:
        """The same for one sex (`buck`, `doe`); for an unknown sex the mean of both [g]."""
        if sex in {"buck", "doe"}:
            return _most(self.buck if sex == "buck" else self.doe)
        return (_most(self.buck) + _most(self.doe)) // 2

    @property
    def target_g(self) -> int:
        """What a grow-out should weigh at LIGHT_AGE_DAYS, unless the farm says otherwise [g]."""
        if self.highest_maximum_g >= growth.TARGET_FROM_SENIOR_MAXIMUM_G.value:
            return growth.TARGET_G.whole
        return round(self.highest_maximum_g * growth.TARGET_SHARE_OF_MAXIMUM.value)

    def first_mating_days(self, sex: str) -> int:
        """Age at which one of this breed may first be mated [days]."""
        later = stages.BUCK_LATER_DAYS.whole if sex == "buck" else 0
        return stages.FIRST_MATING_DAYS[self.size].whole + later


def breed(name: str | None) -> Breed | None:
    """The breed of that name or of any word people use for it, in any case; None where the handbook knows none."""
    known = breed_words().get(_plain(name or ""))
    return _breeds()[known] if known else None


def all_breeds() -> tuple[Breed, ...]:
    """Every breed, by name."""
    return tuple(_breeds().values())


def target_g(name: str | None) -> int:
    """What a grow-out of that breed should weigh at LIGHT_AGE_DAYS [g]; an unknown breed is held to the meat breeds' target."""
    found = breed(name)
    return found.target_g if found else growth.TARGET_G.whole


def highest_senior_maximum_g(name: str | None) -> int | None:
    """The highest senior maximum of that breed for either sex [g]; None for a breed that the handbook does not know."""
    found = breed(name)
    return found.highest_maximum_g if found else None


def heaviest_believable_g(name: str | None) -> int:
    """A weight over this can't be [g]: WEIGHT_LIMIT_OVER_MAXIMUM times the maximum, or the limit for an unknown breed."""
    maximum = highest_senior_maximum_g(name)
    if maximum is None:
        return growth.WEIGHT_LIMIT_UNKNOWN_BREED_G.whole
    return int(maximum * growth.WEIGHT_LIMIT_OVER_MAXIMUM.value)


def growth_ceiling_g(name: str | None, sex: str | None = None) -> float:
    """A of the growth curve for that breed and sex [g]; a medium breed stands in for an unknown one."""
    found = breed(name)
    maximum = found.maximum_g(sex) if found else growth.UNKNOWN_BREED_MAXIMUM_G.whole
    return maximum * growth.CEILING_SHARE_OF_MAXIMUM.value


def growth_rate(name: str | None) -> Figure:
    """k of the growth curve for that breed [a day]."""
    found = breed(name)
    return growth.GOMPERTZ_K_GIANT if found and found.size == "giant" else growth.GOMPERTZ_K


@cache
def usual_born_alive(name: str | None) -> Figure:
    """Live-born of a usual litter, by the breed's size; an unknown breed counts as medium."""
    known = breed(name)
    by_size = {"dwarf": reproduction.USUAL_BORN_ALIVE_DWARF, "small": reproduction.USUAL_BORN_ALIVE_SMALL}
    return by_size.get(known.size, reproduction.USUAL_BORN_ALIVE) if known else reproduction.USUAL_BORN_ALIVE


@cache
def breed_words() -> Mapping[str, str]:
    """Every word or phrase for a breed, lower case, with the breed's name."""
    words = {_plain(row.name): row.name for row in ROWS}
    words |= {alias: name for name, aliases in ALIASES.items() for alias in aliases}
    words |= {phrase: name for phrase, (name, _) in COLORED.items()}
    return MappingProxyType(words)


def breed_color_words() -> Mapping[str, tuple[str, str]]:
    """Words that say a breed and a colour at once (`nzw`), with both."""
    return MappingProxyType(COLORED)


def _plain(name: str) -> str:
    """A name as `breed_words` keys it: lower case, one space between words, straight apostrophe."""
    return " ".join(name.replace("’", "'").lower().split())


@cache
def _breeds() -> dict[str, Breed]:
    return {row.name: _breed_of(row) for row in ROWS}


def _breed_of(row: Row) -> Breed:
    buck, doe = _range(row.buck), _range(row.doe)
    return Breed(row.name, buck, doe, _size(buck, doe), row.sources, row.seen, row.note)


def _range(pounds: tuple[str, str]) -> Range:
    least, most = (grams_of(Decimal(limit)) if limit else None for limit in pounds)
    return Range(least, most)


def _size(buck: Range, doe: Range) -> str:
    """The class of size: giants by the lightest minimum, the rest by the highest maximum."""
    minimums = [limit.least for limit in (buck, doe) if limit.least is not None]
    if minimums and min(minimums) >= stages.GIANT_MINIMUM_G.whole - 1:
        return "giant"
    most = max(_most(buck), _most(doe))
    limits = (("dwarf", stages.DWARF_MAXIMUM_G), ("small", stages.SMALL_MAXIMUM_G), ("medium", stages.MEDIUM_MAXIMUM_G))
    return next((size for size, limit in limits if most <= limit.value), "large")


def _most(limits: Range) -> int:
    """A range's maximum, or where it has none a reckoned one [g]."""
    if limits.most is not None:
        return limits.most
    return round((limits.least or 0) * growth.OPEN_ENDED_MAXIMUM.value)
