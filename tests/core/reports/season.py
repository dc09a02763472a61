"""A simulated season told in facts, with known truth: who raises kits badly, whose kits grow fast, whose litters shrink."""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from datetime import date, timedelta
from random import Random

from core.herd.settings import changed
from core.herd.state import Herd
from core.reckon.curve import weight_at_age
from core.reports.growth import curve_of
from tests.farm import tell

START = date(2025, 3, 1)
END = date(2026, 11, 20)


@dataclass
class Season:
    """The herd as the facts left it, and the truth behind it."""

    herd: Herd
    facts: int = 0
    raises: dict[str, float] = field(default_factory=dict)  # doe -> true survival of her kits
    growth: dict[str, float] = field(default_factory=dict)  # animal -> bred-in growth, as a share of the breed's curve
    size: dict[str, float] = field(default_factory=dict)  # doe -> mean litter size


class _Teller:
    def __init__(self, seed: int) -> None:
        self.random = Random(seed)
        self.season = Season(Herd(settings=changed(Herd().settings, "timezone", "America/Chicago")))
        self.tag = 100

    def say(self, kind: str, **fields: object) -> None:
        self.season.herd = tell(self.season.herd, kind, **fields)
        self.season.facts += 1

    def start(self, breed: str, bucks: int, does: int) -> tuple[list[str], list[str]]:
        told: tuple[list[str], list[str]] = ([], [])
        for sex, number, into in (("buck", bucks, told[0]), ("doe", does, told[1])):
            for _ in range(number):
                self.tag += 1
                tag = str(self.tag)
                born = START - timedelta(self.random.randint(250, 700))
                self.say("animal", tag=tag, sex=sex, breed=breed, born=born, origin="bought")
                self.season.growth[tag] = self.random.gauss(0, 0.2 * math.sqrt(0.2))
                into.append(tag)
                if sex == "doe":
                    self.season.raises[tag] = self.random.betavariate(16, 4)
                    self.season.size[tag] = self.random.gauss(7.2, 1.0)
        return told

    def litter(self, doe: str, buck: str, bred: date, size: float | None = None, raises: float | None = None) -> None:
        season, random = self.season, self.random
        self.say("bred", doe=doe, buck=buck, on=bred)
        if random.random() < 0.12:
            self.say("missed", doe=doe, on=min(bred + timedelta(35), END))
            return
        born_on = bred + timedelta(31 + random.randint(-1, 2))
        if born_on > END:
            return
        self.say("nest_box", doe=doe, change="in", on=bred + timedelta(28))
        born = max(1, round(random.gauss(season.size[doe] if size is None else size, 1.6)))
        dead = sum(random.random() < 0.06 for _ in range(born))
        self.say("kindled", doe=doe, born=born, alive=born - dead, dead=dead, on=born_on)
        share = season.raises[doe] if raises is None else raises
        lost = sum(random.random() > share for _ in range(born - dead))
        for _ in range(lost):
            day = born_on + timedelta(random.choice([1, 2, 3, 5, 9, 16]))
            if day <= END:
                self.say("kits_lost", doe=doe, count=1, on=day)
        weaned_on = born_on + timedelta(35)
        kits = born - dead - lost
        if weaned_on > END or kits == 0:
            return
        self.say("weaned", doe=doe, count=kits, on=weaned_on)
        self.young(doe, buck, born_on, kits)

    def young(self, doe: str, buck: str, born_on: date, kits: int) -> None:
        season, random = self.season, self.random
        breed = season.herd.find(doe).breed  # type: ignore[union-attr]
        shared = random.gauss(0, 0.2 * math.sqrt(0.35))
        for _ in range(kits):
            self.tag += 1
            tag = f"R{self.tag}"
            sex = random.choice(["buck", "doe"])
            self.say("tagged", litter_of=doe, tag=tag, sex=sex, on=born_on + timedelta(36))
            parents = (season.growth[doe] + season.growth[buck]) / 2
            bred_in = parents + random.gauss(0, 0.2 * math.sqrt(0.1))
            season.growth[tag] = bred_in
            own = 1 + bred_in + shared + random.gauss(0, 0.2 * math.sqrt(0.4))
            for age in (56, 84, 112):
                day = born_on + timedelta(age + random.randint(-4, 6))
                if day <= END:
                    grams = max(300, round(own * weight_at_age((day - born_on).days, *curve_of(breed)) * random.gauss(1, 0.03)))
                    self.say("weighed", who=tag, grams=grams, on=day)
            leaves = born_on + timedelta(random.randint(118, 140))
            if leaves <= END and random.random() < 0.93:
                self.say("culled", who=tag, on=leaves)


def season(seed: int = 1, breeds: tuple[tuple[str, int, int], ...] = (("New Zealand", 3, 8), ("Mini Rex", 3, 6), ("Rex", 2, 4))) -> Season:
    """A season of litters every ten weeks."""
    teller = _Teller(seed)
    for breed, bucks, does in breeds:
        males, females = teller.start(breed, bucks, does)
        for doe in females:
            bred = START + timedelta(teller.random.randint(0, 60))
            while bred < END:
                teller.litter(doe, teller.random.choice(males), bred)
                bred += timedelta(teller.random.randint(72, 100))
    return teller.season
