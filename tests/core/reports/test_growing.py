"""Where young ones are heading: the day of the target, the feed until then, when it stops paying, and who is a runt."""

from __future__ import annotations

import pytest

from core.handbook import growth
from core.reckon.curve import weight_at_age
from core.reports.growing import curve_for, curves, heading, heading_lines
from core.reports.growth import curve_of
from core.reports.merits import merits, too_young
from tests.farm import TODAY, ago
from tests.herds import Barn

CURVE = curve_of("New Zealand", "buck")
NEARLY = 0.65


def pen(*, share: float = 1.0, own: float = 1.0, age: int = 75) -> Barn:
    """Eight bucks of one age, all `share` of the handbook's curve, and R1 `own` of theirs, weighed at odd ages."""
    barn = Barn()
    for at in range(8):
        tag, part = f"R{at + 1}", share * (own if at == 0 else 1)
        barn.buck(tag, age)
        for day in (38 + at % 3, 55 + at % 5, age - 2):
            barn.weigh(tag, round(part * weight_at_age(day, *CURVE)), age - day)
    return barn


def test_a_young_buck_on_the_curve_makes_the_target_on_its_day() -> None:
    """Around the day on which the curve passes it, with feed and its price until then."""
    barn = pen()
    told = heading(barn.seen, barn.find("R1"))
    assert told.on is not None
    assert told.early is not None
    assert told.late is not None
    assert told.feed is not None
    assert told.cents is not None
    assert TODAY <= told.early <= told.on <= told.late
    days = (told.on - barn.find("R1").born).days  # type: ignore[operator]  # born is known
    assert weight_at_age(days, *CURVE) == pytest.approx(told.target, rel=0.03)
    assert (told.on - TODAY).days * 130 < told.feed < (told.on - TODAY).days * 170
    assert told.chance_ever is not None
    assert told.chance_ever > 0.9
    assert not told.runt
    assert told.of_herd == pytest.approx(1, abs=0.02)
    [first, second] = heading_lines(barn.seen, barn.find("R1"))
    assert first.startswith("Makes 5 lb about ")
    assert second.startswith("From week ")
    assert told.costly_week is not None
    assert 11 <= told.costly_week <= 13


def test_dear_feed_stops_paying_sooner() -> None:
    """The farm's own price moves the week; feed for next to nothing always pays."""
    free = pen().set("feed_price", "0.10")
    assert heading(free.seen, free.find("R1")).costly_week is None
    assert len(heading_lines(free.seen, free.find("R1"))) == 1
    cheap, dear = pen().set("feed_price", "15.00"), pen().set("feed_price", "22.00")
    one, other = (heading(each.seen, each.find("R1")).costly_week for each in (cheap, dear))
    assert one is not None
    assert other is not None
    assert other < one


def test_a_runt_is_one_by_its_mates_and_by_the_target() -> None:
    """At 60 % of its mates it is told to be checked, and will hardly make the target."""
    barn = pen(own=0.6)
    told = heading(barn.seen, barn.find("R1"))
    assert told.runt
    assert told.chance_light is not None
    assert told.chance_light > 0.9
    assert "A runt so far" in heading_lines(barn.seen, barn.find("R1"))[-1]


def test_a_whole_pen_far_below_the_target_is_seen_by_the_target_alone() -> None:
    """Alike and all light: no runt among its mates, each one by the breed's target."""
    barn = pen(share=0.5)
    told = heading(barn.seen, barn.find("R2"))
    assert told.of_herd is not None
    assert told.of_target is not None
    assert told.of_herd > growth.RUNT_SHARE.value > told.of_target
    assert told.runt
    assert told.on is None
    assert heading_lines(barn.seen, barn.find("R2"))[0].startswith("Not likely to make 5 lb")


def test_one_that_has_made_it_needs_no_date() -> None:
    """Reached: no day, no line."""
    barn = Barn().buck("R1", 110).weigh("R1", 2600, 1)
    told = heading(barn.seen, barn.find("R1"))
    assert (told.reached, told.chance_ever, told.on, told.feed) == (True, 1.0, None, None)
    assert heading_lines(barn.seen, barn.find("R1")) == []


def test_without_a_birth_date_only_the_target_is_known() -> None:
    """Nothing is guessed."""
    barn = Barn().buck("R1", None)
    told = heading(barn.seen, barn.find("R1"))
    assert (told.target, told.reached, told.chance_ever, told.runt) == (growth.TARGET_G.whole, False, None, False)
    assert heading_lines(barn.seen, barn.find("R1")) == []


def test_one_never_weighed_has_its_breeds_curve() -> None:
    """A breed that the farm never weighed has the handbook's; its shares are not known."""
    barn = Barn().doe("R1", 60).say("died", who="R1", on=ago(1))
    assert curve_for(barn.seen, barn.find("R1")).weight_at(70) == pytest.approx(weight_at_age(70, *curve_of("New Zealand", "doe")))
    alive = Barn().doe("R1", 60)
    told = heading(alive.seen, alive.find("R1"))
    assert (told.of_herd, told.of_target, told.runt) == (None, None, False)


def test_one_that_may_never_make_it_says_so() -> None:
    """Light for its breed: more likely than not it makes the target, but there is no day by which that is likely."""
    barn = pen(share=NEARLY)
    told = heading(barn.seen, barn.find("R2"))
    assert told.on is not None
    assert told.late is None
    assert "or never" in heading_lines(barn.seen, barn.find("R2"))[0]


def test_old_and_suckling_weights_do_not_bend_the_curve() -> None:
    """Only weights between three weeks and half a year are used."""
    barn = Barn().doe("14", 400).weigh("14", 4800, 5).weigh("14", 2000, 330).weigh("14", 150, 392)
    assert curves(barn.seen)["new zealand"].animals["14"].weighings == 1


def test_the_document_has_every_number_by_name() -> None:
    """Days in ISO form, shares unrounded, unknown null."""
    told = heading((barn := pen()).seen, barn.find("R3")).document()
    assert told["target_on"] > TODAY.isoformat()
    assert told["target_reached"] is False
    assert {"feed_grams_to_target", "costly_from_week", "share_of_herd", "share_of_target", "target_chance_ever"} <= set(told)


def test_the_line_says_what_it_stands_on() -> None:
    """Its own weights and its mates'; one never weighed is to be weighed; alone of its breed the handbook's curve stands in."""
    barn = pen().buck("R9", 70)
    own, unweighed = (heading_lines(barn.seen, barn.find(tag))[0] for tag in ("R1", "R9"))
    assert own.endswith("by 3 weights of its own and 7 of its breed weighed here.")
    assert unweighed.endswith("by 8 of its breed weighed here: weigh it to know better.")
    alone = Barn().buck("R1", 70)
    assert heading_lines(alone.seen, alone.find("R1"))[0].endswith("by the handbook's curve for its breed: weigh it to know better.")


def test_where_it_is_heading_is_a_reason_of_its_verdict() -> None:
    """A grow-out's weight tells the day of its target; a runt is told first; one that made it needs no day."""
    barn = pen(own=0.6)
    light, fine = (merits(barn.seen, barn.find(tag)) for tag in ("R1", "R2"))
    assert (light[0].code, light[0].evidence["runt"]) == ("runt", True)
    assert [one.code for one in fine] == ["weight"]
    assert "Makes 5 lb about " in fine[0].text
    done = Barn().buck("R1", 110).weigh("R1", 2600, 1)
    assert "Makes" not in merits(done.seen, done.find("R1"))[-1].text


def test_a_young_one_never_weighed_is_to_be_weighed() -> None:
    """What to note next is said."""
    barn = Barn().buck("R1", 80)
    assert "never weighed; weigh it now, and weigh at 16 weeks (5 lb wanted)" in too_young(barn.seen, barn.find("R1")).text


def test_one_that_should_have_made_it_by_now_is_to_be_weighed() -> None:
    """Its last weight is weeks old and its curve is past the target: no day is told."""
    barn = Barn().buck("R1", 110).weigh("R1", 2100, 40).weigh("R1", 1700, 52)
    assert heading_lines(barn.seen, barn.find("R1"))[0].startswith("Should weigh 5 lb by now: weigh it, by 2 weights of its own")
