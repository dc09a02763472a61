"""A planned mating before it is made: how close the two are, the litter and the colors to expect, what speaks against it, what is thin."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta
from functools import cached_property
from typing import Any

from core.handbook import breeds, genetics, reproduction
from core.herd.litters import litters_of, live_born
from core.herd.matings import open_mating
from core.herd.questions import age_days, events
from core.herd.settings import highest_coi
from core.herd.state import Animal, Herd, Litter
from core.reckon.ancestry import CommonAncestor
from core.reply import Choice, Reply
from core.reports.evidence import Evidence, evidence
from core.reports.family import family_problems, shared_blood, through_whom
from core.reports.mating_colors import MatingColors, colors_of
from core.reports.mating_litter import MatingLitter
from core.reports.wording import age, called, short, tag_of, when
from core.words import count, listed, share

ANCESTORS_TOLD = 3  # not a figure: names on a line
TENTH = 0.1  # not a figure: the handbook tells the cost by 10 % of inbreeding


@dataclass(frozen=True, eq=False)
class Pairing:
    """A doe and a buck, and what their kits would be.

    coi          inbreeding of the kits [share]
    generations  complete generations of known ancestors of the doe and of the buck: how deep the COI looks
    shared       the ancestors that they have in common, with what each adds to the COI
    """

    barn: Evidence
    doe: Animal
    buck: Animal
    coi: float
    generations: tuple[int, int]
    shared: tuple[CommonAncestor, ...] = ()

    @cached_property
    def litter(self) -> MatingLitter:
        """The litter to expect."""
        return MatingLitter(self.barn, self.doe, self.buck)

    @cached_property
    def coats(self) -> MatingColors:
        """The colors to expect."""
        return MatingColors(self.barn, self.doe, self.buck, self.litter.size.following)

    @property
    def colors(self) -> dict[str, float]:
        """Color -> chance for a kit, the likeliest first."""
        return self.coats.expected

    @cached_property
    def warnings(self) -> tuple[str, ...]:
        """What speaks against it, the gravest first."""
        return (*self._closeness(), *self._doubts(), *self._readiness(), *self._faults(), *self.coats.warnings())

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

    @cached_property
    def past(self) -> tuple[Litter, ...]:
        """The litters that these two had together, the earliest first."""
        return tuple(each for each in litters_of(self.barn.herd, self.doe.key) if each.sire == self.buck.key)

    def thin(self) -> tuple[str, ...]:
        """What nobody noted yet and would make this surer."""
        orphans = [short(one) for one in (self.doe, self.buck) if not one.sire and not one.dam]
        bare = [short(one) for one in (self.doe, self.buck) if not one.color]
        told = [f"who {listed(orphans)} {'is' if len(orphans) == 1 else 'are'} out of"] if orphans else []
        told += [f"the color of {listed(bare)}"] if bare else []
        return (*told, *self.litter.thin())

    def reply(self) -> Reply:
        """What to expect, in a few lines."""
        lines = [f"{short(self.doe)} x {short(self.buck)}: kits would be {self.coi * 100:.1f} % inbred."]
        depth = min(self.generations)
        all_known = f"Ancestors: all known for {count(depth, 'generation')} on both sides."
        lines.append(all_known if depth else "Not all parents are on the book, so it may be more.")
        if self.shared:
            lines.append(f"Through {through_whom(self.barn, self.shared, ANCESTORS_TOLD)}.")
        lines += [*self.warnings, *self._past_line(), *self.litter.lines(), *self.coats.lines()]
        if self.doe.living and self.buck.living:
            due = self.barn.today + timedelta(days=reproduction.GESTATION_DAYS.whole)
            lines.append(f"Bred today, she would kindle about {when(due, self.barn.today)}.")
        lines += [f"To be surer, note: {listed(self.thin())}."] if self.thin() else []
        return Reply(tuple(lines), (Choice(f"Card of {self.doe.tag}", self.doe.tag), Choice(f"Card of {self.buck.tag}", self.buck.tag)))

    def _past_line(self) -> list[str]:
        """Their litters so far: sizes, how many of the finished ones' kits were raised, and colors."""
        if not self.past:
            return []
        told = [f"{listed(str(live_born(one)) for one in self.past)} born alive"]
        raised, given = self._raised()
        told += [f"{raised} of {given} raised"] if given else []
        colors: dict[str, int] = {}
        for litter in self.past:
            for color, kits in colors_of(self.barn.herd, litter).items():
                colors[color] = colors.get(color, 0) + kits
        told += [", ".join(f"{kits} {color}" for color, kits in colors.items())] if colors else []
        return [f"Together before: {'; '.join(told)}."]

    def _raised(self) -> tuple[int, int]:
        """Kits raised, and kits that were hers to raise, of their finished litters."""
        dam, keys = self.barn.dams.get(self.doe.key), {one.key for one in self.past}
        told = [one for one in dam.litters if one.litter.key in keys] if dam else []
        return sum(one.kept for one in told), sum(one.given for one in told)

    def document(self) -> dict[str, Any]:
        """The pairing as numbers."""
        herd = self.barn.herd
        raised, given = self._raised()
        return {
            "doe": self.doe.tag,
            "buck": self.buck.tag,
            "coi": self.coi,
            "generations": list(self.generations),
            "common_ancestors": [
                {"tag": tag_of(herd, one.animal), "coi": one.through, "of_doe": one.of_one, "of_buck": one.of_other} for one in self.shared
            ],
            **self.litter.document(),
            **self.coats.document(),
            "past_born_alive": [live_born(one) for one in self.past],
            "past_raised": {"kept": raised, "of": given},
            "past_colors": [colors_of(herd, one) for one in self.past],
            "warnings": list(self.warnings),
            "thin": list(self.thin()),
        }


def pairing(herd: Herd, today: date, doe: Animal, buck: Animal) -> Pairing:
    """What a mating of these two would give."""
    barn = evidence(herd, today)
    shared = shared_blood(barn, doe, buck)
    deep = (barn.book.generations(doe.key), barn.book.generations(buck.key))
    return Pairing(barn, doe, buck, sum(one.through for one in shared), deep, shared)
