"""The chores of the coming days, and the morning's reminder."""

from __future__ import annotations

from datetime import timedelta

from core.handbook import health
from core.reports.due import due, morning, reminder
from tests.farm import TODAY, ago
from tests.herds import Barn


def bred(*days_ago: int) -> Barn:
    """A doe bred to 3 so many days ago, one a number: 14, 15, 16 ..."""
    barn = Barn().buck("3")
    for at, days in enumerate(days_ago):
        barn.doe(str(14 + at)).say("bred", doe=str(14 + at), buck="3", on=ago(days))
    return barn


def test_lists_chores_overdue_first() -> None:
    """Every chore up to the day, overdue ones first, each with its key."""
    found = due(bred(14, 5).herd, TODAY)
    assert [(one.chore, one.tag) for one in found.chores] == [("palpate", "14"), ("palpate", "15"), ("nest_box_in", "14")]
    told = found.document()["chores"]
    assert [one["overdue"] for one in told] == [True, False, False]
    assert told[0]["key"].startswith("palpate:14:")
    assert {"on", "chore", "tag", "text", "key", "overdue"} <= set(told[0])


def test_days_set_how_far_it_looks() -> None:
    """With fewer days the later chores are left out."""
    assert [one.tag for one in due(bred(14, 5).herd, TODAY, 7).chores] == ["14", "15"]


def test_each_chore_once() -> None:
    """No key comes twice."""
    found = due(bred(14, 5, 29, 31).herd, TODAY, 60)
    assert len({one.key for one in found.chores}) == len(found.chores)


def test_reply_says_what_is_late_and_when_the_rest_is() -> None:
    """The first line counts; late ones say so; the others say their day."""
    lines = due(bred(14, 12).herd, TODAY).reply().lines
    assert lines[0] == "3 chores until Wed 9 Dec, 1 overdue."
    assert lines[1].startswith("Late, Mon 23 Nov: Palpate doe 14")
    assert lines[2].startswith("Today: Palpate doe 15")
    assert due(bred(12).herd, TODAY, 0).reply().lines[0] == "1 chore today."
    assert due(bred(12, 14).herd, TODAY, 0).reply().lines[0] == "1 chore today, 1 overdue."
    assert due(bred(14).herd, TODAY, 0).reply().lines[0] == "1 chore overdue, none for today."


def test_doe_in_her_window_is_not_late() -> None:
    """Two days past the thirty-first a doe may kindle any day now; on day 34 she is late, and a vet is named."""
    assert any(line.startswith("Any day now: Doe 14 is due to kindle") for line in due(bred(33).herd, TODAY).reply().lines)
    late = due(bred(34).herd, TODAY).reply().lines
    assert any(line.startswith("Late, Sun 22 Nov: Doe 14") for line in late)
    assert f"Doe 14: {health.LONG_KINDLING}" in late


def test_one_animal_s_chores() -> None:
    """Asked for one animal, only hers are told."""
    found = due(bred(14, 12).herd, TODAY).of("15")
    assert {one.tag for one in found.chores} == {"15"}


def test_nothing_due() -> None:
    """An empty list says until when; on an empty book, that nothing is due yet."""
    barn = Barn().doe("14")
    assert due(barn.herd, TODAY).reply().lines == ("Nothing is due until Wed 9 Dec.",)
    assert due(barn.herd, TODAY, 0).reply().lines == ("Nothing is due today.",)
    assert due(Barn().herd, TODAY).reply().lines == ("Nothing is due yet.",)


def test_long_list_is_cut() -> None:
    """More chores than a phone shows are counted."""
    lines = due(bred(*[14] * 9).herd, TODAY).reply().lines
    assert len(lines) <= 15
    assert lines[-1] == "And 6 more. To see them all: due all"
    assert len(due(bred(*[14] * 9).herd, TODAY).reply(whole=True).lines) == 19


def test_coming_chores_are_not_crowded_out_by_late_ones() -> None:
    """Many late chores leave room for those that come: the latest four late ones, then the coming days."""
    lines = due(bred(*[14] * 9, *[5] * 9).herd, TODAY).reply().lines
    assert sum(line.startswith("Late") for line in lines) == 4
    assert sum(line.startswith("Wed 2 Dec: Palpate") for line in lines) == 8


def test_time_of_a_reminder_stands_beside_its_day() -> None:
    """A reminder for an hour shows it."""
    barn = Barn().doe("9").say("remind", text="trim nails on 9", on=TODAY + timedelta(2), time="16:30", who="9")
    assert due(barn.herd, TODAY).reply().lines[1] == "Fri 27 Nov 16:30: trim nails on 9"


def test_morning_holds_today_and_what_is_late() -> None:
    """The reminders of a morning are today's chores and the late ones."""
    assert [one.tag for one in morning(bred(14, 12, 5).herd, TODAY)] == ["14", "15"]


def test_reminder_offers_answers() -> None:
    """A reminder says the chore, since when if late, and how to answer."""
    late, today = morning(bred(14, 12).herd, TODAY)
    assert reminder(late, TODAY).lines[0].endswith("(since Mon 23 Nov).")
    assert reminder(today, TODAY).lines[0].endswith(").")
    assert [one.says for one in reminder(today, TODAY).choices] == ["done", "later today", "tomorrow", "skip"]
