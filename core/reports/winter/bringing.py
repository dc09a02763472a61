"""What an animal should bring, and by what: the worth that the choice weighed, in words and as numbers."""

from __future__ import annotations

from statistics import NormalDist
from typing import Any, Final

from core.herd.settings import Settings
from core.reports.evidence import Evidence
from core.reports.winter.worth import Term, Worth, worths
from core.reports.wording import grams
from core.words import count

#: How far from its mean a worth is likely to be [deviations]: eight times in ten it is nearer.
LIKELY: Final = NormalDist().inv_cdf(0.9)  # not a figure: a tenth on either side
#: How many matters of a worth are told, the greatest first.
TOLD: Final = 4
#: A matter of a worth in words, and what its count counts.
MATTERS: Final = {
    "usual_year": ("a usual doe's year", ""),
    "reserve": ("being there as a buck", ""),
    "takes": ("matings that take", "litter"),
    "age": ("litters of her age", ""),
    "litter_size": ("litter size", "litter"),
    "raises_kits": ("raising kits", "litter"),
    "kits_grow": ("growth", "weight"),
    "daughters": ("litters of his daughters", "litter"),
    "breeds_later": ("breeding only once grown", ""),
    "one_of_many": ("few young bucks are ever used", ""),
    "may_stay_light": ("it may stay light", "weight"),
    "bad_temper": ("temper", "note"),
    "bad_nest": ("nest manners", "note"),
    "ailing": ("not well", "note"),
    "disqualifying_fault": ("a disqualifying fault", "note"),
    "show_quality": ("show quality", "note"),
    "color_wanted": ("a color that you want", ""),
}


def likely(worth: Worth) -> tuple[float, float]:
    """Between which grams it is, eight times in ten."""
    off = LIKELY * worth.guess.deviation
    return worth.guess.value - off, worth.guess.value + off


def bringing_lines(barn: Evidence, key: str) -> list[str]:
    """What it should bring a year and by what; nothing of one that the choice did not weigh."""
    worth, settings = worths(barn).get(key), barn.herd.settings
    if worth is None:
        return []
    start, *others = worth.terms
    told = sorted((one for one in others if grams(settings, abs(one.grams)) not in NOTHING), key=lambda one: -abs(one.grams))[:TOLD]
    by = "; ".join([f"{_named(start)[0]} {grams(settings, start.grams)}", *(_said(settings, one) for one in told)])
    return [f"Should bring {brought(settings, worth)}: {by}."]


def brought(settings: Settings, worth: Worth) -> str:
    """A worth in words, with its bounds: `about 11 lb 7 oz of kits a year (likely 7 lb 4 oz to 15 lb 10 oz)`."""
    low, about, high = (grams(settings, max(each, 0.0)) for each in (likely(worth)[0], worth.guess.value, likely(worth)[1]))
    return "hardly any kits" if high in NOTHING else f"about {about} of kits a year (likely {low} to {high})"


#: Weights that are told as none.
NOTHING: Final = frozenset({"0 oz", "0 g"})


def _named(term: Term) -> tuple[str, str]:
    return MATTERS.get(term.code, (term.code.replace("_", " "), ""))


def _said(settings: Settings, term: Term) -> str:
    name, what = _named(term)
    by = f" ({count(term.count, what)})" if what and term.count else ""
    return f"{name} {'+' if term.grams > 0 else '−'}{grams(settings, abs(term.grams))}{by}"


def worth_document(worth: Worth) -> dict[str, Any]:
    """A worth as numbers."""
    low, high = likely(worth)
    terms = [{"code": one.code, "grams": one.grams, "deviation": one.deviation, "count": one.count} for one in worth.terms]
    return {"grams": worth.guess.value, "low": low, "high": high, "one_more_grams": worth.one_more, "terms": terms}
