"""`Do it`, said to the plan."""

from __future__ import annotations

from datetime import timedelta

import pytest

from core.app import Message
from core.app.book import App
from core.reply import Reply
from tests.core.app.conftest import AT

NOTES = """
new buck 3 mini rex born 1/1/2025
new buck 2 mini rex born 1/1/2025
new buck 4 mini rex born 1/2/2025
new buck 5 mini rex born 1/3/2025
new doe 9 mini rex born 1/4/2025
new doe 8 mini rex born 1/5/2025
fault on 4 white toenail dq
fault on 5 white toenail dq
""".strip().splitlines()


def say(app: App, text: str, minutes: int = 0, number: str = "", chat: str = "c") -> Reply:
    """One message of Ann's."""
    return app.hear(Message(text, AT + timedelta(days=30, minutes=minutes), "ann", chat, number))


@pytest.fixture
def barn(app: App) -> App:
    """A farm with two bucks that go."""
    for at, text in enumerate(NOTES):
        app.hear(Message(text, AT + timedelta(minutes=20 * at), "ann", "c", f"n{at}"))
    return app


def plans(app: App) -> list[str]:
    """What is planned for each buck."""
    animals = app._hearing.book().herd.animals
    return [plan.what for tag in ("4", "5") for plan in animals[tag].intentions]


def test_each_line_becomes_a_plan_of_its_own(barn: App) -> None:
    """Both are planned, none is gone, and each undo takes back one."""
    say(barn, "winter", number="1")
    told = say(barn, "do it", 1, "2")
    assert [line.split(" on ")[0] for line in told.lines[:2]] == ["Planned: cull 4", "Planned: cull 5"]
    assert told.lines[-1].startswith("Planned, not done")
    assert plans(barn) == ["cull", "cull"]
    assert all(barn._hearing.book().herd.animals[tag].living for tag in ("4", "5"))
    say(barn, "undo", 2, "3")
    assert plans(barn) == ["cull"]
    say(barn, "undo", 3, "4")
    assert plans(barn) == []


def test_the_days_become_chores(barn: App) -> None:
    """What is planned is due on its day."""
    say(barn, "winter")
    say(barn, "Do it.", 1)
    chores = barn.due(AT + timedelta(days=30, minutes=2)).document["chores"]
    assert [one["tag"] for one in chores if one["chore"] == "cull_date"] == ["4", "5"]


def test_said_twice_it_is_done_once(barn: App) -> None:
    """The same message delivered again gives the same answer and no second plan."""
    say(barn, "who should I keep", number="1")
    first = say(barn, "ok, do it", 1, "2")
    assert say(barn, "ok, do it", 1, "2") == first
    assert plans(barn) == ["cull", "cull"]
    say(barn, "winter", 2, "3")
    assert say(barn, "do it", 3, "4").lines == ("The plan lets nobody go that you haven't decided on yourself.",)


def test_the_object_tells_the_plans(barn: App) -> None:
    """A program that says it gets the facts."""
    say(barn, "winter")
    told = barn.say(Message("do it", AT + timedelta(days=30, minutes=1), "ann", "c"))
    assert [(fact["who"], fact["what"]) for fact in told.document["facts"]] == [("4", "cull"), ("5", "cull")]


@pytest.mark.parametrize(
    ("before", "minutes", "chat"),
    [("why 4", 1, "c"), ("winter", 600, "c"), ("winter", 1, "d"), ("keep 4?", 1, "c"), ("3 looks well", 1, "c")],
)
def test_only_right_behind_the_plan(barn: App, before: str, minutes: int, chat: str) -> None:
    """Behind another answer, hours later or in another chat it means nothing."""
    say(barn, before)
    say(barn, "do it", minutes, chat=chat)
    assert plans(barn) == []
    assert barn._hearing.book().herd.animals["4"].living


def test_before_anything_was_said(app: App) -> None:
    """In an empty book it is no note."""
    say(app, "do it")
    assert app._hearing.book().standing() == ()


def test_a_file_does_nothing(barn: App) -> None:
    """A line of a file tells what happened; it orders nothing."""
    barn.replay("2026-04-03 08:00 winter\n2026-04-03 08:01 do it\n")
    assert plans(barn) == []


def test_untagged_kits_that_go_are_named(app: App) -> None:
    """No plan can be noted of kits without tags; the answer says so, and what to write when they go."""
    for at, text in enumerate(("new buck 3 rex born 1/1/2025", "new doe 9 rex born 1/4/2025", "2 cages")):
        say(app, text, at - 60, f"k{at}")
    born = AT + timedelta(days=-50)
    for text, day in (("9 bred to 3", born - timedelta(31)), ("9 kindled 5", born), ("weaned 9: 5", born + timedelta(40))):
        app.hear(Message(text, day, "ann", "c", text))
    say(app, "winter", number="1")
    told = say(app, "do it", 1, "2")
    assert told.lines == ("Not noted, for they have no tags: 5 kits of 9. Tell me when they go: sold 5 kits of 9.",)
