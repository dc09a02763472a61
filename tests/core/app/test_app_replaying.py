"""A file of dated notes is taken in once, and what it could not take in is listed."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path
from typing import Any

import pytest

from core.app import Problem
from core.app.book import App
from core.app.replaying import NAMED, TOGETHER
from core.app.telling import Told
from tests.core.app.conftest import opened
from tests.faults.steps import FaultError, fail, stopping_at

SEASON = """\
# an invented beginning
2026-01-02 07:15 new doe 14 mini rex born 2025-01-02
2026-01-02 07:16 new buck 3 mini rex born 2025-01-02
2026-01-03 bred 14 to 3
2026-02-03 14 kindled
2026-02-03 8, 2 dead
something without a day
2026-02-04 07:15 14 kindled 8, 2 dead
"""
NOW = datetime(2026, 2, 10, 12, tzinfo=UTC)
ROSTER: dict[str, Any] = {
    "farm": {"timezone": "America/Chicago"},
    "now": "2026-01-10T07:00:00-06:00",
    "animals": [{"tag": "14", "sex": "doe", "breed": "Mini Rex"}, {"tag": "3", "sex": "buck", "breed": "Mini Rex"}],
    "breedings": [{"doe": "14", "buck": "3", "on": "2026-01-03"}],
}


def journal(app: App) -> list[str]:
    """The journal's notes."""
    return list(app.export_journal())[1:]


def replayed(app: App, text: str, **more: Any) -> Told:
    """The outcome of a replay that must work."""
    told = app.replay(text, **more)
    assert isinstance(told, Told)
    return told


def test_the_outcome_is_the_contracts(app: App) -> None:
    """Lines that ask and lines that are not understood are listed; the next line never answers a question."""
    told = replayed(app, SEASON)
    assert (told.document["lines"], told.document["recorded"]) == (7, 4)
    assert (told.document["asked"][0]["line"], told.document["asked"][0]["why"]) == (5, "how_many")
    assert {"line", "text", "why", "question"} == set(told.document["asked"][0])
    assert told.document["unread"] == [{"line": 7, "text": "something without a day"}]
    assert told.reply.lines[0].startswith("7 lines read, 4 newly recorded")
    (doe,) = [one for one in app.herd(NOW).document["animals"] if one["tag"] == "14"]
    assert doe["stage"] == "senior"


def test_a_file_replayed_twice_adds_nothing(app: App) -> None:
    """Each line is known by itself."""
    replayed(app, SEASON)
    before = journal(app)
    assert replayed(app, SEASON).document["recorded"] == 0
    assert journal(app) == before


def test_a_day_with_nothing_said(app: App) -> None:
    """It is no note."""
    assert replayed(app, "2026-01-02").document["unread"] == [{"line": 1, "text": ""}]


def test_progress_is_told(app: App) -> None:
    """By the hundred, to the end."""
    told: list[tuple[int, int]] = []
    lines = "\n".join(f"2026-01-02 the hay smells good today, take {number}" for number in range(TOGETHER + 20))
    replayed(app, lines, progress=lambda done, total: told.append((done, total)))
    assert told == [(TOGETHER, TOGETHER + 20), (TOGETHER + 20, TOGETHER + 20)]


def test_a_long_list_is_cut_for_people(app: App) -> None:
    """The object has them all."""
    told = replayed(app, "\n".join(["without a day"] * (NAMED + 5)))
    assert len(told.reply.lines) == NAMED + 2
    assert len(told.document["unread"]) == NAMED + 5


def test_an_interrupted_replay_goes_on(app: App, tmp_path: Path) -> None:
    """Begun again, the file gives the same book as one that ran through."""
    whole = opened(tmp_path / "whole.sqlite")
    replayed(whole, SEASON)
    with stopping_at(app._engine, 12, fail), pytest.raises(FaultError):
        app.replay(SEASON)
    replayed(app, SEASON)
    assert journal(app) == journal(whole)
    whole.close()


def test_a_roster_begins_an_empty_book(app: App) -> None:
    """Settings, animals and breedings are there before the first line; the same again changes nothing."""
    lines = "2026-02-03 07:15 14 kindled 8, 2 dead"
    assert replayed(app, lines, roster=ROSTER).document["recorded"] == 1
    before = journal(app)
    assert replayed(app, lines, roster=ROSTER).document["recorded"] == 0
    assert journal(app) == before
    assert {one["tag"] for one in app.herd(NOW).document["animals"]} == {"3", "14"}


def test_a_roster_alone(app: App) -> None:
    """Without a line, and without a day in it."""
    replayed(app, "", roster={"animals": [{"tag": "14", "sex": "doe"}]})
    assert len(app.herd(NOW).document["animals"]) == 1


def test_a_roster_with_only_a_now(app: App) -> None:
    """Then that is when it was so."""
    replayed(app, "", roster={"now": "2026-01-10T07:00:00-06:00", "animals": [{"tag": "14", "sex": "doe"}]})
    assert app.newest() == datetime(2026, 1, 10, 13, tzinfo=UTC)


def test_a_roster_needs_an_empty_book(app: App) -> None:
    """Animals that came by notes are not mixed with those of a list."""
    replayed(app, SEASON)
    found = app.replay(SEASON, roster=ROSTER)
    assert isinstance(found, Problem)
    assert found.code == "not_empty"


@pytest.mark.parametrize("roster", [[], {"animals": [{}]}, {"animals": 7}, {"animals": [{"tag": "1", "born": "soon"}]}])
def test_a_roster_that_is_none(app: App, roster: Any) -> None:
    """What is wrong with it is told; nothing was taken in."""
    found = app.replay(SEASON, roster=roster)
    assert isinstance(found, Problem)
    assert found.code == "bad_roster"
    assert journal(app) == []
