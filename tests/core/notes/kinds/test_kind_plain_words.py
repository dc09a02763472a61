"""Replies that say what stands, what is left and what to note next."""

from __future__ import annotations

from dataclasses import replace
from datetime import UTC, datetime

import pytest

from core.herd.state import Herd
from core.herd.wishes import WISHES
from core.notes.checking import LEFT, UNDONE
from core.notes.fact import Cents
from core.notes.kinds.culling import taken_as
from core.notes.kinds.setting import _SAID
from core.notes.reader import read
from core.notes.reading import Context, Message
from tests.core.notes.talking import Barn
from tests.farm import TODAY, ago, check, fact, reply, small_herd, tell, why

LEAVES = "That leaves 7 kits, 15 days old, without a doe. Note what becomes of them, for example "


# --- kits without a doe -------------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", ["died", "sold", "culled", "given_away"])
def test_a_doe_that_leaves_kits_behind(kind: str) -> None:
    """How many of what age, and what to note next: with a nurse where there is one."""
    assert LEAVES + '"12 lost 7 kits".' in reply(small_herd(), kind, who="12")
    nurse = tell(small_herd(), "kindled", doe="14", born=5, on=ago(1))
    assert LEAVES + '"moved 7 kits from 12 to 14", or "12 lost 7 kits".' in reply(nurse, kind, who="12")


def test_one_that_leaves_no_kits_behind() -> None:
    """Weaned kits need no doe; a buck has none."""
    for who in ("16", "5", "15"):
        assert not any("without a doe" in line for line in reply(small_herd(), "died", who=who))


def orphans() -> Herd:
    """The small herd after 12 died."""
    return tell(small_herd(), "died", who="12").on_day(TODAY)


def test_kits_outlive_their_doe() -> None:
    """They are lost, counted, fostered, weighed, weaned, and their box taken out as before."""
    herd = orphans()
    assert why(herd, "kits_lost", doe="12", count=2) is None
    assert why(herd, "kit_count", doe="12", count=7) is None
    assert why(herd, "fostered", from_="12", to="12", count=2) == "which_animal"
    assert why(tell(herd, "kindled", doe="14", born=5), "fostered", from_="12", to="14", count=2) is None
    assert why(herd, "litter_weighed", doe="12", grams=1400) is None
    assert why(herd, "weaned", doe="12", count=7) == "confirm"  # too young, but hers
    assert why(herd, "nest_box", doe="12", change="out") is None
    assert reply(herd, "kits_lost", doe="12", count=2) == ("Doe 12 lost 2 kits.", "5 kits of doe 12 left, without her.")


def test_what_a_gone_doe_does_herself_cannot_be() -> None:
    """Nor can kits be hers once none are left in the nest."""
    herd = orphans()
    assert why(herd, "nest_box", doe="12", change="in") == "impossible"
    assert why(herd, "bred", doe="12", buck="5") == "impossible"
    assert why(tell(herd, "kits_lost", doe="12", count=7), "kits_lost", doe="12", count=1) == "impossible"
    assert why(herd, "kits_lost", doe="99", count=1) == "which_animal"


# --- taking a departure back --------------------------------------------------------------------------------------


@pytest.mark.parametrize("kind", list(LEFT))
def test_the_words_that_take_a_departure_back_are_read(kind: str) -> None:
    """What the question proposes is an undo of just that."""
    problem = check(tell(small_herd(), kind, who="22").on_day(TODAY), "weighed", who="22", grams=4000)
    words = f"undo the {UNDONE[kind]} of 22"
    assert problem is not None
    assert f'"{words}"' in problem.remedy
    at = datetime(2026, 11, 25, 13, 10, tzinfo=UTC)
    assert read(Message(words, at), small_herd(), Context()).facts == (fact("undo", who="22", about=kind),)


# --- breedings ----------------------------------------------------------------------------------------------------


def test_a_refusal_takes_no_breeding_back() -> None:
    """That of the day stands until it is undone; an earlier one stands; without any there is none."""
    today = tell(small_herd(), "bred", doe="15", buck="3")
    assert reply(today, "refused", doe="15", buck="3")[1] == (
        'Her breeding to buck 3 (today) still stands. If it never happened: "undo the breeding of 15".'
    )
    yesterday = tell(small_herd(), "bred", doe="15", buck="3", on=ago(1))
    assert reply(yesterday, "refused", doe="15")[1] == "Her breeding to buck 3 (yesterday) still stands; none is added."
    assert reply(small_herd(), "refused", doe="15")[1] == "No breeding recorded. Try again in a day or two."
    assert reply(small_herd(), "refused", doe="99")[1] == "No breeding recorded. Try again in a day or two."


def test_breedings_of_one_service_are_said_to_be_one() -> None:
    """Told before or after; the nearest is named; one further apart is another service."""
    herd = tell(small_herd(), "bred", doe="15", buck="3")
    assert "Counted as the same service as her breeding to buck 3 (today)." in reply(herd, "bred", doe="15", buck="3", on=ago(1))
    two = tell(herd, "bred", doe="15", buck="5", on=ago(2))
    assert "Counted as the same service as her breeding to buck 5 (Mon 23 Nov)." in reply(two, "bred", doe="15", buck="3", on=ago(2))
    assert not any("same service" in line for line in reply(small_herd(), "bred", doe="22", buck="5"))


# --- plain words --------------------------------------------------------------------------------------------------


def test_every_setting_is_told_in_words() -> None:
    """None is told by its name in the book."""
    assert set(_SAID) == set(WISHES)


@pytest.mark.parametrize(
    ("name", "value", "line"),
    [
        ("feed_price", "22.00", "Feed price: $22.00 a bag."),
        ("bucks_a_breed", 2, "Bucks you keep of each breed: 2."),
        ("winter", "2026-12-15", "Winter begins Tue 15 Dec 2026."),
        ("date_order", "DMY", "Dates in numbers are read day first: 3/4 is the third of April."),
        ("dotted_weight", "ounces", "4.6 is 4 lb 6 oz."),
        ("winter_low", -12.2, "A winter's night here is 10 °F."),
        ("cup_weight", 170, "A cup of pellets weighs 6 oz."),
        ("timezone", "America/Denver", "The farm's time zone: America/Denver."),
    ],
)
def test_a_setting_in_words(name: str, value: str | int, line: str) -> None:
    """As a person would say it."""
    assert reply(small_herd(), "setting", name=name, value=value) == (line,)


def test_money_of_another_country() -> None:
    """Its code stands behind the price."""
    herd = small_herd()
    assert reply(herd, "sold", who="31", price=Cents(4000))[0] == "Sold buck 31 for $40.00."
    assert "40.00 EUR" in reply(replace_currency(herd, "EUR"), "sold", who="31", price=Cents(4000))[0]


def replace_currency(herd: Herd, currency: str) -> Herd:
    """The herd of a farm with other money."""
    return replace(herd, settings=replace(herd.settings, currency=currency))


def test_a_chore_done_for_everyone() -> None:
    """The small word lost in keeping the chore is put back."""
    assert reply(small_herd(), "done", chore="trimmed nails everyone") == ("Done: trimmed nails for everyone.",)
    assert reply(small_herd(), "done", chore="hay for everybody") == ("Done: hay for everybody.",)


def test_one_day_is_no_days() -> None:
    """Kits weaned far too young."""
    problem = check(tell(small_herd(), "kindled", doe="14", born=5, on=ago(1)), "weaned", doe="14", count=5)
    assert problem is not None
    assert "only 1 day old" in problem.text


def test_a_word_that_may_tell_of_a_death_is_told_back() -> None:
    """How it was taken, and how to say the other; weights or a plain word leave no doubt."""
    assert taken_as(fact("culled", who="22"), "dispatched 22") == 'Taken as butchered. If no meat came of it: "undo", then "22 died".'
    assert taken_as(fact("culled", who="22"), "butchered 22") is None
    assert taken_as(fact("culled", who="22", live_grams=2300), "culled 22 5-2") is None
    assert taken_as(fact("culled", litter_of="12", count=1), "culled 1 of 12's") is None


def test_what_cannot_happen_twice_is_told_so() -> None:
    """The question after the same words again fits what they say."""
    barn = Barn()
    for text in ("sell 31", "sell 31", "31 3-14", "31 3-14"):
        barn.say(text)
    assert barn.heard[1].reply.text.endswith("Nothing changes, so say no; yes notes it once more.")
    assert barn.heard[3].reply.text.endswith("Say yes if it happened once more, no if it is the same.")
