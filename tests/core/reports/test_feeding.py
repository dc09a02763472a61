"""Who eats what, what is in the bin, and what it costs."""

from __future__ import annotations

from dataclasses import replace

import pytest

from core.herd.state import Litter
from core.reports.feed import feed, feed_of
from core.reports.feeding import bought_grams, cents_a_gram, kit_weight, weight_of
from tests.farm import TODAY, ago
from tests.herds import Barn


def eats(barn: Barn, tag: str) -> float:
    """What an animal eats today [g]."""
    return barn.seen.eaters[barn.find(tag).key].grams()


@pytest.mark.parametrize(
    ("amount", "unit", "grams"), [(1.0, "cup", 142), (6.0, "oz", 170), (0.5, "lb", 227), (0.2, "kg", 200), (150.0, "g", 150)]
)
def test_rations_in_every_unit(amount: float, unit: str, grams: float) -> None:
    """A ration is brought to grams; a cup is the farm's own."""
    assert eats(Barn().buck("3").say("ration", who="3", amount=amount, unit=unit), "3") == grams


def test_cup_is_the_farm_s() -> None:
    """The weight of a cup is a setting."""
    assert eats(Barn().buck("3").set("cup_weight", 120).say("ration", who="3", amount=0.5, unit="cup"), "3") == 60


def test_own_ration_before_the_kind_s_before_all() -> None:
    """An animal's own ration wins over its kind's, that over everybody's."""
    barn = Barn().buck("3").buck("4").doe("9").doe("31", age=100)
    barn.say("ration", scope="all", amount=100.0, unit="g").say("ration", scope="bucks", amount=110.0, unit="g")
    barn.say("ration", scope="grow-outs", amount=90.0, unit="g").say("ration", who="3", amount=120.0, unit="g")
    assert [eats(barn, tag) for tag in ("3", "4", "9", "31")] == [120, 110, 100, 90]


def test_animal_of_unknown_sex_gets_everybody_s_ration() -> None:
    """Without a sex there is no kind's ration."""
    barn = Barn().say("animal", tag="1", breed="Rex", born=ago(400)).say("ration", scope="all", amount=100.0, unit="g")
    assert eats(barn, "1") == 100


def test_nursing_doe_eats_for_her_kits() -> None:
    """A doe with kits past three weeks eats far more than a dry one; one in kindle a little more."""
    barn = Barn().buck("3").doe("9").doe("10").doe("11").doe("12").litter("9", "3", 25, 7).litter("12", "3", 25, 7)
    barn.say("bred", doe="10", buck="3", on=ago(12)).say("bred", doe="12", buck="3", on=ago(5))
    nursing, pregnant, dry, both = (eats(barn, tag) for tag in ("9", "10", "11", "12"))
    assert nursing > pregnant > dry
    assert both == nursing


def test_weight_by_last_weighing_breed_or_guess() -> None:
    """A weighed animal weighs what it weighed; else its breed's adults; else a usual rabbit."""
    barn = Barn().buck("1").weigh("1", 4321).buck("2").buck("3", breed=None)
    assert weight_of(barn.find("1"), TODAY) == 4321
    assert weight_of(barn.find("2"), TODAY) == pytest.approx(0.85 * 4990, abs=3)
    assert weight_of(barn.find("3"), TODAY) == 3600


def test_kit_has_no_dish() -> None:
    """A tagged kit under its dam eats from hers."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 20, 6).say("tagged", litter_of="14", tag="R1", sex="buck")
    assert "R1" not in barn.seen.eaters
    assert feed_of(barn.herd, TODAY, barn.find("R1")).lines == ("Buck R1 has no dish of its own.",)


def test_untagged_kits_eat_together() -> None:
    """A weaned litter's untagged kits stand at the dish with their count, on the grow-outs' ration where there is one."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 70, 6, weaned=4)
    key = next(iter(barn.herd.litters))
    assert barn.seen.eaters[key].grams() > 4 * 90
    assert barn.say("ration", scope="grow-outs", amount=80.0, unit="g").seen.eaters[key].grams() == 320


def test_litter_of_an_unknown_dam_eats() -> None:
    """A litter whose dam is not on the book is fed as a middle breed's."""
    herd = Barn().herd.with_litter(Litter("X@1", "X", None, (), ago(60), alive=4, weaned=4, weaned_on=ago(20)))
    assert feed(herd, TODAY).groups()["grow-out"] > 0


def test_bags_and_grams_of_a_purchase() -> None:
    """A purchase is its grams, else its bags at the farm's bag, else one bag."""
    herd = Barn().set("feed_bag", 20_000).herd
    assert bought_grams(herd, {"grams": 500}) == 500
    assert bought_grams(herd, {"bags": 3}) == 60_000
    assert bought_grams(herd, {}) == 20_000


def test_bin_counts_what_came_since() -> None:
    """Feed bought after the last look is added, what was eaten since taken off."""
    barn = Barn().buck("3").say("ration", who="3", amount=100.0, unit="g")
    barn.say("feed_bought", grams=9000, on=ago(30)).say("feed_left", grams=1000, on=ago(10)).say("feed_bought", grams=5000, on=ago(4))
    stock = barn.seen.stock
    assert stock is not None
    assert stock.left == 1000 + 5000 - 100 * 10


def test_price_by_setting_purchase_or_custom() -> None:
    """Feed costs what the farm says, else what it last paid, else a common price."""
    assert cents_a_gram(Barn().herd) == (pytest.approx(2000 / 22680), False)
    paid = Barn().say("feed_bought", grams=10_000, price=1500, on=ago(3)).say("feed_bought", grams=10_000, price=9000, on=ago(30))
    assert cents_a_gram(paid.herd) == (0.15, True)
    assert cents_a_gram(paid.set("feed_price", "20.00").set("feed_bag", 20_000).herd) == (0.1, True)


def test_the_last_look_into_the_bin_counts() -> None:
    """Two looks on one day: the later one is the truth."""
    barn = Barn().buck("3").say("feed_left", grams=2000).say("feed_left", grams=9000)
    assert barn.seen.stock is not None
    assert barn.seen.stock.left == 9000


def test_a_litter_weighed_together_eats_by_its_weight() -> None:
    """The mean kit, carried on to today; of whom nobody counted, those alive that day. Heavier kits eat more."""
    barn = Barn().buck("3").doe("10").litter("10", "3", 60, 6, weaned=6)
    key = "10@" + ago(60).isoformat()
    litter = barn.herd.litters[key]
    assert kit_weight(barn.herd, litter, TODAY) is None
    weighed = [replace(litter, weighings=((ago(10), 6000, count),)) for count in (6, None, 5)]
    even, uncounted, heavy = (kit_weight(barn.herd, one, TODAY) for one in weighed)
    assert even is not None
    assert heavy is not None
    assert 1000 < even < 1500
    assert uncounted == even
    assert heavy > even
    assert kit_weight(barn.herd, replace(litter, dam="77", weighings=((TODAY, 6000, 6),)), TODAY) == pytest.approx(1000)
    assert kit_weight(barn.herd, replace(litter, weighings=((ago(50), 1200, 6),)), TODAY) is None
    assert kit_weight(barn.herd, replace(litter, tally=((ago(60), 0),), weighings=((ago(10), 6000, None),)), TODAY) is None


def test_what_is_bought_after_the_look_comes_on_top() -> None:
    """On the same day too; what was bought before it is in the look."""
    barn = Barn().buck("3").say("feed_bought", grams=5000).say("feed_left", grams=2000).say("feed_bought", grams=7000)
    assert barn.seen.stock is not None
    assert barn.seen.stock.left == 9000
