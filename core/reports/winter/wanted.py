"""What the winter's choice is asked on this farm: its animals as candidates, its wishes as limits.

Animals that flags speak against, and does bound by a day, are settled before: their feed until they leave is eaten whatever is chosen.
"""

from __future__ import annotations

from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date
from functools import cached_property
from statistics import fmean
from typing import Literal

from core.handbook import winter as figures
from core.herd.settings import (
    Settings,
    bucks_a_breed,
    cages,
    does_a_breed,
    feed_money,
    highest_coi,
    litters_wanted,
    mouths,
    risk,
    winter_feed,
)
from core.reckon.choose import Guess
from core.reckon.winter.choose import best
from core.reckon.winter.types import Candidate, Choice, Kin, Limits, Unfit
from core.reports.evidence import Evidence
from core.reports.holds import bound_until
from core.reports.verdict import Verdict
from core.reports.winter import eating
from core.reports.winter.worth import worths

Pin = Literal["keep", "go"]
Sex = Literal["buck", "doe"]

#: How much doubt is taken off, by the risk that the farm takes.
CAUTION = {"low": figures.CAUTION_LOW, "some": figures.CAUTION_SOME, "high": figures.CAUTION_HIGH}
SEXES: Mapping[str | None, Sex] = {"buck": "buck", "doe": "doe"}
#: What is the least that any animal is worth to the choice [g]: with room enough nobody goes for a lack of it.
LEAST = 1.0  # not a figure: a gram


@dataclass(frozen=True)
class Asked:
    """What the choice was asked and answered. `others` are settled before it: by flags, or past all choosing."""

    candidates: tuple[Candidate, ...]
    limits: Limits
    answer: Choice | Unfit
    others: tuple[str, ...]

    @property
    def choice(self) -> Choice:
        """Who stays; where nothing fits what was asked, under the smallest change that fits."""
        return self.answer.choice if isinstance(self.answer, Unfit) else self.answer

    @property
    def unfit(self) -> Unfit | None:
        """What would have to change; None where it fits."""
        return self.answer if isinstance(self.answer, Unfit) else None

    @cached_property
    def kept(self) -> frozenset[str]:
        """Who stays: the choice's, and who would only be missed for want of a mate or of worth, as long as there is room."""
        return frozenset((*self.choice.kept, *_room_left(self)))

    @cached_property
    def full(self) -> bool:
        """Whether somebody goes for want of room."""
        return any(one.pin is None and one.key not in self.kept for one in self.candidates)

    @property
    def in_force(self) -> Limits:
        """The limits that the choice keeps to."""
        return self.answer.limits if isinstance(self.answer, Unfit) else self.limits


def asked(barn: Evidence, verdicts: Sequence[Verdict]) -> Asked:
    """The choice for the herd, after what each animal's own verdict settles."""
    settled = {one.key: free_from(barn, one.key) for one in verdicts if one.going and not one.pinned}
    told = _fed_alike(barn, [_candidate(barn, one) for one in verdicts if one.key not in settled])
    limits = limits_of(barn, told, settled)
    kin = barn.kinship.of
    single = _without_mate(told, limits, kin)
    weighed = [_weighed(one, limits, without_mate=one.key in single) for one in told]
    return Asked(told, limits, best(weighed, limits, kin), tuple(settled))


def free_from(barn: Evidence, key: str) -> date:
    """The first day on which it can go, for its kits."""
    animal = barn.herd.animals.get(key)
    bound = bound_until(barn, animal) if animal else None
    return max(bound[0], barn.today) if bound else barn.today


def pin_of(one: Verdict) -> Pin | None:
    """A person's word, or that it is a breed's last: what the choice never goes against."""
    if one.pinned:
        return "go" if one.going else "keep"
    return "keep" if any(found.code == "last_of_breed" for found in one.reasons) else None


def _candidate(barn: Evidence, one: Verdict) -> Candidate:
    """Its worth in the measure in which a usual animal of every breed counts alike."""
    worth = worths(barn)[one.key].alike()
    return Candidate(
        key=one.key,
        sex=SEXES.get(one.sex),
        breed=(one.breed or "").lower(),
        worth=worth.guess,
        grown=one.stage in {"junior", "senior"},
        feed_g=eating.until_spring_g(barn, one.key, free_from(barn, one.key)),
        mouths=one.count,
        pin=pin_of(one),
        one_more=worth.one_more,
    )


def _fed_alike(barn: Evidence, candidates: Sequence[Candidate]) -> tuple[Candidate, ...]:
    """The same with feed held against an animal by what it eats beyond its breed's mean: no breed goes for being small, or for eating."""
    eaten: dict[str, list[float]] = {}
    for one in candidates:
        eaten.setdefault(one.breed, []).append(one.feed_g)
    told = []
    for one in candidates:
        beyond = (one.feed_g - fmean(eaten[one.breed])) * worths(barn)[one.key].beside
        spared = figures.FEED_WORTH.value * (one.feed_g - beyond)
        told.append(replace(one, worth=Guess(one.worth.value + spared, one.worth.deviation)))
    return tuple(told)


def _room_left(asked: Asked) -> list[str]:
    """Those that the choice lets go though there is a place for them: nobody goes without need, that is the person's choice."""
    limits, stay, added = asked.in_force, [one for one in asked.candidates if one.key in asked.choice.kept], []
    free = [one for one in asked.candidates if one.pin is None and one.key not in asked.choice.kept]
    for one in sorted(free, key=lambda one: (-cautious(one, limits), one.key)):
        if _fits([*stay, one], one, limits):
            stay.append(one)
            added.append(one.key)
    return added


def _fits(stay: Sequence[Candidate], one: Candidate, limits: Limits) -> bool:
    """Whether all these fit the limits that `one` comes under."""
    most = {"buck": limits.bucks, "doe": limits.does}.get(one.sex or "", {}).get(one.breed) if one.grown else None
    alike = [other for other in stay if other.grown and (other.breed, other.sex) == (one.breed, one.sex)]
    needs = (
        (limits.cages, sum(other.places for other in stay)),
        (limits.mouths, sum(other.mouths for other in stay)),
        (limits.feed_g, sum(other.feed_g for other in stay)),
        (most, len(alike)),
    )
    return all(limit is None or need <= limit for limit, need in needs)


def _without_mate(candidates: Sequence[Candidate], limits: Limits, kin: Kin) -> frozenset[str]:
    """The grown does that no buck here could be mated to, whoever stays: that is no news for the choice."""
    grown = [one for one in candidates if one.grown]
    bucks = [one for one in grown if one.sex == "buck" and one.pin != "go"]
    return frozenset(
        one.key
        for one in grown
        if one.sex == "doe" and not any(buck.breed == one.breed and kin(buck.key, one.key) <= limits.highest_coi for buck in bucks)
    )


def _weighed(one: Candidate, limits: Limits, *, without_mate: bool) -> Candidate:
    """The same, worth a little to the choice however little it brings, so that nobody goes or is called close without a rival."""
    brings = cautious(one, limits)
    floor = brings if brings >= LEAST else LEAST / (1 + LEAST - brings)  # the less it brings, the lower, and never nothing
    value = one.worth.value + floor - brings + (limits.unmated if without_mate else 0.0)
    return replace(one, worth=Guess(value, one.worth.deviation), one_more=min(one.one_more, floor / 2))


def cautious(one: Candidate, limits: Limits) -> float:
    """What it brings, doubt and feed taken off [g of kits a year]."""
    return one.worth.value - limits.caution * one.worth.deviation - limits.feed_worth * one.feed_g


def limits_of(barn: Evidence, candidates: Iterable[Candidate], settled: Mapping[str, date]) -> Limits:
    """The farm's wishes as limits, those of a breed for each breed that could stay."""
    settings, told = barn.herd.settings, tuple(candidates)
    breeds = sorted({one.breed for one in told})
    return Limits(
        cages=cages(settings),
        mouths=mouths(settings),
        feed_g=_feed(barn, told, settled),
        bucks={breed: bucks_a_breed(settings, breed or None) for breed in breeds},
        does={breed: does_a_breed(settings, breed or None) for breed in breeds},
        litters=_litters(settings, breeds),
        highest_coi=highest_coi(settings),
        caution=CAUTION[risk(settings)].value,
        feed_worth=figures.FEED_WORTH.value,
        coi_cost=figures.COI_COST_G.value,
        unmated=figures.UNMATED_G.value,
    )


def _feed(barn: Evidence, candidates: Sequence[Candidate], settled: Mapping[str, date]) -> float | None:
    """What the candidates may eat until spring [g]: what there is, less what is eaten whoever stays."""
    most = feed_limit(barn)
    if most is None:
        return None
    whatever = eating.winter_feed(barn, settled).total_g - sum(one.feed_g for one in candidates)
    return max(most - whatever, 0.0)


def feed_limit(barn: Evidence) -> float | None:
    """What the farm wants to spend on feed until spring [g]: the feed or the money that it told, whichever is less."""
    settings = barn.herd.settings
    money, feed = feed_money(settings), winter_feed(settings)
    told = [None if money is None else money / barn.cents_a_gram, None if feed is None else float(feed)]
    return min((one for one in told if one is not None), default=None)


def _litters(settings: Settings, breeds: Sequence[str]) -> dict[str, int]:
    """Litters wanted of each breed; of all together where the farm has one breed only."""
    told = {breed: litters_wanted(settings, breed) for breed in breeds if breed}
    if len(breeds) == 1 and not any(told.values()):
        told = {breeds[0]: litters_wanted(settings)}
    return {breed: wanted for breed, wanted in told.items() if wanted is not None}
