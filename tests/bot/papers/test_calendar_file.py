"""The calendar file, read by a library that is not the one that wrote it."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta
from typing import Any

import pytest
import vobject

from bot.attachments import File, made
from bot.papers.calendar import LASTS, ics
from core.app.papers import ChoreCalendar, Entry, Wanted
from core.reply import Attached
from tests.machine import Machine

MADE = datetime(2026, 11, 25, 13, 10, tzinfo=UTC)


@pytest.fixture
def farm(tmp_path: Any, monkeypatch: pytest.MonkeyPatch) -> Machine:
    """A doe with kits, one in kindle, and a reminder at an hour."""
    machine = Machine(tmp_path, monkeypatch)
    machine.tell(
        "new doe 14 mini rex castor born 3/4/2025",
        "new doe 15 mini rex opal born 4/12/2025",
        "new buck 3 mini rex black born 2/1/2025",
        "bred 14 to 3 on 9/24",
        "14 kindled 8, 2 dead on 10/25",
        "bred 15 to 3 on 10/28",
        "remind me friday at 4:30 pm to trim nails on 3",
    )
    return machine


def events(content: str) -> list[Any]:
    """The events of a calendar."""
    return list(vobject.readOne(content).contents.get("vevent", []))


def day_of(event: Any, machine_zone: Any) -> date:
    """The day at the farm on which an event begins."""
    start = event.dtstart.value
    return start.astimezone(machine_zone).date() if isinstance(start, datetime) else start


def test_it_holds_what_is_due(farm: Machine) -> None:
    """The same chores on the same days, each once, and for as long as is wanted."""
    from zoneinfo import ZoneInfo

    for days in ("0", "14", "90"):
        chores = farm.json("due", "--days", days)["chores"]
        farm.ok("calendar", "--days", days, "--out", "chores.ics")
        read = events((farm.folder / "chores.ics").read_text(encoding="utf-8"))
        told = [(day_of(event, ZoneInfo("America/Chicago")).isoformat(), event.summary.value) for event in read]
        assert told == [(chore["on"], chore["text"]) for chore in chores]
        assert len({event.uid.value for event in read}) == len(read) == len(chores)


def test_it_holds_as_many_days_as_due(farm: Machine) -> None:
    """Where none are named."""
    content = farm.ok("calendar", "--out", "-")
    assert len(events(content)) == len(farm.json("due")["chores"]) > 0


def test_each_rings(farm: Machine) -> None:
    """At seven in the morning, a reminder with an hour at its hour."""
    read = {event.summary.value: event for event in events(farm.ok("calendar", "--out", "-"))}
    (nails,) = (event for text, event in read.items() if "trim nails" in text.lower())
    assert nails.dtstart.value == datetime(2026, 11, 27, 22, 30, tzinfo=UTC)
    assert nails.dtend.value - nails.dtstart.value == LASTS
    assert nails.valarm.trigger.value == timedelta()
    others = [event for event in read.values() if event is not nails]
    assert others
    for event in others:
        assert event.valarm.trigger.value == timedelta(hours=7)
        assert event.dtend.value - event.dtstart.value == timedelta(days=1)


def test_a_later_file_replaces_an_earlier(farm: Machine) -> None:
    """The same names, a higher sequence."""
    first = events(farm.ok("calendar", "--out", "-"))
    farm.now += timedelta(hours=1)
    second = events(farm.ok("calendar", "--out", "-"))
    assert [event.uid.value for event in first] == [event.uid.value for event in second]
    assert all(int(new.sequence.value) > int(old.sequence.value) for old, new in zip(first, second, strict=True))


def test_any_text_is_read_back() -> None:
    """Commas, semicolons, backslashes, colons, other scripts, and more than a line holds."""
    texts = ["cull 12; barren, again \\ BEGIN:VEVENT", "Käfig säubern 檻を掃除する " * 12, 'say "hi": x=1']
    entries = tuple(Entry(str(at), str(at), date(2026, 12, 1), text.strip(), timedelta(hours=7)) for at, text in enumerate(texts))
    content = ics(ChoreCalendar("Hill; \\, Farm", MADE, entries, ""))
    assert max(len(line) for line in content.split(b"\r\n")) <= 75
    assert [event.summary.value for event in events(content.decode())] == [text.strip() for text in texts]


def test_nothing_due_is_a_calendar_all_the_same(tmp_path: Any, monkeypatch: pytest.MonkeyPatch) -> None:
    """A program that fetches it daily must find one."""
    machine = Machine(tmp_path, monkeypatch)
    assert events(machine.ok("calendar", "--out", "-")) == []


def test_it_goes_with_a_reply(farm: Machine) -> None:
    """From the chat: the file lies in the data folder, with the chores of one animal."""
    told = farm.ok("say", "calendar of 3")
    path = told.strip().rpartition("File: ")[2]
    with open(path, encoding="utf-8") as file:  # noqa: PTH123 - a path that was printed
        assert [event.summary.value for event in events(file.read())] == ["trim nails on 3"]


def test_its_media_type(farm: Machine) -> None:
    """So that a phone opens it with its calendar."""
    from core.app import App, open_book

    app = open_book(f"sqlite:///{farm.folder / 'data' / 'herd-book.sqlite'}")
    assert isinstance(app, App)
    file = made(app, Attached("calendar", "chores", Wanted("15", days=1).key(), "chores.ics", "Chores."), MADE)
    assert isinstance(file, File)
    assert file.mime == "text/calendar"
    app.close()
