"""The herd in numbers: bucks, does, grow-outs, kits and litters."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from core.herd.litters import alive_now, untagged
from core.herd.state import Animal, Herd
from core.reply import Reply
from core.reports.evidence import Evidence, evidence
from core.reports.keep_or_cull import in_breed
from core.words import count, listed


@dataclass(frozen=True, slots=True)
class Counts:
    """How many there are. Bucks and does are juniors and seniors; kits are unweaned, tagged or not; litters are those under a doe."""

    bucks: int
    does: int
    grow_outs: int
    kits: int
    litters: int
    unsexed: int = 0

    @property
    def all(self) -> int:
        """Every rabbit on the farm."""
        return self.bucks + self.does + self.grow_outs + self.kits + self.unsexed

    def document(self) -> dict[str, int]:
        """The contract's `counts` object."""
        return {"bucks": self.bucks, "does": self.does, "grow_outs": self.grow_outs, "kits": self.kits, "litters": self.litters}

    def line(self) -> str:
        """The herd in a line: `4 bucks, 12 does, 9 grow-outs and 14 kits in 3 litters`."""
        parts = [count(self.bucks, "buck"), count(self.does, "doe"), count(self.grow_outs, "grow-out")]
        parts += [count(self.unsexed, "grown rabbit of unknown sex", "grown rabbits of unknown sex")] if self.unsexed else []
        return f"{listed([*parts, count(self.kits, 'kit')])}" + (f" in {count(self.litters, 'litter')}" if self.litters else "")


def counts(herd: Herd, today: date, breed: str | None = None) -> Counts:
    """The herd in numbers, or one breed of it."""
    barn = evidence(herd, today)
    grown = [one for one in barn.living if barn.stages[one.key] in {"junior", "senior"} and in_breed(one.breed, breed)]
    young = sum(1 for one in barn.living if barn.stages[one.key] == "grow-out" and in_breed(one.breed, breed))
    weaned = sum(kits for litter, kits in barn.weaned_litters if in_breed(_breed(herd, litter.dam), breed))
    nursed = [
        litter
        for litter in herd.litters.values()
        if litter.weaned_on is None and alive_now(litter) and in_breed(_breed(herd, litter.dam), breed)
    ]
    tagged = sum(1 for one in barn.living if barn.stages[one.key] == "kit" and in_breed(one.breed, breed))
    return Counts(
        bucks=_of(grown, "buck"),
        does=_of(grown, "doe"),
        grow_outs=young + weaned,
        kits=tagged + sum(untagged(herd, litter) for litter in nursed),
        litters=len(nursed),
        unsexed=_of(grown, None),
    )


def _of(animals: Iterable[Animal], sex: str | None) -> int:
    return sum(1 for one in animals if one.sex == sex)


def _breed(herd: Herd, key: str) -> str | None:
    return herd.animals[key].breed if key in herd.animals else None


def counted(barn: Evidence, scope: str | None, breed: str | None) -> Reply:
    """The herd in numbers as an answer, or only the bucks, does or grow-outs of it."""
    told = counts(barn.herd, barn.today, breed)
    of = f" {breed}" if breed else ""
    named = {"bucks": (told.bucks, "buck"), "does": (told.does, "doe"), "grow-outs": (told.grow_outs, "grow-out")}.get(scope or "")
    if named:
        return Reply((f"{count(named[0], f'{of} {named[1]}'.strip())} on the farm.",))
    return Reply((f"{count(told.all, f'{of} rabbit'.strip())}: {told.line()}.",))
