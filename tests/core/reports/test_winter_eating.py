"""The feed until spring, day by day: who eats what when, with everybody and without some."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from core.herd.state import Litter
from core.reports.winter.dishes import coming_litters, diners
from core.reports.winter.eating import a_day_g, series, until_spring_g, winter_feed
from tests.farm import TODAY, ago
from tests.herds import Barn

DAYS = 127  # from 25 November to the first of April


def on(days: int) -> date:
    """The day so many days from today."""
    return TODAY + timedelta(days)


def grams(barn: Barn, day: int, **leaving: date) -> float:
    """What all eat on that day [g]."""
    return winter_feed(barn.seen, leaving).days[day][2]


def mouths(barn: Barn, day: int) -> float:
    """How many are at a dish on that day."""
    return winter_feed(barn.seen, {}).days[day][1]


def mixed() -> Barn:
    """A buck, a dry doe, a nursing one and one in kindle, a grow-out and a weaned litter."""
    barn = Barn().buck("3").doe("9").doe("10").doe("11").doe("12").litter("10", "3", 20, 7).litter("12", "3", 60, 6, weaned=5)
    barn.say("bred", doe="11", buck="3", on=ago(10))
    return barn.doe("31", age=100).weigh("31", 2200)


def test_the_whole_is_the_sum_of_the_days_and_of_the_groups() -> None:
    """With everybody, and with some that leave on their days."""
    barn = mixed()
    for leaving in ({}, {"3": on(10), "31": TODAY, "12@" + ago(60).isoformat(): on(30)}):
        told = winter_feed(barn.seen, leaving)
        assert len(told.days) == DAYS
        assert told.total_g == pytest.approx(sum(each[2] for each in told.days))
        assert told.total_g == pytest.approx(sum(told.groups.values()))
        assert told.bags * 22680 == pytest.approx(told.total_g)


def test_the_whole_is_the_sum_of_the_dishes() -> None:
    """Each dish's own grams until spring."""
    barn = mixed()
    assert sum(until_spring_g(barn.seen, one.key) for one in diners(barn.seen)) == pytest.approx(winter_feed(barn.seen, {}).total_g)


def test_who_leaves_eats_until_the_day_before() -> None:
    """What leaving saves is the dish from that day on; the others' days stay."""
    barn = Barn().buck("3").weigh("3", 4000).buck("4").weigh("4", 4000)
    whole, plan = winter_feed(barn.seen, {}), winter_feed(barn.seen, {"4": on(27)})
    assert whole.total_g - plan.total_g == pytest.approx(100 * 4000 * 0.033)
    assert until_spring_g(barn.seen, "4", on(27)) == pytest.approx(100 * 4000 * 0.033)
    assert [each[1] for each in plan.days[26:28]] == [2, 1]


def test_an_unknown_dish_and_a_day_past_spring_take_nothing() -> None:
    """Nothing to save there, nothing to break either."""
    barn = Barn().buck("3")
    assert until_spring_g(barn.seen, "77") == 0
    assert until_spring_g(barn.seen, "3", on(400)) == 0
    assert winter_feed(barn.seen, {"77": TODAY}).total_g == winter_feed(barn.seen, {}).total_g


def test_an_own_ration_holds_every_day() -> None:
    """The farm's own word goes before the handbook."""
    barn = Barn().buck("3").say("ration", who="3", amount=100.0, unit="g")
    assert until_spring_g(barn.seen, "3") == pytest.approx(100 * DAYS)


def test_a_grow_out_grows_and_then_eats_as_an_adult() -> None:
    """The grow-outs' ration until it is a junior, its sex's from then on."""
    barn = Barn().doe("31", age=100).weigh("31", 2200)
    barn.say("ration", scope="grow-outs", amount=90.0, unit="g").say("ration", scope="does", amount=120.0, unit="g")
    assert [grams(barn, day) for day in (0, 51, 52, 100)] == [90, 90, 120, 120]
    told = winter_feed(barn.seen, {}).groups
    assert (told["grow-out"], told["doe"]) == pytest.approx((52 * 90, (DAYS - 52) * 120))


def test_a_grower_s_weight_follows_its_curve() -> None:
    """Without rations a grower eats more from week to week."""
    barn = Barn().doe("31", age=60).weigh("31", 1500)
    assert grams(barn, 10) > grams(barn, 0)


def test_a_nursing_doe_feeds_her_kits_then_they_have_their_own_dish() -> None:
    """Twenty days old today: at her dish from tomorrow, weaned in fifteen days."""
    barn = Barn().buck("3").doe("10").weigh("10", 4000).litter("10", "3", 20, 7)
    key = "10@" + ago(20).isoformat()
    assert grams(barn, 0) < grams(barn, 1)
    assert mouths(barn, 14) == 2
    assert mouths(barn, 15) == 9
    assert 0 < until_spring_g(barn.seen, key) < winter_feed(barn.seen, {}).total_g
    assert until_spring_g(barn.seen, "10", on(15)) == pytest.approx((DAYS - 15) * 4000 * 0.033)


def test_a_litter_that_should_be_weaned_is_weaned_tomorrow() -> None:
    """Forty days old and still under her on the book."""
    barn = Barn().buck("3").doe("10").litter("10", "3", 40, 7)
    assert [mouths(barn, day) for day in (0, 1)] == [2, 9]


def test_a_tagged_kit_in_the_nest_comes_to_its_dish_at_weaning() -> None:
    """And so does a kit whose litter is not on the book."""
    barn = Barn().buck("3").doe("10").litter("10", "3", 20, 7)
    barn.say("tagged", litter_of="10", tag="K1", sex="doe").doe("K2", age=25)
    assert [mouths(barn, day) for day in (0, 10, 15)] == [2, 3, 10]
    assert until_spring_g(barn.seen, "K1") > 0


def test_a_mated_doe_may_kindle_nurse_and_wean() -> None:
    """Her litter counts by the chance that she took; felt in kindle, in full."""
    barn = Barn().buck("3").doe("11").weigh("11", 4000).say("bred", doe="11", buck="3", on=ago(10))
    (come,) = coming_litters(barn.seen)
    assert (come.dam, come.on, come.key) == ("11", on(21), f"11@{on(21).isoformat()}")
    assert 0.5 < come.chance < 0.8
    assert come.raised < come.kits
    assert mouths(barn, 56) == pytest.approx(2 + come.chance * come.raised)
    sure = barn.say("palpated", doe="11", result="bred")
    assert coming_litters(sure.seen)[0].chance == 1
    assert winter_feed(sure.seen, {}).litters == 1


def test_a_doe_felt_in_kindle_eats_so_and_then_for_her_kits() -> None:
    """In kindle until the 31st day, then nursing."""
    barn = Barn().buck("3").doe("11").weigh("11", 4000).say("bred", doe="11", buck="3", on=ago(16)).say("palpated", doe="11", result="bred")
    hers = [each[2] for each in winter_feed(barn.seen, {"3": TODAY}).days]
    assert hers[:16] == pytest.approx([160.0] * 15 + [280.0])


def test_a_mating_that_failed_or_is_long_past_brings_no_litter() -> None:
    """Felt open, or no kindling after 36 days."""
    barn = Barn().buck("3").doe("11").doe("12").say("bred", doe="11", buck="3", on=ago(14)).say("palpated", doe="11", result="open")
    barn.say("bred", doe="12", buck="3", on=ago(40))
    assert coming_litters(barn.seen) == ()
    assert a_day_g(barn.seen) == pytest.approx(barn.seen.feed_a_day)


def test_a_planned_mating_brings_its_litter_by_the_same_chance() -> None:
    """Only one with a day to come."""
    barn = Barn().buck("3").doe("11").doe("12").say("planned", who="11", what="breed", on=on(20), with_="3")
    barn.say("planned", who="12", what="breed").say("planned", who="3", what="breed", on=on(3))
    assert [(come.dam, come.on) for come in coming_litters(barn.seen)] == [("11", on(51))]


def test_a_doe_carries_one_litter_at_a_time() -> None:
    """A mating planned twice, or while she carries, brings no second litter; one after it does."""
    barn = Barn().buck("3").doe("11").say("bred", doe="11", buck="3", on=ago(10))
    for day in (0, 5, 40, 40, 41):
        barn.say("planned", who="11", what="breed", on=on(day), with_="3")
    assert [come.on for come in coming_litters(barn.seen)] == [on(21), on(71)]


def test_a_doe_that_goes_before_her_day_brings_no_litter() -> None:
    """Neither its feed nor its mouths."""
    barn = Barn().buck("3").doe("11").say("bred", doe="11", buck="3", on=ago(10))
    gone = winter_feed(barn.seen, {"11": on(5)})
    assert [each[1] for each in gone.days[4:6]] == [2, 1]
    assert gone.days[-1][1] == 1
    assert gone.litters == 0
    assert winter_feed(barn.seen, {"11": on(60)}).litters == 1


def test_a_thin_adult_takes_more_until_it_is_well() -> None:
    """A point too thin: 8 % of its weight to put on, three grams of feed each, over six weeks."""
    barn = Barn().buck("3").weigh("3", 4500).say("condition", who="3", score=2.0)
    assert grams(barn, 41) - grams(barn, 42) == pytest.approx(0.08 * 4500 * 3 / 42)
    half_way = Barn().buck("3").weigh("3", 4500).say("condition", who="3", score=2.0, on=ago(40))
    assert grams(half_way, 1) > grams(half_way, 2) == pytest.approx(4500 * 0.033)
    long_ago = Barn().buck("3").weigh("3", 4500).say("condition", who="3", score=2.0, on=ago(42))
    assert grams(long_ago, 0) == pytest.approx(4500 * 0.033)
    well = barn.say("condition", who="3", score=3.0)
    assert grams(well, 0) == pytest.approx(4500 * 0.033)


def test_the_farm_s_winter_nights_ask_for_more() -> None:
    """Ten below at night is five below over the day: a fifth more, from the first of December on."""
    barn = Barn().buck("3").weigh("3", 4000).set("winter_low", -10.0)
    assert [grams(barn, day) for day in (5, 6, 126)] == pytest.approx([132, 132 * 1.2, 132 * 1.2])
    told = winter_feed(barn.seen, {}).document()
    assert (told["cold_by"], told["cold_days"]) == ("setting", 121)


def test_the_first_day_is_what_the_herd_eats_today() -> None:
    """As the feed's own answer has it, unless somebody is thin or it is cold."""
    barn = mixed()
    assert a_day_g(barn.seen) == pytest.approx(barn.seen.feed_a_day)
    assert grams(barn, 0) == pytest.approx(barn.seen.feed_a_day)


def test_the_bin_is_empty_sooner_with_everybody() -> None:
    """The first day that it can't feed; unknown without a look into the bin, and none where it outlasts a year."""
    barn = Barn().buck("3").buck("4").say("ration", scope="all", amount=100.0, unit="g")
    assert winter_feed(barn.seen, {}).runs_out is None
    barn.say("feed_left", grams=2000)
    assert winter_feed(barn.seen, {}).runs_out == on(10)
    assert winter_feed(barn.seen, {"4": TODAY}).runs_out == on(20)
    assert winter_feed(barn.say("feed_left", grams=200_000).seen, {}).runs_out is None


def test_money_is_at_the_farm_s_price() -> None:
    """A bag of 50 lb at 22 dollars."""
    barn = Barn().buck("3").say("ration", scope="all", amount=226.8, unit="g").set("feed_price", "22.00")
    told = winter_feed(barn.seen, {})
    assert told.bags == pytest.approx(DAYS / 100)
    assert told.cents == pytest.approx(2200 * DAYS / 100)
    assert (
        told.document() | {"litters_to_come": 0, "runs_out": None, "cold_by": None, "cold_days": 0, "price_told": True} == told.document()
    )


def test_the_chart_has_both_winters_day_by_day() -> None:
    """Five rows of one length: the days, and mouths and grams with and without the plan."""
    barn = mixed()
    told = series(barn.seen, {"3": on(1)})
    assert {len(row) for row in told.values()} == {DAYS}
    assert told["days"][0] == TODAY.isoformat()
    assert told["mouths"][1] - told["mouths_with_plan"][1] == 1
    assert told["grams"][0] == told["grams_with_plan"][0]


def test_on_the_first_day_of_spring_there_are_no_days_left() -> None:
    """Nothing is eaten until then."""
    barn = Barn().buck("3").set("spring", TODAY.isoformat())
    told = winter_feed(barn.seen, {})
    assert (told.days, told.total_g, until_spring_g(barn.seen, "3")) == ((), 0, 0)


def test_kits_of_a_dam_that_nobody_knows_still_eat() -> None:
    """A litter came on the book without its doe: a medium breed stands in."""
    barn = Barn().buck("3")
    barn.herd = barn.herd.with_litter(Litter("x@1", "x", None, (), ago(60), alive=4, weaned_on=ago(20), weaned=4))
    assert mouths(barn, 0) == 5
    assert until_spring_g(barn.seen, "x@1") > 0
