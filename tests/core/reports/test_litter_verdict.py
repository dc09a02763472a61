"""The verdict on a weaned litter's untagged kits: when they make their weight, and what to note."""

from __future__ import annotations

from core.handbook import growth
from core.reckon.curve import weight_at_age
from core.reports.growth import curve_of
from core.reports.keep_or_cull import keep_or_cull
from core.reports.verdict import Verdict
from tests.farm import TODAY, ago
from tests.herds import Barn

KITS = 5


def weaned(breed: str = "New Zealand", age: int = 70) -> Barn:
    """Five weaned kits of that age without tags."""
    return Barn().doe("16", breed=breed).buck("3", breed=breed).litter("16", "3", age, KITS, weaned=KITS)


def weighed(barn: Barn, share: float = 1.0, age: int = 60, days_ago: int = 10) -> Barn:
    """All of them on the scale at that age, at a share of the handbook's curve."""
    mean = share * weight_at_age(age, *curve_of("New Zealand"))
    return barn.say("litter_weighed", doe="16", grams=round(mean * KITS), count=KITS, on=ago(days_ago))


def verdict_on(barn: Barn) -> Verdict:
    """The one on the litter."""
    return next(one for one in keep_or_cull(barn.herd, TODAY).verdicts if one.tag is None)


def test_the_mean_kits_day_of_the_target_is_told() -> None:
    """Lighter kits make it later; the days stand in the evidence."""
    usual, light = (verdict_on(weighed(weaned(), share)).reasons[0] for share in (1.0, 0.85))
    assert "a kit at 8 weeks; 5 lb a kit about " in usual.text
    assert usual.text.endswith(": tag and weigh them at 16 weeks, then decide.")
    assert TODAY.isoformat() < usual.evidence["target_early"] <= usual.evidence["target_on"] <= usual.evidence["target_late"]
    assert usual.evidence["target_on"] < light.evidence["target_on"]


def test_kits_that_may_never_make_it_are_told_so() -> None:
    """Where it is not likely there is no day; where it is not sure, `or never`."""
    high = weighed(weaned().set("target_weight", 6000, "New Zealand"))
    hopeless, unsure = (verdict_on(each).reasons[0] for each in (high, weighed(weaned(), 0.4)))
    assert "; not likely to make 13 lb 4 oz: tag" in hopeless.text
    assert hopeless.evidence["target_on"] is None
    assert "or never" in unsure.text


def test_a_litter_never_weighed_goes_by_its_breed() -> None:
    """And says so; a birth weight is none that tells."""
    never = verdict_on(weaned()).reasons[0]
    newborn = verdict_on(weaned().say("litter_weighed", doe="16", grams=300, count=KITS, on=ago(69))).reasons[0]
    assert never.text.startswith("10 weeks old, never weighed; 5 lb a kit about ")
    assert newborn.evidence["target_on"] == never.evidence["target_on"]


def test_kits_that_should_have_made_it_get_no_day() -> None:
    """Past sixteen weeks and heavy when last weighed: there is nothing to wait for."""
    barn = weaned(age=150)
    barn.say("litter_weighed", doe="16", grams=growth.TARGET_G.whole * KITS + 2000, count=KITS, on=ago(30))
    assert " about " not in verdict_on(barn).reasons[0].text
