"""The share still alive, with kits that left before their end was seen."""

from __future__ import annotations

import pytest

from core.reckon.still_alive import still_alive


def test_without_leavers_it_is_the_plain_share() -> None:
    """Ten kits, one dead on day 2 and one on day 5."""
    share = still_alive([(2, True), (5, True), *[(35, False)] * 8])
    assert [share(at) for at in (0, 1.9, 2, 4, 5, 100)] == pytest.approx([1, 1, 0.9, 0.9, 0.8, 0.8])


def test_a_kit_that_left_counts_until_it_left() -> None:
    """Fostered away on the day of a death it was still at risk; a later death is one of fewer."""
    share = still_alive([(2, True), (2, False), (5, True), (35, False)])
    assert (share(2), share(5)) == pytest.approx((0.75, 0.375))


def test_nobody_is_all_alive() -> None:
    """An empty list says nothing against anybody."""
    assert still_alive([])(10) == 1.0
