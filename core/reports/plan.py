"""What the verdicts come to: what holds each back, the feed it saves, the meat it gives, and what to heed before anybody acts."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Any

from core.handbook import growth, health
from core.herd.settings import cages, feed_money, mouths, spring, winter
from core.herd.state import Animal, Herd
from core.reports.ailing import ailing
from core.reports.evidence import Evidence
from core.reports.feeding import cents_a_gram
from core.reports.finding import Finding
from core.reports.holds import bound_until, withdrawal
from core.reports.verdict import VERDICTS, Saving, Verdict, heads
from core.reports.winter.eating import until_spring_g
from core.reports.winter.meat import meat
from core.reports.winter.timing import course_of
from core.reports.wording import called, grams, price, when


@dataclass(frozen=True, slots=True)
class Plan:
    """What the verdicts come to.

    heads      how many animals have each verdict
    a_day      what the herd eats a day now, and what the plan saves of it [g]
    to_spring  what it saves until spring [g, cents], `priced` where the farm told what feed costs
    meat       what the culls give, dressed [g], with its bounds; those under a withdrawal time give none
    """

    heads: dict[str, int]
    winter: date
    spring: date
    days: int
    a_day: tuple[float, float]
    to_spring: tuple[float, float]
    priced: bool
    meat: tuple[float, float, float]
    limits: dict[str, int | None]
    cautions: tuple[str, ...]

    def document(self) -> dict[str, Any]:
        """The plan as numbers."""
        return {
            **self.heads,
            "winter": self.winter.isoformat(),
            "spring": self.spring.isoformat(),
            "days_until_spring": self.days,
            "feed_grams_a_day": self.a_day[0],
            "feed_grams_a_day_saved": self.a_day[1],
            "feed_grams_saved_until_spring": self.to_spring[0],
            "cents_saved_until_spring": self.to_spring[1],
            "feed_price_told": self.priced,
            "meat_grams": self.meat[0],
            "meat_grams_low": self.meat[1],
            "meat_grams_high": self.meat[2],
            "limits": self.limits,
            "cautions": list(self.cautions),
        }

    def lines(self, herd: Herd, today: date) -> list[str]:
        """What the going saves and gives, and what to heed."""
        settings = herd.settings
        if not self.a_day[1]:
            return list(self.cautions)
        about = "" if self.priced else " at a common price"
        feed = f"That saves {grams(settings, self.a_day[1])} of feed a day of {grams(settings, self.a_day[0])}"
        feed += f", {grams(settings, self.to_spring[0])} ({price(settings, self.to_spring[1])}{about}) by {when(self.spring, today)}"
        likely, low, high = (grams(settings, each) for each in self.meat)
        dressed = f"; about {likely} of meat ({low} to {high})" if self.meat[0] else ""
        return [f"{feed}{dressed}.", *self.cautions]


def finished(barn: Evidence, one: Verdict) -> Verdict:
    """A verdict with what is seen of an animal that is not well; of one that goes, what holds it back and what that saves."""
    animal = barn.herd.animals.get(one.key)
    ill = ailing(barn, animal) if animal else None
    if animal and ill:
        one = _not_well(animal, one, ill)
    held = _held_back(barn, animal, one) if animal and one.going else one
    timed = replace(held, course=course_of(barn, held))
    return replace(timed, saving=saving_of(barn, timed)) if one.going else timed


def _not_well(animal: Animal, one: Verdict, ill: Finding) -> Verdict:
    """The verdict with the signs among its first reasons: nobody keeps, sells or eats a sick animal without knowing."""
    reasons = [each for each in one.reasons if each.code != "no_complaint"]
    place = 1 if one.pinned or one.going else 0
    cautions = (f"{called(animal)}: {health.ASK_BEFORE}",) if one.going else ()
    return replace(one, reasons=(*reasons[:place], ill, *reasons[place:]), cautions=(*one.cautions, *cautions))


def _held_back(barn: Evidence, animal: Animal, one: Verdict) -> Verdict:
    bound = bound_until(barn, animal)
    drug = withdrawal(barn, animal) if one.verdict == "cull" else None
    days = [day for day in (bound[0] if bound else None, drug[0] if drug else None) if day is not None]
    holds = tuple(finding for finding in (bound[1] if bound else None, drug[2] if drug else None) if finding is not None)
    reasons = (*one.reasons[:1], *holds, *one.reasons[1:])
    return replace(one, reasons=reasons, after=max(days, default=None), cautions=(*one.cautions, *((drug[1],) if drug else ())))


def saving_of(barn: Evidence, one: Verdict) -> Saving:
    """What its going saves until spring, from the day it may go, and the meat it gives then."""
    eater = barn.eaters[one.key]
    start = one.leaves(barn.today)
    fed = until_spring_g(barn, one.key, start)
    eaten = meat(barn, {one.key: start}).grams if one.verdict == "cull" and not one.cautions else 0.0
    return Saving(eater.grams(), fed, fed * cents_a_gram(barn.herd)[0], eaten)


def plan_of(barn: Evidence, verdicts: Sequence[Verdict]) -> Plan:
    """What the verdicts come to."""
    settings = barn.herd.settings
    savings = [one.saving for one in verdicts if one.saving is not None]
    until = spring(settings, barn.today)
    return Plan(
        heads={word: heads(one for one in verdicts if one.verdict == word) for word in VERDICTS},
        winter=winter(settings, barn.today),
        spring=until,
        days=max((until - barn.today).days, 0),
        a_day=(barn.feed_a_day, sum(one.grams_a_day for one in savings)),
        to_spring=(sum(one.grams_until_spring for one in savings), sum(one.cents_until_spring for one in savings)),
        priced=cents_a_gram(barn.herd)[1],
        meat=_bounds(sum(one.meat_grams for one in savings)),
        limits={"cages": cages(settings), "mouths": mouths(settings), "feed_money_cents": feed_money(settings)},
        cautions=_cautions(verdicts),
    )


def _bounds(dressed: float) -> tuple[float, float, float]:
    """Dressed meat [g], and the least and most that it may be, as dressing shares go."""
    share = growth.DRESSING_SHARE
    return dressed, dressed * share.low / share.value, dressed * share.high / share.value


def _cautions(verdicts: Sequence[Verdict]) -> tuple[str, ...]:
    """What to heed before anybody acts."""
    culls = [one for one in verdicts if one.verdict == "cull"]
    drugs = [caution for one in verdicts if one.going for caution in one.cautions]
    return (*drugs, *((health.SLAUGHTER, health.SELLING_MEAT) if culls else ()))
