"""The breeder's calendar against published figures. Only sources that were seen (a page or an abstract) are used here."""

from __future__ import annotations

import pytest

from core.handbook import reproduction, stages, weather


@pytest.mark.parametrize("printed", [31.73, 31.67])
def test_gestation_is_the_printed_mean(printed: float) -> None:
    """Rashwan et al. 2003, World Rabbit Science article 499, abstract: means of two groups, 736 kindlings.

    Within 0.05 for the mean itself (it is given to one place), within one day for the calendar, which counts whole days and reminds early.
    """
    assert reproduction.GESTATION_MEAN_DAYS.value == pytest.approx(printed, abs=0.05)
    assert 0 <= printed - reproduction.GESTATION_DAYS.value < 1


@pytest.mark.parametrize("printed", [32.46, 32.42, 31.50, 31.32, 31.42, 32.15])
def test_kindling_window_holds_every_group(printed: float) -> None:
    """The same abstract: means of litters of 1-2 (32.42-32.46) and 9-14 kits (31.32-31.50), of first (31.42) and later (32.15) parities."""
    assert reproduction.KINDLING_WINDOW_FIRST.value <= printed <= reproduction.KINDLING_WINDOW_LAST.value


def test_kindling_before_the_printed_range_is_refused() -> None:
    """Michigan State University Extension, Rabbit Tracks 2017, page: 28 to 32 days. Day 28 passes, day 27 belongs to no mating."""
    assert reproduction.EARLIEST_KINDLING_DAY.value == 28
    assert reproduction.SIRE_FIRST_DAY.value == reproduction.EARLIEST_KINDLING_DAY.value
    assert reproduction.KINDLING_WINDOW_FIRST.value <= 32 <= reproduction.KINDLING_WINDOW_LAST.value


def test_late_kindling_asks_after_the_dead_litter_day() -> None:
    """MSD-like owner's page, page: a litter not born by day 34 is likely dead. The vet is named then; a birth from day 36 asks first."""
    assert reproduction.VET_DAY.value == 34
    assert reproduction.KINDLING_WINDOW_LAST.value < reproduction.VET_DAY.value < reproduction.ASK_KINDLING_DAY.value


def test_palpation_falls_where_embryos_can_be_felt() -> None:
    """McNitt et al., Rabbit Production, page: olive-sized at day 10 to 12, most sure at two weeks; MSD-like page: from day 12."""
    assert 12 <= reproduction.PALPATE_DAY.value <= 14


def test_nest_box_goes_in_when_printed() -> None:
    """MSD-like owner's page, page: day 28 to 29, earlier it gets fouled."""
    assert 28 <= reproduction.NEST_BOX_IN_DAY.value <= 29
    assert reproduction.NEST_BOX_IN_DAY.value < reproduction.KINDLING_WINDOW_FIRST.value


def test_nest_box_comes_out_when_printed() -> None:
    """McNitt et al., Rabbit Production, page: 15 to 21 days by the weather (p. 59), 18 to 21 (p. 21)."""
    assert max(15, 18) <= reproduction.NEST_BOX_OUT_DAY.value <= reproduction.NEST_BOX_OUT_COLD_DAY.value <= 21


def test_weaning_lies_in_the_small_farms_span() -> None:
    """28 days earliest (McNitt et al., page), 35 to 42 on the slow rhythm (Szendro et al. 2012, AJAS 25(5):738, page)."""
    assert 35 <= reproduction.WEAN_DAY.value <= 42
    assert reproduction.WEAN_DAY.low == 28


def test_weaning_asks_before_any_printed_age() -> None:
    """FAO 1986, The Rabbit, ch. 7, page: 26 to 28 days at the most intensive; a weaning under that is asked about, never at it."""
    assert reproduction.ASK_WEAN_DAY.value < 26


def test_rebreeding_is_the_printed_day() -> None:
    """Michigan State University Extension, Rabbit Tracks 2017, page: 35 days for most, 14 to 21 in commercial herds."""
    assert reproduction.REBREED_DAY.value == 35
    assert reproduction.REBREED_DAY.low <= 14


def test_false_pregnancy_is_over_when_printed() -> None:
    """McNitt et al., Rabbit Production, page: an open doe is ready again about day 18; palpation must come first."""
    assert reproduction.PALPATE_DAY.value < reproduction.FALSE_PREGNANCY_DAYS.value == 18


@pytest.mark.parametrize(("size", "least", "most"), [("small", 122, 183), ("medium", 137, 213), ("giant", 183, 274)])
def test_first_mating_lies_among_the_printed_ages(size: str, least: int, most: int) -> None:
    """McNitt et al. (small 4, medium 4.5-5.5, giant 6-7 months) , Florida 4-H (150-180 d, 6-7, 8 and more months), pages."""
    assert least <= stages.FIRST_MATING_DAYS[size].value <= most


def test_bucks_wait_a_month_longer() -> None:
    """McNitt et al., page: about one month later than does; Florida 4-H, page: 30 to 60 days."""
    assert 30 <= stages.BUCK_LATER_DAYS.value <= 60


def test_nest_warmth_is_the_printed_one() -> None:
    """Sanz, Ortiz, de Blas and Fraga 1989, Animal Production, abstract: critical air of 32, 28 and 24 degrees at day 1, 10 and 20."""
    warmth = (weather.KIT_CRITICAL_NEWBORN_C, weather.KIT_CRITICAL_TEN_DAYS_C, weather.KIT_CRITICAL_TWENTY_DAYS_C)
    assert [figure.value for figure in warmth] == [32, 28, 24]
    assert (weather.KIT_TEN_DAYS.value, weather.KIT_TWENTY_DAYS.value) == (10, 20)


def test_heat_steps_are_the_printed_ones() -> None:
    """80 F (Fontana data 1943-60, abstract), 85 F (Missouri extension 2013, page), 90 F (McNitt et al., page), to half a degree C."""
    steps = (weather.HEAT_CAUTION_C, weather.HEAT_HIGH_C, weather.HEAT_EMERGENCY_C)
    for figure, fahrenheit in zip(steps, (80, 85, 90), strict=True):
        assert figure.value == pytest.approx((fahrenheit - 32) / 1.8, abs=0.5)
    assert weather.HEAT_FROM_C.value <= weather.HEAT_HIGH_C.value


def test_buck_rests_as_printed_after_heat() -> None:
    """Kasa and Thwaites, World Rabbit Science article 450, abstract: semen was normal again after three weeks."""
    assert weather.HEAT_BUCK_REST_DAYS.value == 3 * 7
