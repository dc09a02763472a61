"""What the bot says by itself, and how it is answered."""

from __future__ import annotations

from datetime import UTC, datetime
from pathlib import Path

import pytest

from tests.bot.telegram.served import Served, opened_notes
from tests.standin import StandIn
from tests.standin.people import Message


def reminders(standin: StandIn) -> list[Message]:
    """The letters that remind of the doe; the week's digest, which names her as well, is none."""
    return [message for message in standin.answers("Ann") if message["text"].startswith("Palpate doe 14")]


def test_a_reminder_comes_at_the_farms_hour_and_can_be_answered(barn: Served, standin: StandIn) -> None:
    """Twelve days after the mating the doe is to be felt for kits; a reply to that message is about that doe."""
    asked = standin.say("Ann", "bred 14 to 3")
    standin.wait_answer(asked)
    standin.set_now(datetime(2026, 3, 16, 5, 0, tzinfo=UTC))
    barn.reply(standin.say("Ann", "hay is low"))
    assert not reminders(standin)
    standin.set_now(datetime(2026, 3, 16, 16, 0, tzinfo=UTC))
    (reminder,) = standin._wait(lambda: reminders(standin) or None, "the reminder", 10)
    answer = barn.reply(standin.say("Ann", "not yet", reply_to=reminder))
    assert answer["text"]
    note = opened_notes(barn.book)[-1]
    assert (note.text, note.reply_to.chore, note.reply_to.who) == ("not yet", "palpate", "14")


def test_a_reminders_button_answers_it(barn: Served, standin: StandIn) -> None:
    """As if its words had been sent in reply to the reminder."""
    asked = standin.say("Ann", "bred 14 to 3")
    barn.reply(asked)
    standin.set_now(datetime(2026, 3, 17, 16, 0, tzinfo=UTC))
    (reminder,) = standin._wait(lambda: reminders(standin) or None, "the reminder", 10)
    standin.press("Ann", reminder, "Skip")
    standin.wait_calls("editMessageReplyMarkup")
    note = opened_notes(barn.book)[-1]
    assert (note.text, note.reply_to.chore, note.reply_to.who) == ("skip", "palpate", "14")


def test_a_reminder_is_sent_once(barn: Served, standin: StandIn) -> None:
    """A restart does not send it again, nor any other letter that was out; those that were not go out then."""
    standin.wait_answer(standin.say("Ann", "bred 14 to 3"))
    standin.set_now(datetime(2026, 3, 16, 16, 0, tzinfo=UTC))
    standin._wait(lambda: reminders(standin) or None, "the reminder", 10)
    barn.stop()
    with Served(standin, barn.book) as again:
        again.reply(standin.say("Ann", "hay is low"))
    texts = [message["text"] for message in standin.answers("Ann")]
    assert len(reminders(standin)) == 1
    assert len(set(texts)) == len(texts)


def test_a_book_in_trouble_does_not_end_the_clock(barn: Served, standin: StandIn) -> None:
    """A failing report is logged and asked for again."""
    tick = barn.app.tick
    failed = []

    def failing(now: datetime) -> int:
        failed.append(now)
        if len(failed) < 3:
            raise RuntimeError("no report today")
        return tick(now)

    barn.app.tick = failing  # type: ignore[method-assign]
    standin.wait_answer(standin.say("Ann", "bred 14 to 3"))
    last = standin.answers("Ann")[-1]
    standin.set_now(datetime(2026, 3, 16, 16, 0, tzinfo=UTC))
    assert standin.wait_answer("Ann", after=last["message_id"])
    assert len(failed) >= 3


def test_the_book_is_copied_once_a_day(barn: Served, standin: StandIn) -> None:
    """Beside the book, while people write."""
    folder = barn.book.with_name(barn.book.name + ".copies")
    copied(barn, folder, "2026-03-04.sqlite")
    standin.set_now(datetime(2026, 3, 9, 16, 0, tzinfo=UTC))
    copied(barn, folder, "2026-03-09.sqlite")
    barn.stop()


def copied(barn: Served, folder: Path, name: str) -> None:
    """Ann writes until the copy is there, a hundred notes at most."""
    for _ in range(100):
        barn.reply(barn.standin.say("Ann", "hay is low"))
        if (folder / name).exists():
            return
    raise AssertionError(name)


def test_a_copy_that_can_not_be_made_is_told_once(standin: StandIn, tmp_path: Path, caplog: pytest.LogCaptureFixture) -> None:
    """And nothing else waits for it."""
    (tmp_path / "book.sqlite.copies").write_text("in the way", encoding="utf-8")
    with Served(standin, tmp_path / "book.sqlite") as served:
        served.owner()
        for text in ("new doe 14", "hay is low", "14 weighed 8-2"):
            served.ask("Ann", text)
            standin.world.pass_time(60)
    assert sum("There is no copy of the book of today" in record.message for record in caplog.records) == 1
