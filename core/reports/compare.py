"""Two animals side by side: growth, litters and survival, and how sure it is that one outdoes the other."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Any

from core.herd.litters import litters_of, litters_sired, live_born
from core.herd.questions import age_days
from core.herd.state import Animal, Herd
from core.reckon.survival import chance_better
from core.reply import Choice, Reply
from core.reports.bucks import growth_merit
from core.reports.evidence import Evidence, evidence
from core.reports.herd_document import animal_document
from core.reports.wording import age, grams, how_sure, more_or_less, short
from core.words import count, share


@dataclass(frozen=True, slots=True)
class Comparison:
    """Two animals, the one asked about first."""

    barn: Evidence
    one: Animal
    other: Animal

    @property
    def grows_better(self) -> float | None:
        """The chance that the first passes on more growth than the second."""
        return self.barn.growth.better(self.one.key, self.other.key) if self.barn.growth else None

    @property
    def raises_better(self) -> float | None:
        """The chance that the first doe raises her kits better than the second."""
        dams = self.barn.dams
        both = self.one.key in dams and self.other.key in dams
        return chance_better(dams[self.one.key].share, dams[self.other.key].share) if both else None

    def reply(self) -> Reply:
        """What sets them apart, with how sure it is."""
        lines = [f"{short(self.one)} and {short(self.other)}."]
        lines += self._growth()
        lines += self._raising()
        lines += [line for one in (self.one, self.other) for line in self._own(one)]
        if self.grows_better is None and self.raises_better is None:
            lines.append("Too little is known of both to say who is better: weigh their kits at 10 weeks and note their litters.")
        return Reply(tuple(lines), tuple(Choice(f"Card of {one.tag}", one.tag) for one in (self.one, self.other)))

    def _growth(self) -> list[str]:
        chance = self.grows_better
        if chance is None:
            return []
        best, worst, sure = (self.one, self.other, chance) if chance >= 0.5 else (self.other, self.one, 1 - chance)
        kits = sum(growth_merit(self.barn, each)[2] for each in (best, worst))
        told = f"by {count(kits, 'kit')} of theirs weighed" if kits else "by their own weights and their families'"
        said = how_sure(f"{short(best)}'s kits would", f"outgrow {short(worst)}'s", sure)
        return [f"{said}, {told}."]

    def _raising(self) -> list[str]:
        chance = self.raises_better
        if chance is None:
            return []
        best, worst, sure = (self.one, self.other, chance) if chance >= 0.5 else (self.other, self.one, 1 - chance)
        return [f"{how_sure(short(best), f'raises her kits better than {short(worst)}', sure)}."]

    def _own(self, one: Animal) -> list[str]:
        barn, settings = self.barn, self.barn.herd.settings
        days = age_days(one, barn.today)
        told = [age(days)] if days is not None else []
        told += [grams(settings, one.weights[-1].grams)] if one.weights else []
        value, _, kits = growth_merit(barn, one)
        told += [f"growth {more_or_less(settings, value)} the breed's mean ({count(kits, 'kit')} weighed)"] if value is not None else []
        litters = litters_of(barn.herd, one.key) or litters_sired(barn.herd, one.key)
        if litters:
            mean = sum(live_born(each) for each in litters) / len(litters)
            told.append(f"{mean:.1f} born alive a litter ({count(len(litters), 'litter')})")
        dam = barn.dams.get(one.key)
        told += [f"{dam.kept} of {count(dam.alive, 'kit')} raised (allowing for luck, about {share(dam.share.estimate)})"] if dam else []
        return [f"{short(one)}: {'; '.join(told)}."] if told else []

    def document(self) -> dict[str, Any]:
        """Both animals and the chances."""
        return {
            "one": animal_document(self.barn, self.one, {}),
            "other": animal_document(self.barn, self.other, {}),
            "chance_grows_better": self.grows_better,
            "chance_raises_better": self.raises_better,
        }


def compare(herd: Herd, today: date, one: Animal, other: Animal) -> Comparison:
    """Two animals side by side."""
    return Comparison(evidence(herd, today), one, other)
