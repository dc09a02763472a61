"""The breeder's calendar: each chore on its day, done, put off or moot."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from core.herd import calendar
from core.herd.chore import CHORES, Chore, chore_named
from core.herd.state import Herd
from tests.farm import TODAY, ago, small_herd, tell


def due(herd: Herd, chore: str, tag: str | None = None, today: date = TODAY) -> list[Chore]:
    """The open chores of that name, of that animal."""
    return [each for each in calendar.all_chores(herd, today) if each.chore == chore and tag in {None, each.tag}]


def days(herd: Herd, chore: str, tag: str | None = None, today: date = TODAY) -> list[date]:
    """Their days."""
    return [each.on for each in due(herd, chore, tag, today)]


def doe(*matings: int) -> Herd:
    """One doe, bred so many days ago."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "animal", tag="2", sex="buck")
    for each in matings:
        herd = tell(herd, "bred", doe="1", buck="2", on=ago(each))
    return herd


def test_after_mating() -> None:
    """Palpate on day 12, box in on day 28, kits due on day 31, each with a key that never changes."""
    herd = doe(5)

    assert days(herd, "palpate") == [ago(-7)]
    assert days(herd, "nest_box_in") == [ago(-23)]
    assert days(herd, "kindling") == [ago(-26)]
    assert due(herd, "kindling")[0].key == f"kindling:1:{ago(5)}"
    assert due(herd, "kindling")[0].text == "Doe 1 is due to kindle, Sun 20 Dec to Wed 23 Dec (bred to 2 Fri 20 Nov)"


def test_one_service_has_one_calendar() -> None:
    """Two matings of one service cause the chores once, from the first."""
    assert days(doe(6, 5), "kindling") == [ago(-25)]


def test_palpation_is_moot_once_felt_or_boxed() -> None:
    """A palpation or the box makes the chore pointless; an open palpation ends them all."""
    assert due(tell(doe(13), "palpated", doe="1", result="bred"), "palpate") == []
    assert due(tell(doe(28), "nest_box", doe="1", change="in"), "palpate") == []
    assert due(tell(doe(28), "nest_box", doe="1", change="in"), "nest_box_in") == []
    assert due(tell(doe(28), "nest_box", doe="1", change="in"), "kindling") != []
    assert calendar.mating_chores(tell(doe(13), "palpated", doe="1", result="open"), TODAY) == ()


def test_a_doe_that_left_causes_nothing() -> None:
    """A sold doe has no calendar."""
    assert calendar.all_chores(tell(doe(13), "sold", who="1"), TODAY) == ()


def test_overdue_kindling_stays() -> None:
    """What is late stays until a later event of the mating is on the book."""
    assert days(doe(60), "kindling") == [ago(29)]
    assert due(tell(doe(60), "missed", doe="1"), "kindling") == []


def test_after_kindling() -> None:
    """Nest check on day 1, box out on day 18, wean and rebreed on day 35."""
    herd = tell(doe(31), "kindled", doe="1", born=8)

    assert days(herd, "kindling") == []
    assert days(herd, "check_nest") == [ago(-1)]
    assert days(herd, "nest_box_out") == [ago(-18)]
    assert days(herd, "wean") == days(herd, "rebreed") == [ago(-35)]
    assert due(herd, "wean")[0].key == f"wean:1:{TODAY}"


def test_chores_of_a_litter_become_moot() -> None:
    """Looking at the nest, taking the box, weaning and losing the litter each make chores pointless."""
    herd = tell(doe(40), "kindled", doe="1", born=8, on=ago(9))

    assert due(tell(herd, "kit_count", doe="1", count=8), "check_nest") == []
    assert due(tell(herd, "kits_lost", doe="1", count=1), "check_nest") == []
    assert due(tell(herd, "litter_weighed", doe="1", grams=900), "check_nest") == []
    assert due(tell(herd, "nest_box", doe="1", change="out"), "nest_box_out") == []
    assert due(tell(herd, "nest_box", doe="1", change="out"), "check_nest") == []
    assert due(tell(herd, "weaned", doe="1", count=8), "wean") == []
    assert due(tell(herd, "kits_lost", doe="1", count=8), "nest_box_out") == []


def test_rebreed_is_moot_once_bred_or_leaving() -> None:
    """A doe that is bred again, has left or is meant to leave needs no buck; nor has an older litter a say."""
    herd = tell(doe(80), "kindled", doe="1", born=8, on=ago(49))

    assert days(herd, "rebreed") == [ago(14)]
    assert due(tell(herd, "bred", doe="1", buck="2", on=ago(40)), "rebreed") == []
    assert due(tell(herd, "planned", who="1", what="retire"), "rebreed") == []
    assert due(tell(herd, "died", who="1"), "rebreed") == []
    assert days(tell(herd, "kindled", doe="1", born=3), "rebreed") == [ago(-35)]


def test_the_litter_of_a_doe_that_died_is_still_weaned() -> None:
    """Orphans are weaned too."""
    herd = tell(tell(doe(31), "kindled", doe="1", born=8), "died", who="1")

    assert days(herd, "wean", "1") == [ago(-35)]
    assert [due(herd, name)[0].text for name in ("check_nest", "nest_box_out", "wean")] == [
        "Check the nest of doe 1 (she is gone): count the kits, take out the dead",
        "Nest box out for doe 1's kits (she is gone)",
        "Wean doe 1's litter (she is gone): 8 kits",
    ]
    assert due(tell(herd, "kits_lost", doe="1", count=8), "check_nest") == []


def test_a_litter_whose_dam_is_not_on_the_book() -> None:
    """A litter that hangs in the air still has its day, under the dam's key."""
    herd = tell(doe(31), "kindled", doe="1", born=8)
    orphaned = Herd(litters=herd.litters)

    assert days(orphaned, "wean", "1") == [ago(-35)]
    assert due(orphaned, "rebreed") == []


def test_weigh_litters_and_tagged_ones() -> None:
    """Untagged kits are weighed by their doe, tagged ones each, at 56, 70, 84 and 112 days."""
    herd = small_herd()

    assert days(herd, "weigh", "16") == [ago(-8), ago(-22), ago(-36), ago(-64)]
    assert days(herd, "weigh", "31") == [ago(17)]
    assert days(herd, "weigh", "3") == []


def test_weighing_is_moot_when_done_or_passed_by() -> None:
    """A weight near or after the age settles it; an earlier one gives way to the next; a grown one is left alone."""
    herd = tell(Herd(), "animal", tag="1", sex="doe", born=ago(60))

    assert days(herd, "weigh") == [ago(4), ago(-10), ago(-24), ago(-52)]
    assert days(tell(herd, "weighed", who="1", grams=1500), "weigh") == [ago(-10), ago(-24), ago(-52)]
    assert days(herd, "weigh", today=ago(-11)) == [ago(-10), ago(-24), ago(-52)]
    assert days(herd, "weigh", today=ago(-92)) == []
    assert days(tell(tell(herd, "kindled", doe="1", born=2, on=ago(60)), "litter_weighed", doe="1", grams=900), "weigh", "1")


def test_sale_date_of_an_animal_and_of_kits() -> None:
    """An offer comes up on its last day while the animal, or an untagged kit, is there."""
    herd = tell(small_herd(), "for_sale", who="31", price=None, until=ago(-20))
    herd = tell(herd, "for_sale", litter_of="16", count=2, until=ago(-9))

    assert days(herd, "sale_date", "31") == [ago(-20)]
    assert days(herd, "sale_date", "16") == [ago(-9)]
    assert due(tell(herd, "sold", litter_of="16", count=5), "sale_date", "16") == []
    assert due(tell(herd, "sold", who="31"), "sale_date", "31") == []
    assert due(tell(small_herd(), "for_sale", litter_of="16", count=2), "sale_date") == []


@pytest.mark.parametrize(
    ("what", "chore", "text"),
    [
        ("cull", "cull_date", "Cull 31"),
        ("sell", "sale_date", "Sell 31"),
        ("review", "review", "Review 31: slow"),
        ("keep", "review", "Keep 31"),
        ("retire", "custom", "Retire 31"),
        ("replace", "custom", "Replace 31 with 3"),
    ],
)
def test_plans_come_up(what: str, chore: str, text: str) -> None:
    """A plan with a day comes up on it."""
    reason, other = ("slow" if what == "review" else None), ("3" if what == "replace" else None)
    herd = tell(small_herd(), "planned", who="31", what=what, on=ago(-7), reason=reason, with_=other)

    assert [(each.on, each.text) for each in due(herd, chore, "31") if each.key.startswith(f"{chore}:31:{ago(-7)}")] == [(ago(-7), text)]


def test_the_last_word_on_a_stay_holds() -> None:
    """A plan to keep an animal withdraws the plan to cull it; one without a day causes nothing."""
    herd = tell(tell(small_herd(), "planned", who="31", what="cull", on=ago(-7)), "planned", who="31", what="keep")

    assert due(herd, "cull_date") == []


def test_a_planned_breeding_is_done_once_it_happened() -> None:
    """It comes up with both animals, until they, or she, were bred."""
    herd = tell(small_herd(), "planned", who="15", what="breed", with_="3", on=ago(-3), until=ago(-9))

    assert [(each.on, each.text) for each in due(herd, "custom", "15")] == [(ago(-3), "Breed 15 to 3")]
    assert due(tell(herd, "bred", doe="15", buck="5"), "custom", "15") == []


def test_reminders_of_their_own_and_chores_put_off() -> None:
    """A reminder comes on its day and time; a chore put off moves there and keeps its key."""
    herd = tell(small_herd(), "remind", text="trim nails", on=ago(-2), time="16:30", who="9")
    herd = tell(herd, "remind", text="buy straw", on=ago(-1))
    herd = tell(herd, "remind", text="kindling", on=ago(-5), key=f"kindling:9:{ago(28)}")

    assert [(each.on, each.tag, each.text, each.time) for each in due(herd, "custom")] == [
        (ago(-1), None, "buy straw", None),
        (ago(-2), "9", "trim nails", "16:30"),
    ]
    assert days(herd, "kindling", "9") == [ago(-5)]


def test_done_and_skipped_chores_stay_away() -> None:
    """A chore that is done or skipped is gone; put off again, it comes back."""
    key = f"nest_box_in:9:{ago(28)}"
    herd = tell(small_herd(), "skipped", chore="nest box", who="9")
    assert due(herd, "nest_box_in", "9") == []
    assert herd.closed == {key: TODAY}
    herd = tell(herd, "remind", text="box", on=ago(-1), key=key)
    assert days(herd, "nest_box_in", "9") == [ago(-1)]
    assert due(tell(herd, "done", chore="anything", key=key), "nest_box_in", "9") == []


def test_done_in_the_words_of_a_reminder() -> None:
    """What was asked in one's own words is done in like words; words that fit nothing close nothing."""
    herd = tell(small_herd(), "remind", text="trim nails on 9", on=ago(1), who="9")

    assert due(tell(herd, "done", chore="trimming nails", who="9"), "custom") == []
    assert tell(herd, "done", chore="swept the aisle").closed == {}
    assert tell(herd, "skipped", chore="nest check", who="12").closed == {f"check_nest:12:{ago(15)}": TODAY}


@pytest.mark.parametrize(
    ("said", "chore"),
    [
        ("nest_box_in", "nest_box_in"),
        ("nest box", "nest_box_in"),
        ("Palpation", "palpate"),
        ("weaning", "wean"),
        ("weighing", "weigh"),
        ("the nest check", "check_nest"),
        ("box out", "nest_box_out"),
        ("re-breed", "rebreed"),
        ("sweeping", None),
    ],
)
def test_chore_named(said: str, chore: str | None) -> None:
    """Plain words name chores."""
    assert chore_named(said) == chore
    assert chore is None or chore in CHORES


def test_an_offer_and_a_plan_of_one_day_are_one_chore() -> None:
    """A buck for sale until the day he is planned to be sold comes up once."""
    herd = tell(tell(small_herd(), "for_sale", who="31", until=ago(-9)), "planned", who="31", what="sell", on=ago(-9))

    assert days(herd, "sale_date", "31") == [ago(-9)]


def test_weeks_are_counted_from_the_cause_not_from_today() -> None:
    """Asking on another day gives the same chores."""
    herd = small_herd()

    assert calendar.mating_chores(herd, TODAY) == calendar.mating_chores(herd, TODAY + timedelta(3))
