"""What moving in leaves in the book."""

from __future__ import annotations

from core.app.book import App
from core.app.moving_in import Brought, MovingIn
from core.app.telling import Told
from core.problem import Problem
from tests.core.app.conftest import AT

HERD = [("herd", b"Tag,Sex,Weight,Date\n14,d,4-2,2026-02-01\n3,b,,\n")]


def test_a_sheet_of_rows_and_one_of_bytes_are_the_same(app: App) -> None:
    """A workbook's cells, and a text."""
    rows = [("herd", [(1, ["Tag", "Sex", "Weight", "Date"]), (2, [14, "d", "4-2", "2026-02-01"]), (3, [3.0, "b", None, None])])]
    one, other = (app.move_in(Brought("herd", sheets, "ann", AT), dry=True) for sheets in (HERD, rows))
    assert isinstance(one, Told)
    assert isinstance(other, Told)
    assert one.document == other.document


def test_it_is_read_in_the_farms_own_way(app: App) -> None:
    """The order of its dates and its units are settings; the herd is warm afterwards."""
    told = app.move_in(Brought("herd", HERD, "ann", AT))
    assert isinstance(told, Told)
    assert told.reply.lines[-1] == "Recorded as one note: 'haynote say undo' takes all of it back."
    card = app.card("14", AT)
    assert isinstance(card, Told)
    assert [each["tag"] for each in app.herd(AT).document["animals"]] == ["3", "14"]


def test_ours_and_other_peoples(app: App) -> None:
    """A book brings its own settings, so a shell wants to know."""
    assert MovingIn.is_book([("x", b'{"form": "other"}')])
    assert not MovingIn.is_book(HERD)
    assert isinstance(app.move_in(Brought("x", [("x", b'{"form": "other"}')], "ann", AT)), Problem)
