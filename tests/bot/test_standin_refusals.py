"""What the stand-in refuses: requests that the documentation does not allow, and calls that can't be carried out."""

from __future__ import annotations

import json
from collections.abc import AsyncIterator, Iterator
from typing import Any

import pytest
import pytest_asyncio
from telegram import Bot, ReplyParameters
from telegram.error import BadRequest

from tests.standin import StandIn, checking
from tests.standin.clients import call, post, ptb


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


WRONG = [
    ("sendMessage", {"chat_id": 1001}, "must contain ['text']"),
    ("sendMessage", {"chat_id": 1001, "text": "x", "colour": "red"}, "must not contain"),
    ("sendMessage", {"chat_id": 1001, "text": "x", "parse_mode": "Markdownv3"}, "must be one of"),
    ("sendMessage", {"chat_id": 1001, "text": "x", "reply_markup": {"inline_keyboard": [[{"txt": "a"}]]}}, "reply_markup"),
    ("sendMessage", {"chat_id": 1001, "text": ""}, "message text is empty"),
    ("sendMessage", {"chat_id": 1001, "text": "x" * 4097}, "message is too long"),
    ("sendMessage", {"chat_id": 1001, "text": "🐇" * 2049}, "message is too long"),
    ("sendPhoto", {"chat_id": 1001, "photo": "x", "caption": "x" * 1025}, "caption is too long"),
    (
        "sendMessage",
        {"chat_id": 1001, "text": "x", "reply_markup": {"inline_keyboard": [[{"text": "a", "callback_data": "é" * 33}]]}},
        "BUTTON_DATA_INVALID",
    ),
    ("answerCallbackQuery", {"callback_query_id": "1", "text": "x" * 201}, "must be 0-200 characters long"),
    ("getMe", {"verbose": True}, "must not contain"),
    ("getFile", {"file_id": 7}, "must be string"),
]


@pytest.mark.parametrize(("method", "fields", "text"), WRONG)
def test_a_wrong_request_is_refused_and_recorded(standin: StandIn, method: str, fields: dict[str, Any], text: str) -> None:
    """A request that the documentation does not allow gets 400 and is held against the bot."""
    standin.person("Ann")
    status, answer = call(standin, method, **fields)
    assert (status, answer["ok"]) == (400, False)
    assert text in answer["description"]
    assert len(standin.forgive()) == 1


def test_a_violation_fails_the_test() -> None:
    """Leaving the stand-in with a violation is an assertion error, though the bot swallowed the refusal."""
    with pytest.raises(AssertionError, match=r"sendMessage: .*colour"), StandIn() as standin:
        call(standin, "sendMessage", chat_id=1, text="x", colour="red")


def test_an_error_of_the_test_is_not_hidden_by_a_violation() -> None:
    """When the test has already failed, its own error is shown."""

    def fails() -> None:
        with StandIn() as standin:
            call(standin, "sendMessage")
            raise KeyError

    with pytest.raises(KeyError):
        fails()


def test_length_counts_after_parsing(standin: StandIn) -> None:
    """Markup does not count towards the 4096; what it hides does not save a text of 4097."""
    standin.person("Ann")
    assert call(standin, "sendMessage", chat_id=1001, parse_mode="HTML", text="<b>" + "x" * 4096 + "</b>")[0] == 200
    assert call(standin, "sendMessage", chat_id=1001, parse_mode="HTML", text="<b>" + "x" * 4097 + "</b>")[0] == 400
    assert standin.forgive()


@pytest.mark.parametrize(
    ("text", "why"),
    [
        ("weight < 4 lb", "Unsupported start tag"),
        ("<doe>14", 'Unsupported start tag "doe"'),
        ("<b>14", "Can't find end tag"),
        ("14</b>", "Unexpected end tag"),
        ("<b><i>14</b></i>", "Unmatched end tag"),
    ],
)
async def test_bad_markup_is_refused_whole(bot: Bot, standin: StandIn, text: str, why: str) -> None:
    """A text that can't be parsed is not sent at all."""
    with pytest.raises(BadRequest, match=rf"(?i)can't parse entities: {why}"):
        await bot.send_message(standin.person("Ann")["id"], text, parse_mode="HTML")
    assert standin.answers("Ann") == []


async def test_links_and_spoilers(bot: Bot, standin: StandIn) -> None:
    """A link keeps its address, offsets count UTF-16 units."""
    text = '🐇 <a href="https://example.org/?a=1&amp;b=2">page</a> <span class="tg-spoiler">14</span>'
    await bot.send_message(standin.person("Ann")["id"], text, parse_mode="HTML")
    link, spoiler = standin.answers("Ann")[0]["entities"]
    assert link == {"type": "text_link", "url": "https://example.org/?a=1&b=2", "offset": 3, "length": 4}
    assert spoiler == {"type": "spoiler", "offset": 8, "length": 2}


async def test_other_markup_is_not_read(bot: Bot, standin: StandIn) -> None:
    """The stand-in knows HTML; it refuses the other modes rather than guess."""
    with pytest.raises(BadRequest, match=r"(?i)HTML only"):
        await bot.send_message(standin.person("Ann")["id"], "*x*", parse_mode="MarkdownV2")


async def test_a_reply_to_nothing(bot: Bot, standin: StandIn) -> None:
    """A reply to a message that is gone is refused, unless the bot allowed for it."""
    ann = standin.person("Ann")["id"]
    with pytest.raises(BadRequest, match=r"(?i)replied not found"):
        await bot.send_message(ann, "x", reply_parameters=ReplyParameters(99))
    await bot.send_message(ann, "x", reply_parameters=ReplyParameters(99, allow_sending_without_reply=True))


def test_wrong_token_and_unknown_method(standin: StandIn) -> None:
    """401 for a wrong token; 404 for a method or a file that does not exist."""
    assert post(standin, "/bot1:wrong/getMe", b"{}")[0] == 401
    assert call(standin, "sendRabbit")[0] == 404
    assert post(standin, "/elsewhere", b"{}")[0] == 404
    assert post(standin, f"/file/bot{standin.token}/files/none", b"{}")[0] == 404


@pytest.mark.parametrize(
    ("content_type", "body"),
    [
        ("application/json", b"[1]"),
        ("application/json", b"{"),
        ("multipart/form-data", b"--x--"),
        ("multipart/form-data; boundary=x", b"--x\r\n\r\nno name\r\n--x--"),
        ("multipart/form-data; boundary=x", b'--x\r\nContent-Disposition: form-data; name="text"\r\n\r\ncut'),
        ("text/csv", b"a,b"),
        ("application/x-www-form-urlencoded", b"chat_id=1001&text=x&reply_markup=%7Bwrong"),
    ],
)
def test_a_broken_body_is_refused_and_recorded(standin: StandIn, content_type: str, body: bytes) -> None:
    """A body that is not what it says gets 400."""
    assert post(standin, f"/bot{standin.token}/sendMessage", body, content_type)[0] == 400
    assert standin.forgive()


def test_json_chunks_and_query_strings_are_read(standin: StandIn) -> None:
    """A body may come in chunks (other client libraries stream it), and fields in the query string."""
    standin.person("Ann")
    path = f"/bot{standin.token}/sendMessage"
    body = json.dumps({"chat_id": 1001, "text": "one"}).encode()
    assert post(standin, path, iter([body[:9], body[9:]]))[0] == 200
    assert post(standin, f"{path}?chat_id=1001&text=two", b"", "")[0] == 200
    assert [m["text"] for m in standin.answers("Ann")] == ["one", "two"]


def test_the_standin_checks_itself() -> None:
    """An update with a chat that lacks its type is not one."""
    chat = {"id": 1}
    with pytest.raises(AssertionError, match="made a wrong Update"):
        checking.check_object("Update", {"update_id": 1, "message": {"message_id": 1, "date": 0, "chat": chat}})
