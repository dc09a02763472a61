"""What the week's own count holds against the server: the week itself is a command, see week."""

from __future__ import annotations

from tests.faults import week


def test_the_count_sees_what_is_wrong() -> None:
    """A reminder twice without a cut, a fact too many, a late morning: each alone makes the week unsound."""
    fine = {"notes": 200, "edits": 40, "undos": 30, "reminders_answered": 60, "outages": 2, "kills": 3, "late_s": [60.0] * 7}
    assert week.Outcome(**fine).sound
    assert not week.Outcome(**fine, twice_without_a_cut=["1: 100"]).sound
    assert not week.Outcome(**fine, facts_too_many=["1 x Remark"]).sound
    assert not week.Outcome(**fine, reminders_missing=["1: 100"]).sound
    assert not week.Outcome(**fine | {"late_s": [0.0] * 6 + [61.0]}).sound
    assert not week.Outcome(**fine | {"kills": 2}).sound
