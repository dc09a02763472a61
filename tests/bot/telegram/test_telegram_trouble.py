"""What goes wrong between the bot and the service, and within the bot."""

from __future__ import annotations

import logging
from datetime import datetime
from errno import ENOSPC
from pathlib import Path
from threading import Event
from typing import Any

import pytest
from telegram.error import InvalidToken

from bot.telegram.intake import BOTH_READ
from bot.telegram.outage import WAIT
from core.app import Message, Outgoing, Update
from core.reply import Choice, Reply
from core.store.people import active_chats
from tests.bot.telegram.served import Served
from tests.standin import StandIn


def test_too_many_messages_are_sent_later(barn: Served, standin: StandIn) -> None:
    """The service's wish for a pause is kept, by the service's clock, and the answer arrives once."""
    standin.fail("sendMessage", "flood", retry_after=1)
    note = standin.say("Ann", "14 weighed 8-2")
    standin.wait_calls("sendMessage", count=4)
    assert standin.answers(note) == []
    assert "8 lb 2 oz" in barn.later(note)["text"]
    assert len(standin.answers(note)) == 1


@pytest.mark.parametrize("trouble", [{"kind": "broken"}, {"kind": "refuse", "code": 500}, {"kind": "drop"}])
def test_an_answer_is_sent_again(barn: Served, standin: StandIn, trouble: dict[str, Any]) -> None:
    """Until the service takes it."""
    standin.fail("sendMessage", times=3, **trouble)
    note = standin.say("Ann", "14 weighed 8-2")
    assert "8 lb 2 oz" in standin.wait_answer(note)["text"]
    assert len(standin.answers(note)) == 1


def test_rather_twice_than_never(barn: Served, standin: StandIn) -> None:
    """An answer that arrived, but whose arrival was not confirmed, comes a second time."""
    standin.fail("sendMessage", "drop", after=True)
    note = standin.say("Ann", "14 weighed 8-2")
    first = standin.wait_answer(note)
    assert standin.wait_answer("Ann", after=first["message_id"])["text"] == first["text"]
    assert barn.notes().count("14 weighed 8-2") == 1


def test_a_letter_on_its_way_is_not_sent_again_when_the_clock_jumps(barn: Served, standin: StandIn) -> None:
    """A laptop slept while the service took its time: the letter in hand stays that one letter."""
    before = len(standin.calls("sendMessage"))
    standin.fail("sendMessage", "hold")
    note = standin.say("Ann", "14 weighed 8-2")
    standin.wait_calls("sendMessage", count=before + 1, answered=False)
    claim = barn.app.claim_outgoing
    handed_out_again = Event()

    def claimed(worker: str, now: datetime) -> Outgoing | None:
        out: Outgoing | None = claim(worker, now)
        if out is not None:
            handed_out_again.set()
        return out

    barn.app.claim_outgoing = claimed
    standin.world.pass_time(3600)
    barn.ring()
    assert handed_out_again.wait(4)
    standin.release()
    said = barn.reply(note)["text"]
    barn.stop()
    assert [each["text"] for each in standin.answers(note)].count(said) == 1


def test_a_piece_that_is_out_is_not_sent_again(barn: Served, standin: StandIn) -> None:
    """A long answer goes on where it stopped."""
    sent = len(standin.calls("sendMessage"))
    standin.fail("sendMessage", "hold")
    barn.app.send("long", str(standin.person("Ann")["id"]), Reply(tuple(f"line {number}" for number in range(600))), barn.now())
    barn.ring()
    standin.wait_calls("sendMessage", count=sent + 1, answered=False)
    standin.fail("sendMessage", "broken")
    standin.release()
    standin.wait_calls("sendMessage", count=sent + 2)
    standin.wait_calls("sendMessage", count=sent + 3)
    texts = [call.params["text"][:7] for call in standin.calls("sendMessage")[sent:]]
    assert texts[0] == "line 0\n"
    assert texts[1] == texts[2] != texts[0]


@pytest.mark.parametrize("trouble", [{"kind": "broken", "times": 3}, {"kind": "drop"}, {"kind": "flood"}, {"kind": "refuse", "code": 500}])
def test_news_are_asked_for_again(barn: Served, standin: StandIn, trouble: dict[str, Any]) -> None:
    """What was sent while the service was away is answered afterwards."""
    standin.fail("getUpdates", **trouble)
    for ounces in (1, 2, 3, 4):
        assert f"8 lb {ounces} oz" in barn.ask("Ann", f"14 weighed 8-{ounces}")


def test_a_second_reader_is_told_of(barn: Served, standin: StandIn, caplog: pytest.LogCaptureFixture) -> None:
    """The operator reads a plain line, and the bot goes on when the other one is gone."""
    standin.fail("getUpdates", "refuse", code=409, text="Conflict: terminated by other getUpdates request")
    with caplog.at_level(logging.WARNING):
        barn.ask("Ann", "14 weighed 8-2")
        barn.ask("Ann", "14 weighed 8-3")
    assert BOTH_READ in caplog.messages


def test_a_closed_chat_gets_nothing_more(barn: Served, standin: StandIn) -> None:
    """Somebody who blocked the bot is left alone until they write again."""
    chat = str(standin.person("Ann")["id"])
    standin.block("Ann")
    calls = len(standin.calls("sendMessage"))
    barn.app.send("one", chat, Reply(("are you there",)), barn.now())
    barn.ring()
    standin.wait_calls("sendMessage", count=calls + 1)
    assert barn.app.tick(barn.now()) == 0
    standin.unblock("Ann")
    assert "8 lb 2 oz" in barn.ask("Ann", "14 weighed 8-2")
    assert [answer["text"] for answer in standin.answers("Ann")].count("are you there") == 0


def test_a_group_that_moved_gets_its_message(barn: Served, standin: StandIn) -> None:
    """A group that grows gets a new number; what was on its way goes there."""
    group = standin.group("Barn", "Ann")
    barn.ask("Ann", "@barn_notes_bot 14 weighed 8-2", chat="Barn")
    moved = standin.migrate("Barn")
    barn.app.send("moved", str(group["id"]), Reply(("the week",)), barn.now())
    barn.ring()
    assert standin.wait_answer({"chat": moved, "message_id": 0})["text"] == "the week"
    standin.wait_confirmed()
    assert barn.ask("Ann", "who is due")
    with barn.app._engine.begin() as connection:
        assert active_chats(connection, 1) == tuple(sorted((str(standin.person("Ann")["id"]), str(moved["id"]))))


def test_a_refused_message_goes_as_bare_text(barn: Served, standin: StandIn) -> None:
    """Rather without its buttons than not at all."""
    standin.fail("sendMessage", "refuse", code=400, text="Bad Request: BUTTON_DATA_INVALID")
    answer = barn.send("Ann", Reply(("Which?",), (Choice("14", "14"),)))
    assert answer["text"] == "Which?"
    assert "reply_markup" not in answer


def test_a_message_refused_twice_is_given_up(barn: Served, standin: StandIn) -> None:
    """It must not hold up those behind it."""
    standin.fail("sendMessage", "refuse", times=2, code=400, text="Bad Request: message can't be sent")
    note = standin.say("Ann", "14 weighed 8-2")
    standin.wait_calls("sendMessage", count=3 + 2)
    assert "8 lb 3 oz" in barn.ask("Ann", "14 weighed 8-3")
    assert len(standin.answers(note)) == 1


def test_an_answer_without_words_is_no_message(barn: Served, standin: StandIn) -> None:
    """The service takes no empty messages, and none is tried."""
    barn.app.send("empty", str(standin.person("Ann")["id"]), Reply(()), barn.now())
    barn.ask("Ann", "14 weighed 8-2")
    assert all(call.params["text"] for call in standin.calls("sendMessage"))


def test_an_update_that_fails_is_set_aside(barn: Served, standin: StandIn, monkeypatch: pytest.MonkeyPatch) -> None:
    """After three tries the person is told, and those behind it are answered. No traceback reaches them."""
    hear, tried = barn.app.hear_update, []

    def failing(update: Update, message: Message, *rest: Any, **more: Any) -> Any:
        if "poison" in message.text:
            tried.append(message.text)
            raise RuntimeError("the cat sat on it")
        return hear(update, message, *rest, **more)

    monkeypatch.setattr(barn.app, "hear_update", failing)
    poison = standin.say("Ann", "poison for rats")
    standin.say("Ann", "14 weighed 8-2")
    answers = [standin.wait_answer(poison)]
    answers.append(standin.wait_answer("Ann", after=answers[0]["message_id"]))
    assert len(tried) == 3
    assert "Something went wrong" in answers[0]["text"]
    assert "cat" not in answers[0]["text"]
    assert "8 lb 2 oz" in answers[1]["text"]


def test_a_full_disk_is_no_fault_of_the_message(barn: Served, standin: StandIn, monkeypatch: pytest.MonkeyPatch) -> None:
    """However often it fails by that, it is not set aside; the person is told once that it waits."""
    hear, left = barn.app.hear_update, list(range(5))

    def full(*said: Any, **more: Any) -> Any:
        if left:
            left.pop()
            raise OSError(ENOSPC, "No space left on device")
        return hear(*said, **more)

    monkeypatch.setattr(barn.app, "hear_update", full)
    note = standin.say("Ann", "14 weighed 8-2")
    assert "8 lb 2 oz" in barn.reply(note)["text"]
    assert [each["text"] for each in standin.answers(note)].count(WAIT.format(why="The disk is full.")) == 1
    assert left == []


@pytest.mark.parametrize("name", ["take_updates", "next_update", "claim_outgoing", "mark_sent"])
def test_a_book_in_trouble_loses_nothing(barn: Served, standin: StandIn, monkeypatch: pytest.MonkeyPatch, name: str) -> None:
    """A full disk, a lock held for too long: what could not be written down is tried again, and confirmed only then."""
    real, left = getattr(barn.app, name), [1, 2]

    def failing(*said: Any, **more: Any) -> Any:
        if left:
            left.pop()
            raise OSError("no space left on device")
        return real(*said, **more)

    monkeypatch.setattr(barn.app, name, failing)
    for ounces in (1, 2, 3):
        standin.wait_answer(standin.say("Ann", f"14 weighed 8-{ounces}"))
    assert barn.notes()[-3:] == ["14 weighed 8-1", "14 weighed 8-2", "14 weighed 8-3"]
    assert left == []


def test_the_service_may_be_away_at_the_start(standin: StandIn, tmp_path: Path) -> None:
    """The bot waits for it."""
    standin.fail("getMe", "broken", times=2)
    standin.fail("setMyCommands", "flood", retry_after=1)
    with Served(standin, tmp_path / "book.sqlite") as served:
        assert "Welcome" in served.owner()


def test_a_wrong_token_ends_the_server(standin: StandIn, tmp_path: Path) -> None:
    """There is nothing to wait for."""
    standin.fail("getMe", "refuse", code=401, text="Unauthorized")
    with pytest.raises(InvalidToken), Served(standin, tmp_path / "book.sqlite"):
        pass


def test_a_token_taken_back_ends_the_server(standin: StandIn, tmp_path: Path) -> None:
    """Also later on."""
    served = Served(standin, tmp_path / "book.sqlite").__enter__()
    standin.fail("getUpdates", "refuse", code=401, text="Unauthorized")
    standin.say("Ann", "hello")
    served._thread.join(10)
    with pytest.raises(InvalidToken):
        served.__exit__(None, None, None)


def test_an_end_before_the_service_answers(standin: StandIn, tmp_path: Path) -> None:
    """Somebody who stops a bot that waits for the service need not wait too."""
    standin.fail("getMe", "broken", times=10_000)
    served = Served(standin, tmp_path / "book.sqlite")
    served._thread.start()
    standin.wait_calls("getMe", count=2)
    served.stop()
    assert served.error is None


def test_what_is_in_hand_is_finished(barn: Served, standin: StandIn) -> None:
    """An orderly end answers what was taken; nothing is lost, nothing said twice."""
    standin.fail("sendMessage", "hold")
    note = standin.say("Ann", "14 weighed 8-2")
    standin.wait_calls("sendMessage", count=4, answered=False)
    assert barn._loop is not None
    assert barn._serving is not None
    barn._loop.call_soon_threadsafe(barn._serving.stop)
    standin.release()
    barn.stop()
    assert len(standin.answers(note)) == 1
