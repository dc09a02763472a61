"""The week's letter."""

from __future__ import annotations

from datetime import date, timedelta

from core.reports.digest import digest
from tests.farm import TODAY, ago
from tests.herds import Barn


def busy() -> Barn:
    """A bad mother, a doe in kindle, one nursing, and feed in the bin."""
    barn = Barn().doe("14", name="Juno").doe("9").doe("10").buck("3")
    for born_ago in (420, 320, 220, 120):
        barn.litter("14", "3", born_ago, 8, weaned=3).litter("9", "3", born_ago, 8, weaned=8)
    return barn.say("bred", doe="9", buck="3", on=ago(12)).litter("10", "3", 9, 7).say("feed_left", grams=50_000, on=ago(2))


def test_document_has_the_contract_s_shape() -> None:
    """Week, flags, chores and counts, under the contract's names."""
    told = digest(busy().herd, TODAY).document()
    assert told["week_of"] == "2026-11-23"
    assert set(told["counts"]) == {"bucks", "does", "grow_outs", "kits", "litters"}
    assert told["counts"] == {"bucks": 1, "does": 3, "grow_outs": 44, "kits": 7, "litters": 1}
    assert ("14", "low_survival") in {(one["tag"], one["flag"]) for one in told["flags"]}
    assert all(date.fromisoformat(one["on"]) <= TODAY + timedelta(7) for one in told["chores"])


def test_week_begins_on_monday() -> None:
    """On a Sunday the week is still that of the Monday before."""
    assert digest(Barn().herd, date(2026, 11, 29)).document()["week_of"] == "2026-11-23"
    assert digest(Barn().herd, date(2026, 11, 30)).document()["week_of"] == "2026-11-30"


def test_gravest_animal_comes_first() -> None:
    """Flags are ordered by how much speaks against the animal."""
    barn = busy().doe("22")
    assert digest(barn.herd, TODAY).flags[0].tag == "14"


def test_reply_reads_as_a_letter() -> None:
    """Week, chores, flags, the herd and the feed, with buttons."""
    reply = digest(busy().herd, TODAY).reply()
    assert reply.lines[0].startswith("Week of Mon 23 Nov: ")
    assert any(line.startswith("Today: Palpate doe 9") for line in reply.lines)
    assert any(line.startswith("Doe 14 (Juno): 12 of 32 kits raised") for line in reply.lines)
    assert "Herd: 1 buck, 3 does, 44 grow-outs and 7 kits in 1 litter." in reply.lines
    assert [one.says for one in reply.choices] == ["why 14", "who should I keep"]


def test_long_lists_are_cut() -> None:
    """A full week names the first chores and flags, and counts the rest."""
    barn = Barn().buck("3")
    for number in range(12):
        barn.doe(f"{number + 10}", age=400).say("for_sale", who=f"{number + 10}", until=ago(3), on=ago(30))
    text = digest(barn.herd, TODAY).reply().text
    assert "Doe 10: For sale until Sun 22 Nov, 3 days ago, and still here. Also: long open." in text
    assert "And 6 more animals flagged: ask for flags." in text
    assert "And 10 more: ask what is due." in text


def test_late_doe_is_in_the_letter() -> None:
    """A doe past her time is told with the vet."""
    barn = Barn().buck("3").doe("14").say("bred", doe="14", buck="3", on=ago(34))
    assert "call a vet" in digest(barn.herd, TODAY).reply().text


def test_quiet_week() -> None:
    """An empty herd has no flags, no chores, and no button for why."""
    reply = digest(Barn().herd, TODAY).reply()
    assert reply.lines[0] == "Week of Mon 23 Nov: 0 chores; 0 animals to look at."
    assert [one.says for one in reply.choices] == ["who should I keep"]


def test_feed_in_days() -> None:
    """What was counted, less what was eaten since, lasts so many days."""
    barn = Barn().buck("3").say("ration", who="3", amount=100.0, unit="g").say("feed_left", grams=1200, on=ago(2))
    found = digest(barn.herd, TODAY)
    assert (found.feed.grams, found.feed.a_day, found.feed.days) == (1000, 100, 10)
    assert found.feed_line() == "Feed: about 2 lb 3 oz left, 10 days at 4 oz a day."
    low = Barn().buck("3").say("ration", who="3", amount=100.0, unit="g").say("feed_left", grams=500)
    assert digest(low.herd, TODAY).feed_line().endswith("Buy soon.")


def test_feed_unknown_or_more_than_enough() -> None:
    """Without a count there is a hint; a store beyond a year is called so."""
    assert "Tell me what is left: 120 lb feed left" in digest(Barn().buck("3").herd, TODAY).feed_line()
    rich = Barn().buck("3").say("feed_left", grams=1_000_000)
    assert digest(rich.herd, TODAY).feed_line().endswith("more than a year's worth.")
    assert digest(rich.herd, TODAY).document()["feed"]["days"] is None


def test_empty_bin() -> None:
    """Nearly nothing left is less than a day's feed."""
    barn = Barn().buck("3").say("ration", who="3", amount=100.0, unit="g").say("feed_left", grams=50)
    assert digest(barn.herd, TODAY).feed_line() == "Feed: about 2 oz left, less than a day at 4 oz a day. Buy soon."
