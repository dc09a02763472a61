"""How wide columns become."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from bot.papers.columns import widths


def test_what_is_left_over_goes_to_the_pencil() -> None:
    """To the columns without text; where all have text, to the last."""
    assert widths([[10, 0, 20]], [0, 0, 0], 60, 2) == [12, 26, 22]
    assert widths([[10, 5, 20]], [0, 0, 0], 60, 2) == [12, 7, 41]


def test_a_head_keeps_its_room() -> None:
    """Though nothing stands under it."""
    assert widths([[10, 0]], [0, 30], 50, 2) == [12, 38]


def test_long_texts_give_way_and_names_stay_whole() -> None:
    """A name beside a tale keeps its room."""
    name, tale = widths([[20, 900], [22, 300]], [0, 0], 190, 2)
    assert name == 24
    assert tale == pytest.approx(166)


@given(st.lists(st.lists(st.floats(0, 500), min_size=3, max_size=3), min_size=1, max_size=6), st.floats(40, 300))
def test_they_fill_the_room(cells: list[list[float]], room: float) -> None:
    """Whatever stands in them, and none is lost; they may fall short by a rounding."""
    told = widths(cells, [0, 0, 0], room, 2)
    assert sum(told) == pytest.approx(room)
    assert min(told) > 0
