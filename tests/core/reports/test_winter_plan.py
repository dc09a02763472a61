"""The winter plan for a whole herd: who goes for want of room, what a person's word costs, what fits, and what was not known.

Over 300 lines: every wish a farm can have, met and missed.
"""

from __future__ import annotations

from datetime import timedelta
from itertools import pairwise
from typing import Any

import pytest

from core.reports.keep_or_cull import KeepOrCull, keep_or_cull
from core.reports.why import why
from core.reports.winter.bringing import bringing_lines
from core.reports.winter.eating import winter_feed
from tests.farm import TODAY, ago
from tests.herds import Barn


def plan(barn: Barn) -> KeepOrCull:
    """The plan today."""
    return keep_or_cull(barn.herd, TODAY)


def told(barn: Barn) -> str:
    """The answer to `winter`."""
    return plan(barn).winter_reply().text


def document(barn: Barn) -> dict[str, Any]:
    """The plan as numbers."""
    found: dict[str, Any] = plan(barn).document()["plan"]
    return found


def verdicts(barn: Barn) -> dict[str | None, str]:
    """Each tag's verdict."""
    return {one.tag: one.verdict for one in plan(barn).verdicts}


def mothers(weaned: dict[str, int]) -> Barn:
    """Does of one buck, each with four litters of eight, of which so many were weaned; all bred again."""
    barn = Barn().buck("3")
    for doe in weaned:
        barn.doe(doe)
    for born_ago in (420, 320, 220, 120):
        for doe, kits in weaned.items():
            barn.litter(doe, "3", born_ago, 8, weaned=kits)
            barn.say("sold", litter_of=doe, count=kits, on=ago(born_ago - 60))
    for doe in weaned:
        barn.say("bred", doe=doe, buck="3", on=ago(45)).say("missed", doe=doe, on=ago(12))
    return barn


# --- the choice -----------------------------------------------------------------------------------------------------


def test_room_for_all_changes_nothing() -> None:
    """With room for everybody nobody goes and nothing is a close call."""
    barn = mothers({"9": 8, "10": 8, "11": 7})
    free, roomy = verdicts(barn), verdicts(barn.set("cages", 40).set("mouths", 40).set("winter_feed", 10**7))
    assert free == roomy
    assert document(barn)["close_calls"] == []


@pytest.mark.parametrize(("name", "value", "words"), [("cages", 3, "3 cages for the winter"), ("mouths", 3, "3 mouths for the winter")])
def test_the_worst_mother_has_no_place(name: str, value: int, words: str) -> None:
    """One place too few costs the doe that raises fewest, and the reason tells the limit, her place and the worth."""
    barn = mothers({"9": 8, "10": 8, "11": 6}).set(name, value)
    assert verdicts(barn)["11"] == "cull"
    reason = next(one for one in plan(barn).verdicts if one.tag == "11").reasons[0]
    assert reason.code == "no_room"
    assert reason.text.startswith(words)
    assert reason.evidence["worth_low"] < reason.evidence["worth_grams"] < reason.evidence["worth_high"]
    assert "the last of the breed that stays brings" in reason.text


def test_does_a_breed_are_kept_to() -> None:
    """You keep two does a breed: the third goes, told so."""
    barn = mothers({"9": 8, "10": 8, "11": 6}).set("does_a_breed", 2)
    gone = next(one for one in plan(barn).verdicts if one.going)
    assert (gone.tag, gone.reasons[0].code) == ("11", "excess_doe")
    assert gone.reasons[0].text.startswith("You keep 2 does a breed: number ")


def test_feed_is_kept_to() -> None:
    """What is eaten until spring with the plan is no more than the feed, or the money, that there is."""
    barn = mothers({"9": 8, "10": 8, "11": 6})
    whole = winter_feed(barn.seen, {})
    scarce = barn.set("winter_feed", round(whole.total_g * 0.8))
    assert any(one.reasons[0].code == "no_feed" for one in plan(scarce).verdicts if one.going)
    assert document(scarce)["feed"]["with_plan"]["grams"] <= 0.8 * whole.total_g + 1
    money = scarce.set("feed_price", "22.00").set("feed_money", "20.00")
    assert document(money)["limits"]["feed_grams"] == pytest.approx(2000 / (2200 / 22680))


def test_feed_that_can_t_be_saved_is_told() -> None:
    """Where those that stay by a person's word and kits to come eat more than there is, the plan says so; else it does not."""
    barn = mothers({"9": 8, "10": 8}).litter("9", "3", 10, 8).set("winter_feed", 500)
    assert document(barn)["feed_over_grams"] > 0
    assert "more feed until spring than you asked for" in told(barn)
    assert "more feed until spring than you asked for" in plan(barn).reply().text
    enough = mothers({"9": 8, "10": 8}).set("winter_feed", 10**7)
    assert document(enough)["feed_over_grams"] == 0
    assert "than you asked for" not in told(enough)


def test_a_person_s_word_is_kept_and_priced() -> None:
    """Who is kept by a person's word stays; the plan tells its feed and who goes instead."""
    barn = mothers({"9": 8, "10": 8, "11": 6}).set("cages", 3).say("planned", who="11", what="keep")
    assert verdicts(barn)["11"] == "keep"
    pinned = document(barn)["pins"]
    assert [(one["tag"], one["pin"]) for one in pinned] == [("11", "keep")]
    assert len(pinned[0]["goes_instead"]) == 1
    assert pinned[0]["feed_grams"] > 0
    assert pinned[0]["worth_grams"] > 0
    assert "Keeping 11, as you said, takes " in told(barn)
    assert f"{pinned[0]['goes_instead'][0]} goes instead." in told(barn)


def test_letting_go_is_priced_too() -> None:
    """A good doe that a person lets go costs what she would bring; who gets her place is told."""
    barn = mothers({"9": 8, "10": 8, "11": 6}).set("cages", 3).say("planned", who="9", what="cull")
    pinned = document(barn)["pins"]
    assert [(one["tag"], one["pin"], one["stays_instead"]) for one in pinned] == [("9", "go", ["11"])]
    assert "Letting 9 go, as you said, costs the herd about " in told(barn)
    assert "11 stays instead." in told(barn)


def test_wishes_that_contradict_each_other() -> None:
    """Three kept in two cages: the smallest change is named, the plan takes it, and whose word to lift instead."""
    barn = mothers({"9": 8, "10": 8}).set("cages", 2)
    for tag in ("9", "10", "3"):
        barn.say("planned", who=tag, what="keep")
    found = document(barn)
    assert (found["fits"], found["changes"]) == (False, [{"limit": "cages", "breed": None, "was": 2, "to": 3}])
    assert set(found["or_lift"]) == {"9", "10", "3"}
    assert "The smallest change that fits: 3 cages instead of 2. The plan below takes it so." in told(barn)
    assert "Or let go of what you said of one of these: " in told(barn)


def test_a_breed_s_wish_that_can_t_be() -> None:
    """More litters than does: so many as there are fit; the breed is named, and feed is told in the farm's weights."""
    many = mothers({"9": 8, "10": 8}).set("litters_wanted", 5, breed="New Zealand")
    assert "2 litters of New Zealand instead of 5" in told(many)
    assert document(many)["limits"]["litters_wanted"] == {"new zealand": 5}
    fed = mothers({"9": 8, "10": 8}).set("winter_feed", 1000).say("planned", who="9", what="keep")
    assert "more feed until spring" in told(fed)


def test_litters_wanted_in_all() -> None:
    """Where the farm has one breed, litters of all are litters of it; with two breeds nobody knows of which."""
    one = mothers({"9": 8, "10": 8}).set("litters_wanted", 2)
    assert document(one)["limits"]["litters_wanted"] == {"new zealand": 2}
    two = one.doe("40", breed="Rex").buck("41", breed="Rex")
    assert document(two)["limits"]["litters_wanted"] == {}


def test_no_breed_goes_for_being_small() -> None:
    """With too few cages each breed loses its worst mother, the small one no more than the large one."""
    barn = Barn()
    for breed, buck, does in (("New Zealand", "3", "9 10 11"), ("Netherland Dwarf", "4", "19 20 21")):
        barn.buck(buck, breed=breed)
        for doe in does.split():
            barn.doe(doe, breed=breed)
            for born_ago in (320, 220, 120):
                weaned = 5 if doe in {"11", "21"} else 6
                barn.litter(doe, buck, born_ago, 7, weaned=weaned).say("sold", litter_of=doe, count=weaned, on=ago(born_ago - 60))
    told_of = verdicts(barn.set("cages", 6))
    assert [tag for tag, verdict in told_of.items() if verdict in {"cull", "sell"}] == ["11", "21"]


# --- breeding on ----------------------------------------------------------------------------------------------------


def test_a_breed_without_a_buck_is_told() -> None:
    """Does alone can't breed on, and the plan says so."""
    barn = mothers({"9": 8}).doe("40", breed="Rex")
    assert document(barn)["lacking"] == {"rex": "buck"}
    assert "Rex: no buck stays; bring one in before spring." in told(barn)
    assert "Rex: no buck" not in plan(barn).reply().text
    assert "No mate: 40." in told(barn)
    assert "New Zealand: no buck stays" in plan(barn.say("planned", who="3", what="cull")).reply().text


def test_a_breed_of_close_kin_is_told() -> None:
    """A sire and his daughter alone are too close to breed on; a breed nobody named is called so."""
    barn = Barn().buck("3", breed=None).doe("9", breed=None).litter("9", "3", 300, 6, weaned=1)
    barn.kits("9", "31", 300, sexes="d").say("died", who="9", on=ago(20))
    assert document(barn)["lacking"] == {"": "pair"}
    assert "Rabbits of no breed that you named: no buck and doe that stay are related less than 12.5 %; bring in new blood." in told(barn)


def test_matings_of_spring() -> None:
    """Every pair within the limit, with its inbreeding."""
    barn = mothers({"9": 8, "10": 8})
    assert [(one["doe"], one["buck"], one["coi"]) for one in document(barn)["matings"]] == [("9", "3", 0.0), ("10", "3", 0.0)]
    assert document(barn)["mean_kinship"] == 0.0
    assert "Spring: 2 of 2 does can be bred here with an inbreeding of 12.5 % at most" in told(barn)


def test_many_does_without_a_mate_are_counted() -> None:
    """Six are named."""
    barn = Barn()
    for tag in "abcdefgh":
        barn.doe(tag.upper() + "1")
    assert " and 2 more." in told(barn)


# --- what one more litter changes -------------------------------------------------------------------------------------


def rivals() -> Barn:
    """Two does alike but for a kit, and a cage for one of them."""
    return mothers({"9": 8, "10": 7, "11": 7, "12": 7}).set("cages", 3)


def test_close_calls_are_watched() -> None:
    """Who stays by a hair is watched, with what to see; the plan names the close calls."""
    close = document(rivals())["close_calls"]
    kept = [one for one in plan(rivals()).verdicts if one.tag in close and not one.going]
    assert kept
    assert {one.verdict for one in kept} == {"watch"}
    assert all("one more litter could cost it its place" in " ".join(reason.text for reason in one.reasons) for one in kept)
    assert all(one.course is not None and one.course.code == "observe" for one in kept)


def test_a_close_call_that_goes_is_told() -> None:
    """One that goes by a hair is told so; where a litter is due before winter, that is waited for."""
    gone = next(one for one in plan(rivals()).verdicts if one.going and one.tag in document(rivals())["close_calls"])
    assert gone.reasons[1].text == "A close call: one more litter could keep it."
    waits = rivals().set("winter", (TODAY + timedelta(60)).isoformat())
    for doe in ("9", "10", "11", "12"):
        waits.say("bred", doe=doe, buck="3", on=ago(11))
    watched = [one for one in plan(waits).verdicts if one.verdict == "watch" and one.reasons[0].code == "no_room"]
    assert watched
    courses = [one.course.text for one in watched if one.course]
    assert [text.startswith("Decide after ") for text in courses] == [True] * len(watched)


def test_worth_is_told_with_its_terms() -> None:
    """`why` tells what she should bring and by what; the numbers add up."""
    barn = mothers({"9": 8, "11": 6})
    told_of = {one["tag"]: one for one in document(barn)["worths"]}
    assert told_of["9"]["stays"]
    assert sum(term["grams"] for term in told_of["11"]["terms"]) == pytest.approx(told_of["11"]["grams"])
    assert told_of["9"]["low"] < told_of["9"]["grams"] < told_of["9"]["high"]
    kit = Barn().doe("9").buck("3").litter("9", "3", 20, 6).kits("9", "31", 20)
    assert bringing_lines(kit.seen, kit.find("31").key) == []
    line = next(line for line in why(barn.herd, TODAY, barn.find("11")).reply().lines if line.startswith("Should bring"))
    assert " of kits a year (likely " in line
    assert "raising kits −" in line
    assert why(barn.herd, TODAY, barn.find("11")).document()["worth"]["terms"] == told_of["11"]["terms"]


# --- the words --------------------------------------------------------------------------------------------------------


def test_the_answer_adds_up() -> None:
    """Feed with and without the plan are the sums of their days; the saving is the difference."""
    barn = mothers({"9": 8, "11": 2}).set("feed_price", "22.00").say("feed_left", grams=20_000)
    found = document(barn)
    assert found["money"]["cents_saved"] == pytest.approx(found["money"]["cents_without_plan"] - found["money"]["cents_with_plan"])
    assert found["feed"]["without_plan"]["grams"] > found["feed"]["with_plan"]["grams"]
    assert found["meat"]["grams"] > 0
    text = told(barn)
    assert "if nobody leaves; " in text
    assert "The bin is empty " in text
    assert "Meat from 1 cull: about " in text


def test_the_bin_may_last() -> None:
    """Where the plan makes the feed last, so it says; where nobody leaves one feed is told."""
    barn = mothers({"9": 8, "11": 2})
    need = sum(grams for _, _, grams in winter_feed(barn.seen, {}).days)
    lasts = barn.say("feed_left", grams=round(need))
    assert "The bin is empty" in told(lasts) or "bin" not in told(lasts)
    assert "if nobody leaves." in told(mothers({"9": 8}))


def test_after_the_last_day_of_winter_no_feed_is_counted() -> None:
    """On the first day of spring there is nothing to tell."""
    assert "Feed until spring" not in told(mothers({"9": 8}).set("spring", TODAY.isoformat()))


def test_only_the_whole_plan_can_be_done() -> None:
    """`Do it` is offered under the plan of the herd, not under that of a part, nor where nobody goes."""
    told_of = plan(mothers({"9": 8, "11": 2}))
    assert "do it" in [choice.says for choice in told_of.winter_reply().choices]
    assert "do it" not in [choice.says for choice in told_of.only(scope="does").reply().choices]
    assert "do it" not in [choice.says for choice in plan(mothers({"9": 8})).reply().choices]


def test_an_empty_book() -> None:
    """Without animals it says what to do."""
    assert told(Barn()).endswith("new doe 40 mini rex born 3/4")


def test_in_winter_it_says_until_when() -> None:
    """Once winter began its first day is not told."""
    assert told(mothers({"9": 8}).set("winter", ago(10).isoformat())).startswith("Winter until spring, Thu 1 Apr 2027")


def test_what_was_not_known() -> None:
    """Each thing that the plan would have used, with the note that tells it; nothing once all is told."""
    barn = Barn().doe("9", age=None).buck("3")
    missing = document(barn)["unknown"]
    assert missing == [
        "how many cages or mouths (setting cages is 12)",
        "what feed costs (feed is 22 a bag)",
        "what is in the bin (120 lb feed left)",
        "how cold the nights get (winter nights are 10F)",
        "the weight of 2 animals",
        "the age of 1 animal",
    ]
    assert "I did not know: how many cages" in told(barn)
    known = Barn().doe("9").buck("3").weigh("9", 4000).weigh("3", 4000).set("cages", 9).set("feed_price", "22.00").set("winter_low", -5.0)
    known.say("feed_left", grams=90_000)
    assert document(known)["unknown"] == []
    assert "I did not know" not in told(known)


def test_worth_goes_in_order() -> None:
    """The ranks in the reasons are a rank: more worth, better place."""
    barn = mothers({"9": 8, "10": 8, "11": 6, "12": 5}).set("cages", 2)
    facts = [one.reasons[0].evidence for one in plan(barn).verdicts if one.reasons[0].code == "no_room"]
    by_rank = sorted(facts, key=lambda one: one["rank"])
    assert all(one["worth_grams"] >= other["worth_grams"] for one, other in pairwise(by_rank))
