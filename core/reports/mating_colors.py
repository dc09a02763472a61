"""The colors of a pairing: what to expect of its kits, what each parent carries unseen, whether it gives what the farm breeds for."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable
from dataclasses import dataclass
from functools import cached_property
from typing import Any

from core.handbook.coat_genes import CARRIED_AS, MARKING_WORDS
from core.handbook.colors import color
from core.herd.settings import colors_wanted
from core.herd.state import Animal, Herd, Litter
from core.reckon.colour import at_least_one, words_meant
from core.reports.coat import Mating, close_loci, said_as
from core.reports.evidence import Evidence
from core.reports.wording import how_sure, short
from core.words import count, listed, sentence, share

COLORS_TOLD = 5  # not a figure: colors on a line
CARRIED_TOLD = 3  # not a figure: hidden forms on a line
WORTH_TELLING = 0.02  # not a figure: a rarer color is not worth a line
WORTH_NAMING = 0.095  # not a figure: a hidden form less likely than 1 time in 10 is not worth a word
FOR_SURE = 0.995  # not a figure: from here on it is said without a number


@dataclass(frozen=True, slots=True)
class Wanted:
    """A color that the farm breeds for.

    chance  of it for a kit;  one  of one such kit or more in the litter to expect
    gives   for the doe and the buck: the chance to have all that such a kit needs from it
    """

    color: str
    chance: float
    one: float
    gives: tuple[float, float]


@dataclass(frozen=True, eq=False)
class MatingColors:
    """The colors of a doe's kits by a buck; `kits` live-born to expect."""

    barn: Evidence
    doe: Animal
    buck: Animal
    kits: float

    @property
    def unknown(self) -> tuple[Animal, ...]:
        """Those of the two of whom no coat tells, their own or their family's: not noted, or words of no known genes."""
        return tuple(one for one in (self.doe, self.buck) if one.key not in self.barn.coats.told)

    @cached_property
    def expected(self) -> dict[str, float]:
        """Color -> chance for a kit, in the farm's own words, the likeliest first; empty where no coat tells of one of them."""
        if self.unknown:
            return {}
        told: dict[str, float] = {}
        for word, chance in self._mating.colors.items():
            said = self._said.get(word, word)
            told[said] = told.get(said, 0.0) + chance
        return told

    @cached_property
    def _mating(self) -> Mating:
        return self.barn.coats.mating(self.buck.key, self.doe.key)

    @cached_property
    def _said(self) -> dict[str, str]:
        breeds = {(one.breed or "").lower() for one in (self.doe, self.buck)}
        return said_as(one.color for one in self.barn.herd.animals.values() if (one.breed or "").lower() in breeds)

    def carried(self, animal: Animal) -> dict[str, float]:
        """What it may carry unseen -> the chance, the likeliest first."""
        return {
            CARRIED_AS[allele]: chance for allele, chance in self.barn.coats.carries(animal.key, self._mating.genes[animal.key]).items()
        }

    @cached_property
    def wanted(self) -> tuple[Wanted, ...]:
        """How the pairing stands to each color that the farm breeds for."""
        said = colors_wanted(self.barn.herd.settings, self.doe.breed) if not self.unknown else None
        return tuple(self._wanted(one) for one in named_in(said or ""))

    def _wanted(self, said: str) -> Wanted:
        chance = sum(each for word, each in self._mating.colors.items() if _is_one(word, said))
        doe, buck = (self.barn.coats.can_give(one.key, said, self._mating.sums) or 0.0 for one in (self.doe, self.buck))
        return Wanted(said, chance, at_least_one(chance, max(round(self.kits), 1)), (doe, buck))

    def warnings(self) -> tuple[str, ...]:
        """What of the colors speaks against the pairing."""
        charlies = sum(chance for word, chance in self._mating.colors.items() if "charlie " in word) if not self.unknown else 0.0
        if charlies < WORTH_TELLING:
            return ()
        gut = "two spotting genes often come with a gut that fails them"
        advice = "Breed a broken to a solid, and ask a vet about charlies that do poorly."
        return (f"About {share(charlies)} of the kits would be charlies: {gut}. {advice}",)

    def lines(self) -> list[str]:
        """The colors in words: what to expect, what is wanted, what is hidden."""
        if self.unknown:
            strange = [one.color for one in self.unknown if one.color]
            why = f"I know no genes for {listed(strange)}" if strange else "note both parents' colors and I can tell what to expect"
            return [f"Colors: {why}."]
        told = [(word, chance) for word, chance in self.expected.items() if chance >= WORTH_TELLING][:COLORS_TOLD]
        rest = 1 - sum(chance for _, chance in told)
        others = [f"others {share(rest)}"] if rest >= WORTH_TELLING else []
        lines = [f"Colors to expect: {', '.join([*(f'{word} {share(chance)}' for word, chance in told), *others])}."]
        lines += [self._wanted_line(one) for one in self.wanted]
        lines += [line for one in (self.doe, self.buck) if (line := self._carried_line(one))]
        close = close_loci(self._mating.genes[self.buck.key], self._mating.genes[self.doe.key])
        return [*lines, *(["Spotting and Dutch marking lie close together, so these shares are a guess."] if close else [])]

    def _wanted_line(self, one: Wanted) -> str:
        if one.chance < WORTH_TELLING:
            lacking = [short(animal) for animal, chance in zip((self.doe, self.buck), one.gives, strict=True) if chance < WORTH_NAMING]
            why = f": {listed(lacking)} can hardly give it" if lacking else ""
            return f"{sentence(one.color)[:-1]}, which you want: hardly any{why}."
        litter = f"a litter of {max(round(self.kits), 1)}"
        sure = f"surely one in {litter}" if one.one >= FOR_SURE else how_sure("one in", litter, one.one)
        return f"{sentence(one.color)[:-1]}, which you want: {share(one.chance)} of the kits, {sure}."

    def _carried_line(self, animal: Animal) -> str | None:
        told = [(word, chance) for word, chance in self.carried(animal).items() if chance >= WORTH_NAMING][:CARRIED_TOLD]
        said = [f"{word} for sure" if chance >= FOR_SURE else f"{word} {_often(chance)}" for word, chance in told]
        return f"{short(animal)} carries unseen: {listed(said)}." if said else None

    def document(self) -> dict[str, Any]:
        """The same as numbers."""
        return {
            "colors": dict(self.expected),
            "carries": {one.tag: self.carried(one) for one in (self.doe, self.buck)},
            "wanted": [
                {
                    "color": one.color,
                    "chance": one.chance,
                    "one_or_more": one.one,
                    "doe_can_give": one.gives[0],
                    "buck_can_give": one.gives[1],
                }
                for one in self.wanted
            ],
        }


def _often(chance: float) -> str:
    tenths = round(chance * 10)
    return "almost surely" if tenths == 10 else f"{count(tenths, 'time')} in 10"


def named_in(said: str) -> tuple[str, ...]:
    """The colors named in a farm's own list of them: `castor, opal and blue`."""
    parts = (part.strip() for part in re.split(r"[,;/&+]|\band\b|\bor\b", said.lower()))
    return tuple(dict.fromkeys(found for part in parts if (found := color(part))))


def _is_one(word: str, said: str) -> bool:
    """Whether a color of the reckoning's is what somebody calls so; a marking alone is any color so marked."""
    meant = words_meant(said)
    return word in meant if meant else any(mark.strip() == said and mark in word for mark in MARKING_WORDS)


def colors_of(herd: Herd, litter: Litter) -> dict[str, int]:
    """How many kits of each color a litter had, as far as they were noted; the commonest first."""
    kits: Iterable[Animal] = (one for one in herd.animals.values() if one.litter == litter.key)
    told = Counter(one.color for one in kits if one.color)
    for one, many in litter.colors:
        told[one] = max(told[one], many)
    return dict(told.most_common())
