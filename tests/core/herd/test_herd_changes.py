"""Small changes to a herd: none of them ever raises."""

from __future__ import annotations

from core.herd import changes
from core.herd.state import Animal, Herd
from tests.farm import TODAY, ago, small_herd, tell


def test_nothing_changes_for_nobody() -> None:
    """An animal that is not on the book can't be changed, seen or lost."""
    herd = small_herd()

    assert changes.changed(herd, "99", cage="B3") is herd
    assert changes.changed(herd, None, cage="B3") is herd
    assert changes.seen(herd, None, TODAY, "remark", {}) is herd
    assert changes.seen(herd, "99", TODAY, "remark", {}) is herd
    assert changes.gone(herd, "99", TODAY, "died", {}) is herd
    assert changes.gone(herd, "R23", TODAY, "died", {}) is herd
    assert changes.of_sex(herd, "99", "doe") is herd
    assert changes.of_sex(herd, "14", "buck") is herd


def test_sex_is_filled_in() -> None:
    """A mating tells the sex of one whose sex was not known."""
    herd = tell(Herd(), "animal", tag="1")

    assert changes.of_sex(herd, "1", "doe").animals["1"].sex == "doe"


def test_an_ancestor_is_made_once() -> None:
    """A parent nobody told of is from elsewhere; one on the book stays as it is."""
    herd, key = changes.ancestor(Herd(), "Duke", "buck")

    assert herd.animals[key] == Animal(key="Duke", tag="Duke", sex="buck", origin="outside")
    assert changes.ancestor(herd, "duke", "buck") == (herd, "Duke")
    assert not herd.animals[key].living


def test_a_kit_with_a_tag_that_leaves_its_nest() -> None:
    """Dead it is a loss of the litter, sold it is only missing from the nest."""
    herd = tell(tell(small_herd(), "tagged", litter_of="12", tag="R40"), "tagged", litter_of="12", tag="R41")
    litter = f"12@{ago(15)}"
    died = tell(herd, "died", who="R40", cause="cold").litters[litter]
    sold = tell(herd, "sold", who="R41").litters[litter]

    assert [(loss.count, loss.cause) for loss in died.losses] == [(1, "cold")]
    assert (died.tally[-1], sold.losses, sold.tally[-1]) == ((TODAY, 6), (), (TODAY, 6))


def test_counts_never_fall_below_nothing() -> None:
    """Whatever was noted, no nest holds fewer than no kits."""
    litter = small_herd().litters[f"12@{ago(15)}"]

    assert changes.lost(litter, TODAY, 99, None).tally[-1] == (TODAY, 0)


def test_one_bought_elsewhere_joins_no_litter() -> None:
    """An animal that was bought is no kit of a litter here, whatever its dam and birth date."""
    herd = tell(small_herd(), "animal", tag="50", dam="12", born=ago(15), origin="bought")

    assert herd.animals["50"].litter is None
