"""Small invented herds for the reports' tests, told fact by fact: each step says what happened in the barn."""

from __future__ import annotations

from datetime import date
from typing import Any, Self

from core.herd.state import Animal, Herd
from core.reports.evidence import Evidence, evidence
from tests.farm import TODAY, ago, tell

GESTATION = 31
WEANED_AT = 35


class Barn:
    """A herd that grows by what is told of it; every step hands the barn back."""

    def __init__(self) -> None:
        """An empty barn."""
        self.herd = Herd()

    def say(self, kind: str, **fields: Any) -> Self:
        """One fact of that kind."""
        self.herd = tell(self.herd, kind, **fields)
        return self

    def doe(self, tag: str, age: int | None = 700, breed: str | None = "New Zealand", **fields: Any) -> Self:
        """A doe of that age [days]."""
        return self._animal(tag, "doe", age, breed, fields)

    def buck(self, tag: str, age: int | None = 700, breed: str | None = "New Zealand", **fields: Any) -> Self:
        """A buck of that age [days]."""
        return self._animal(tag, "buck", age, breed, fields)

    def _animal(self, tag: str, sex: str | None, age: int | None, breed: str | None, fields: dict[str, Any]) -> Self:
        born = None if age is None else ago(age)
        return self.say("animal", tag=tag, sex=sex, breed=breed, born=born, **({"origin": "bought"} | fields))

    def litter(self, doe: str, buck: str, born_ago: int, alive: int, *, dead: int = 0, weaned: int | None = None) -> Self:
        """A mating and its litter, born so many days ago; with `weaned`, weaned at the usual age."""
        self.say("bred", doe=doe, buck=buck, on=ago(born_ago + GESTATION))
        self.say("kindled", doe=doe, born=alive + dead, alive=alive, dead=dead, on=ago(born_ago))
        return self if weaned is None else self.say("weaned", doe=doe, count=weaned, on=ago(born_ago - WEANED_AT))

    def lost(self, doe: str, count: int, on: date, cause: str | None = None) -> Self:
        """Kits that died in the nest."""
        return self.say("kits_lost", doe=doe, count=count, on=on, cause=cause)

    def kits(self, doe: str, tags: str, born_ago: int, grams: dict[int, int] | None = None, sexes: str = "bd") -> Self:
        """The litter's kits tagged at weaning, bucks and does in turn, each with these weights by age."""
        for at, tag in enumerate(tags.split()):
            sex = {"b": "buck", "d": "doe"}[sexes[at % len(sexes)]]
            self.say("tagged", litter_of=doe, tag=tag, sex=sex, on=ago(born_ago - WEANED_AT))
            for age, weight in (grams or {}).items():
                self.say("weighed", who=tag, grams=weight, on=ago(born_ago - age))
        return self

    def weigh(self, tag: str, grams: int, days_ago: int = 0) -> Self:
        """A weight."""
        return self.say("weighed", who=tag, grams=grams, on=ago(days_ago))

    def set(self, name: str, value: Any, breed: str | None = None) -> Self:
        """A setting of the farm's."""
        return self.say("setting", name=name, value=value, breed=breed)

    def find(self, tag: str) -> Animal:
        """The animal of that tag."""
        animal = self.herd.find(tag)
        assert animal is not None
        return animal

    @property
    def seen(self) -> Evidence:
        """What is reckoned of the herd today."""
        return evidence(self.herd, TODAY)


def two_sires(grams: dict[str, int] | None = None) -> Barn:
    """Proven bucks on the same four does: the kits of 7 (Rowan) outgrow those of 3 (Flint). With `grams`, these bucks and weights."""
    weights = grams or {"3": 1700, "7": 1950}
    barn = Barn()
    for tag in weights:
        barn.buck(tag, name={"3": "Flint", "7": "Rowan"}.get(tag))
    for doe in ("11", "12", "13", "14"):
        barn.doe(doe)
    number = 0
    for turn, born_ago in enumerate((420, 330, 240, 150)):
        for at, doe in enumerate(("11", "12", "13", "14")):
            buck = tuple(weights)[(at + turn) % len(weights)]
            barn.litter(doe, buck, born_ago, 7, weaned=6)
            barn.kits(doe, " ".join(f"R{number + kit}" for kit in range(4)), born_ago, {70: weights[buck]})
            for kit in range(4):
                if born_ago > 200 or kit > 1:
                    barn.say("culled", who=f"R{number + kit}", on=ago(born_ago - 120))
            number += 4
    return barn
