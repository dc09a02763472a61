"""Nights that hit the whole barn: recognised by how many nests, how old, and what other nights were like."""

from __future__ import annotations

from itertools import pairwise, product

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.reckon.bad_nights import BadNight, Band, Nest, bad_nights, hit_on, so_many

BANDS = (Band(1, 0.15, 30), Band(7, 0.05, 30), Band(35, 0.01, 30))


def nest(key: str, born: int, *losses: int) -> Nest:
    """A litter that was weaned at 35 days."""
    return Nest(key, born, born + 35, frozenset(losses))


def found(*nests: Nest, noted: tuple[int, ...] = ()) -> tuple[BadNight, ...]:
    """The bad nights of these nests."""
    return bad_nights(nests, BANDS, sure=0.002, noted=noted, sure_if_noted=0.05)


def test_three_older_litters_hit_in_one_night_are_no_accident() -> None:
    """Litters of two to four weeks hardly ever lose kits: three at once is the barn's doing."""
    [night] = found(nest("a", 0, 20), nest("b", 5, 20), nest("c", 2, 21), nest("d", 4))
    assert (night.day, set(night.hit), night.at_risk) == (20, {"a", "b", "c"}, 4)
    assert night.chance < 1e-4


def test_newborn_litters_that_each_lose_one_are_an_accident() -> None:
    """Does that kindle together lose weak ones together."""
    assert found(nest("a", 10, 10), nest("b", 10, 11), nest("c", 11)) == ()


def test_two_litters_take_a_note_of_the_weather() -> None:
    """Two litters in their first week may be chance; with weather noted that night they are not."""
    nests = (nest("a", 16, 20), nest("b", 15, 20), nest("c", 2), nest("d", 3))
    assert found(*nests) == ()
    assert len(found(*nests, noted=(21,))) == 1
    assert found(*nests, noted=(25,)) == ()


def test_one_litter_is_never_a_bad_night() -> None:
    """A single nest says nothing of the barn, weather or not."""
    assert found(nest("a", 0, 20), nest("b", 0), noted=(20,)) == ()


def test_a_herd_that_loses_kits_every_other_night_has_no_bad_nights() -> None:
    """Where every night takes some, a night that does is nothing special."""
    nests = [nest(str(at), 0, *range(8 + at % 2, 36, 2)) for at in range(6)]
    assert found(*nests) == ()


def test_nights_in_a_row_are_told_once() -> None:
    """Losses over three days are two nights at most, and no day is of two."""
    told = found(*(nest(str(at), at, 20, 21, 22) for at in range(5)))
    assert 1 <= len(told) <= 2
    assert all(later.day - earlier.day >= 2 for earlier, later in pairwise(told))


def test_a_nest_knows_the_nights_that_hit_it() -> None:
    """By both calendar days; a nest that was spared has none."""
    told = found(nest("a", 0, 20), nest("b", 5, 20), nest("c", 2, 21), nest("d", 4))
    assert set(hit_on(told, "a")) == {20, 21}
    assert hit_on(told, "d") == {}


@given(chances=st.lists(st.floats(0, 1), max_size=5), least=st.integers(0, 6))
def test_the_chance_of_so_many_is_the_sum_over_all_ways(chances: list[float], least: int) -> None:
    """Against every way that they may happen or not."""
    total = 0.0
    for way in product((False, True), repeat=len(chances)):
        chance = 1.0
        for happens, each in zip(way, chances, strict=True):
            chance *= each if happens else 1 - each
        total += chance if sum(way) >= least else 0
    assert so_many(chances, least) == pytest.approx(total, abs=1e-12)
