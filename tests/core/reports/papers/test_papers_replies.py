"""Answers that bring a paper along."""

from __future__ import annotations

from core.herd.state import Herd
from core.notes.kinds.query import Query
from core.reply import Attached, Reply
from core.reports.answers import answered
from core.reports.papers.replies import TAKE_IN
from tests.farm import TODAY, small_herd


def ask(said: str, herd: Herd | None = None, **fields: object) -> Reply:
    """The answer to a question as it was typed."""
    return answered(Query(**fields), small_herd() if herd is None else herd, TODAY, (), said)  # type: ignore[arg-type]


def test_the_chores_come_as_a_calendar() -> None:
    """Where the question asks for one, and only then."""
    told = ask("send me the calendar", about="due")
    (file,) = told.attached
    assert told.lines == (file.alt, TAKE_IN)
    assert file == Attached("calendar", "chores", None, "chores.ics", "13 chores until Wed 9 Dec, for your calendar.")
    assert not ask("who is due", about="due").attached


def test_a_calendar_of_one_animal_for_some_days() -> None:
    """The key of the file says which."""
    (file,) = ask("calendar of 14", about="due", who="14", until=TODAY.replace(month=12)).attached
    assert file.key == "who=14&days=30"


def test_no_calendar_where_nothing_is_due() -> None:
    """Words instead."""
    told = ask("calendar", Herd(), about="due")
    assert told == Reply(("Nothing is due yet.",))
