"""Two animals side by side: growth, litters and survival, and how sure it is that one outdoes the other."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Any

from core.handbook import flags as figures
from core.herd.litters import litters_of, litters_sired, live_born
from core.herd.questions import age_days
from core.herd.state import Animal, Herd
from core.reckon.choose import SAME
from core.reckon.litters_together import chance_larger
from core.reckon.survival import chance_better
from core.reply import Choice, Reply
from core.reports.bucks import growth_merit, on_kits, same_breed
from core.reports.evidence import Evidence, evidence
from core.reports.herd_document import animal_document
from core.reports.keep_or_cull import advised
from core.reports.litter_size import size_of
from core.reports.wording import age, grams, how_sure, more_or_less, short
from core.words import count, listed, share


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
        lines += [*self._raising(), *self._litters()]
        lines += [line for one in (self.one, self.other) for line in self._own(one)]
        if self.grows_better is None and self.raises_better is None:
            lines.append("Too little is known of both to say who is better: weigh their kits at 10 weeks and note their litters.")
            lines += self._planned()
        return Reply(tuple(lines), tuple(Choice(f"Card of {one.tag}", one.tag) for one in (self.one, self.other)))

    def _planned(self) -> list[str]:
        """What the plan makes of each, with its first reason: that ranks them until more is known."""
        told = [one for key in (self.one.key, self.other.key) for one in advised(self.barn).verdicts if one.key == key]
        return [f"By the plan: {one.verdict} {one.called}. {one.reasons[0].text}" for one in told]

    def _ahead(self, chance: float) -> tuple[Animal, Animal, float]:
        """The likelier of the two, the other, and how likely; the one asked about first where only rounding sets them apart."""
        return (self.other, self.one, 1 - chance) if round(chance, SAME) < 0.5 else (self.one, self.other, chance)

    def _growth(self) -> list[str]:
        chance = self.grows_better
        if chance is None:
            return []
        best, worst, sure = self._ahead(chance)
        each = "" if same_breed(best, worst) else ", each for its breed"
        said = how_sure(f"{short(best)}'s kits would", f"outgrow {_kin(best, worst)}{short(worst)}'s", sure)
        lines = [f"{said}{each}, {on_kits(self.barn, best, worst)}."]
        unweighed = [short(one) for one in (best, worst) if not growth_merit(self.barn, one)[2]]
        if sure < figures.OUTDOES_CHANCE.value:
            lines.append(f"That is not sure: weigh {'kits of ' + listed(unweighed) if unweighed else 'more of their kits'} at 10 weeks.")
        return lines

    def _raising(self) -> list[str]:
        chance = self.raises_better
        if chance is None:
            return []
        best, worst, sure = self._ahead(chance)
        kits, others = (self.barn.dams[each.key].alive for each in (best, worst))
        told = f"by {count(kits, 'kit')} of hers and {others} of {short(worst)}"
        return [f"{how_sure(short(best), f'raises her kits better than {short(worst)}', sure)}, {told}."]

    @property
    def larger_litters(self) -> float | None:
        """The chance that the first doe's litters are truly larger than the second's, each for her number of litter."""
        sizes = [size_of(self.barn, each) for each in (self.one, self.other) if each.sex == "doe"]
        both = len(sizes) > 1 and all(each.litters for each in sizes)  # not a figure: two animals are compared
        return chance_larger(*sizes) if both else None

    def _litters(self) -> list[str]:
        chance = self.larger_litters
        if chance is None:
            return []
        best, worst, sure = self._ahead(chance)
        litters, others = (size_of(self.barn, each).litters for each in (best, worst))
        said = how_sure(short(best), f"has larger litters than {short(worst)}", sure)
        return [f"{said}, by {count(litters, 'litter')} of hers and {others} of {short(worst)}."]

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
            "chance_larger_litters": self.larger_litters,
        }


_HIS = {"buck": "his", "doe": "her"}
_CHILD = {"buck": "son", "doe": "daughter"}


def _kin(one: Animal, other: Animal) -> str:
    """How the other is told as the first one's parent or child, where it is: `his sire `."""
    his = _HIS.get(one.sex or "", "its")
    if other.key in {one.sire, one.dam}:
        return f"{his} {'sire' if other.key == one.sire else 'dam'} "
    return f"{his} {_CHILD.get(other.sex or '', 'kit')} " if one.key in {other.sire, other.dam} else ""


def compare(herd: Herd, today: date, one: Animal, other: Animal) -> Comparison:
    """Two animals side by side."""
    return Comparison(evidence(herd, today), one, other)
