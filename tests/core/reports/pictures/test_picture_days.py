"""What the pictures of days show: the winter's feed and the week's chores."""

from __future__ import annotations

from datetime import timedelta

import pytest

from core.herd.state import Herd
from core.problem import Problem
from core.reports.due import due
from core.reports.evidence import evidence
from core.reports.feed import feed
from core.reports.pictures.picture import picture
from core.reports.pictures.values import Days
from core.reports.pictures.week import LEAST, LINES, _shared, week
from core.reports.pictures.winter import winter
from core.words import POUND_G
from tests.farm import TODAY, small_herd
from tests.herds import Barn


def wintered(barn: Barn) -> Days:
    """The picture of that barn's winter."""
    found = winter(barn.seen)
    assert isinstance(found, Days)
    return found


def crowded() -> Barn:
    """Four bucks where two are kept."""
    barn = Barn().doe("14").doe("15")
    for tag in ("3", "4", "5", "6"):
        barn.buck(tag)
    return barn


def test_the_winter_is_the_feeds_own() -> None:
    """Each day's mouths and feed, with everybody and with the plan."""
    barn = crowded()
    told, series = wintered(barn), feed(barn.herd, TODAY).series()
    mouths, eaten = told.panels
    assert list(mouths.whole) == series["mouths"]
    assert list(mouths.planned) == series["mouths_with_plan"] != series["mouths"]
    assert list(eaten.whole) == pytest.approx([grams / float(POUND_G) for grams in series["grams"]])
    assert eaten.label == "lb of feed a day"
    assert "With the plan, 2 dishes fewer: " in told.alt


def test_where_nobody_is_advised_to_go_there_is_one_line() -> None:
    """Nothing to tell apart."""
    told = wintered(Barn().doe("14").buck("3"))
    assert all(panel.planned == () for panel in told.panels)
    assert "plan" not in told.alt


def test_the_day_the_bin_is_empty_is_marked() -> None:
    """By everybody and by the plan, each once, as far as it comes before spring."""
    barn = crowded().say("feed_left", grams=30_000)
    told, fed = wintered(barn), feed(barn.herd, TODAY)
    assert fed.all.runs_out is not None
    assert fed.planned.runs_out is not None
    assert [day for day, _ in told.events] == [(on - TODAY).days for on in (fed.all.runs_out, fed.planned.runs_out)]
    assert "Bin empty " in told.alt
    assert wintered(crowded().say("feed_left", grams=3_000_000)).events == ()


def test_no_winter_for_nobody() -> None:
    """An empty book, and the day before spring."""
    assert isinstance(winter(Barn().seen), Problem)
    barn = Barn().doe("14")
    spring = feed(barn.herd, TODAY).spring
    assert isinstance(winter(evidence(barn.herd, spring - timedelta(1))), Problem)


def test_a_week_is_what_is_due() -> None:
    """Each of seven days with its chores in order, what is late before them."""
    herd = small_herd()
    told = week(evidence(herd, TODAY))
    chores = due(herd, TODAY, 6).chores
    assert [line for day in told.days for line in day.chores] == [one.text for one in chores]
    assert [day.name for day in told.days][:3] == ["late", "Wed 25 Nov", "Thu 26 Nov"]
    assert (told.days[0].late, told.days[1].today) == (True, True)
    assert told.alt.startswith(f"{len(chores)} chores until Tue 1 Dec, ")


def test_an_hour_stands_before_its_chore() -> None:
    """As a person named it."""
    barn = Barn().doe("14").say("remind", text="trim nails", on=TODAY, time="09:30", who="14")
    assert week(barn.seen).days[0].chores == ("09:30 trim nails",)


def test_a_week_without_chores() -> None:
    """Seven empty days, and it says so."""
    told = week(evidence(Herd(), TODAY))
    assert len(told.days) == 7
    assert told.note == "nothing until Tue 1 Dec"
    assert told.alt == "Nothing is due yet."


def test_a_full_week_is_shared_out() -> None:
    """The longest days are shortened, and say by how many; no day loses its last lines."""
    barn = Barn()
    for number in range(60):
        barn.say("remind", text=f"chore {number}", on=TODAY + timedelta(number % 5 // 4))
    told = week(barn.seen)
    assert sum(len(day.chores) for day in told.days) == LINES
    assert sum(day.more for day in told.days) == 60 - LINES
    assert _shared([90] * 40, LINES) == [LEAST] * 40


def test_a_picture_that_is_unknown_is_an_error() -> None:
    """The door turns it into words."""
    for about, key in (("sunset", None), ("growing", "99")):
        with pytest.raises(KeyError):
            picture(Barn().seen, about, key)
