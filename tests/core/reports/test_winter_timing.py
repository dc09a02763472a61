"""When an animal goes: at once, after her kits, at its weight, once he has bred, by the end of an offer, or after a look."""

from __future__ import annotations

from dataclasses import replace
from datetime import timedelta

import pytest

from core.handbook import winter as figures
from core.reports.keep_or_cull import keep_or_cull
from core.reports.winter.course import Course
from core.reports.winter.doing import orders
from core.reports.winter.timing import course_of
from tests.farm import TODAY, ago
from tests.herds import Barn

WINTER = TODAY.replace(month=12, day=1)


def course(barn: Barn, tag: str) -> Course | None:
    """When the verdict on that animal is carried out."""
    found = keep_or_cull(barn.herd, TODAY).verdict_on(barn.find(tag).key)
    assert found is not None
    return found.course


def told(barn: Barn, tag: str) -> tuple[str, object, str]:
    """The same, which there must be."""
    found = course(barn, tag)
    assert found is not None
    return found.code, found.on, found.text


def condemned() -> Barn:
    """A doe that goes and a doe that stays, with their buck."""
    barn = Barn().doe("14").doe("9").buck("3")
    for born_ago in (420, 320, 220, 120):
        barn.litter("14", "3", born_ago, 8, weaned=2).litter("9", "3", born_ago, 8, weaned=8)
    return barn


def test_nothing_holds_her_back() -> None:
    """She goes now, and who stays has no day at all."""
    assert told(condemned(), "14") == ("now", TODAY, "Now.")
    assert course(condemned().say("bred", doe="9", buck="3", on=ago(20)), "9") is None


def test_after_her_kits() -> None:
    """A doe with kits under her goes once these are weaned."""
    barn = condemned().litter("14", "3", 20, 6)
    code, on, text = told(barn, "14")
    assert (code, on) == ("after_hold", TODAY + timedelta(15))
    assert text.startswith("Once her kits are weaned, about ")


def test_after_the_withdrawal_time() -> None:
    """Meat waits for the end of a withdrawal time; where nobody noted one, a vet is asked first."""
    waits = condemned().say("treated", who="14", with_="ivermectin", withdrawal_days=28, on=ago(8))
    assert told(waits, "14")[:2] == ("after_hold", TODAY + timedelta(20))
    assert "withdrawal time is over" in told(waits, "14")[2]
    untold = condemned().say("treated", who="14", with_="ivermectin", on=ago(8))
    assert told(untold, "14") == ("ask_vet", None, "Ask your vet first when it may be eaten.")


def young(grams: int, age: int = 70) -> Barn:
    """A grow-out that the person means to cull, last weighed at that."""
    barn = Barn().doe("9").buck("3").litter("9", "3", age, 6, weaned=6).kits("9", "31", age)
    return barn.weigh("31", grams).say("planned", who="31", what="cull")


def test_grown_to_its_weight() -> None:
    """A young one that makes its weight within weeks is fed until then; one that is far from it goes now."""
    code, on, text = told(young(1950), "31")
    assert code == "at_weight"
    assert isinstance(on, type(TODAY))
    assert TODAY < on <= TODAY + timedelta(figures.GROW_ON_DAYS.whole)
    assert text.startswith("Grow to 5 lb, about ")
    assert told(young(600), "31")[0] == "now"


def test_a_litter_grown_to_its_weight() -> None:
    """Kits without tags are fed to their weight where it is near; light ones of sixteen weeks have none to wait for."""
    light = Barn().doe("9").buck("3").litter("9", "3", 120, 6, weaned=4).say("litter_weighed", doe="9", grams=4 * 1500, count=4, on=ago(2))
    found = next(one for one in keep_or_cull(light.herd, TODAY).verdicts if one.tag is None)
    assert (found.verdict, found.course.code if found.course else "") == ("cull", "now")
    near = Barn().doe("9").buck("3").litter("9", "3", 75, 6, weaned=4).say("litter_weighed", doe="9", grams=4 * 2000, count=4, on=ago(2))
    coming = course_of(near.seen, replace(keep_or_cull(near.herd, TODAY).verdicts[-1], verdict="cull"))
    assert coming is not None
    assert coming.code == "at_weight"


def test_once_he_has_bred() -> None:
    """Breed him back, then he goes."""
    barn = Barn().doe("9").buck("3").buck("5").say("planned", who="3", what="cull")
    barn.say("planned", who="9", what="breed", with_="3", on=TODAY + timedelta(9))
    assert told(barn, "3")[:2] == ("after_mating", TODAY + timedelta(9))


def test_on_the_person_s_day() -> None:
    """Their own day holds, for a cull and for a sale."""
    barn = Barn().doe("9").buck("3").say("planned", who="9", what="cull", on=TODAY + timedelta(5))
    assert told(barn, "9")[:2] == ("as_planned", TODAY + timedelta(5))
    sold = Barn().doe("9").say("for_sale", who="9", price="40.00", until=TODAY + timedelta(4))
    assert told(sold, "9")[:2] == ("as_planned", TODAY + timedelta(4))


def test_offered_then_culled() -> None:
    """With time to find a buyer, three weeks or until winter; then it goes."""
    code, on, text = told(Barn().doe("9").say("planned", who="9", what="sell"), "9")
    assert (code, on) == ("sell_then_cull", max(WINTER, TODAY + timedelta(figures.SELL_DAYS.whole)))
    assert "if nobody took it by" in text


def watched() -> Barn:
    """A doe that has not been tried yet."""
    return Barn().doe("15").buck("3")


@pytest.mark.parametrize(
    ("barn", "tag", "text"),
    [
        (watched().say("bred", doe="15", buck="3", on=ago(20)), "15", "Decide after the litter due Sun 6 Dec."),
        (watched().doe("8", 200).doe("31", 130), "31", "Decide after the weighing due (overdue)."),
        (watched().doe("8", 200), "8", "Decide after her next litter."),
        (watched(), "15", "Breed her, and decide after that litter; or let her go."),
        (watched().say("ailment", who="15", sign="mites", on=ago(1)), "15", "Decide once it is well, or a vet has seen it."),
        (
            watched().doe("8", 200).say("temper", who="8", grade="bad", on=ago(9)).say("temper", who="8", grade="bad", on=ago(2)),
            "8",
            "Decide if it happens again.",
        ),
        (watched().doe("8", 200).doe("31", 120).weigh("31", 2900), "31", "Decide once it is weighed again."),
    ],
)
def test_what_to_see_first(barn: Barn, tag: str, text: str) -> None:
    """Who is watched is decided after the next thing that shows more."""
    assert told(barn, tag)[2] == text


def test_orders_are_notes_of_the_plan() -> None:
    """Every animal that goes by the plan and not yet by the person's word; a buck to sell gets the end of his offer."""
    (order,) = orders(condemned().herd, TODAY).notes
    why = "winter plan, 8 of 32 kits raised in 4 litters, 25 %"
    assert order == f'plan to cull 14 on {TODAY} because "{why}"'
    assert orders(condemned().say("planned", who="14", what="cull").herd, TODAY).notes == ()
    show = Barn().doe("9").doe("10").buck("3").say("shown", who="9", placing="1st")
    show.say("for_sale", who="9", until=ago(9), on=ago(30))
    (order,) = orders(show.herd, TODAY).notes
    assert order.startswith(f'plan to sell 9 until {TODAY + timedelta(21)} because "winter plan, ')
