"""A roster as a herd to read notes against, and as the first facts of a book."""

from __future__ import annotations

from datetime import UTC, date, datetime

from core.herd.litters import alive_now, the_litter
from core.herd.matings import open_mating
from core.herd.questions import stage
from core.herd.state import Herd
from core.notes.journal import Note
from core.notes.replay import book
from core.notes.roster import facts_of, herd_of

ROSTER = {
    "farm": {"timezone": "America/Chicago", "weight_units": "lb", "dotted_weight": "decimal", "currency": "EUR", "feed_bag_lb": 50},
    "now": "2026-11-25T07:10:00-06:00",
    "animals": [
        {"tag": "31", "sex": "buck", "breed": "Mini Rex", "born": "2026-07-19", "sire": "3", "dam": "14"},
        {"tag": "14", "name": "Juno", "sex": "doe", "breed": "Mini Rex", "born": "2024-02-18"},
        {"tag": "3", "name": "Flint", "sex": "buck", "breed": "Mini Rex", "born": "2024-03-02", "sire": "X1"},
        {"tag": "12", "name": "Sorrel", "sex": "doe", "origin": "bought"},
        {"tag": "K1", "born": "2026-11-10", "dam": "12"},
    ],
    "breedings": [{"doe": "14", "buck": "3", "on": "2026-10-24"}, {"doe": "12", "buck": "Z9", "on": "2026-10-01"}],
    "litters": [
        {"dam": "12", "sire": "5", "born_on": "2026-11-10", "alive_now": 7, "tagged": 1},
        {"dam": "14", "sire": "3", "born_on": "2026-07-19", "alive_now": 1, "tagged": 1},
    ],
}
TODAY = date(2026, 11, 25)


def test_a_roster_is_a_herd_with_open_breedings_and_litters() -> None:
    """Stages, the litter with untagged kits, and the doe in kindle are as a breeder would tell them."""
    herd = herd_of(ROSTER)
    assert stage(herd, herd.animals["31"], TODAY) == "grow-out"
    assert stage(herd, herd.animals["14"], TODAY) == "senior"
    assert stage(herd, herd.animals["K1"], TODAY) == "kit"
    litter = the_litter(herd, "12")
    assert litter is not None
    assert (litter.sire, alive_now(litter), litter.tagged) == ("5", 7, ("K1",))
    assert the_litter(herd, "14") is None
    mating = open_mating(herd, "14")
    assert mating is not None
    assert mating.on == date(2026, 10, 24)


def test_settings_of_a_roster_are_the_farms() -> None:
    """Those of the contract also under their names; the bag in grams."""
    settings = herd_of(ROSTER).settings
    assert (settings.timezone, settings.dotted_weight, settings.currency) == ("America/Chicago", "decimal", "EUR")
    assert settings.said["feed_bag"] == 22680


def test_parents_and_mates_that_are_not_listed_never_lived_here() -> None:
    """They are ancestors of origin `outside`."""
    herd = herd_of(ROSTER)
    assert {key for key, animal in herd.animals.items() if animal.origin == "outside"} == {"X1", "Z9"}
    assert herd.animals["31"].litter == "14@2026-07-19"


def test_an_empty_roster_is_an_empty_herd() -> None:
    """Nothing but the form is needed."""
    assert herd_of({}).animals == {}
    assert facts_of({}) == ()
    assert herd_of({"animals": [{"tag": "7", "born": "2026-01-01"}]}).animals["7"].weaned_on == date(2026, 2, 5)


def test_a_roster_begins_a_book() -> None:
    """Settings, animals after their parents, breedings and litters, as facts that fold to such a herd."""
    facts = facts_of(ROSTER)
    order = [getattr(fact, "tag", None) for fact in facts if fact.kind == "animal"]
    assert order.index("31") > max(order.index("14"), order.index("3"))
    kept = book(Herd(), [Note(1, "", datetime(2026, 7, 1, 13, tzinfo=UTC), "me", facts=facts)])
    built = herd_of(ROSTER)
    assert {tag for tag, animal in kept.herd.animals.items() if animal.living} == {
        tag for tag, each in built.animals.items() if each.living
    }
    assert kept.herd.settings.said == built.settings.said
    litter = the_litter(kept.herd, "12")
    assert litter is not None
    assert alive_now(litter) == 7
