"""A doe's working life: how large her litters are for their number, what her matings came to, how long she stood open, what she weans a year."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from datetime import date
from functools import lru_cache
from itertools import pairwise
from statistics import fmean
from typing import Any

from core.handbook import reproduction
from core.handbook import survival as figures
from core.herd.litters import litters_of
from core.herd.matings import matings_of
from core.herd.questions import events
from core.herd.state import Animal, Litter, Mating
from core.reckon.does_together import Belief, does_together
from core.reckon.litters_together import LitterSize
from core.reckon.survival import Survival
from core.reckon.trend import SurvivalTrend, survival_trend
from core.reports.evidence import Evidence
from core.reports.growing import breed_curve
from core.reports.litter_size import size_document, size_lines, size_of
from core.reports.survival import Raised
from core.reports.wording import grams, how_sure
from core.words import count, listed, share

DAYS_IN_YEAR = 365.25  # not a figure: days in a year
WEEK = 7  # not a figure: days in a week


@dataclass(frozen=True, slots=True)
class DoeLife:
    """What a doe's book adds up to.

    tries, settled   matings that ended, those made again within days as one, and those that gave a litter
    refused          times she would not lift
    takes            her chance that a mating settles, leaning on the herd's; None before her first mating ended
    days_open        from each kindling to the mating that gave the next litter [days]
    open_now         days since she last kindled, where no litter followed and no mating is open; else None
    size             her litters' size: level, trend, the next one
    raising_falls    the chance that she raises her kits worse from litter to litter; None with fewer than two finished ones
    weaned_a_year    kits and grams weaned a year since her first kindling; None in her first months
    """

    tries: int
    settled: int
    refused: int
    takes: Survival | None
    days_open: tuple[int, ...]
    open_now: int | None
    size: LitterSize
    raising_falls: float | None
    weaned_a_year: float | None
    grams_a_year: float | None

    def document(self) -> dict[str, Any]:
        """The same as numbers."""
        takes = self.takes
        return {
            "matings": self.tries,
            "settled": self.settled,
            "missed": self.tries - self.settled,
            "refused": self.refused,
            "takes": {"estimate": takes.estimate, "low": takes.low, "high": takes.high} if takes else None,
            "days_open": list(self.days_open),
            "days_open_mean": fmean(self.days_open) if self.days_open else None,
            "open_now": self.open_now,
            "litter_size": size_document(self.size),
            "chance_raising_falls": self.raising_falls,
            "kits_weaned_a_year": self.weaned_a_year,
            "grams_weaned_a_year": self.grams_a_year,
        }


def tries(matings: Iterable[Mating]) -> list[tuple[date, bool]]:
    """Her matings that ended, day and whether a litter came of them; those made again within days are one try."""
    told: list[tuple[date, bool]] = []
    for mating in matings:
        if mating.outcome is None:
            continue
        settled = mating.outcome == "kindled"
        again = bool(told) and (mating.on - told[-1][0]).days <= reproduction.SAME_TRY_DAYS.value
        if not again:
            told.append((mating.on, settled))
        elif settled:
            told[-1] = (told[-1][0], True)
    return told


@lru_cache(maxsize=4)
def takes_of(barn: Evidence) -> Mapping[str, Survival]:
    """Every mated doe's chance that a mating settles, leaning on the herd's."""
    by_doe: dict[str, list[Mating]] = {}
    for mating in barn.herd.matings:
        by_doe.setdefault(mating.doe, []).append(mating)
    ended = {doe: [(1, int(settled)) for _, settled in tries(each)] for doe, each in by_doe.items()}
    belief = Belief(
        mean=reproduction.USUAL_CONCEPTION.value,
        mean_weight=figures.PRIOR_MEAN_WEIGHT.value,
        weight=reproduction.CONCEPTION_WEIGHT.value,
        weight_spread=figures.PRIOR_WEIGHT_SPREAD.value,
        likeness=figures.LITTER_SPREAD.value,
        likeness_spread=figures.LITTER_SPREAD_SPREAD.value,
    )
    return does_together({doe: told for doe, told in ended.items() if told}, belief).does


def doe_life(barn: Evidence, doe: Animal) -> DoeLife:
    """A doe's working life so far."""
    matings = matings_of(barn.herd, doe.key)
    litters = litters_of(barn.herd, doe.key)
    ended = tries(matings)
    days_open = []
    for earlier, later in pairwise(litters):
        served = [one.on for one in matings if one.outcome == "kindled" and one.ended_on == later.born_on and one.on >= earlier.born_on]
        days_open += [(served[0] - earlier.born_on).days] if served else []
    waiting = litters and not any(one.outcome is None and one.on >= litters[-1].born_on for one in matings)
    kits, weight = _weaned_a_year(barn, doe, litters)
    return DoeLife(
        tries=len(ended),
        settled=sum(settled for _, settled in ended),
        refused=len(events(doe, "refused")),
        takes=takes_of(barn).get(doe.key),
        days_open=tuple(days_open),
        open_now=(barn.today - litters[-1].born_on).days if waiting and doe.living else None,
        size=size_of(barn, doe),
        raising_falls=trend.chance_of_fall if (trend := raising_trend(barn, doe)) else None,
        weaned_a_year=kits,
        grams_a_year=weight,
    )


def _weaned_a_year(barn: Evidence, doe: Animal, litters: tuple[Litter, ...]) -> tuple[float | None, float | None]:
    """Kits and grams weaned a year, from her first kindling to today or to the day she left."""
    dam = barn.dams.get(doe.key)
    days = ((doe.gone.on if doe.gone else barn.today) - litters[0].born_on).days if litters else 0
    if dam is None or days < figures.FULL_YEAR_DAYS.value:
        return None, None
    years = days / DAYS_IN_YEAR
    return dam.kept / years, sum(one.kept * _weaning_weight(barn, doe, one) for one in dam.litters) / years


def _weaning_weight(barn: Evidence, doe: Animal, one: Raised) -> float:
    """A kit's weight when the litter was weaned [g]: as weighed that week, else as the breed's young weigh on this farm."""
    litter = one.litter
    on = litter.weaned_on
    near = [each for each in litter.weighings if on is not None and abs((each[0] - on).days) <= WEEK and (each[2] or one.kept)]
    if near:
        _, weight, kits = near[-1]
        return weight / (kits or one.kept)
    age = (on - litter.born_on).days if on is not None else figures.FINISHED_DAYS.whole
    return breed_curve(barn, doe.breed).weight_at(age)


def life_lines(barn: Evidence, doe: Animal) -> list[str]:
    """Her working life in words, a line a matter."""
    life, lines = doe_life(barn, doe), []
    if life.tries or life.refused:
        told = [f"{count(life.tries, 'mating')}, {life.settled} took"]
        told += [f"refused {count(life.refused, 'time')}"] if life.refused else []
        told += [how_sure("allowing for luck a mating", "takes", life.takes.estimate)] if life.takes else []
        told += [f"open {fmean(life.days_open):.0f} days after kindling on average"] if life.days_open else []
        lines.append(f"{'; '.join(told)}.")
    if life.weaned_a_year is not None and life.grams_a_year is not None:
        lines.append(f"Weans {life.weaned_a_year:.0f} kits a year, {grams(barn.herd.settings, life.grams_a_year)}.")
    return [*size_lines(barn, doe), *lines, *_raises_worse(barn, doe), *_dead_born(barn, doe)]


def raising_trend(barn: Evidence, doe: Animal) -> SurvivalTrend | None:
    """How her share of kits raised moves from litter to litter, weather and predators apart; None with fewer than two litters."""
    dam = barn.dams.get(doe.key)
    return survival_trend([(one.alive, one.kept) for one in dam.litters], figures.TREND_PRIOR_SD.value) if dam else None


def _raises_worse(barn: Evidence, doe: Animal) -> list[str]:
    """That she raises worse litter by litter, where that is likely no accident."""
    trend = raising_trend(barn, doe)
    if trend is None or trend.litters < figures.SHRINKING_FROM_LITTERS.value or trend.chance_of_fall < figures.SHRINKING_CHANCE.value:
        return []
    told = listed(f"{one.kept} of {one.alive}" for one in barn.dams[doe.key].litters)
    return [f"Raises them worse from litter to litter: {told}; {how_sure('that is', 'more than luck', trend.chance_of_fall)}."]


def _dead_born(barn: Evidence, doe: Animal) -> list[str]:
    """Her dead-born, where they are surely more than usual and it is she who shows it, not her herd mates."""
    dam = barn.dams.get(doe.key)
    births = dam.births if dam else None
    usual = reproduction.USUAL_STILLBORN.value
    if births is None or 1 - births.high <= usual or births.kept / births.alive > births.estimate:
        return []
    return [f"{births.alive - births.kept} of {births.alive} born dead; {share(usual)} is usual."]
