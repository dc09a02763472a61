"""What an animal is worth to a farm that keeps it, matter by matter."""

from __future__ import annotations

from math import hypot, inf

import pytest

from core.handbook import reproduction
from core.handbook import worth as figures
from core.reports.winter.factors import Factor, moved_by
from core.reports.winter.usual import usual_of
from core.reports.winter.worth import Term, Worth, summed, worths
from core.reports.winter.worth_of_bucks import litter_tells
from tests.farm import ago
from tests.herds import Barn, two_sires


def of(barn: Barn, tag: str) -> Worth:
    """The worth of the animal with that tag."""
    return worths(barn.seen)[barn.find(tag).key]


def term(barn: Barn, tag: str, code: str) -> Term:
    """One of its terms."""
    return next(one for one in of(barn, tag).terms if one.code == code)


def codes(barn: Barn, tag: str) -> set[str]:
    """The matters that count for it."""
    return {one.code for one in of(barn, tag).terms}


def four_does() -> Barn:
    """Does of one breed alike in age: 11 with large litters, 12 with small ones, 13 that loses half of hers, 14 without any."""
    barn = Barn().buck("3")
    for tag in ("11", "12", "13", "14"):
        barn.doe(tag)
    for born_ago in (400, 300, 200):
        barn.litter("11", "3", born_ago, 10, weaned=9).litter("12", "3", born_ago, 5, weaned=5).litter("13", "3", born_ago, 8, weaned=4)
    return barn


def test_the_terms_add_up_to_the_worth() -> None:
    """What each matter adds makes the whole, their doubts together its doubt; for everybody of a herd."""
    for one in worths(two_sires().seen).values():
        assert sum(term.grams for term in one.terms) == pytest.approx(one.guess.value)
        assert hypot(*(term.deviation for term in one.terms)) == pytest.approx(one.guess.deviation)
        assert one.one_more > 0 or one.guess.value == 0


def test_factors_multiply_and_never_go_below_nothing() -> None:
    """A hundred grams, half more, then all lost: the last factor takes what is there, doubt counts by what stood before."""
    told = summed(100.0, "start", [Factor("more", 1.5, 0.1, 3), Factor("none", -0.5, 0.2, 1)], 0.5)
    assert told.terms == (Term("start", 100.0, 0.0, 0), Term("more", 50.0, 10.0, 3), Term("none", -150.0, 30.0, 1))
    assert told.guess.value == 0.0
    assert told.one_more == 0.0


def test_a_usual_doe_of_a_herd_without_litters_is_the_handbooks() -> None:
    """Litters a year, live-born of the breed, share raised, weight at weaning."""
    usual = usual_of(Barn().doe("11").seen, "New Zealand")
    assert usual.litters == reproduction.LITTERS_A_YEAR.value
    assert usual.born == pytest.approx(reproduction.USUAL_BORN_ALIVE.value, rel=0.01)
    assert usual.raised == pytest.approx(0.82)
    assert 500 < usual.weaned_g < 1300
    assert usual.grams == pytest.approx(usual.litters * usual.born * usual.raised * usual.weaned_g)


def test_a_breed_without_does_has_the_handbooks_litters() -> None:
    """Bucks of a breed that has no doe here."""
    barn = Barn().buck("3", breed="Netherland Dwarf")
    assert usual_of(barn.seen, "Netherland Dwarf").born == reproduction.USUAL_BORN_ALIVE_DWARF.value
    assert of(barn, "3").guess.value > 0


def test_large_litters_raise_a_doe_and_small_ones_lower_her() -> None:
    """11 bears ten, 12 five: her level counts by her own three litters, shrunk."""
    barn = four_does()
    large, small, none = (term(barn, tag, "litter_size") for tag in ("11", "12", "14"))
    assert large.grams > none.grams > small.grams
    assert (large.count, none.count) == (3, 0)
    assert none.deviation > large.deviation


def test_a_doe_that_loses_her_kits_is_worth_less() -> None:
    """13 raises half of hers."""
    barn = four_does()
    assert term(barn, "13", "raises_kits").grams < 0 < term(barn, "12", "raises_kits").grams
    assert of(barn, "13").guess.value < of(barn, "12").guess.value


def test_shrinking_litters_count_in_her_next_one() -> None:
    """Ten, seven, four: what is to be expected next is less than of a doe that had seven each time."""
    barn = Barn().buck("3").doe("11").doe("12")
    for born_ago, shrinking in ((400, 10), (300, 7), (200, 4)):
        barn.litter("11", "3", born_ago, shrinking, weaned=shrinking).litter("12", "3", born_ago, 7, weaned=7)
    assert term(barn, "11", "age").grams < term(barn, "12", "age").grams


def test_missed_matings_cost_litters() -> None:
    """A doe that missed three times against one that never did; one never mated has no such term."""
    barn = four_does()
    for days in (150, 120, 90):
        barn.say("bred", doe="12", buck="3", on=ago(days)).say("missed", doe="12", on=ago(days - 20))
    assert term(barn, "12", "takes").grams < term(barn, "11", "takes").grams
    assert "takes" not in codes(barn, "14")


def test_the_buck_whose_kits_outgrow_the_others_is_worth_more() -> None:
    """Rowan's kits weigh a quarter of a kilo more on the same does."""
    barn = two_sires()
    rowan, flint = of(barn, "7"), of(barn, "3")
    assert rowan.guess.value > flint.guess.value
    assert term(barn, "7", "kits_grow").grams > 0 > term(barn, "3", "kits_grow").grams
    assert term(barn, "7", "kits_grow").count > 10
    assert rowan.terms[0].code == "reserve"


def test_daughters_of_a_good_line_count_for_a_buck() -> None:
    """A son of the doe with large litters before a son of the one with small ones."""
    barn = four_does().buck("5", sire="3", dam="11").buck("6", sire="3", dam="12")
    assert term(barn, "5", "daughters").grams > term(barn, "6", "daughters").grams


def test_a_young_one_breeds_only_part_of_the_year() -> None:
    """A grow-out waits, a junior does not; a buck waits a month longer than a doe."""
    barn = four_does().doe("21", age=80, sire="3", dam="11").buck("22", age=80, sire="3", dam="11").doe("23", age=200, sire="3", dam="11")
    doe, buck = term(barn, "21", "breeds_later"), term(barn, "22", "breeds_later")
    assert buck.grams / of(barn, "22").terms[0].grams < doe.grams / of(barn, "21").terms[0].grams < 0
    assert "breeds_later" not in codes(barn, "23")
    assert "breeds_later" not in codes(barn.doe("24", age=None), "24")


def test_few_young_bucks_are_ever_used() -> None:
    """A grow-out buck is worth a part of a grown one, a junior all of it, and a young doe is not lessened."""
    barn = (
        four_does().buck("22", age=100, sire="3", dam="11").buck("23", age=200, sire="3", dam="11").doe("24", age=100, sire="3", dam="11")
    )
    assert term(barn, "22", "one_of_many").grams < 0
    assert of(barn, "22").guess.value < of(barn, "23").guess.value / 2
    assert not {"one_of_many"} & (codes(barn, "23") | codes(barn, "24"))


def test_a_grow_out_that_will_be_light_is_worth_less() -> None:
    """Half the weight of its age; one that has made its target is not doubted."""
    barn = Barn().doe("21", age=90).weigh("21", 900).doe("22", age=90).weigh("22", 2400).doe("23", age=90).weigh("23", 1900)
    assert term(barn, "21", "may_stay_light").grams < term(barn, "23", "may_stay_light").grams <= 0
    assert "may_stay_light" not in codes(barn, "22")


def test_a_young_ones_family_speaks_for_it() -> None:
    """Of two grow-outs the one out of the doe with large litters is worth more."""
    barn = four_does().doe("21", age=80, sire="3", dam="11").doe("22", age=80, sire="3", dam="12")
    assert of(barn, "21").guess.value > of(barn, "22").guess.value


def test_a_litter_without_tags_counts_for_the_kit_that_may_be_bred_from() -> None:
    """Ten kits of the better doe: worth less than one young one; its parents speak for it. Past breeding age nobody picks one."""
    barn = four_does()
    barn.litter("11", "3", 60, 10, weaned=10).litter("12", "3", 60, 5, weaned=5)
    told = {one.dam: worths(barn.seen)[one.key] for one, _ in barn.seen.weaned_litters if one.born_on == ago(60)}
    better, other = told[barn.find("11").key], told[barn.find("12").key]
    assert other.guess.value < better.guess.value < figures.KITS_KEPT.value * usual_of(barn.seen, "New Zealand").grams
    assert all(worths(barn.seen)[one.key].guess.value == 0 for one, _ in barn.seen.weaned_litters if one.born_on < ago(152))
    assert next(one for one in better.terms if one.code == "litter_size").grams > 0


def test_bad_notes_illness_and_faults_take_their_share() -> None:
    """Each takes what the handbook says of what stood before it."""
    barn = four_does()
    whole = of(barn, "14").guess.value
    barn.say("temper", who="14", grade="bad", on=ago(30)).say("temper", who="14", grade="bad", on=ago(20))
    barn.say("temper", who="14", grade="bad", on=ago(500)).say("temper", who="14", grade="good", on=ago(10))
    barn.say("nest_manners", doe="14", sign="bad_nest", on=ago(40)).say("fault", who="14", fault="malocclusion", disqualifies=True)
    barn.say("ailment", who="14", sign="sneezing", on=ago(2))
    told = {one.code: one.count for one in of(barn, "14").terms}
    assert (told["bad_temper"], told["bad_nest"], told["disqualifying_fault"], told["ailing"]) == (2, 1, 1, 1)
    left = (1 - figures.BAD_TEMPER_TAKES.value) ** 2 * (1 - figures.BAD_NEST_TAKES.value)
    left *= (1 - figures.FAULT_TAKES.value) * (1 - figures.NOT_WELL_TAKES.value)
    assert of(barn, "14").guess.value == pytest.approx(whole * left)


def test_a_fault_weighs_more_where_the_farm_breeds_for_show() -> None:
    """So does a place at a show."""
    barn = four_does().say("fault", who="14", fault="wry neck", disqualifies=True).say("scored", who="13", trait="overall", score=5)
    fault, shown = term(barn, "14", "disqualifying_fault").grams, term(barn, "13", "show_quality").grams
    barn.set("aim", "show")
    assert term(barn, "14", "disqualifying_fault").grams < 3 * fault < 0
    assert term(barn, "13", "show_quality").grams > 3 * shown > 0


def test_a_wanted_color_adds() -> None:
    """Only to an animal of it, and only where the farm wants one."""
    barn = four_does().doe("21", color="Castor").doe("22", color="white")
    assert "color_wanted" not in codes(barn, "21")
    barn.set("colors_wanted", "castor and opal")
    assert term(barn, "21", "color_wanted").grams > 0
    assert "color_wanted" not in codes(barn, "22")


def test_breeds_count_alike_beside_each_other() -> None:
    """A usual dwarf weans a fifth of a usual New Zealand; beside each other they count alike, and together as much as before."""
    barn = Barn().doe("11").doe("12", breed="Netherland Dwarf")
    large, small = of(barn, "11"), of(barn, "12")
    assert small.guess.value < large.guess.value / 3
    assert small.alike().terms[0].grams == pytest.approx(large.alike().terms[0].grams)
    assert small.alike().guess.value == pytest.approx(small.guess.value * small.beside)
    assert small.alike().one_more == pytest.approx(small.one_more * small.beside)
    assert sum(term.grams for term in small.alike().terms) == pytest.approx(small.alike().guess.value)
    assert large.alike().terms[0].grams + small.alike().terms[0].grams == pytest.approx(large.terms[0].grams + small.terms[0].grams)


def test_a_farm_with_kits_only_has_its_measure_too() -> None:
    """Weaned kits without a tag whose dam is gone, and a grow-out alone: nothing is divided by nothing."""
    barn = four_does()
    for tag in ("11", "12", "13", "14", "3"):
        barn.say("culled", who=tag)
    assert barn.seen.living == ()
    assert all(one.beside > 0 for one in worths(barn.seen).values())
    assert of(Barn().doe("21", age=80), "21").beside == pytest.approx(1.0)


def test_kits_with_their_dam_are_no_candidates() -> None:
    """Before weaning there is nothing to choose."""
    barn = four_does().doe("30", age=20, sire="3", dam="11")
    assert barn.find("30").key not in worths(barn.seen)


def test_one_more_reading_moves_what_is_not_known() -> None:
    """By all of it where the reading is exact, by nothing where all is known; a larger litter tells more."""
    assert moved_by(4.0, 0.0) == 2.0
    assert moved_by(0.0, 1.0) == 0.0
    assert moved_by(4.0, inf) == 0.0
    assert litter_tells(0.001, 8) > litter_tells(0.001, 2)
    barn = four_does()
    assert of(barn, "14").one_more / of(barn, "14").guess.value > of(barn, "11").one_more / of(barn, "11").guess.value
