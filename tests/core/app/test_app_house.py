"""A whole book behind one bot: many farms, each with its own people, and none that sees another's."""

from __future__ import annotations

import json
from collections.abc import Iterator
from datetime import datetime, timedelta
from pathlib import Path
from typing import Any

import pytest
from sqlalchemy import Engine, event
from sqlalchemy.exc import NoResultFound

from core.app import Hint, House, Message, Problem, Update, open_house
from core.app.book import App
from core.app.members import REFUSED
from core.store import leaving
from core.store.people import Member
from tests.core.app.conftest import AT, opened
from tests.postgres import postgres_server, postgres_template, postgres_url  # noqa: F401 - fixtures

MORNING = AT + timedelta(days=1, hours=2)


@pytest.fixture(params=["sqlite", "postgres"])
def url(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """A new book on each engine."""
    return f"sqlite:///{tmp_path}/book.sqlite" if request.param == "sqlite" else str(request.getfixturevalue("postgres_url"))


@pytest.fixture
def house(url: str) -> Iterator[House]:
    """A book with three farms. Ann owns Hill and Dale, Bo owns Dale; the first is the host's."""
    for name in ("host", "Hill", "Dale"):
        opened(url, name, create=True).close()
    found = open_house(url)
    assert isinstance(found, House)
    for number, farm, who in ((1, "Hill", "ann"), (2, "Dale", "bo"), (3, "Dale", "ann")):
        come(found, number, who, str(farm_called(found, farm).setup_code(AT, anew=True)))
        assert work_off(found) == ["Welcome. This farm's book is yours now."]
    yield found
    found.close()


def farm_called(house: House, name: str) -> App:
    """One of the farms."""
    return next(house.of(number) for number in (1, 2, 3) if house.of(number).name == name)


def come(house: House, number: int, who: str, text: str, at: datetime = AT, **more: Any) -> None:
    """A message from the chat service, with what tells whose it is."""
    chat = more.pop("chat", who)
    raw = json.dumps({"who": who, "text": text})
    farm = text.removeprefix("/farm").strip() if text.startswith("/farm") else None
    house.take_updates("bot", [(number, chat, raw)], lambda _: Hint(who, chat, words=text, farm=farm, **more), at)


def work_off(house: House, worker: str = "w", at: datetime = AT) -> list[str]:
    """Do what came, as a shell does, and send what it gave: the first line of each."""
    while (update := house.next_update(worker, at)) is not None:
        _handled(house, update, at)
    told = []
    while (out := house.claim_outgoing("sender", at)) is not None:
        told.append(out.payload["lines"][0])
        house.mark_sent(out, str(out.id))
    return told


def _handled(house: House, update: Update, at: datetime) -> None:
    said = json.loads(update.raw)
    app = house.of(update.farm)
    member = app.member(said["who"])
    if member is None:
        app.admit_update(update, Member(said["who"], said["who"].title(), ""), said["text"], at)
    elif said["text"].startswith("/farm"):
        app.farm_update(update, member, said["text"].removeprefix("/farm").strip(), at, group=update.chat.startswith("-"))
    else:
        app.hear_update(update, Message(said["text"], at, said["who"], update.chat, str(update.update_id)), at)


def test_each_note_goes_into_its_own_book(house: House) -> None:
    """And is answered from it."""
    come(house, 10, "bo", "new doe 14 mini rex")
    come(house, 11, "ann", "new buck 3 californian")
    assert work_off(house) == ["Doe 14 on the book: Mini Rex.", "Buck 3 on the book: Californian."]
    assert [note.text for note in farm_called(house, "Dale")._hearing.book().notes] == ["new doe 14 mini rex", "new buck 3 californian"]
    come(house, 12, "ann", "/farm hill")
    come(house, 13, "ann", "new buck 14 californian")
    assert work_off(house) == ["This chat is about Hill now.", "Buck 14 on the book: Californian."]
    assert [note.text for note in farm_called(house, "Hill")._hearing.book().notes] == ["new buck 14 californian"]


def test_who_asks_for_a_farm_is_told_which_there_are(house: House) -> None:
    """Their own alone; a group stays with its farm."""
    come(house, 10, "bo", "/farm")
    come(house, 11, "ann", "/farm")
    come(house, 12, "ann", "/farm host")
    come(house, 13, "ann", "/farm dale", chat="-5", group=True)
    come(house, 14, "ann", "/farm DALE")
    assert work_off(house) == [
        "You are on one farm: Dale.",
        "You are on Dale and Hill. This chat is about Dale. To change: “/farm Dale”.",
        "You are on no farm called host.",
        "This group belongs to Hill. In our own chat you can change farms.",
        "This chat is about Dale now.",
    ]


def test_a_server_of_one_farm_speaks_for_it_alone(house: House) -> None:
    """It can't change to another that the person is on."""
    app = farm_called(house, "Dale")
    app.take_updates("bot", [(20, "ann", "{}")])
    update = app.next_update("w", AT)
    assert update is not None
    assert app.farm_update(update, Member("ann", "Ann", "owner"), "hill", AT, group=False).text == "This bot speaks for Dale alone."


def test_strangers_are_refused_and_leave_nothing(house: House) -> None:
    """A message that says nothing of whose it is, is kept and done with all the same."""
    come(house, 10, "cy", "new doe 99")
    assert work_off(house) == [REFUSED]
    assert all(not app._hearing.book().notes for app in map(house.of, (1, 2, 3)))
    come(house, 12, "ann", "new doe 14")
    assert work_off(house)
    assert [house.knows_chat(chat) for chat in ("cy", "ann")] == [False, True]
    assert house.take_updates("bot", [(11, "x", "{}"), (11, "x", "{}")], lambda _: None, AT) == 1


def test_what_kills_the_program_is_set_aside(house: House) -> None:
    """Its farm's person is told."""
    come(house, 10, "bo", "new doe 14")
    for _ in range(10):
        assert house.next_update("w", AT) is not None
        house.begin_work("w")
    assert "Something went wrong here" in work_off(house)[0]


def test_a_letter_that_cant_go_out(house: House) -> None:
    """It is tried again at its time, or given up; the group goes on under another number, with its farm."""
    come(house, 10, "ann", "new doe 14", chat="-5", group=True)
    update = house.next_update("w", AT)
    assert update is not None
    _handled(house, update, AT)
    out = house.claim_outgoing("sender", AT)
    assert out is not None
    house.retry_at(out, MORNING)
    assert house.claim_outgoing("sender", AT) is None
    out = house.claim_outgoing("sender", MORNING)
    assert out is not None
    house.drop(out, chat_gone=True, moved_to="-1005")
    come(house, 11, "bo", "new doe 15", chat="-1005", group=True)
    assert work_off(house) == [REFUSED]
    assert house.of(out.farm).name == "Hill"


def statements(engine: Engine) -> list[str]:
    """What the database is told from now on."""
    told: list[str] = []
    event.listen(engine, "before_cursor_execute", lambda _c, _u, statement, *_rest: told.append(statement))
    return told


def swept(house: House, at: datetime) -> list[str]:
    """What the clock puts out."""
    while house.tick(at):
        pass
    return work_off(house, at=at)


def test_the_clock_looks_only_where_something_is_due(house: House) -> None:
    """On the morning of a reminder; and at once after whatever may change one."""
    come(house, 10, "bo", "remind me tomorrow to buy hay")
    work_off(house)
    assert swept(house, AT) == []
    assert house.status(AT)["to_look_at"] == 0
    told = statements(house._engine)
    assert house.tick(AT + timedelta(hours=1)) == 0
    assert len([statement for statement in told if statement.startswith("SELECT")]) == 1
    assert house.tick(MORNING) == 1
    assert work_off(house, at=MORNING) == ["buy hay.", "buy hay."]
    assert swept(house, MORNING) == []
    come(house, 11, "bo", "undo", MORNING)
    work_off(house, at=MORNING)
    assert house.status(MORNING)["to_look_at"] == 1


def test_an_undo_or_a_setting_moves_the_moment(house: House) -> None:
    """What was due is no longer, or at another hour."""
    come(house, 10, "bo", "remind me tomorrow to buy hay")
    work_off(house)
    swept(house, AT)
    come(house, 11, "bo", "reminders at 10 am")
    work_off(house)
    swept(house, AT)
    assert swept(house, AT.replace(hour=9) + timedelta(days=1)) == []
    assert swept(house, AT.replace(hour=10) + timedelta(days=1)) == ["buy hay.", "buy hay."]
    come(house, 12, "bo", "remind me tomorrow to buy straw", MORNING)
    come(house, 13, "bo", "undo", MORNING)
    work_off(house, at=MORNING)
    assert swept(house, MORNING + timedelta(days=1)) == []


def test_a_farm_in_trouble_does_not_keep_the_others_waiting(house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    """It is told of, and tried again a while later."""
    for number, who in ((10, "ann"), (11, "bo")):
        come(house, number, who, "remind me tomorrow to buy hay")
    come(house, 12, "ann", "/farm hill")
    come(house, 13, "ann", "remind me tomorrow to buy straw")
    work_off(house)
    swept(house, AT)
    told: list[tuple[str, str]] = []
    house.troubled = lambda farm, error: told.append((farm, str(error)))

    def broken(_now: datetime) -> bool:
        raise ValueError("broken")

    with monkeypatch.context() as patched:
        patched.setattr(farm_called(house, "Dale"), "look", broken)
        assert swept(house, MORNING) == ["buy straw."]
    assert told == [("Dale", "broken")]
    assert set(swept(house, MORNING + timedelta(minutes=15))) == {"buy hay."}


def test_a_farm_that_somebody_else_looks_at_is_passed_by(house: House) -> None:
    """Nothing is reckoned for it twice."""
    swept(house, AT)
    assert not house.of(1).look(AT)


def test_farms_not_asked_for_are_let_go(house: House, monkeypatch: pytest.MonkeyPatch) -> None:
    """The oldest first; one that is gone from the book can't be had."""
    monkeypatch.setattr("core.app.house.WARM", 2)
    first, second = house.of(1), house.of(2)
    assert house.of(1) is first
    house.of(3)
    assert house.of(1) is first
    assert house.of(2) is not second
    assert first.of(7) is first
    with house._engine.begin() as connection:
        leaving.delete_farm(connection, 3)
    house._farms.clear()
    with pytest.raises(NoResultFound):
        house.of(3)


def test_the_book_in_numbers(house: House) -> None:
    """What waits, and where."""
    come(house, 10, "bo", "hay")
    found = house.status(AT)
    assert (found["farms"], found["inbox"]) == (3, {"done": 3, "pending": 1})
    assert (found["outbox"], found["held"]) == ({"sent": 3}, {})
    assert found["book"] == house.place


def test_workers(house: House) -> None:
    """On PostgreSQL each has a name; what one held that is gone is free at once. In a file nobody works beside the server."""
    with house.serving("7") as free:
        assert free
    come(house, 10, "bo", "hay")
    if not house.has_workers:
        house.give_sign("inbox")
        assert house.release_gone() == ()
        return
    with house.working() as name, house.listening() as heard:
        assert house.next_update(name, AT) is not None
        assert house.release_gone() == ()
        house.give_sign("inbox")
        assert heard(10) == ("inbox",)
    assert house.next_update("other", AT) is None
    assert house.release_gone() == (name,)
    assert house.next_update("other", AT) is not None


def test_a_book_that_cant_be_opened(tmp_path: Path) -> None:
    """As one farm's."""
    assert isinstance(open_house("nosuch://x"), Problem)
    new = open_house(str(tmp_path / "new.sqlite"))
    assert isinstance(new, House)
    assert new.of(1).name == "home"
    assert new.copy_of_the_day(AT) is None
    new.close()
