"""What animals pass on: which records count, and whose they are."""

from __future__ import annotations

from datetime import date

import pytest

from core.reports.traits import quarter
from tests.farm import ago
from tests.herds import Barn, two_sires


@pytest.mark.parametrize(("on", "text"), [(date(2026, 3, 31), "2026-0"), (date(2026, 4, 1), "2026-1"), (date(2026, 12, 31), "2026-3")])
def test_quarters(on: date, text: str) -> None:
    """What was born in one quarter of a year fared alike."""
    assert quarter(on) == text


def test_records_are_counted_for_both_parents() -> None:
    """Each parent is credited with its weighed kits, and a litter with an unknown sire to its dam alone."""
    barn = two_sires()
    assert barn.seen.growth is not None
    assert (barn.seen.growth.records, barn.seen.growth.of_litter["3"], barn.seen.growth.of_litter["11"]) == (64, 32, 16)
    alone = Barn().doe("9").say("kindled", doe="9", born=5, alive=5, on=ago(100)).say("weaned", doe="9", count=5, on=ago(65))
    assert alone.seen.born_alive is not None
    assert alone.seen.born_alive.of_litter == {"9": 1}
    assert alone.seen.raising is not None
    assert alone.seen.raising.of_litter == {"9": 1}


def test_litters_of_a_fertile_doe_raise_her_value() -> None:
    """A doe with large litters has the higher value for kits born alive."""
    barn = Barn().doe("14").doe("9").buck("3")
    for born_ago in (420, 320, 220):
        barn.litter("14", "3", born_ago, 4, weaned=4).litter("9", "3", born_ago, 10, weaned=10)
    trait = barn.seen.born_alive
    assert trait is not None
    assert (trait.value("9", ["9", "14"]) or 0) > 0 > (trait.value("14", ["9", "14"]) or 0)
