"""Questions about animals."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import pytest

from core.herd import questions as asked
from core.herd.state import Animal, Herd
from tests.farm import TODAY, ago, small_herd, tell


def test_living_by_stage_sex_and_breed() -> None:
    """The living are sorted as a breeder reads tags, and can be narrowed down."""
    herd = small_herd()

    assert [animal.tag for animal in asked.living(herd)] == ["3", "5", "9", "12", "14", "15", "16", "22", "31"]
    assert [animal.tag for animal in asked.living(herd, sex="buck", breed="mini rex")] == ["3", "31"]
    assert [animal.tag for animal in asked.living(herd, stage_is="grow-out", today=TODAY)] == ["31"]
    assert asked.living(herd, stage_is="grow-out") == ()
    assert asked.living(Herd().with_animal(Animal(key="1", tag="1")), breed="rex") == ()


@pytest.mark.parametrize(
    ("age", "stage"), [(20, "kit"), (35, "grow-out"), (151, "grow-out"), (152, "junior"), (243, "junior"), (244, "senior")]
)
def test_stage_by_age(age: int, stage: str) -> None:
    """Without a weaning on the book the age decides: weaned at five weeks, junior from 152 days, senior from 244."""
    assert asked.stage(Herd(), Animal(key="1", tag="1", born=ago(age)), TODAY) == stage


def test_stage_of_a_grown_stranger() -> None:
    """One that came without a birth date counts as grown."""
    assert asked.stage(Herd(), Animal(key="1", tag="1"), TODAY) == "senior"
    assert asked.age_days(Animal(key="1", tag="1"), TODAY) is None
    assert asked.senior_since(Herd(), Animal(key="1", tag="1"), TODAY) is None


def test_stage_of_a_tagged_kit_is_kit_until_weaned() -> None:
    """A kit of a litter that is still nursed is a kit; where nobody noted the weaning, until the age at which anybody weans."""
    herd = tell(small_herd(), "tagged", litter_of="12", tag="R40")
    kit = herd.animals["R40"]

    assert asked.stage(herd, kit, TODAY) == "kit"
    assert asked.stage(herd, kit, TODAY + timedelta(30)) == "kit"
    assert asked.stage(herd, kit, TODAY + timedelta(41)) == "grow-out"
    weaned = tell(herd, "weaned", doe="12", count=7)
    assert asked.stage(weaned, weaned.animals["R40"], TODAY) == "grow-out"
    assert asked.stage(weaned, replace(weaned.animals["R40"], weaned_on=TODAY + timedelta(1)), TODAY) == "kit"


def test_a_young_mother_is_a_senior() -> None:
    """The first kindling, or the first litter sired, makes a senior."""
    herd = tell(tell(Herd(), "animal", tag="1", sex="doe", born=ago(180)), "kindled", doe="1", born=5, on=ago(3))

    assert asked.stage(herd, herd.animals["1"], TODAY) == "senior"
    assert asked.senior_since(herd, herd.animals["1"], TODAY) == ago(3)
    assert asked.stage(herd, herd.animals["1"], ago(4)) == "junior"


def test_withdrawal_runs_through_its_last_day() -> None:
    """An animal is in withdrawal by the days that the farm noted, through the last of them."""
    herd = tell(small_herd(), "treated", who="22", with_="ivermectin", withdrawal_days=28, on=ago(20))
    treated = herd.animals["22"]

    assert asked.in_withdrawal(treated, TODAY) == ago(-8)
    assert asked.in_withdrawal(treated, ago(-8)) == ago(-8)
    assert asked.in_withdrawal(treated, ago(-9)) is None
    assert asked.in_withdrawal(treated, ago(21)) is None
    assert asked.withdrawal_untold(treated, TODAY) is None


def test_a_number_beyond_the_calendar() -> None:
    """A withdrawal time that no calendar holds runs to its end."""
    herd = tell(small_herd(), "treated", who="22", with_="ivermectin", withdrawal_days=10**9)

    assert asked.in_withdrawal(herd.animals["22"], TODAY) == date.max


def test_a_treatment_without_days_is_remembered() -> None:
    """Days that nobody gave are never made up: the treatment is told instead."""
    herd = tell(small_herd(), "treated", who="22", with_="penicillin", on=ago(20))

    untold = asked.withdrawal_untold(herd.animals["22"], TODAY)
    assert untold is not None
    assert untold.detail == {"with": "penicillin"}
    assert asked.in_withdrawal(herd.animals["22"], TODAY) is None


def test_leaving_is_the_last_word() -> None:
    """A plan to sell holds until somebody says to keep it."""
    herd = tell(small_herd(), "planned", who="31", what="sell")
    assert asked.leaving(herd.animals["31"]) == "sell"
    herd = tell(herd, "planned", who="31", what="keep")
    assert asked.leaving(herd.animals["31"]) is None
    assert asked.leaving(herd.animals["3"]) is None


def test_pedigree_and_mated() -> None:
    """Parents by key for every animal; whether it was ever mated."""
    herd = small_herd()

    assert asked.pedigree(herd)["31"] == ("3", "14")
    assert (asked.ever_mated(herd, herd.animals["3"]), asked.ever_mated(herd, herd.animals["31"])) == (True, False)


@pytest.mark.parametrize(
    ("said", "tags"),
    [
        ("014", ["14"]),
        ("juno", ["14"]),
        ("pip", ["R23"]),
        ("the opal doe", ["15"]),
        ("mini rex buck", ["3", "31"]),
        ("purple doe", []),
        ("", []),
    ],
)
def test_fitting(said: str, tags: list[str]) -> None:
    """A tag, a name (also of one that left), or a description that is true of a living animal."""
    assert [animal.tag for animal in asked.fitting(small_herd(), said)] == tags


def test_events_by_day() -> None:
    """What was seen comes in the order it happened."""
    herd = tell(tell(small_herd(), "ailment", who="5", sign="sneezing"), "ailment", who="5", sign="limping", on=ago(3))

    assert [event.detail["sign"] for event in asked.events(herd.animals["5"], "ailment")] == ["limping", "sneezing"]
    assert asked.same_tag("r-21", "R21")
    assert asked.weaned_day(herd, herd.animals["31"]) == ago(94)
