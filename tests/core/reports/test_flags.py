"""Each flag: when it is raised, when it is not, and that its line carries the number and the count.

Over 300 lines: a dozen flags, each raised, not raised and told.
"""

from __future__ import annotations

import pytest

from core.reports import flags
from core.reports.finding import Finding
from tests.farm import TODAY, ago
from tests.herds import Barn, two_sires


def flagged(barn: Barn, tag: str) -> dict[str, Finding]:
    """The animal's flags by code."""
    return {one.code: one for one in flags.flags_of(barn.seen, barn.find(tag))}


# --- light grow-outs ----------------------------------------------------------------------------------------------


def test_light_growout_under_the_target() -> None:
    """A meat breed's grow-out under 5 lb at sixteen weeks is flagged with its weight and the age of the weight."""
    barn = Barn().buck("31", age=118).weigh("31", 1900, 4)
    found = flagged(barn, "31")["light_growout"]
    assert found.evidence["grams"] == 1900
    assert found.evidence["age_days"] == 114
    assert found.evidence["target_grams"] == 2268
    assert found.text == "4 lb 3 oz at 16 weeks, under the 5 lb wanted at 16 weeks."


def test_light_growout_names_its_herd_mates() -> None:
    """Where others of the breed were weighed, their mean at that age and their number stand beside."""
    barn = Barn().buck("31", age=118).weigh("31", 1900, 4)
    for tag in ("32", "33"):
        barn.doe(tag, age=118).weigh(tag, 2700, 4)
    found = flagged(barn, "31")["light_growout"]
    assert found.evidence["count"] == 2
    assert found.evidence["expected_grams"] == pytest.approx(2700, rel=0.01)
    assert "its 2 herd mates" in found.text


@pytest.mark.parametrize(
    "barn",
    [
        Barn().buck("31", age=111).weigh("31", 1500),
        Barn().buck("31", age=118).weigh("31", 2268),
        Barn().buck("31", age=118),
        Barn().buck("31", age=None).weigh("31", 1500),
        Barn().buck("31", age=200).weigh("31", 1900, 80).doe("9").say("bred", doe="9", buck="31", on=ago(20)),
    ],
    ids=["too young", "on target", "never weighed", "age unknown", "mated"],
)
def test_not_light(barn: Barn) -> None:
    """Sixteen weeks, a weight below target, and never mated: without any of these there is no flag."""
    assert "light_growout" not in flagged(barn, "31")


def test_light_senior_with_litters_is_no_growout() -> None:
    """A doe that has kindled is not a light grow-out, though nobody noted her mating."""
    barn = Barn().doe("31", age=300).weigh("31", 1900, 100).say("kindled", doe="31", born=5, alive=5, on=ago(20))
    assert "light_growout" not in flagged(barn, "31")


def test_target_is_the_farm_s() -> None:
    """The farm's own target for the breed wins."""
    barn = Barn().buck("31", age=118).weigh("31", 2300, 4).set("target_weight", 2500, "New Zealand")
    assert flagged(barn, "31")["light_growout"].evidence["target_grams"] == 2500


# --- survival -----------------------------------------------------------------------------------------------------


def bad_mother() -> Barn:
    """14 loses half her kits in four litters, 9 raises nearly all."""
    barn = Barn().doe("14").doe("9").buck("3")
    for born_ago in (420, 320, 220, 120):
        barn.litter("14", "3", born_ago, 8, weaned=3).litter("9", "3", born_ago, 8, weaned=8)
    return barn


def test_low_survival_carries_count_and_interval() -> None:
    """The line of a bad mother says how many of how many, over how many litters, and the likely range."""
    found = flagged(bad_mother(), "14")["low_survival"]
    assert (found.evidence["kept"], found.evidence["alive"]) == (12, 32)
    assert found.evidence["chance_below"] > 0.9
    assert found.heed == 2
    assert found.text.startswith("12 of 32 kits raised in 4 litters, 38 % (allowing for luck, likely ")
    assert found.text.endswith("your line is 70 %, she is almost surely below it.")


def test_good_mother_is_not_flagged() -> None:
    """A doe that raises her kits is left alone."""
    assert "low_survival" not in flagged(bad_mother(), "9")


def test_cold_snap_is_not_held_against_a_good_mother() -> None:
    """A litter frozen in a cold snap leaves her unflagged, and is told apart."""
    barn = Barn().doe("9").buck("3").litter("9", "3", 220, 8, weaned=8).litter("9", "3", 120, 8)
    barn.lost("9", 7, ago(119), "cold").say("weaned", doe="9", count=1, on=ago(85))
    assert "low_survival" not in flagged(barn, "9")
    assert flags.raised_line(barn.seen, barn.find("9")).endswith("7 kits lost to weather or predators not held against her")


def test_one_litter_is_luck() -> None:
    """One lost litter of eight is no verdict."""
    assert "low_survival" not in flagged(Barn().doe("14").buck("3").litter("14", "3", 120, 8, weaned=0), "14")


def test_verdict_that_one_good_litter_would_turn_is_only_a_warning() -> None:
    """Two poor litters flag her, but one good one would clear her: a warning, not enough alone."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 220, 7, weaned=4).litter("14", "3", 120, 7, weaned=3)
    assert flagged(barn, "14")["low_survival"].heed == 1


def test_line_is_the_farm_s() -> None:
    """The farm's own line decides."""
    barn = bad_mother().set("lowest_survival", 0.3)
    assert "low_survival" not in flagged(barn, "14")


# --- bucks --------------------------------------------------------------------------------------------------------


def test_excess_bucks_beyond_the_farm_s_number() -> None:
    """Of three senior bucks the one whose kits grow least is one too many."""
    barn = two_sires().buck("5")
    assert "excess_buck" in flagged(barn, "3") or "excess_buck" in flagged(barn, "5")
    assert "excess_buck" not in flagged(barn, "7")


def test_excess_buck_says_who_is_better_and_how_sure() -> None:
    """With one buck kept, the outproduced one's line names the better and the chance, from how many kits."""
    found = flagged(two_sires().set("bucks_a_breed", 1), "3")["excess_buck"]
    assert found.evidence["better"] == "7"
    assert found.evidence["chance_better"] > 0.7
    assert found.evidence["kits_weighed"] == 32
    assert found.text.startswith(
        "Number 2 of 2 New Zealand bucks; you keep 1 (32 kits of his weighed). Rowan's kits would almost surely outgrow his."
    )


def test_best_senior_and_best_junior_stay() -> None:
    """A junior coming on takes a place before a second senior."""
    barn = two_sires().buck("21", age=180)
    assert "excess_buck" not in flagged(barn, "21")
    assert "excess_buck" not in flagged(barn, "7")
    assert "excess_buck" in flagged(barn, "3")


def test_bucks_for_sale_or_planned_to_go_do_not_count() -> None:
    """A buck that is leaving anyway takes nobody's place and is no excess."""
    barn = two_sires().buck("5").say("for_sale", who="5").buck("6").say("planned", who="6", what="cull")
    assert not any("excess_buck" in flagged(barn, tag) for tag in ("3", "7", "5", "6"))


def test_unknown_breed_is_a_breed_of_its_own() -> None:
    """Bucks whose breed nobody told compete among themselves."""
    barn = Barn().buck("1", breed=None).buck("2", breed=None).buck("3", breed=None).buck("4")
    excess = [tag for tag in ("1", "2", "3", "4") if "excess_buck" in flagged(barn, tag)]
    assert len(excess) == 1
    assert excess != ["4"]


def test_growouts_and_does_are_no_excess_bucks() -> None:
    """Young bucks are not counted before they are juniors."""
    barn = Barn().set("bucks_a_breed", 0).buck("31", age=100).doe("14").buck("3")
    assert [tag for tag in ("31", "14", "3") if "excess_buck" in flagged(barn, tag)] == ["3"]
    assert flagged(barn, "3")["excess_buck"].evidence["better"] is None


def test_blemished_buck_ranks_last() -> None:
    """A disqualifying fault puts a buck behind one without."""
    barn = Barn().set("bucks_a_breed", 1).buck("1").buck("2").say("fault", who="1", fault="white toenail", disqualifies=True)
    assert "excess_buck" in flagged(barn, "1")


# --- sale, litters, matings ---------------------------------------------------------------------------------------


def test_past_sale_date() -> None:
    """For sale until a day before today and still here."""
    barn = Barn().doe("32").say("for_sale", who="32", price=6000, until=ago(5), on=ago(30))
    assert flagged(barn, "32")["past_sale_date"].text == "For sale until Fri 20 Nov, 5 days ago, and still here."


@pytest.mark.parametrize("until", [TODAY, None])
def test_not_past_its_date(until: object) -> None:
    """The last day itself, or no day at all, is not past."""
    assert "past_sale_date" not in flagged(Barn().doe("32").say("for_sale", who="32", until=until, on=ago(30)), "32")


def shrinking(*sizes: int, others: int = 8) -> Barn:
    """14's litters of these sizes, the first one first, beside a doe whose litters keep their size."""
    barn = Barn().doe("14").doe("9").buck("3")
    for at, size in enumerate(sizes):
        born_ago = 100 * (len(sizes) - at) + 20
        barn.litter("14", "3", born_ago, size, weaned=size).litter("9", "3", born_ago, others, weaned=others)
    return barn


def test_shrinking_litters_tell_the_sizes() -> None:
    """A fall from litter to litter that is likely real is told with every size."""
    found = flagged(shrinking(10, 9, 7, 5, 3), "14")["shrinking_litters"]
    assert found.text.startswith("Litters shrink: 10, 9, 7, 5 and 3 born alive; a fall like this is almost surely more than luck.")
    assert found.evidence["chance_of_fall"] >= 0.8
    assert found.heed == 2


def test_shrinking_but_still_large_is_only_a_warning() -> None:
    """A doe whose litters fall to what others have at their best is watched."""
    assert flagged(shrinking(14, 12, 10, 9, others=4), "14")["shrinking_litters"].heed == 1


@pytest.mark.parametrize("sizes", [(9, 5), (8, 8, 8), (7, 8, 7, 8)])
def test_not_shrinking(sizes: tuple[int, ...]) -> None:
    """Two litters prove nothing, and a flat line is no fall."""
    assert "shrinking_litters" not in flagged(shrinking(*sizes), "14")


def test_long_open_since_weaning() -> None:
    """Sixty days after her kits were weaned, unbred, she is long open."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 100, 6, weaned=6)
    assert flagged(barn, "14")["long_open"].text.startswith("Open for 65 days: her kits weaned ")


def test_long_open_since_her_litter_was_lost() -> None:
    """A doe that lost her litter could have been bred since."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 90, 2).lost("14", 2, ago(88), "crushed")
    assert flagged(barn, "14")["long_open"].evidence["days"] == 88


def test_long_open_since_she_grew_up() -> None:
    """A grown doe that was never bred is long open."""
    assert flagged(Barn().doe("14", age=400), "14")["long_open"].text.startswith("Open for 156 days, as far as the notes tell: grown ")


@pytest.mark.parametrize(
    "barn",
    [
        Barn().doe("14").buck("3").litter("14", "3", 94, 6, weaned=6),
        Barn().doe("14").buck("3").litter("14", "3", 200, 6, weaned=6).say("bred", doe="14", buck="3", on=ago(10)),
        Barn().doe("14").buck("3").litter("14", "3", 20, 6),
        Barn().doe("14", age=None),
        Barn().doe("14", age=170),
    ],
    ids=["59 days", "bred", "nursing", "age unknown, no litter", "a junior"],
)
def test_not_long_open(barn: Barn) -> None:
    """Less than sixty days, bred, nursing, or not known since when: no flag."""
    assert "long_open" not in flagged(barn, "14")


def missed(*days_ago: int) -> Barn:
    """14 bred and missed so many days ago, each time."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 400, 6, weaned=6)
    for ago_ in days_ago:
        barn.say("bred", doe="14", buck="3", on=ago(ago_)).say("missed", doe="14", on=ago(ago_ - 34))
    return barn


def test_missed_twice_counts_since_the_last_litter() -> None:
    """Two tries without a litter flag her; a third weighs more."""
    assert flagged(missed(120, 70), "14")["missed_twice"].heed == 1
    assert flagged(missed(170, 120, 70), "14")["missed_twice"].evidence["missed"] == 3
    assert flagged(missed(170, 120, 70), "14")["missed_twice"].heed == 2


def test_one_miss_is_no_flag() -> None:
    """Everybody misses once."""
    assert "missed_twice" not in flagged(missed(70), "14")


def test_matings_within_days_are_one_try() -> None:
    """Put to the buck again the next day, she has missed once, not twice."""
    barn = Barn().doe("14").buck("3").say("bred", doe="14", buck="3", on=ago(60)).say("bred", doe="14", buck="3", on=ago(59))
    assert "missed_twice" not in flagged(barn.say("missed", doe="14", on=ago(24)), "14")


# --- manners, faults, feed ----------------------------------------------------------------------------------------


@pytest.mark.parametrize(("put_up_with", "bites", "is_flagged"), [("good", 1, True), ("mixed", 1, False), ("any", 3, False)])
def test_temper_that_the_farm_puts_up_with(put_up_with: str, bites: int, is_flagged: bool) -> None:
    """Who wants no biters is told of one bad note; where temper doesn't matter, three say nothing."""
    barn = Barn().doe("22").set("lowest_temper", put_up_with)
    for day in range(bites):
        barn.say("temper", who="22", grade="bad", on=ago(day + 1))
    assert ("bad_temper" in flagged(barn, "22")) is is_flagged


def test_bad_temper_twice_in_a_year() -> None:
    """Two bad notes within twelve months, with their signs."""
    barn = Barn().doe("22").say("temper", who="22", grade="bad", sign="bit", on=ago(20)).say("temper", who="22", grade="bad", on=ago(5))
    assert flagged(barn, "22")["bad_temper"].text == "2 bad notes on her temper in 12 months (bit)."


@pytest.mark.parametrize("first", [400, None])
def test_one_bad_note_is_a_bad_day(first: int | None) -> None:
    """A single recent note is not enough, an old one does not help it."""
    barn = Barn().buck("3").say("temper", who="3", grade="bad", on=ago(5)).say("temper", who="3", grade="good", on=ago(4))
    if first:
        barn.say("temper", who="3", grade="bad", on=ago(first))
    assert "bad_temper" not in flagged(barn, "3")


def test_bad_nest_twice() -> None:
    """Two bad notes on a doe's nest, good ones apart."""
    barn = Barn().doe("16")
    for sign, on in (("soiled", 40), ("scattered", 10), ("good", 2)):
        barn.say("nest_manners", doe="16", sign=sign, on=ago(on))
    assert flagged(barn, "16")["bad_nest"].text == "2 bad notes on her nest in 12 months (soiled and scattered)."


def test_disqualifying_fault_weighs_more_on_the_young() -> None:
    """A fault that bars is enough to let a young one go; a proven one is watched."""
    barn = Barn().buck("31", age=120).doe("14")
    for tag in ("31", "14"):
        barn.say("fault", who=tag, fault="white toenail", disqualifies=True, on=ago(3))
    assert flagged(barn, "31")["disqualifying_fault"].heed == 2
    assert flagged(barn, "14")["disqualifying_fault"].heed == 1


def test_fault_that_was_withdrawn_or_does_not_bar() -> None:
    """A fault that does not disqualify, or was said not to after all, is no flag."""
    barn = Barn().buck("31").say("fault", who="31", fault="long nail", on=ago(3))
    barn.say("fault", who="31", fault="tail", disqualifies=True, on=ago(9)).say(
        "fault", who="31", fault="tail", disqualifies=False, on=ago(2)
    )
    assert "disqualifying_fault" not in flagged(barn, "31")


def test_heavy_feeder_over_one_and_a_half_times() -> None:
    """A buck on a pound a day eats several times what his weight needs."""
    barn = Barn().buck("3").weigh("3", 4500).say("ration", who="3", amount=1.0, unit="lb")
    found = flagged(barn, "3")["heavy_feeder"]
    assert found.evidence["times"] == pytest.approx(453.6 / (4500 * 0.033), rel=0.01)
    assert found.text.startswith("Eats 1 lb a day, 3.1 times the 5 oz expected for his weight")


@pytest.mark.parametrize(
    "barn",
    [
        Barn().buck("3").weigh("3", 4500),
        Barn().buck("3").weigh("3", 4500).say("ration", who="3", amount=6.0, unit="oz"),
        Barn().buck("3").weigh("3", 4500).say("ration", who="3", amount=1.0, unit="lb").say("condition", who="3", score=2.0),
    ],
    ids=["ration unknown", "fair ration", "thin"],
)
def test_no_heavy_feeder(barn: Barn) -> None:
    """No ration told, a fair one, or a thin animal: not greedy."""
    assert "heavy_feeder" not in flagged(barn, "3")


# --- all of them --------------------------------------------------------------------------------------------------


def test_kits_are_left_alone() -> None:
    """Nothing is flagged of a kit under its dam."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 20, 6).say("tagged", litter_of="14", tag="R1", sex="buck")
    barn.say("fault", who="R1", fault="tail", disqualifies=True)
    assert flags.flags_of(barn.seen, barn.find("R1")) == ()


def test_all_flags_name_their_animals() -> None:
    """The herd's flags come animal by animal, each as the digest's object."""
    barn = bad_mother().say("fault", who="9", fault="tooth", disqualifies=True)
    told = [one.document() for one in flags.all_flags(barn.seen)]
    assert {(one["tag"], one["flag"]) for one in told} >= {("14", "low_survival"), ("9", "disqualifying_fault")}
    assert all(set(one) == {"tag", "flag", "text", "evidence"} for one in told)


def test_ration_of_all_does_is_nobody_s_greed() -> None:
    """A ration told for a whole kind flags none of them."""
    barn = Barn().doe("15", breed="Mini Rex").weigh("15", 1900).say("ration", scope="does", amount=6.0, unit="oz")
    assert "heavy_feeder" not in flagged(barn, "15")


def test_long_open_weighs_only_on_a_doe_that_never_kindled() -> None:
    """A good mother that nobody bred is not to blame for it."""
    mother = Barn().doe("14").buck("3").litter("14", "3", 120, 8, weaned=8)
    assert flagged(mother, "14")["long_open"].heed == 0
    assert flagged(Barn().doe("14", age=400), "14")["long_open"].heed == 1
