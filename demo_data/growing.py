"""The invented farm's young: what dies in the nest, who is weaned, tagged, weighed, and what becomes of it."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, field
from datetime import date, timedelta
from typing import TYPE_CHECKING

from demo_data import phrases
from demo_data.cast import ADULT_G, CEILING, Rabbit
from demo_data.phrases import said

if TYPE_CHECKING:
    from demo_data.generate import Season

DAUGHTERS_KEPT = 4  # daughters that join the does
SPARE_BUCKS = 3  # young Mini Rex bucks that nobody sold
LATE = date(2026, 7, 20)  # of the kits born after this day some are left to grow
LISTED_FROM, LISTED_TO = date(2026, 8, 10), date(2026, 10, 10)


@dataclass
class Kits:
    """A litter of the story."""

    dam: Rabbit
    sire: Rabbit
    born_on: date
    alive: int
    luck: float
    tagged: list[Rabbit] = field(default_factory=list)
    untagged: int = 0


class Nursery:
    """Litters from birth to the day that each kit leaves."""

    def __init__(self, season: Season) -> None:
        """No litter yet."""
        self.season = season
        self.chance = season.chance
        self.tags = {2025: 0, 2026: 0}
        self.kits: list[Rabbit] = []
        self.daughters = 0
        self.spare_bucks = 0
        self.listed = False
        self.runt = False

    def begin(self, litter: Kits, snap: date | None) -> None:
        """A litter is in the nest; a cold snap comes within its first week, or none does."""
        day, season = litter.born_on, self.season
        self.losses(litter, snap)
        season.at(
            day + timedelta(days=self.chance.choice((18, 18, 19, 20))),
            lambda on: season.note(on, phrases.boxed(self.chance, litter.dam, "out"), evening=True),
        )
        season.at(day + timedelta(days=self.chance.choice((35, 35, 36))), self.weaning_of(litter))

    def losses(self, litter: Kits, snap: date | None) -> None:
        """Kits that die before weaning: by the doe's ways, or by the cold."""
        frozen = 0
        if snap is not None:
            frozen = min(litter.alive, round(litter.alive * (0.8 if litter.dam.tag == "11" else 0.35)))
        if frozen and snap is not None:
            self.lose(litter, frozen, "froze", snap + timedelta(days=1))
        failing = sum(self.chance.random() > litter.dam.rearing for _ in range(litter.alive - frozen))
        days = [1, 2, 3, 4, 6, 9, 12]
        while failing and days:
            count = min(failing, self.chance.choice((1, 1, 2, 3))) if len(days) > 1 else failing
            failing -= count
            later = days.pop(self.chance.randrange(min(3, len(days))))
            self.lose(litter, count, self.chance.choice(litter.dam.ways_to_lose), litter.born_on + timedelta(days=later))

    def lose(self, litter: Kits, count: int, way: str, day: date) -> None:
        """The kits are gone on that day, and somebody writes it down."""

        def tell(on: date) -> None:
            taken = min(count, litter.alive)
            if taken:
                litter.alive -= taken
                self.season.note(on, phrases.lost(self.chance, litter.dam, taken, way))

        self.season.at(day, tell)

    def weaning_of(self, litter: Kits) -> Callable[[date], None]:
        """The litter leaves the doe; some get a tag, the rest grow for the table."""

        def wean(day: date) -> None:
            if not litter.alive:
                return
            bucks = sum(self.chance.random() < 0.5 for _ in range(litter.alive))
            self.season.note(day, phrases.weaned(self.chance, litter.dam, bucks, litter.alive - bucks))
            keep = min(litter.alive, self.chance.choice((2, 3, 3, 4)))
            litter.untagged = litter.alive - keep
            sexes = ["buck"] * bucks + ["doe"] * (litter.alive - bucks)
            for sex in self.chance.sample(sexes, keep):
                self.tag_kit(litter, sex, day + timedelta(days=1))
            for age in (56, 70, 84, 112):
                self.season.at(litter.born_on + timedelta(days=age + self.chance.randrange(2)), self.weigh(litter, age))
            if litter.untagged:
                self.season.at(litter.born_on + timedelta(days=self.chance.randrange(62, 68)), self.clear_untagged(litter))

        return wean

    def tag_kit(self, litter: Kits, sex: str, day: date) -> None:
        """A kit gets a number and a fate."""
        year = litter.born_on.year
        color = litter.dam.color if self.chance.random() < 0.5 else litter.sire.color
        growth = litter.sire.merit * litter.luck * self.chance.gauss(1, 0.035)
        self.tags[year] += 1
        kit = Rabbit(
            f"{'H' if year == 2025 else 'P'}{self.tags[year]}",
            None,
            sex,
            litter.dam.breed,
            color,
            litter.born_on,
            litter.sire,
            litter.dam,
            size=growth,
        )
        litter.tagged.append(kit)
        self.kits.append(kit)
        if self.is_heir(kit):
            self.season.herd[kit.tag] = kit
            self.season.at(day, lambda on: self.season.note(on, phrases.newcomer(kit, f" sire {litter.sire.tag} dam {litter.dam.tag}")))
            return
        self.season.at(day, lambda on: self.season.note(on, phrases.tagged(self.chance, kit, litter.dam)))
        self.fate(kit, litter)

    def is_heir(self, kit: Rabbit) -> bool:
        """Whether a son gets a name and a place: Wren's Flicker, and Anvil's Sledge."""
        herd = self.season.herd
        sire, dam = (parent.tag if parent else "" for parent in (kit.sire, kit.dam))
        if kit.sex == "buck" and dam == "11" and "24" not in herd and date(2025, 6, 1) < kit.born < date(2026, 1, 1):
            kit.tag, kit.name, kit.merit = "24", "Flicker", 1.10
            return True
        if kit.sex == "buck" and sire == "2" and "26" not in herd and date(2026, 4, 1) < kit.born < date(2026, 6, 15):
            kit.tag, kit.name = "26", "Sledge"
            return True
        return False

    def fate(self, kit: Rabbit, litter: Kits) -> None:
        """What becomes of a tagged kit: a breeding doe, a spare buck, a runt that nobody parts with, the table, or a sale."""
        born = litter.born_on
        wanted = kit.sex == "doe" and self.daughters < DAUGHTERS_KEPT and date(2025, 6, 15) < born < date(2026, 3, 1)
        if wanted and litter.dam.tag != "9" and self.chance.random() < 0.30:
            self.daughters += 1
            kit.litter_size, kit.rearing = litter.dam.litter_size - litter.dam.shrinks, min(0.95, litter.dam.rearing)
            self.season.herd[kit.tag] = kit
            self.season.at(born + timedelta(days=self.chance.randrange(175, 200)), self.season.mating_of(kit))
            return
        if (
            kit.breed == "Mini Rex"
            and kit.sex == "buck"
            and self.spare_bucks < SPARE_BUCKS
            and date(2026, 3, 15) < born < date(2026, 6, 10)
        ):
            self.spare_bucks += 1
            if self.spare_bucks == 1:
                self.season.plan(born + timedelta(days=70), phrases.disqualified(kit.tag), evening=True)
            return
        if kit.breed == "New Zealand" and not self.runt and date(2026, 6, 25) < born < date(2026, 7, 31):
            self.runt = kit.runt = True
            return
        if born > LATE and self.chance.random() < 0.5:
            return
        grown = self.chance.randrange(76, 92) if born > LATE else self.chance.randrange(114, 122)
        self.season.at(born + timedelta(days=grown), self.parting(kit))

    def parting(self, kit: Rabbit) -> Callable[[date], None]:
        """A grown kit is butchered or sold, unless it was put up for a better price."""

        def part(day: date) -> None:
            if not kit.stays:
                kit.gone = True
                self.season.note(day, phrases.parted(self.chance, kit.tag, self.grams(kit, day)), evening=True)

        return part

    def clear_untagged(self, litter: Kits) -> Callable[[date], None]:
        """The untagged kits of a litter leave together."""
        return lambda day: self.season.note(day, phrases.cleared(self.chance, litter.dam, litter.untagged), evening=True)

    def grams(self, kit: Rabbit, day: date) -> float:
        """What the kit weighs that day [g]: a growth curve of the story's own, and the scale's error."""
        age = (day - kit.born).days
        ceiling = ADULT_G[kit.breed] * CEILING[kit.breed] * kit.size * (0.66 if kit.runt else 1)
        return ceiling * math.exp(-3.9 * math.exp(-0.0264 * age)) * self.chance.gauss(1, 0.012)

    def weigh(self, litter: Kits, age: int) -> Callable[[date], None]:
        """The litter's tagged kits on the scale."""

        def scale(day: date) -> None:
            rows = [(kit.tag, self.grams(kit, day)) for kit in litter.tagged if not kit.gone]
            if rows and (age != 84 or self.chance.random() < 0.7):
                self.season.note(day, phrases.weighed(self.chance, rows[:5]), evening=True)
            if age == 70:
                self.look_over(litter, day)

        return scale

    def look_over(self, litter: Kits, day: date) -> None:
        """At ten weeks somebody looks for faults and show stock."""
        for kit in litter.tagged:
            if not kit.gone and self.chance.random() < 0.12:
                self.season.note(day, phrases.looked_over(self.chance, kit.tag), evening=True)
        shown = [kit for kit in litter.tagged if kit.breed == "Satin" and not kit.gone]
        if shown and not self.listed and LISTED_FROM < day < LISTED_TO:
            self.listed = shown[0].stays = True
            self.season.note(
                day,
                said(f"list {shown[0].tag} for 75 until nov 1", "for_sale", who=shown[0].tag, price="75.00", until="2026-11-01"),
                evening=True,
            )
