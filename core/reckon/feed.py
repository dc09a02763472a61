"""What the barn eats: a rabbit's need a day, the herd's until a date, and how long the feed lasts.

All grams are of pellets as fed. The figures come in as `FeedFigures`; the handbook says where they are from.
"""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from math import ceil, sqrt

from core.reckon.curve import weight_at_age
from core.reckon.interval import LEVEL, reach

_WEEK = 7  # not a figure: days in a week
_KG = 1000  # not a figure: grams in a kilogram

#: What a mouth may be: `dry` (bucks, open does, juniors), `pregnant`, `lactating`, `both`, `growing`.
STATES = ("dry", "pregnant", "lactating", "both", "growing")


@dataclass(frozen=True, slots=True, kw_only=True)
class FeedFigures:
    """The figures of feeding.

    dry_share, pregnant_share, lactating_share   need a day as a share of live weight [g/g]
    kit_g, kits_eat_from_day                     extra a kit a day [g], from that age of the litter [days] until weaned
    grower_g, metabolic_power                    what a grower of 1 kg eats [g/day]; others by weight to this power
    level_from_day                               age [days] from which a grower eats no more, though it still grows
    curve_b, curve_k                             of the growth curve (Gompertz): how far one has grown since that age
    cold_below_c, cold_share                     air temperature [C] below which need rises, and by what share a degree
    """

    dry_share: float
    pregnant_share: float
    lactating_share: float
    kit_g: float
    kits_eat_from_day: int
    grower_g: float
    metabolic_power: float
    level_from_day: float
    curve_b: float
    curve_k: float
    cold_below_c: float
    cold_share: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Mouth:
    """One rabbit, or `count` alike, at the feed dish.

    state      one of STATES
    weight_g   live weight [g]; a grower's may be None, then its breed's curve is used
    age_days   of a grower
    adult_g    the weight a grower is heading for [g]
    kits, kits_age_days   of a nursing doe
    """

    state: str
    weight_g: float | None = None
    age_days: float = 0.0
    adult_g: float = 0.0
    kits: int = 0
    kits_age_days: float = 0.0
    count: int = 1


def daily_need(mouth: Mouth, figures: FeedFigures, celsius: float | None = None) -> float:
    """Pellets [g/day] for all rabbits of this mouth at an air temperature [C] (None: no cold)."""
    need = _growing(mouth, figures) if mouth.state == "growing" else _grown(mouth, figures)
    return need * mouth.count * cold_factor(figures, celsius)


def cold_factor(figures: FeedFigures, celsius: float | None) -> float:
    """How much more is eaten in the cold: 1 + share x degrees below the line."""
    return 1 + figures.cold_share * max(0.0, figures.cold_below_c - celsius) if celsius is not None else 1.0


def eaten_growing(weight_at: Callable[[float], float], ages: range, figures: FeedFigures) -> float:
    """Pellets [g] that a grower on this curve (age [days] -> weight [g]) eats over these days of age."""
    return sum(daily_need(Mouth(state="growing", weight_g=weight_at(age), age_days=age), figures) for age in ages)


def stops_paying(
    weight_at: Callable[[float], float], ages: range, figures: FeedFigures, *, feed_cents_a_g: float, live_cents_a_g: float
) -> int | None:
    """The first week of age [weeks], of those that begin within `ages`, whose feed costs more than its gain is worth; None where none does.

    Weeks are whole ones: week 12 is from 84 to 91 days.
    """
    for week in range(ceil(ages.start / _WEEK), ceil(ages.stop / _WEEK)):
        days = range(week * _WEEK, (week + 1) * _WEEK)
        gained = weight_at(days.stop) - weight_at(days.start)
        if eaten_growing(weight_at, days, figures) * feed_cents_a_g > gained * live_cents_a_g:
            return week
    return None


@dataclass(frozen=True, slots=True, kw_only=True)
class HoldingFigures:
    """The figures of an adult's own need.

    need_cv, ration_cv   how far needs of one weight differ, and how far a ration is off, as shares
    point_share          body weight that a point of condition is [g/g]
    feed_a_gram          feed that a gram put on takes, or a gram lost stands in for [g/g]
    """

    need_cv: float
    ration_cv: float
    point_share: float
    feed_a_gram: float


@dataclass(frozen=True, slots=True)
class Holding:
    """What one adult needs a day to hold its condition [g], with its interval, and the share of its ration in that answer."""

    need: float
    deviation: float
    learned: float
    level: float = LEVEL

    @property
    def low(self) -> float:
        """Lower end of the interval [g a day]."""
        return max(self.need - reach(self.level) * self.deviation, 0.0)

    @property
    def high(self) -> float:
        """Upper end of the interval [g a day]."""
        return self.need + reach(self.level) * self.deviation


def need_to_hold(  # noqa: PLR0913 - what it gets, what it weighs, and how it fared on it
    expected_g: float, told_g: float, weight_g: float, *, points: float, points_sd: float, days: int, figures: HoldingFigures
) -> Holding:
    """What an adult needs a day, from its ration and what that did to its condition over so many days.

    What it got [g a day] less what went on its back: need = ration - points x (body weight a point) x (feed a gram) / days, off by
    the scores' error and the measure's. Weighed against the handbook's expectation for its weight, each by its precision.
    `points_sd` is the error of the change.
    """
    a_point = weight_g * figures.point_share * figures.feed_a_gram / days
    seen, seen_variance = told_g - points * a_point, (points_sd * a_point) ** 2 + (told_g * figures.ration_cv) ** 2
    believed_variance = (expected_g * figures.need_cv) ** 2
    learned = believed_variance / (believed_variance + seen_variance)
    need = max(expected_g + learned * (seen - expected_g), 0.0)
    return Holding(need, sqrt(believed_variance * (1 - learned)), learned)


def _grown(mouth: Mouth, figures: FeedFigures) -> float:
    """Need [g/day] as a share of live weight, and the kits' own. A doe both nursing and pregnant eats as a nursing one."""
    shares = {
        "dry": figures.dry_share,
        "pregnant": figures.pregnant_share,
        "lactating": figures.lactating_share,
        "both": max(figures.lactating_share, figures.pregnant_share),
    }
    eating = mouth.kits if mouth.state in ("lactating", "both") and mouth.kits_age_days >= figures.kits_eat_from_day else 0
    return shares[mouth.state] * (mouth.weight_g or 0.0) + eating * figures.kit_g


def _growing(mouth: Mouth, figures: FeedFigures) -> float:
    """Need [g/day] of a grower: by its metabolic weight, grower_g x (kg)^power; from the level day on, by what it weighed that day.

    That intake goes with W^0.75: Cervera, Blas & Fernandez-Carmona 1997, World Rabbit Science, article 322 (abstract); that energy
    needs do: Diaz Arca et al. 1999, Animal Research 48:289-295 (abstract).
    """
    weight = mouth.weight_g
    if weight is None:
        weight = weight_at_age(mouth.age_days, mouth.adult_g, figures.curve_b, figures.curve_k)
    since = min(mouth.age_days, figures.level_from_day)
    grown = weight_at_age(since, 1.0, figures.curve_b, figures.curve_k) / weight_at_age(
        mouth.age_days, 1.0, figures.curve_b, figures.curve_k
    )
    return figures.grower_g * float((weight * grown / _KG) ** figures.metabolic_power)
