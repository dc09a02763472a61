"""An animal's whole story on one card."""

from __future__ import annotations

from datetime import timedelta

from core.reports.card import Card, card
from tests.core.reports.notes import entry
from tests.farm import TODAY, ago
from tests.herds import Barn


def of(barn: Barn, tag: str, *entries: object) -> Card:
    """The card of an animal."""
    return card(barn.herd, TODAY, barn.find(tag), entries)  # type: ignore[arg-type]


def juno() -> Barn:
    """A doe with a long story."""
    barn = Barn().buck("3").doe("1").doe("14", name="Juno", color="castor", sire="3", dam="1", age=500).say("moved", who="14", cage="B3")
    barn.litter("14", "3", 200, 8, weaned=6).litter("14", "3", 100, 6, weaned=6).weigh("14", 4100, 30).say(
        "bred", doe="14", buck="3", on=ago(12)
    )
    barn.say("shown", who="14", placing="best of breed", on=ago(90)).say("fault", who="14", fault="long nails", on=ago(80))
    barn.say("treated", who="14", with_="ivermectin", withdrawal_days=28, on=ago(70)).say(
        "ailment", who="14", sign="snotty nose", on=ago(71)
    )
    return barn.say("planned", who="14", what="replace", with_="1", on=TODAY + timedelta(9), reason="getting old")


def test_card_tells_the_whole_story() -> None:
    """Who, whose, weights, mating, litters, survival, what was seen, and the plan."""
    assert of(juno(), "14").reply().lines == (
        "Doe 14 (Juno): New Zealand, castor, senior, 16 months, cage B3.",
        "Out of sire 3 and dam 1.",
        "Weights: 9 lb 1 oz Mon 26 Oct.",
        "Bred to 3 Fri 13 Nov, day 12.",
        "2 litters: 8 and 6 born alive.",
        "Litter of Mon 17 Aug (by 3): 6 born alive, 6 weaned Mon 21 Sep.",
        "Litter of Sat 9 May (by 3): 8 born alive, 6 weaned Sat 13 Jun.",
        "Litter size: level with her breed's does here, by 2 litters, allowing for luck; the next likely 3 to 11 alive. So few tell little of her: count each at kindling.",
        "2 matings, 2 took; allowing for luck a mating takes 8 times in 10; open 69 days after kindling on average.",
        "Weans 22 kits a year, 37 lb 8 oz.",
        "12 of 14 kits raised in 2 litters, 86 % (allowing for luck, likely 71 to 95 %).",
        "Shown: best of breed, Thu 27 Aug.",
        "Fault: long nails, Sun 6 Sep.",
        "Treated with ivermectin, Wed 16 Sep.",
        "Seen: snotty nose, Tue 15 Sep.",
        "Planned: replace with 1 on Fri 4 Dec (getting old).",
    )


def test_card_of_a_growout_names_its_target() -> None:
    """A grow-out's weights stand beside what is wanted; one for sale says so; flags come last."""
    barn = Barn().doe("31", age=118).weigh("31", 1900, 4).say("for_sale", who="31", price=6000, until=TODAY + timedelta(5))
    lines = of(barn, "31").reply().lines
    assert "Weights: 4 lb 3 oz Sat 21 Nov; 5 lb wanted at 16 weeks." in lines
    assert "For sale for $60.00 until Mon 30 Nov." in lines
    assert lines[-1].startswith("4 lb 3 oz at 16 weeks, under")
    assert "For sale." in of(Barn().doe("31").say("for_sale", who="31"), "31").reply().lines


def test_card_of_one_that_is_gone() -> None:
    """A sold animal's card says when it went, and asks for no verdict."""
    barn = Barn().buck("31", age=300).say("sold", who="31", price=4000, on=ago(3))
    reply = of(barn, "31").reply()
    assert reply.lines[0] == "Buck 31: New Zealand, 9 months, sold Sun 22 Nov."
    assert reply.choices == ()


def test_card_of_an_unknown_age() -> None:
    """What is not known is left out."""
    assert of(Barn().buck("31", age=None, breed=None), "31").reply().lines == ("Buck 31: senior.",)


def test_inbreeding_is_told_where_there_is_some() -> None:
    """A kit of half sibs is told to be inbred."""
    barn = Barn().buck("3").doe("1").doe("2").doe("10", sire="3", dam="1").buck("11", sire="3", dam="2").doe("20", sire="11", dam="10")
    assert "Out of sire 11 and dam 10; inbreeding 12.5 %." in of(barn, "20").reply().lines


def test_plan_without_details() -> None:
    """A bare plan is told in a word."""
    assert "Planned: keep." in of(Barn().buck("3").say("planned", who="3", what="keep"), "3").reply().lines


def test_document_is_the_herd_s_object_with_more() -> None:
    """The card's object has the herd's fields, and weights, litters, matings, events, flags and notes."""
    told = of(
        juno(), "14", entry("14 9-1", "weighed", 30, who="14", grams=4100), entry("3 bcs 4", "condition", 2, who="3", score=4.0)
    ).document()
    assert told["tag"] == "14"
    assert told["weights"] == [{"on": "2026-10-26", "grams": 4100}]
    assert [one["weaned"] for one in told["litters"]] == [6, 6]
    assert told["litters"][0]["sire"] == "3"
    assert [one["outcome"] for one in told["matings"]] == ["kindled", "kindled", None]
    assert {one["what"] for one in told["events"]} >= {"shown", "fault", "treated", "ailment"}
    assert [one["text"] for one in told["notes"]] == ["14 9-1"]
    assert told["generations_known"] == 1
    assert told["gone_on"] is None


def test_document_of_one_that_is_gone() -> None:
    """A gone animal's object says when and how, and has no stage."""
    told = of(Barn().buck("31").say("sold", who="31", on=ago(3)), "31").document()
    assert (told["gone"], told["gone_on"], told["stage"]) == ("sold", "2026-11-22", None)


def test_bad_mother_s_count_stands_once() -> None:
    """The flag tells her count; it is not told twice."""
    barn = Barn().doe("14").buck("3")
    for born_ago in (320, 220, 120):
        barn.litter("14", "3", born_ago, 8, weaned=2)
    assert sum("kits raised" in line for line in of(barn, "14").reply().lines) == 1
