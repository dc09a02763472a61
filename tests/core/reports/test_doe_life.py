"""A doe's working life: litter size for its number, matings that took, days open, and what she weans a year."""

from __future__ import annotations

import pytest

from core.reckon.curve import weight_at_age
from core.reports.doe_life import doe_life, life_lines, tries
from core.reports.growth import curve_of
from tests.farm import ago
from tests.herds import Barn


def barn_of(*sizes: int) -> Barn:
    """Doe 14 with litters of these sizes, ten weeks apart, all weaned whole; the last one a hundred days ago."""
    barn = Barn().doe("14", 1200).buck("3")
    for at, size in enumerate(sizes):
        barn.litter("14", "3", 100 + 70 * (len(sizes) - 1 - at), size, weaned=size)
    return barn


def test_days_open_run_from_kindling_to_the_mating_that_took() -> None:
    """Litters seventy days apart: thirty-nine days open; since the last she stands open a hundred."""
    barn = barn_of(8, 8, 8)
    life = doe_life(barn.seen, barn.find("14"))
    assert (life.days_open, life.open_now, life.tries, life.settled) == ((39, 39), 100, 3, 3)
    assert life.document()["days_open_mean"] == 39


def test_a_doe_bred_again_is_not_open() -> None:
    """An open mating ends the count."""
    barn = barn_of(8, 8).say("bred", doe="14", buck="3", on=ago(5))
    assert doe_life(barn.seen, barn.find("14")).open_now is None


def test_a_birth_without_a_mating_tells_no_days_open() -> None:
    """Nobody knows when she was bred."""
    barn = barn_of(8).say("kindled", doe="14", born=7, alive=7, dead=0, on=ago(20))
    assert doe_life(barn.seen, barn.find("14")).days_open == ()


def test_missed_and_refused_matings_are_counted_and_lean_on_the_herd() -> None:
    """Two of three missed, one refused: her chance to settle is below the usual, not a third."""
    barn = Barn().doe("14").buck("3")
    for days in (200, 150):
        barn.say("bred", doe="14", buck="3", on=ago(days)).say("missed", doe="14", on=ago(days - 35))
    barn.litter("14", "3", 60, 7, weaned=7).say("refused", doe="14", buck="3", on=ago(3))
    life = doe_life(barn.seen, barn.find("14"))
    assert (life.tries, life.settled, life.refused) == (3, 1, 1)
    assert life.takes is not None
    assert 1 / 3 < life.takes.estimate < 0.68
    assert life_lines(barn.seen, barn.find("14"))[1] == "3 matings, 1 took; refused 1 time; allowing for luck a mating takes half the time."
    assert life.document()["missed"] == 2


def test_matings_again_within_days_are_one_try() -> None:
    """The second service of a week belongs to the first, whichever took."""
    barn = Barn().doe("14").buck("3").say("bred", doe="14", buck="3", on=ago(103)).litter("14", "3", 70, 8)
    assert tries(barn.herd.matings) == [(ago(103), True)]
    missed = Barn().doe("14").buck("3").say("bred", doe="14", buck="3", on=ago(60)).say("bred", doe="14", buck="3", on=ago(57))
    missed.say("missed", doe="14", on=ago(25))
    assert [settled for _, settled in tries(missed.herd.matings)] == [False]


def test_kits_and_kilograms_a_year_since_her_first_kindling() -> None:
    """Three litters of eight in 240 days; a kit weighs as its litter did, else as the breed's young do."""
    barn = barn_of(8, 8, 8).say("litter_weighed", doe="14", grams=6400, count=8, on=ago(65))
    life = doe_life(barn.seen, barn.find("14"))
    usual = weight_at_age(35, *curve_of("New Zealand"))
    assert life.weaned_a_year == pytest.approx(24 * 365.25 / 240)
    assert life.grams_a_year == pytest.approx((16 * usual + 6400) * 365.25 / 240, rel=0.01)
    assert life_lines(barn.seen, barn.find("14"))[2].startswith("Weans 37 kits a year, ")


def test_a_litter_past_weaning_age_counts_at_that_age() -> None:
    """Nobody noted the weaning: the kits that lived weigh as the breed's young at five weeks."""
    barn = Barn().doe("14").buck("3").litter("14", "3", 120, 6)
    assert doe_life(barn.seen, barn.find("14")).grams_a_year == pytest.approx(
        6 * weight_at_age(35, *curve_of("New Zealand")) * 365.25 / 120, rel=0.01
    )


def test_a_doe_that_left_is_counted_to_that_day_even_where_no_mate_stays() -> None:
    """Sold eighty days after the last litter; of her breed nobody lives, so kits not weighed count by the handbook's curve."""
    barn = barn_of(8, 8).say("sold", who="14", on=ago(20)).say("sold", who="3", on=ago(20))
    life = doe_life(barn.seen, barn.find("14"))
    assert life.open_now is None
    usual = weight_at_age(35, *curve_of("New Zealand"))
    assert (life.weaned_a_year, life.grams_a_year) == pytest.approx((16 * 365.25 / 150, 16 * usual * 365.25 / 150))


def test_her_first_months_tell_no_year() -> None:
    """One litter forty days ago is no yearly number; a doe without litters has no life to tell."""
    barn = Barn().doe("14").doe("15").buck("3").litter("14", "3", 40, 8, weaned=8)
    assert doe_life(barn.seen, barn.find("14")).weaned_a_year is None
    assert life_lines(barn.seen, barn.find("15")) == []
    life = doe_life(barn.seen, barn.find("15")).document()
    assert (life["takes"], life["days_open_mean"], life["open_now"], life["kits_weaned_a_year"]) == (None, None, None, None)
    assert life["litter_size"]["chance_of_fall"] is None


def test_many_dead_born_are_told_and_a_few_are_not() -> None:
    """Twelve of thirty-two is far above the usual; one of eight is luck."""
    barn = Barn().doe("14").doe("15").buck("3").litter("15", "3", 120, 7, dead=1, weaned=7)
    for days in (330, 250, 170, 90):
        barn.litter("14", "3", days, 5, dead=3, weaned=5)
    assert life_lines(barn.seen, barn.find("14"))[-1] == "12 of 32 born dead; 7 % is usual."
    assert not any("born dead" in line for line in life_lines(barn.seen, barn.find("15")))


def test_one_that_raises_worse_and_worse_says_so() -> None:
    """Eight, six and one of eight is likely no accident; a level record is silent."""
    worse, level = Barn().doe("14").buck("3"), Barn().doe("14").buck("3")
    for barn, kept in ((worse, (8, 6, 1)), (level, (7, 6, 7))):
        for days, weaned in zip((300, 200, 100), kept, strict=True):
            barn.litter("14", "3", days, 8, weaned=weaned)
    said = [line for line in life_lines(worse.seen, worse.find("14")) if line.startswith("Raises them worse")]
    assert said == ["Raises them worse from litter to litter: 8 of 8, 6 of 8 and 1 of 8; that is almost surely more than luck."]
    assert not any(line.startswith("Raises") for line in life_lines(level.seen, level.find("14")))
    assert doe_life(level.seen, level.find("14")).document()["chance_raising_falls"] == pytest.approx(0.5, abs=0.2)
