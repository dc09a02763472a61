"""Questions about matings."""

from __future__ import annotations

from core.herd import matings as asked
from core.herd.state import Herd
from tests.farm import TODAY, ago, small_herd, tell


def test_open_mating_of_nobody() -> None:
    """A doe that was not bred is not in kindle."""
    herd = small_herd()

    assert asked.open_mating(herd, "15") is None
    assert asked.days_pregnant(herd, "15", TODAY) is None


def test_days_pregnant_count_from_the_first_of_a_service() -> None:
    """Two matings two days apart are one service, counted from the first."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "bred", doe="1", buck="2", on=ago(10))
    herd = tell(herd, "bred", doe="1", buck="3", on=ago(8))

    assert asked.days_pregnant(herd, "1", TODAY) == 10
    assert [mating.outcome for mating in asked.matings_of(herd, "1")] == [None, None]


def test_bred_again_later_ends_the_first() -> None:
    """A mating a week after the last says that the last one did not take."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "bred", doe="1", buck="2", on=ago(10))
    herd = tell(herd, "bred", doe="1", buck="2", on=ago(3))

    assert [mating.outcome for mating in herd.matings] == ["rebred", None]
    assert asked.days_pregnant(herd, "1", TODAY) == 3


def test_a_late_note_of_an_earlier_service_leaves_the_last_one_open() -> None:
    """Of two open services the last one counts."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "bred", doe="1", buck="2", on=ago(3))
    herd = tell(herd, "bred", doe="1", buck="2", on=ago(20))

    assert asked.days_pregnant(herd, "1", TODAY) == 3


def test_fitting_matings_and_sires() -> None:
    """The sire is the buck of 28 to 35 days before; two bucks that fit leave it open."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "bred", doe="1", buck="2", on=ago(35))
    assert asked.possible_sires(herd, "1", TODAY) == ("2",)
    herd = tell(herd, "bred", doe="1", buck="3", on=ago(28))
    assert asked.possible_sires(herd, "1", TODAY) == ("3", "2")
    assert asked.possible_sires(herd, "1", ago(1)) == ("2",)
    assert asked.fitting_matings(herd, "1", ago(10)) == ()


def test_overdue_does() -> None:
    """A living doe past her window is overdue; one that left isn't."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe"), "bred", doe="1", buck="2", on=ago(34))

    assert [mating.doe for mating in asked.overdue_does(herd, TODAY)] == ["1"]
    assert asked.overdue_does(herd, ago(1)) == ()
    assert asked.overdue_does(tell(herd, "sold", who="1"), TODAY) == ()


def test_matings_of_a_buck() -> None:
    """A buck's matings, and the last one of either."""
    herd = small_herd()

    assert [mating.doe for mating in asked.matings_with(herd, "5")] == ["12", "9", "22"]
    assert asked.last_mating(herd, "5") == asked.matings_of(herd, "22")[-1]
    assert asked.last_mating(herd, "31") is None
