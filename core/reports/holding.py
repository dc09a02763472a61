"""What an adult needs to hold its condition, by what it was fed and how it fared: the buck on a quarter of another's feed.

The hand on the backbone is the scale of an adult: a ration that holds condition is its need, one that adds or takes half a point
was too much or too little. Half a point is soon felt wrong and a cup is not always full, so the answer leans on the handbook's
expectation for its weight, the more the fewer days it was fed so.
"""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from math import hypot
from typing import Any

from core.handbook import feeding
from core.herd.questions import stage
from core.herd.settings import Settings
from core.herd.state import Animal, Herd
from core.reckon.feed import Holding, HoldingFigures, need_to_hold
from core.reports.feeding import eater, ration_of
from core.reports.wording import grams
from core.words import OUNCE_G, count, share

CHANGED = 0.5  # not a figure: half a point, the finest that conditions are scored


@dataclass(frozen=True, slots=True)
class Held:
    """How an adult fared on its ration.

    told, expected   what it gets, and what the handbook expects for its weight [g a day]
    score, points    its newest condition, and how that changed on the ration; from the ideal where it was scored only once
    days             on the ration until that score
    need             what it needs to hold its condition
    """

    told: float
    expected: float
    score: float
    points: float
    days: int
    need: Holding

    @property
    def frugal(self) -> bool:
        """Keeps its flesh on far less than its weight should need: it is a good doer, or the measure is wrong."""
        return self.score >= feeding.CONDITION_THIN_BELOW.value and self.need.high < self.expected * feeding.FRUGAL_TIMES.value

    def document(self) -> dict[str, Any]:
        """The same as numbers."""
        return {
            "ration_grams": self.told,
            "expected_grams": self.expected,
            "need_grams": self.need.need,
            "need_low": self.need.low,
            "need_high": self.need.high,
            "condition": self.score,
            "condition_change": self.points,
            "days": self.days,
            "frugal": self.frugal,
        }


def held(herd: Herd, animal: Animal, today: date) -> Held | None:
    """How a dry adult fared on its ration; None without a ration, or before a score of its condition can show what it does."""
    found = eater(herd, animal, today)
    ration = ration_of(herd, animal, stage(herd, animal, today)) if found is not None else None
    if found is None or found.mouth is None or found.told is None or ration is None or found.mouth.state != "dry":
        return None
    scores = [(on, score) for on, score in sorted(animal.conditions) if on <= today]
    before = [one for one in scores if (one[0] - ration.on).days < feeding.HOLDING_FROM_DAYS.value]
    since = [one for one in scores if (one[0] - ration.on).days >= feeding.HOLDING_FROM_DAYS.value]
    if not since:
        return None
    last, score = since[-1]
    own_error = feeding.CONDITION_SCORE_SD.value
    began, start, error = (*before[-1], own_error) if before else (ration.on, feeding.CONDITION_IDEAL.value, _IDEAL_SD)
    days, expected, weight = (last - max(began, ration.on)).days, found.need(), found.mouth.weight_g or 0.0
    need = need_to_hold(
        expected, found.told, weight, points=score - start, points_sd=hypot(own_error, error), days=days, figures=_holding()
    )
    return Held(found.told, expected, score, score - start, days, need)


#: How far the condition of an adult that was not scored may be from the ideal [points]: half of the ideal's range.
_IDEAL_SD = (feeding.CONDITION_IDEAL.high - feeding.CONDITION_IDEAL.low) / 2


def _holding() -> HoldingFigures:
    return HoldingFigures(
        need_cv=feeding.NEED_CV.value,
        ration_cv=feeding.RATION_CV.value,
        point_share=feeding.CONDITION_POINT_SHARE.value,
        feed_a_gram=feeding.FEED_A_GRAM_OF_CONDITION.value,
    )


def held_lines(herd: Herd, found: Held) -> list[str]:
    """How it fared and what it needs; where that is far less than usual, what may be behind it."""
    settings, need = herd.settings, found.need
    went = "holds" if abs(found.points) < CHANGED else "gained" if found.points > 0 else "lost"
    fared = f"{went.capitalize()} condition ({found.score:g} after {count(found.days, 'day')} on {a_day(settings, found.told)} a day)"
    likely = f"likely {a_day(settings, need.low)} to {a_day(settings, need.high)}"
    line = f"{fared}: needs about {a_day(settings, need.need)} a day to hold it ({likely})."
    frugal = f"That is {share(need.need / found.expected)} of what its weight should need: a good doer, or the measure is off. Weigh its ration once."
    return [line, frugal] if found.frugal else [line]


def a_day(settings: Settings, weight_g: float) -> str:
    """A ration, finer than other weights: `3.6 oz`, `102 g`."""
    return f"{weight_g / float(OUNCE_G):.1f} oz" if settings.weight_units == "lb" else grams(settings, weight_g)


def unheld_lines(herd: Herd, animal: Animal, today: date) -> list[str]:
    """What to note so that a dry adult's need is known: its ration, and its condition some weeks after that was told."""
    found = eater(herd, animal, today)
    if found is None or found.mouth is None or found.mouth.state != "dry":
        return []
    if found.told is None:
        return [f"Note its ration and its condition ({animal.tag} bcs 3) and I can tell what it needs."]
    wait = f"{count(feeding.HOLDING_FROM_DAYS.whole, 'day')} or more on this ration"
    return [f"Note its condition after {wait} ({animal.tag} bcs 3) and I can tell what it needs to hold it."]
