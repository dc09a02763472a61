"""Herds whose truth is known: two years of a small rabbitry, told in facts, and what every animal carries.

Nothing here knows how the program judges: chance gives each animal its growth, litter size, mothering and milk, parents hand down
half, litters share a nest and a season, cold nights take kits from whoever has some. What the farm would note is noted.
"""

from __future__ import annotations

from collections.abc import Collection, Iterable
from dataclasses import dataclass, field
from datetime import date, timedelta
from itertools import combinations
from typing import Any

import numpy as np

from core.herd.state import Herd
from core.reports.evidence import Evidence
from tests.farm import TODAY, ago, tell

BREED = "New Zealand"
#: As the literature has them, round: spread of what is bred in and of what is a doe's own.
GROWTH_SD, SIZE_SD, SIZE_OWN_SD, MOTHERING_SD, MOTHERING_OWN_SD, MILK_SD = 0.09, 0.75, 0.85, 0.35, 0.35, 0.045
NEST_SD, KIT_SD, QUARTER_SD, LITTER_SD = 0.10, 0.13, 0.05, 2.2
BY_NUMBER = (0.88, 0.96, 1.0, 1.0, 1.0, 0.98, 0.95, 0.92)
TEN_WEEKS_G, WEANED_G = 1900.0, 850.0
TAKES, LITTERS_A_YEAR, BREEDING_AGE = 0.72, 4.5, 152
GESTATION, WEANING, WEIGHING, WEIGHED_AGAIN = 31, 35, 70, 112
AGAIN = 1.5  # how much heavier at sixteen weeks than at ten


@dataclass
class Truth:
    """What an animal carries: growth [share], litter size [kits], mothering [log odds]; of a doe also what is her own, and her milk [share]."""

    sex: str
    growth: float
    size: float
    mothering: float
    own_size: float
    own_mothering: float
    milk: float
    age: int = 700
    litters: int = 0


@dataclass
class Rabbitry:
    """A farm of one breed while it lives. `told`: its facts by day."""

    rng: np.random.Generator
    size: float = 7.5
    mothering: float = 1.5
    truth: dict[str, Truth] = field(default_factory=dict)
    told: list[tuple[date, int, str, dict[str, Any]]] = field(default_factory=list)
    quarters: dict[str, float] = field(default_factory=dict)
    cold: frozenset[date] = frozenset()
    tags: int = 0

    def note(self, on: date, kind: str, **fields: Any) -> None:
        """Something that the farm writes down."""
        self.told.append((on, len(self.told), kind, fields))

    def animal(self, sex: str, parents: tuple[Truth, Truth] | None = None) -> Truth:
        """An animal's gifts: half of each parent's and a draw of its own; without parents all drawn."""

        def carried(of: str, sd: float) -> float:
            if parents is None:
                return float(self.rng.normal(0, sd))
            return float(sum(getattr(one, of) for one in parents) / 2 + self.rng.normal(0, sd / 2**0.5))

        return Truth(
            sex,
            carried("growth", GROWTH_SD),
            carried("size", SIZE_SD),
            carried("mothering", MOTHERING_SD),
            float(self.rng.normal(0, SIZE_OWN_SD)),
            float(self.rng.normal(0, MOTHERING_OWN_SD)),
            float(self.rng.normal(0, MILK_SD)),
        )

    def founder(self, tag: str, sex: str, born_ago: int) -> None:
        """A grown animal bought two years ago."""
        self.truth[tag] = self.animal(sex)
        self.truth[tag].age = born_ago
        self.note(ago(640), "animal", tag=tag, sex=sex, breed=BREED, born=ago(born_ago), origin="bought")

    def raised(self, doe: Truth) -> float:
        """Her chance to raise a kit."""
        return float(1 / (1 + np.exp(-(self.mothering + doe.mothering + doe.own_mothering))))

    def breed(self, doe: str, buck: str, on: date) -> int:
        """A mating, its litter and what becomes of it; how many days until she is bred again."""
        self.note(on, "bred", doe=doe, buck=buck)
        if self.rng.random() > TAKES:
            self.note(on + timedelta(13), "missed", doe=doe)
            return int(self.rng.integers(16, 26))
        born_on = on + timedelta(GESTATION)
        if born_on <= TODAY:
            self.kindled(doe, buck, born_on)
        return GESTATION + int(self.rng.integers(28, 50))

    def kindled(self, doe: str, buck: str, on: date) -> None:
        """A birth: live-born by her number of litters, gifts, quarter and luck; losses; kits weaned, some tagged and weighed."""
        mother = self.truth[doe]
        usual = self.size * BY_NUMBER[min(mother.litters, len(BY_NUMBER) - 1)]
        quarter = self.quarters.setdefault(f"{on.year}-{(on.month - 1) // 3}", float(self.rng.normal(0, QUARTER_SD)))
        alive = int(max(round(usual + mother.size + mother.own_size + 8 * quarter + self.rng.normal(0, LITTER_SD)), 1))
        mother.litters += 1
        self.note(on, "kindled", doe=doe, born=alive, alive=alive, dead=0)
        chance = self.raised(mother)
        kept = int(self.rng.binomial(alive, self.rng.beta(chance * 9, (1 - chance) * 9)))
        nights = [one for one in self.cold if 0 <= (one - on).days <= 6]
        for night in nights:
            frozen = int(self.rng.binomial(kept, 0.5))
            if frozen and night <= TODAY:
                self.note(night, "kits_lost", doe=doe, count=frozen, cause="cold")
                kept -= frozen
        weaned_on = on + timedelta(WEANING)
        if weaned_on <= TODAY:
            self.note(weaned_on, "weaned", doe=doe, count=kept)
            self.young(doe, buck, on, kept, quarter)

    def young(self, doe: str, buck: str, on: date, kept: int, quarter: float) -> None:
        """Of each litter some get tags, the others go at weaning; the old ones of them are sold after their weighing, the young ones may stay."""
        late = on > ago(210)
        tagged = min(kept, 2 if late else 4)
        if kept > tagged and on + timedelta(WEANING + 1) <= TODAY:
            self.note(on + timedelta(WEANING + 1), "culled", litter_of=doe, count=kept - tagged)
        nest = self.rng.normal(0, NEST_SD) - 0.012 * (kept - 6)
        for _ in range(tagged):
            self.tags += 1
            tag, sex = f"K{self.tags}", "buck" if self.rng.random() < (0.3 if late else 0.5) else "doe"
            gifts = self.animal(sex, (self.truth[doe], self.truth[buck]))
            self.note(on + timedelta(WEANING), "tagged", litter_of=doe, tag=tag, sex=sex)
            weight = TEN_WEEKS_G * (1 + gifts.growth + self.truth[doe].milk + nest + quarter + self.rng.normal(0, KIT_SD))
            for age, times in ((WEIGHING, 1.0), (WEIGHED_AGAIN, AGAIN)):
                if on + timedelta(age) <= TODAY and (late or age == WEIGHING):
                    self.note(on + timedelta(age), "weighed", who=tag, grams=int(max(weight * times * self.rng.normal(1, 0.02), 600)))
            if late:
                gifts.age = (TODAY - on).days
                self.truth[tag] = gifts
            else:
                self.note(on + timedelta(110), "culled", who=tag)

    def herd(self) -> Herd:
        """What the notes make of it."""
        herd = Herd()
        for on, _, kind, fields in sorted(self.told, key=lambda each: each[:2]):
            herd = tell(herd, kind, **({} if kind == "animal" else {"on": on}), **fields)
        return herd


def rabbitry(seed: int) -> Rabbitry:
    """Two years of a farm: six to twelve does and three to five bucks, all used."""
    rng = np.random.default_rng(seed)
    farm = Rabbitry(rng, float(rng.normal(7.5, 0.8)), float(rng.normal(1.5, 0.3)))
    farm.cold = frozenset(ago(int(day)) for day in rng.integers(1, 600, 3))
    bucks = [f"B{at}" for at in range(int(rng.integers(3, 6)))]
    does = [f"D{at}" for at in range(int(rng.integers(6, 13)))]
    for tag in bucks:
        farm.founder(tag, "buck", int(rng.integers(800, 1300)))
    for tag in does:
        farm.founder(tag, "doe", int(rng.integers(800, 1200)))
    for tag in does:
        on = ago(int(rng.integers(250, 620)))
        while on < TODAY - timedelta(5):
            on += timedelta(farm.breed(tag, str(rng.choice(bucks)), on))
    return farm


@dataclass(frozen=True)
class Year:
    """What next year would bring of a set, by the truth."""

    farm: Rabbitry
    bucks: int
    cages: int

    def of_doe(self, tag: str) -> float:
        """Kits that she weans in the year, by expectation."""
        doe = self.farm.truth[tag]
        size = self.farm.size * BY_NUMBER[min(doe.litters, len(BY_NUMBER) - 1)] + doe.size + doe.own_size
        part = 1 - max(BREEDING_AGE - doe.age, 0) / 365
        return LITTERS_A_YEAR * part * max(size, 0.0) * self.farm.raised(doe)

    def grams(self, kept: Iterable[str]) -> float:
        """What the kept wean in the year [g]: each buck sires an even share."""
        tags = list(kept)
        sires = [self.farm.truth[one] for one in tags if self.farm.truth[one].sex == "buck"]
        if not sires:
            return 0.0
        grown = sum(one.growth for one in sires) / len(sires) / 2
        return sum(self._of(one, grown) for one in tags if self.farm.truth[one].sex == "doe")

    def _of(self, tag: str, grown: float) -> float:
        doe = self.farm.truth[tag]
        return self.of_doe(tag) * WEANED_G * (1 + grown + doe.growth / 2 + doe.milk)

    def best(self, among: Collection[str]) -> list[str]:
        """The best set of these with so many bucks: every pair of bucks looked at, with the best does for them."""
        sexes = {sex: [tag for tag, one in self.farm.truth.items() if one.sex == sex and tag in among] for sex in ("buck", "doe")}
        sets = []
        for pair in combinations(sexes["buck"], min(self.bucks, len(sexes["buck"]))):
            grown = sum(self.farm.truth[one].growth for one in pair) / len(pair) / 2
            does = sorted(sexes["doe"], key=lambda tag: -self._of(tag, grown))[: self.cages - len(pair)]
            sets.append([*pair, *does])
        return max(sets, key=self.grams)


def seen(farm: Rabbitry) -> Evidence:
    """What the program reckons of the farm."""
    return Evidence(farm.herd(), TODAY)
