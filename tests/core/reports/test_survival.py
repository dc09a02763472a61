"""How does raise their kits: what counts, where it counts, and whose fault a loss is."""

from __future__ import annotations

from datetime import date

import pytest

from core.herd.state import Litter, Loss
from core.reports.card import card
from core.reports.flags import raised_line, raised_said
from core.reports.survival import belief, dam_survivals, finished, raised
from tests.farm import TODAY, ago
from tests.herds import Barn


def test_counts_live_born_and_weaned() -> None:
    """A doe's record is her live-born and her weaned over finished litters, newest included."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 200, 8, dead=1, weaned=6).litter("14", "3", 100, 6, weaned=6)
    dam = dam_survivals(barn.herd, TODAY)["14"]
    assert (dam.alive, dam.kept, len(dam.litters)) == (14, 12, 2)


def test_young_litters_do_not_count() -> None:
    """A litter still in the nest says nothing yet."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 10, 8)
    assert dam_survivals(barn.herd, TODAY) == {}


def test_unweaned_litter_counts_past_weaning_age() -> None:
    """A litter that nobody noted as weaned counts with the kits that lived past weaning age."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 50, 8).lost("14", 3, ago(48))
    dam = dam_survivals(barn.herd, TODAY)["14"]
    assert (dam.alive, dam.kept) == (8, 5)


def test_kits_sold_after_weaning_age_were_raised() -> None:
    """Kits sold from a litter that was never noted as weaned lived: they count as kept."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 80, 8).say("sold", litter_of="14", count=4, on=ago(20))
    assert dam_survivals(barn.herd, TODAY)["14"].kept == 8


@pytest.mark.parametrize("cause", ["cold", "heat", "predator"])
def test_weather_and_predators_are_not_her_fault(cause: str) -> None:
    """Kits lost to weather or a predator are taken out of what she was given, and told apart."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 100, 8).lost("14", 5, ago(99), cause).say("weaned", doe="14", count=3, on=ago(65))
    dam = dam_survivals(barn.herd, TODAY)["14"]
    assert (dam.alive, dam.kept, dam.excused) == (3, 3, 5)


@pytest.mark.parametrize("cause", ["crushed", "starved", "eaten", "scattered", None])
def test_other_losses_are_hers(cause: str | None) -> None:
    """Any other loss stays in her record."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 100, 8).lost("14", 5, ago(99), cause).say("weaned", doe="14", count=3, on=ago(65))
    assert dam_survivals(barn.herd, TODAY)["14"].alive == 8


def test_fostered_kits_count_where_they_were_nursed() -> None:
    """A kit moved to another doe is hers to raise."""
    barn = Barn().doe("14").doe("9").buck("3").litter("14", "3", 100, 9).litter("9", "3", 100, 4)
    barn.say("fostered", from_="14", to="9", count=3, on=ago(99))
    barn.say("weaned", doe="14", count=6, on=ago(65)).say("weaned", doe="9", count=7, on=ago(65))
    dams = dam_survivals(barn.herd, TODAY)
    assert (dams["14"].alive, dams["14"].kept) == (6, 6)
    assert (dams["9"].alive, dams["9"].kept) == (7, 7)


def test_more_weaned_than_the_book_knows_counts_as_given() -> None:
    """A count at weaning over what was known can't make a share over one."""
    assert (one := raised(Litter("14@x", "14", None, (), TODAY, alive=4, weaned=6))) is not None
    assert (one.alive, one.kept) == (6, 6)


def test_litter_of_unknown_size_is_left_out() -> None:
    """A litter whose size nobody told says nothing."""
    assert raised(Litter("14@x", "14", None, (), ago(100))) is None


def test_losses_cannot_outnumber_the_litter() -> None:
    """Excused losses never exceed what was given, whatever the notes say."""
    one = raised(Litter("14@x", "14", None, (), ago(100), alive=2, losses=(Loss(ago(99), 5, "cold"),), weaned=0, weaned_on=ago(60)))
    assert one is not None
    assert (one.given, one.excused, one.alive) == (2, 2, 0)


def test_a_few_kits_lean_on_the_herd() -> None:
    """One lost litter of three does not make a doe worthless: the estimate stays near the herd's."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 100, 3, weaned=0)
    share = dam_survivals(barn.herd, TODAY)["14"].share
    assert 0.5 < share.estimate < belief().mean
    assert share.low < share.estimate < share.high


@pytest.mark.parametrize(("litters", "enough"), [([(100, 6)], False), ([(100, 12)], True), ([(200, 4), (100, 4)], True)])
def test_is_judged_from_two_litters_or_twelve_kits(litters: list[tuple[int, int]], enough: bool) -> None:
    """Two finished litters, or twelve live-born, are enough to judge a doe."""
    barn = Barn().doe("14").buck("3")
    for born_ago, alive in litters:
        barn.litter("14", "3", born_ago, alive, weaned=alive)
    assert dam_survivals(barn.herd, TODAY)["14"].enough is enough


def test_finished_the_day_after_weaning_age() -> None:
    """A litter is finished once it is past weaning age, not on that day."""
    assert not finished(Litter("a", "14", None, (), ago(35)), TODAY)
    assert finished(Litter("a", "14", None, (), ago(36)), TODAY)
    assert finished(Litter("a", "14", None, (), date(2026, 11, 1), weaned_on=TODAY), TODAY)


def test_document_has_the_contract_s_names() -> None:
    """The survival object carries alive, kept, estimate, low and high, unrounded."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 100, 8, weaned=6)
    told = dam_survivals(barn.herd, TODAY)["14"].document()
    assert {"alive", "kept", "estimate", "low", "high"} <= set(told)
    assert told["low"] < told["estimate"] < told["high"]


def test_a_night_that_hit_the_barn_is_nobodys_fault() -> None:
    """Four litters of two to three weeks lose kits in one night and nobody wrote why: not held against the does, and told."""
    barn = Barn().buck("3")
    for at, doe in enumerate(("9", "11", "12", "14", "15")):
        barn.doe(doe).litter(doe, "3", 100 - at, 8)
    for doe in ("9", "11", "12", "14"):
        barn.lost(doe, 4, ago(80))
    for doe in ("9", "11", "12", "14", "15"):
        barn.say("weaned", doe=doe, count=8 if doe == "15" else 4, on=ago(60))
    dams = dam_survivals(barn.herd, TODAY)
    assert [(dams[doe].alive, dams[doe].kept, dams[doe].excused) for doe in ("9", "14", "15")] == [(4, 4, 4), (4, 4, 4), (8, 8, 0)]
    assert dams["9"].excused_by == {"bad night": 4}
    assert [night.at_risk for night in dams["9"].nights] == [5]
    assert dams["15"].nights == ()
    assert "a night when 4 of 5 litters lost kits" in raised_line(barn.seen, barn.find("9"))


def test_a_written_cause_is_not_the_nights() -> None:
    """On a bad night a litter scattered by its dam stays hers."""
    barn = Barn().buck("3")
    for at, doe in enumerate(("9", "11", "12", "14")):
        barn.doe(doe).litter(doe, "3", 100 - at, 8).lost(doe, 4, ago(80), "scattered" if doe == "14" else None)
    for doe in ("9", "11", "12", "14"):
        barn.say("weaned", doe=doe, count=4, on=ago(60))
    dams = dam_survivals(barn.herd, TODAY)
    assert (dams["9"].excused, dams["14"].excused) == (4, 0)


def test_a_power_cut_is_told_apart() -> None:
    """A loss laid to the power is not hers, and said so."""
    loss = Loss(ago(99), 3, "power out")
    one = raised(Litter("14@x", "14", None, (), ago(100), alive=8, losses=(loss,), weaned=5, weaned_on=ago(65)))
    assert one is not None
    assert one.excused_by == (("power cut", 3),)
    barn = (
        Barn()
        .doe("14")
        .buck("3")
        .litter("14", "3", 100, 8)
        .lost("14", 3, ago(99), "power out")
        .say("weaned", doe="14", count=5, on=ago(65))
    )
    assert "3 kits lost to a power cut not held against her" in raised_line(barn.seen, barn.find("14"))


def test_kits_she_bore_are_followed_into_other_nests() -> None:
    """Three of nine fostered to a doe that raised half: she bore nine and half of the three lived on average."""
    barn = Barn().doe("14").doe("9").buck("3").litter("14", "3", 100, 9).litter("9", "3", 100, 5)
    barn.say("fostered", from_="14", to="9", count=3, on=ago(99)).lost("9", 4, ago(90))
    barn.say("weaned", doe="14", count=6, on=ago(65)).say("weaned", doe="9", count=4, on=ago(65))
    dams = dam_survivals(barn.herd, TODAY)
    assert (dams["14"].alive, dams["14"].kept) == (6, 6)
    assert (dams["14"].bore, dams["14"].bore_kept) == (pytest.approx(9), pytest.approx(7.5))
    assert (dams["9"].bore, dams["9"].bore_kept) == (pytest.approx(5), pytest.approx(2.5))


def test_the_dead_born_are_a_matter_of_their_own() -> None:
    """Six dead of twenty born leave her survival alone, and are told with their interval."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 200, 7, dead=3, weaned=7).litter("14", "3", 100, 7, dead=3, weaned=7)
    told = dam_survivals(barn.herd, TODAY)["14"].document()
    assert (told["alive"], told["kept"]) == (14, 14)
    assert (told["stillborn"]["born"], told["stillborn"]["dead"]) == (20, 6)
    assert told["stillborn"]["low"] < told["stillborn"]["estimate"] < told["stillborn"]["high"]
    assert 0.07 < told["stillborn"]["estimate"] < 0.3


def test_where_nobody_counted_the_dead_nothing_is_said_of_them() -> None:
    """A litter told by its live kits alone says nothing of the dead-born."""
    barn = Barn().doe("14").buck("3").say("bred", doe="14", buck="3", on=ago(131)).say("kindled", doe="14", alive=7, on=ago(100))
    assert dam_survivals(barn.herd, TODAY)["14"].document()["stillborn"] is None


def test_kits_sold_before_weaning_are_neither_kept_nor_lost() -> None:
    """Two of eight sold at four weeks: six were hers to raise and she raised them."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 100, 8).say("sold", litter_of="14", count=2, on=ago(72))
    barn.say("weaned", doe="14", count=6, on=ago(65))
    dam = dam_survivals(barn.herd, TODAY)["14"]
    assert (dam.alive, dam.kept, dam.bore) == (6, 6, 6)


def test_document_says_how_sure_it_is_and_what_would_settle_it() -> None:
    """The chance to be below the farm's own line, and the litters that it takes to know."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 100, 8, weaned=4).set("lowest_survival", 0.75)
    told = dam_survivals(barn.herd, TODAY)["14"].document()
    assert told["line"] == 0.75
    assert 0.3 < told["chance_below"] < 0.9
    assert told["litters_to_be_sure"] is None or told["litters_to_be_sure"] > 0


def test_too_few_kits_to_judge_her_by_says_what_to_note() -> None:
    """One litter of six is luck: the card and the verdict ask for her next one; two litters don't."""
    few, enough = Barn().doe("14").buck("3"), Barn().doe("14").buck("3")
    few.litter("14", "3", 100, 6, weaned=5)
    enough.litter("14", "3", 200, 6, weaned=5).litter("14", "3", 100, 6, weaned=6)
    asked = "Too few to judge her by: note what becomes of her next litter."
    assert raised_said(few.seen, few.find("14")).endswith(asked)
    assert any(line.endswith(asked) for line in card(few.herd, TODAY, few.find("14")).reply().lines)
    assert asked not in raised_said(enough.seen, enough.find("14"))
