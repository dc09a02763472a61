"""Everything that is reckoned from the herd for one day, each thing worked out once and only where a report asks for it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property, lru_cache

from core.handbook import growth as growth_figures
from core.herd.litters import untagged
from core.herd.questions import living, stage
from core.herd.state import Animal, Herd, Litter
from core.reckon.kinship import Kinship, kinship
from core.reckon.pedigree import Pedigree, PedigreeProblem, sound_pedigree
from core.reports.coat import Coats, coats
from core.reports.feeding import Eater, Stock, cents_a_gram, eater, grams_a_day, litter_eater, stock
from core.reports.growth import Grown, grown, standard_weights
from core.reports.merit import Trait, born_alive_trait, gain_trait, survival_trait, weaned_trait, weight_trait
from core.reports.survival import DamSurvival, dam_survivals
from core.reports.traits import weights_at


@dataclass(frozen=True, eq=False)
class Evidence:
    """The herd on one day, and what follows from it."""

    herd: Herd
    today: date

    @cached_property
    def living(self) -> tuple[Animal, ...]:
        """The animals on the farm, by tag."""
        return living(self.herd)

    @cached_property
    def stages(self) -> Mapping[str, str]:
        """Each living animal's stage."""
        return {animal.key: stage(self.herd, animal, self.today) for animal in self.living}

    @cached_property
    def weaned_litters(self) -> tuple[tuple[Litter, int], ...]:
        """Weaned litters with kits that have no tag yet, and how many."""
        told = ((litter, untagged(self.herd, litter)) for litter in self.herd.litters.values() if litter.weaned_on is not None)
        return tuple(sorted(((litter, kits) for litter, kits in told if kits), key=lambda each: each[0].born_on))

    @cached_property
    def dams(self) -> Mapping[str, DamSurvival]:
        """Every doe with a finished litter: how she raises her kits."""
        return dam_survivals(self.herd, self.today)

    @cached_property
    def _told_book(self) -> tuple[Pedigree, tuple[PedigreeProblem, ...]]:
        """The family book, and what in it can't be."""
        animals = self.herd.animals.values()
        born = {one.key: one.born.toordinal() for one in animals if one.born is not None}
        sexes = {one.key: one.sex for one in animals if one.sex is not None}
        return sound_pedigree(((one.key, one.sire, one.dam) for one in animals), born, sexes)

    @property
    def book(self) -> Pedigree:
        """Who is out of whom. Where the notes contradict each other, the parents in doubt count as unknown."""
        return self._told_book[0]

    @property
    def book_problems(self) -> tuple[PedigreeProblem, ...]:
        """What can't be in the family book."""
        return self._told_book[1]

    @cached_property
    def coats(self) -> Coats:
        """Everybody's colours, and what they tell of the genes."""
        return coats(self.herd, self.book)

    @cached_property
    def kinship(self) -> Kinship:
        """Kinship among the living, and everybody's inbreeding."""
        return kinship(self.book, (animal.key for animal in self.living))

    @cached_property
    def standard(self) -> Mapping[str, float]:
        """Everybody's weight at the age of comparison [g]."""
        return standard_weights(self.herd)

    def grown(self, animal: Animal) -> Grown | None:
        """The animal's newest weight against target and herd mates."""
        return grown(self.herd, animal, self.today, self.standard)

    @cached_property
    def asked(self) -> tuple[str, ...]:
        """Whose errors of prediction are worked out: the living and their parents."""
        parents = (parent for animal in self.living for parent in (animal.sire, animal.dam) if parent is not None)
        return tuple(dict.fromkeys([*(animal.key for animal in self.living), *parents]))

    @cached_property
    def growth(self) -> Trait | None:
        """Breeding values for weight, as a share of the breed's curve."""
        return weight_trait(self.herd, self.book, self.standard, growth_figures.COMPARED_AGE_DAYS.value, self.asked)

    @cached_property
    def born_alive(self) -> Trait | None:
        """Breeding values for kits born alive."""
        return born_alive_trait(self.herd, self.book, self.asked, self.today)

    @cached_property
    def raising(self) -> Trait | None:
        """Breeding values for the survival of a litter's kits."""
        return survival_trait(self.herd, self.book, self.dams, self.asked)

    @cached_property
    def weaned(self) -> Trait | None:
        """Breeding values for kits weaned a litter."""
        return weaned_trait(self.herd, self.book, self.dams, self.asked)

    @cached_property
    def gain(self) -> Trait | None:
        """Breeding values for daily gain, as a share of the breed's."""
        return gain_trait(self.herd, self.book, self.asked)

    @cached_property
    def weight_traits(self) -> Mapping[int, Trait | None]:
        """Breeding values for weight at each age at which the farm weighs, as a share of the breed's curve."""
        compared = growth_figures.COMPARED_AGE_DAYS.whole
        others = [figure.whole for figure in growth_figures.WEIGH_DAYS if figure.whole != compared]
        told = {age: weight_trait(self.herd, self.book, weights_at(self.herd, age), age, self.asked) for age in others}
        return {compared: self.growth, **told}

    @cached_property
    def _of_breed(self) -> Mapping[str, tuple[str, ...]]:
        """The living by breed, in lower case."""
        told: dict[str, list[str]] = {}
        for one in self.living:
            told.setdefault((one.breed or "").lower(), []).append(one.key)
        return {breed: tuple(keys) for breed, keys in told.items()}

    def mates(self, animal: Animal) -> tuple[str, ...]:
        """The living of its breed, itself included: whom its breeding values are told against."""
        return self._of_breed.get((animal.breed or "").lower(), ())

    @cached_property
    def eaters(self) -> Mapping[str, Eater]:
        """Everybody at the dish: animals by key, weaned litters' untagged kits by the litter's key."""
        found = [eater(self.herd, animal, self.today) for animal in self.living]
        kits = [litter_eater(self.herd, litter.key, count, self.today) for litter, count in self.weaned_litters]
        return {one.key: one for one in (*found, *kits) if one is not None}

    @cached_property
    def feed_a_day(self) -> float:
        """What the herd eats today [g]."""
        return grams_a_day(self.eaters.values())

    @property
    def cents_a_gram(self) -> float:
        """What feed costs [cents a g]."""
        return cents_a_gram(self.herd)[0]

    @cached_property
    def stock(self) -> Stock | None:
        """The feed in the bin."""
        return stock(self.herd, self.feed_a_day, self.today)


#: What is reckoned anew when only wishes and plans changed: everything that holds animals as they were, and the dish.
WISHED = frozenset({"living", "eaters", "feed_a_day", "stock"})


def supposing(barn: Evidence, herd: Herd) -> Evidence:
    """The same barn with other wishes and plans: no animal was born, weighed or mated, so what was reckoned of them stands."""
    other = Evidence(herd, barn.today)
    vars(other).update({name: value for name, value in vars(barn).items() if name not in {"herd", "today", *WISHED}})
    return other


class _Held:
    """A herd known by its identity, so that one herd's evidence is worked out once for all reports."""

    def __init__(self, herd: Herd) -> None:
        self.herd = herd

    def __eq__(self, other: object) -> bool:
        return isinstance(other, _Held) and self.herd is other.herd

    def __hash__(self) -> int:
        return id(self.herd)


@lru_cache(maxsize=4)
def _evidence(held: _Held, today: date) -> Evidence:
    return Evidence(held.herd, today)


def evidence(herd: Herd, today: date) -> Evidence:
    """What is reckoned from that herd for that day."""
    return _evidence(_Held(herd), today)
