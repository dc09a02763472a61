"""Scripted trouble of the stand-in, its control address, waiting and stopping."""

from __future__ import annotations

import asyncio
import socket
import threading
from collections.abc import AsyncIterator, Iterator
from datetime import timedelta
from typing import Any

import pytest
import pytest_asyncio
from telegram import Bot
from telegram.error import BadRequest, NetworkError, RetryAfter, TimedOut

from tests.standin import StandIn
from tests.standin.clients import call, control, ptb


@pytest.fixture(autouse=True)
def durations_as_timedelta(monkeypatch: pytest.MonkeyPatch) -> None:
    """PTB warns on every duration until told which of its two types to give."""
    monkeypatch.setenv("PTB_TIMEDELTA", "true")


@pytest.fixture
def standin() -> Iterator[StandIn]:
    with StandIn() as served:
        yield served


@pytest_asyncio.fixture
async def bot(standin: StandIn) -> AsyncIterator[Bot]:
    async with ptb(standin) as ready:
        yield ready


async def test_flood_then_well(bot: Bot, standin: StandIn) -> None:
    """429 carries the seconds to wait; the next call goes through."""
    ann = standin.person("Ann")["id"]
    standin.fail("sendMessage", "flood", retry_after=7)
    with pytest.raises(RetryAfter) as flood:
        await bot.send_message(ann, "Good morning")
    assert flood.value.retry_after == timedelta(seconds=7)
    await bot.send_message(ann, "Good morning")
    assert [c.status for c in standin.calls("sendMessage")] == [429, 200]
    assert len(standin.answers("Ann")) == 1


@pytest.mark.parametrize("code", [500, 502, 504])
async def test_a_broken_gateway(bot: Bot, standin: StandIn, code: int) -> None:
    """5xx come as the gateway's page, not as JSON, and leave nothing behind."""
    standin.fail("*", "broken", code=code)
    with pytest.raises(NetworkError):
        await bot.send_message(standin.person("Ann")["id"], "Good morning")
    assert standin.answers("Ann") == []


async def test_a_scripted_refusal(bot: Bot, standin: StandIn) -> None:
    """Any code and text can be scripted, for one chat alone."""
    ann, ben = standin.person("Ann")["id"], standin.person("Ben")["id"]
    standin.fail("sendMessage", "refuse", code=400, text="Bad Request: not today", chat=ann)
    await bot.send_message(ben, "Good morning")
    with pytest.raises(BadRequest, match=r"(?i)not today"):
        await bot.send_message(ann, "Good morning")
    with pytest.raises(ValueError, match="no fault of the kind"):
        standin.fail("sendMessage", "explode")


@pytest.mark.parametrize("after", [False, True])
async def test_a_dropped_connection(bot: Bot, standin: StandIn, *, after: bool) -> None:
    """The bot can't tell whether a call that was cut took effect: here it did only with `after`."""
    standin.fail("sendMessage", "drop", after=after)
    with pytest.raises(NetworkError):
        await bot.send_message(standin.person("Ann")["id"], "Good morning")
    assert len(standin.answers("Ann")) == int(after)
    assert standin.calls("sendMessage")[0].status is None


async def test_a_lost_confirmation(bot: Bot, standin: StandIn) -> None:
    """A poll that confirmed and was cut: the confirmed update is gone, the later one comes again."""
    standin.say("Ann", "one")
    (first,) = await bot.get_updates()
    standin.say("Ann", "two")
    standin.fail("getUpdates", "drop", after=True)
    with pytest.raises(NetworkError):
        await bot.get_updates(offset=first.update_id + 1)
    assert [u.message.text for u in await bot.get_updates() if u.message] == ["two"]


async def test_a_hung_call_runs_into_the_client_s_timeout(bot: Bot, standin: StandIn) -> None:
    """A hung call is never answered."""
    standin.fail("sendMessage", "hang")
    with pytest.raises(TimedOut):
        await bot.send_message(standin.person("Ann")["id"], "Good morning", read_timeout=0.2)
    assert standin.answers("Ann") == []


async def test_a_held_call_goes_on_when_released(bot: Bot, standin: StandIn) -> None:
    """`hold` stops the bot in the middle of a call, for as long as the test wants."""
    standin.fail("sendMessage", "hold")
    sending = asyncio.create_task(bot.send_message(standin.person("Ann")["id"], "Good morning"))
    await asyncio.to_thread(standin.wait_calls, "sendMessage", answered=False)
    assert standin.answers("Ann") == []
    assert standin.calls("sendMessage", answered=True) == []
    standin.release()
    await sending
    assert len(standin.answers("Ann")) == 1


def test_control_over_http(standin: StandIn) -> None:
    """Another process can push a message, script a fault, read answers and the log, and learns of its own mistakes."""

    note = control(standin, "say", who="Ann", text="hay low")
    assert control(standin, "pending") == 1
    control(standin, "fail", method="sendMessage", kind="flood")
    call(standin, "sendMessage", chat_id=note["chat"]["id"], text="Noted")
    call(standin, "sendMessage", chat_id=note["chat"]["id"], text="Noted")
    assert control(standin, "wait_answer", to=note)["text"] == "Noted"
    assert [c["status"] for c in control(standin, "calls")] == [429, 200]
    assert control(standin, "violations") == []
    assert "no button" in control(standin, "press", who="Ann", message=control(standin, "answers", to=note)[0], button="15")["error"]
    assert "say" in control(standin, "shout")["verbs"]


def test_waiting_in_vain_tells_what_was_seen(standin: StandIn) -> None:
    """A wait that ends without its event names the last calls."""
    call(standin, "getMe")
    with pytest.raises(TimeoutError, match="getMe 200"):
        standin.wait_answer(standin.say("Ann", "hay low"), timeout=0.01)
    with pytest.raises(TimeoutError, match="confirmed"):
        standin.wait_confirmed(timeout=0.01)


def test_stopping_ends_polls_and_held_calls() -> None:
    """Nothing keeps waiting when the stand-in goes."""
    errors: list[Exception] = []

    def ask(method: str, **fields: Any) -> None:
        try:
            call(standin, method, **fields)
        except OSError as error:
            errors.append(error)

    with StandIn() as standin:
        standin.fail("getMe", "hang")
        calls = [("getUpdates", {"timeout": 50}), ("getMe", {})]
        threads = [threading.Thread(target=ask, args=(method,), kwargs=fields) for method, fields in calls]
        for thread in threads:
            thread.start()
        standin.wait_calls("getUpdates", answered=False)
        standin.wait_calls("getMe", answered=False)
    for thread in threads:
        thread.join(5)
        assert not thread.is_alive()
    assert len(errors) == 2


def test_half_a_request_is_none(standin: StandIn) -> None:
    """A client that dies while it sends has asked for nothing, and is not held to what it did not get to say."""
    head = f"POST /bot{standin.token}/sendMessage HTTP/1.1\r\nHost: x\r\nContent-Type: application/json\r\nContent-Length: 99\r\n\r\n"
    with socket.create_connection(("127.0.0.1", standin.port)) as client:
        client.sendall(head.encode() + b'{"chat_id"')
        client.shutdown(socket.SHUT_WR)
        assert client.recv(100) == b""
    assert standin.calls() == []
