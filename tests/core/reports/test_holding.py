"""What an adult needs to hold its condition, by its ration and the hand on its back."""

from __future__ import annotations

import pytest

from core.reports.card import card
from core.reports.feed import feed, feed_of
from core.reports.holding import held, unheld_lines
from core.reports.merits import merits
from tests.farm import TODAY, ago
from tests.herds import Barn


def fed(score: float | None = 3, before: float | None = None, grams: float = 40, since: int = 120) -> Barn:
    """A buck of 10 lb on a ration since so many days, scored today, and perhaps when it began."""
    barn = Barn().buck("3").weigh("3", 4536, since + 1)
    if before is not None:
        barn.say("condition", who="3", score=before, on=ago(since))
    barn.say("ration", who="3", amount=grams, unit="g", on=ago(since))
    return barn if score is None else barn.say("condition", who="3", score=score)


def test_a_buck_that_holds_on_a_quarter_is_frugal() -> None:
    """He is told as a good doer, or his measure as wrong."""
    barn = fed(before=3)
    found = held(barn.herd, barn.find("3"), TODAY)
    assert found is not None
    assert found.frugal
    assert found.document()["need_low"] < 50 < found.document()["expected_grams"]
    lines = feed_of(barn.herd, TODAY, barn.find("3")).lines
    assert lines[1].startswith("Holds condition (3 after 120 days on 1.4 oz a day): needs about ")
    assert "a good doer, or the measure is off" in lines[2]


def test_one_scored_once_is_held_against_the_ideal_and_less_surely() -> None:
    """Without a score at the beginning the ideal stands in."""
    one, two = (held((barn := fed(before=before)).herd, barn.find("3"), TODAY) for before in (None, 3))
    assert one is not None
    assert two is not None
    assert one.need.deviation > two.need.deviation


@pytest.mark.parametrize(("score", "word"), [(4, "Gained"), (2, "Lost")])
def test_one_that_changed_says_so(score: float, word: str) -> None:
    """Gained or lost condition on its ration, and what it needs instead."""
    barn = fed(score=score, before=3, grams=150)
    lines = feed_of(barn.herd, TODAY, barn.find("3")).lines
    assert lines[1].startswith(f"{word} condition ({score} after 120 days on 5.3 oz a day)")
    assert len(lines) == 2


def test_nothing_is_said_without_a_score_a_ration_or_time() -> None:
    """Nor of a doe in kindle, who eats for others, nor of kits."""
    unscored, early = fed(score=None), fed(since=5)
    unfed = Barn().buck("3").say("condition", who="3", score=3)
    bred = Barn().doe("14").buck("3").say("ration", who="14", amount=150, unit="g", on=ago(60)).say("condition", who="14", score=3)
    bred.say("bred", doe="14", buck="3", on=ago(10))
    kit = Barn().doe("R1", 20)
    for barn, tag in ((unscored, "3"), (early, "3"), (unfed, "3"), (bred, "14"), (kit, "R1")):
        assert held(barn.herd, barn.find(tag), TODAY) is None
    told = [unheld_lines(each.herd, each.find(tag), TODAY) for each, tag in ((unscored, "3"), (unfed, "3"), (bred, "14"), (kit, "R1"))]
    assert [len(lines) for lines in told] == [1, 1, 0, 0]
    assert told[0][0] == "Note its condition after 14 days or more on this ration (3 bcs 3) and I can tell what it needs to hold it."
    assert told[1][0].startswith("Note its ration and its condition")
    assert feed_of(unfed.herd, TODAY, unfed.find("3")).lines[1:] == tuple(told[1])


def test_one_that_lives_on_little_is_told_where_feed_is_and_where_it_is_kept() -> None:
    """The herd's feed names him, his verdict counts it for him; a thin one is no good doer."""
    barn, thin = fed(before=3), fed(score=2, before=3)
    assert any("a good doer, or the measure is off" in line for line in feed(barn.herd, TODAY).reply().lines)
    assert not any("a good doer" in line for line in feed(thin.herd, TODAY).reply().lines)
    reasons = {one.code: one for one in merits(barn.seen, barn.find("3"))}
    assert reasons["lives_on_little"].evidence["frugal"] is True
    assert "lives_on_little" not in {one.code for one in merits(thin.seen, thin.find("3"))}


def test_a_ration_is_told_finely_in_the_farms_units() -> None:
    """Tenths of an ounce, or grams."""
    metric = fed(before=3).set("weight_units", "kg")
    assert "on 40 g a day" in feed_of(metric.herd, TODAY, metric.find("3")).lines[1]


def test_the_card_tells_what_it_needs() -> None:
    """In words and as numbers; of one never scored nothing."""
    barn, unscored = fed(before=3), fed(score=None)
    told = card(barn.herd, TODAY, barn.find("3"))
    assert any(line.startswith("Holds condition (3 after 120 days") for line in told.reply().lines)
    assert told.document()["holding"]["frugal"] is True
    assert card(unscored.herd, TODAY, unscored.find("3")).document()["holding"] is None
