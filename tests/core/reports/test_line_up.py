"""Bucks and does lined up, each place with its count and its doubt."""

from __future__ import annotations

import pytest

from core.reports.line_up import LineUp, line_up
from tests.farm import TODAY
from tests.herds import Barn, two_sires


def of(barn: Barn, sex: str, breed: str | None = None) -> LineUp:
    """The line-up of a barn."""
    return line_up(barn.herd, TODAY, sex, breed)


def does() -> Barn:
    """9 has larger litters and raises them; 14 raises half; 8 has no litter yet."""
    barn = Barn().doe("14").doe("9", name="Ivy").doe("8").buck("3")
    for born_ago in (420, 320, 220):
        barn.litter("14", "3", born_ago, 6, weaned=3).litter("9", "3", born_ago, 8, weaned=8)
    return barn


def test_bucks_by_the_growth_of_their_kits() -> None:
    """The best first, with the kits behind it and the chance that he truly outdoes the next."""
    lines = of(two_sires(), "buck").reply().lines
    assert lines[0].startswith("Bucks by the growth that they pass on")
    assert lines[1].startswith("1. 7 Rowan: ")
    assert "32 kits of his weighed. His kits would almost surely outgrow 3 Flint's." in lines[1]
    assert lines[2].startswith("2. 3 Flint: ")
    assert lines[2].endswith("32 kits of his weighed.")


def test_a_buck_without_kits_stands_on_his_own_weights_and_one_without_any_on_nothing() -> None:
    """A weighed young buck has a place, with no kit behind it; one that nobody weighed is named apart, with what to do."""
    lines = of(two_sires().buck("20", age=200, sire="7", dam="11").weigh("20", 1900, 130).buck("5").buck("4"), "buck").reply().lines
    assert any("20: " in line and "no kit of his weighed, by his own weights and his family's" in line for line in lines)
    assert "Too little is known of 4 and 5: weigh kits at 10 weeks." in lines


def test_two_that_cannot_be_told_apart_say_so() -> None:
    """Kits that grew alike: the doubt is told, with the count and what helps."""
    lines = of(two_sires({"3": 1800, "7": 1800}), "buck").reply().lines
    assert lines[-1] == (
        "Not sure yet between 3 Flint and 7 Rowan: weigh more of their kits. They stand by 32 kits of 3 Flint and 32 of 7 Rowan weighed."
    )


def test_does_by_what_they_wean() -> None:
    """Litter size times the share raised, with both, and the doe without a litter apart."""
    lines = of(does(), "doe").reply().lines
    assert lines[0].startswith("Does by what they wean of a litter")
    assert lines[1].startswith("1. 9 Ivy: about ")
    assert "by 24 kits in 3 litters). She almost surely weans more than 14." in lines[1]
    assert lines[2].startswith("2. 14: about ")
    assert lines[3] == "Too little is known of 8: note her litters at kindling and at weaning."


def test_does_alike_are_not_told_apart() -> None:
    """Two does with the same litters: only time tells."""
    barn = Barn().doe("14").doe("9").buck("3").litter("14", "3", 200, 7, weaned=6).litter("9", "3", 200, 7, weaned=6)
    assert of(barn, "doe").reply().lines[-1] == "Not sure yet between 14 and 9: their next litters will tell."


def test_litters_that_shrink_are_told() -> None:
    """What she had at her best is not what she has now."""
    barn = Barn().doe("14").buck("3")
    for born_ago, born in ((620, 10), (520, 10), (420, 8), (320, 5), (220, 3), (120, 2)):
        barn.litter("14", "3", born_ago, born, weaned=born)
    assert "; her litters shrink)" in of(barn, "doe").reply().lines[1]


def test_breeds_stand_apart() -> None:
    """Each breed under its name, unknown breeds last; one breed alone where it is asked for."""
    barn = two_sires().buck("5", breed="Mini Rex").buck("6", breed=None)
    lines = of(barn, "buck").reply().lines
    assert [line for line in lines if line.endswith(":") and not line.startswith("Bucks")] == [
        "Mini Rex:",
        "New Zealand:",
        "Breed unknown:",
    ]
    only = of(barn, "buck", "mini rex").reply()
    assert "Mini Rex:" not in only.lines
    assert only.choices == ()


def test_a_long_row_is_cut() -> None:
    """Eight places are enough for a phone."""
    barn = Barn()
    for at in range(10):
        barn.buck(str(at + 1), age=300).weigh(str(at + 1), 1500 + 30 * at, 230)
    lines = of(barn, "buck").reply().lines
    assert sum(line[0].isdigit() for line in lines) == 8
    assert "and 2 more" in lines


@pytest.mark.parametrize("sex", ["buck", "doe"])
def test_an_empty_barn(sex: str) -> None:
    """Nobody of that sex: it is said."""
    assert of(Barn(), sex).reply().lines == (f"No {sex} of breeding age is on the farm.",)


def test_nothing_weighed_at_all() -> None:
    """Bucks without a weight in the whole herd: what to do."""
    assert of(Barn().buck("3").buck("7"), "buck").reply().lines[1:] == ("Too little is known of 3 and 7: weigh kits at 10 weeks.",)


def test_document() -> None:
    """Places in numbers: grams over the breed's mean, the rank to expect in truth, the chance to be better than the next."""
    told = of(two_sires(), "buck").document()
    best, last = told["breeds"][0]["places"][:2]
    assert (best["tag"], last["tag"]) == ("7", "3")
    assert best["value"] > 50 > last["value"]
    assert best["chance_better_than_next"] > 0.95
    assert 1 <= best["expected_rank"] < 1.5
    doe = of(does(), "doe").document()["breeds"][0]
    assert doe["too_little_known"] == ["8"]
    assert doe["places"][0]["value"] > doe["places"][1]["value"]
