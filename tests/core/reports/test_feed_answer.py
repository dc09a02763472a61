"""What is answered to `feed` and `feed of 14`: the bin, the day, the winter with and without those advised to go."""

from __future__ import annotations

import pytest

from core.reports.feed import feed, feed_of
from tests.farm import TODAY, ago
from tests.herds import Barn


def told(barn: Barn) -> str:
    """The answer."""
    return feed(barn.herd, TODAY).reply().text


def test_feed_report() -> None:
    """Bin, day, kinds, until spring with money, and the greedy."""
    barn = (
        Barn()
        .buck("3")
        .weigh("3", 4500)
        .say("ration", who="3", amount=1.0, unit="lb")
        .doe("9")
        .doe("31", age=100)
        .set("feed_price", "22.00")
    )
    text = feed(barn.say("feed_left", grams=20_000).herd, TODAY).reply().text
    assert "About 44 lb 1 oz left: " in text
    assert "Until Thu 1 Apr 2027, if nobody leaves: " in text
    assert "Buck 3: Eats 1 lb a day" in text
    assert "common price" not in text
    told = feed(barn.herd, TODAY).document()
    assert told["spring"] == "2027-04-01"
    assert set(told["groups"]) == {"buck", "doe", "grow-out"}
    assert told["grams_until_spring"] > 127 * 454


def test_feed_report_without_bin_or_animals() -> None:
    """Nothing known is said plainly."""
    lines = feed(Barn().herd, TODAY).reply().lines
    assert lines[0] == "I don't know what is in the bin. Tell me: 120 lb feed left"
    assert "tell me yours: feed is 22 a bag" in lines[2]
    rich = feed(Barn().buck("3").say("feed_left", grams=1_000_000).herd, TODAY)
    assert rich.reply().lines[0].endswith("left: more than a year.")


def test_feed_of_one() -> None:
    """One animal's feed, told or expected."""
    barn = Barn().buck("3").weigh("3", 4500).buck("4").weigh("4", 4500).say("ration", who="3", amount=6.0, unit="oz")
    assert (
        feed_of(barn.herd, TODAY, barn.find("3")).lines[0].startswith("3 eats about 6 oz a day, as you feed it; 5 oz would be expected; ")
    )
    assert feed_of(barn.herd, TODAY, barn.find("4")).lines[0].startswith("4 eats about 5 oz a day, as the handbook expects; until spring ")


def leavers() -> Barn:
    """A buck that stays, and one that somebody means to cull."""
    barn = Barn().buck("3").buck("4").say("ration", scope="all", amount=100.0, unit="g").set("weight_units", "kg")
    return barn.set("feed_price", "22.00").set("feed_bag", 10_000).say("planned", who="4", what="cull").doe("9")


def test_the_bin_s_last_day_is_told() -> None:
    """The day on which it is empty, with everybody and with those gone who are advised to go."""
    text = told(leavers().say("feed_left", grams=3000))
    assert text.startswith("About 3.00 kg left: 10 days, empty on Sat 5 Dec.\n")
    assert "The bin is then empty on Thu 10 Dec." in text


def test_the_plan_s_saving_is_told_in_bags_weight_and_money() -> None:
    """A hundred grams a day for 127 days."""
    barn = leavers()
    assert "\nUntil Thu 1 Apr 2027, if nobody leaves: 38.10 kg, 4 bags, $83.82.\n" in told(barn)
    assert "\nWithout those I would let go: 3 bags instead of 4; that saves 12.70 kg, $27.94.\n" in told(barn)
    numbers = feed(barn.herd, TODAY).document()
    assert numbers["winter"]["grams"] - numbers["winter_with_plan"]["grams"] == pytest.approx(12700)
    assert numbers["series"]["grams"][0] - numbers["series"]["grams_with_plan"][0] == pytest.approx(100)


def test_what_is_counted_in_is_told() -> None:
    """Litters to come and cold, or that there is no note of cold."""
    barn = leavers().say("bred", doe="9", buck="3", on=ago(5))
    assert told(barn).endswith(
        "Counted in: 1 litter that may come, by how likely each is.\nNo cold is counted in. Tell me how cold your nights get: winter nights are 10F"
    )
    cold = barn.say("weather", what="frost", on=ago(1))
    assert told(cold).endswith("Counted in: 1 litter that may come, by how likely each is; 3 cold days, by your notes.")
    assert told(cold.set("winter_low", -10.0)).endswith("; 121 cold days, as you told me.")


def test_a_spring_that_is_here_has_nothing_to_count() -> None:
    """No winter, no word of cold."""
    assert "cold" not in told(leavers().set("spring", TODAY.isoformat()))


def test_a_doe_that_nurses_on_too_little_is_told() -> None:
    """Less than half of what her kits ask for, by the farm's own ration; with enough, nothing is said."""
    barn = Barn().buck("3").doe("9").weigh("9", 4000).litter("9", "3", 25, 8).say("ration", who="9", amount=150.0, unit="g")
    barn.set("weight_units", "kg")
    assert "Doe 9 nurses 8 kits on 150 g a day; about 504 g is usual." in told(barn)
    assert "nurses" not in told(barn.say("ration", who="9", amount=300.0, unit="g"))


def test_the_feed_of_one_until_spring_follows_what_comes() -> None:
    """A doe in kindle eats more in spring than her dry day times the days."""
    barn = Barn().buck("3").doe("9").weigh("9", 4000).set("weight_units", "kg").set("feed_price", "20.00").set("feed_bag", 20_000)
    dry = feed_of(barn.herd, TODAY, barn.find("9")).lines[0]
    assert dry == "9 eats about 132 g a day, as the handbook expects; until spring 16.76 kg, $16.76."
    barn.say("bred", doe="9", buck="3", on=ago(20)).say("palpated", doe="9", result="bred")
    assert feed_of(barn.herd, TODAY, barn.find("9")).lines[0] != dry
