"""A planned mating before it is made: how close the two are, the litter and the colours to expect, and what speaks against it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

from core.handbook import breeds, genetics, reproduction
from core.herd.litters import litters_of, live_born
from core.herd.matings import open_mating
from core.herd.questions import age_days, events
from core.herd.settings import highest_coi
from core.herd.state import Animal, Herd
from core.reckon.ancestry import CommonAncestor
from core.reply import Choice, Reply
from core.reports.bucks import growth_merit, same_breed
from core.reports.coat import said_as
from core.reports.evidence import Evidence, evidence
from core.reports.family import family_problems, shared_blood, through_whom
from core.reports.wording import age, called, more_or_less, short, tag_of, when
from core.words import count, listed, share

#: Colours that are told, and the least share worth telling.
COLORS_TOLD = 5
ANCESTORS_TOLD = 3  # not a figure: names on a line
TENTH = 0.1  # not a figure: the handbook tells the cost by 10 % of inbreeding
WORTH_TELLING = 0.02  # not a figure: a rarer color is not worth a line


@dataclass(frozen=True, slots=True)
class Pairing:
    """A doe and a buck, and what their kits would be.

    coi          inbreeding of the kits [share]
    generations  complete generations of known ancestors of the doe and of the buck: how deep the COI looks
    colors       colour -> chance for a kit, the likeliest first
    shared       the ancestors that they have in common, with what each adds to the COI
    """

    barn: Evidence
    doe: Animal
    buck: Animal
    coi: float
    generations: tuple[int, int]
    colors: dict[str, float]
    shared: tuple[CommonAncestor, ...] = ()

    @property
    def warnings(self) -> tuple[str, ...]:
        """What speaks against it, the gravest first."""
        return (*self._closeness(), *self._doubts(), *self._readiness(), *self._faults())

    def _closeness(self) -> tuple[str, ...]:
        if self.coi >= genetics.COI_STRONG.value:
            return (f"Too close: as close as brother and sister, or parent and child.{self._cost()}",)
        if self.coi >= highest_coi(self.barn.herd.settings):
            line = share(highest_coi(self.barn.herd.settings))
            return (f"Close: over your line of {line}. Half brother and sister give 12.5 %.{self._cost()}",)
        return ()

    def _cost(self) -> str:
        """What so much inbreeding costs a daughter."""
        fewer = -genetics.DAM_INBREEDING_BORN_ALIVE.value * self.coi / TENTH
        return f" A daughter kept from it would bear about {fewer:.1f} kits fewer a litter."

    def _doubts(self) -> tuple[str, ...]:
        """What in the family book can't be, of either of them."""
        told = (one.text for animal in (self.doe, self.buck) for one in family_problems(self.barn, about=animal))
        return tuple(dict.fromkeys(told))

    def growth(self) -> float | None:
        """What their kits should weigh at ten weeks [g] over the breed's mean here; None where nothing was weighed, or of two breeds."""
        if not same_breed(self.doe, self.buck):
            return None
        told = [growth_merit(self.barn, one)[0] for one in (self.doe, self.buck)]
        known = [value for value in told if value is not None]
        return sum(known) / len(known) if len(known) == len(told) else None

    def _readiness(self) -> tuple[str, ...]:
        told = []
        for one in (self.doe, self.buck):
            days, breed = age_days(one, self.barn.today), breeds.breed(one.breed)
            least = breed.first_mating_days(one.sex or "doe") if breed else None
            if not one.living:
                told.append(f"{called(one)} is not on the farm.")
            elif days is not None and least is not None and days < least:
                told.append(f"{called(one)} is {age(days)} old; the breed is ready at about {age(least)}.")
        mating = open_mating(self.barn.herd, self.doe.key, self.barn.today)
        if mating is not None:
            told.append(f"{called(self.doe)} was bred {when(mating.on, self.barn.today)} already.")
        return tuple(told)

    def _faults(self) -> tuple[str, ...]:
        told = []
        for one in (self.doe, self.buck):
            faults = dict.fromkeys(str(each.detail.get("fault")) for each in events(one, "fault") if each.detail.get("disqualifies"))
            if faults:
                told.append(f"{called(one)} has a disqualifying fault: {listed(faults)}.")
        return tuple(told)

    def past(self) -> tuple[int, ...]:
        """Live-born of the litters that these two had together."""
        return tuple(live_born(each) for each in litters_of(self.barn.herd, self.doe.key) if each.sire == self.buck.key)

    def reply(self) -> Reply:
        """What to expect, in a few lines."""
        lines = [f"{short(self.doe)} x {short(self.buck)}: kits would be {self.coi * 100:.1f} % inbred."]
        depth = min(self.generations)
        all_known = f"Ancestors: all known for {count(depth, 'generation')} on both sides."
        lines.append(all_known if depth else "Not all parents are on the book, so it may be more.")
        if self.shared:
            lines.append(f"Through {through_whom(self.barn, self.shared, ANCESTORS_TOLD)}.")
        lines += self.warnings
        if self.past():
            lines.append(f"Together before: {listed(str(size) for size in self.past())} born alive.")
        lines += self._growth_line()
        told = [(word, chance) for word, chance in self.colors.items() if chance >= WORTH_TELLING][:COLORS_TOLD]
        lines.append(
            f"Colors to expect: {', '.join(f'{word} {share(chance)}' for word, chance in told)}."
            if told
            else "Colors: note both parents' colors and I can tell what to expect."
        )
        if self.doe.living and self.buck.living:
            due = self.barn.today + timedelta(days=reproduction.GESTATION_DAYS.whole)
            lines.append(f"Bred today, she would kindle about {when(due, self.barn.today)}.")
        return Reply(tuple(lines), (Choice(f"Card of {self.doe.tag}", self.doe.tag), Choice(f"Card of {self.buck.tag}", self.buck.tag)))

    def _growth_line(self) -> list[str]:
        grams_off = self.growth()
        if grams_off is None or not round(grams_off):
            return []
        off = more_or_less(self.barn.herd.settings, grams_off)
        return [f"Growth: kits should weigh {off} the breed's mean here at 10 weeks."]

    def document(self) -> dict[str, Any]:
        """The pairing as numbers."""
        return {
            "doe": self.doe.tag,
            "buck": self.buck.tag,
            "coi": self.coi,
            "generations": list(self.generations),
            "common_ancestors": [
                {"tag": tag_of(self.barn.herd, one.animal), "coi": one.through, "of_doe": one.of_one, "of_buck": one.of_other}
                for one in self.shared
            ],
            "weight_70d_grams": self.growth(),
            "colors": dict(self.colors),
            "past_born_alive": list(self.past()),
            "warnings": list(self.warnings),
        }


def pairing(herd: Herd, today: date, doe: Animal, buck: Animal) -> Pairing:
    """What a mating of these two would give."""
    barn = evidence(herd, today)
    book = barn.book
    colors = barn.coats.expected(buck.key, doe.key) if doe.color and buck.color else {}
    said = said_as(one.color for one in herd.animals.values() if same_breed(one, doe))
    colors = {said.get(word, word): chance for word, chance in colors.items()}
    shared = shared_blood(barn, doe, buck)
    deep = (book.generations(doe.key), book.generations(buck.key))
    return Pairing(barn, doe, buck, sum(one.through for one in shared), deep, colors, shared)
