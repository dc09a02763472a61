"""Two more client libraries talk to the stand-in: it must not only please the one that the bot is made with."""

from __future__ import annotations

import asyncio
import io
from collections.abc import AsyncIterator, Iterator

import pytest
from aiogram import Bot as Aiogram
from aiogram.client.session.aiohttp import AiohttpSession
from aiogram.client.telegram import TelegramAPIServer
from aiogram.exceptions import TelegramBadRequest, TelegramForbiddenError, TelegramRetryAfter
from aiogram.types import BotCommand as AiogramCommand
from aiogram.types import BufferedInputFile
from aiogram.types import InlineKeyboardButton as AiogramButton
from aiogram.types import InlineKeyboardMarkup as AiogramKeyboard
from telebot import TeleBot, apihelper, types
from telebot.apihelper import ApiTelegramException

from tests.standin import StandIn


@pytest.fixture
def standin() -> Iterator[StandIn]:
    with StandIn() as served:
        yield served


@pytest.fixture
async def first(standin: StandIn) -> AsyncIterator[Aiogram]:
    bot = Aiogram(standin.token, session=AiohttpSession(api=TelegramAPIServer.from_base(standin.url)))
    yield bot
    await bot.session.close()


@pytest.fixture
def second(standin: StandIn, monkeypatch: pytest.MonkeyPatch) -> TeleBot:
    monkeypatch.setattr(apihelper, "API_URL", f"{standin.url}/bot{{0}}/{{1}}")
    monkeypatch.setattr(apihelper, "FILE_URL", f"{standin.url}/file/bot{{0}}/{{1}}")
    monkeypatch.setattr(apihelper, "SESSION_TIME_TO_LIVE", 0)
    return TeleBot(standin.token, threaded=False)


async def test_the_first_reads_answers_and_confirms(first: Aiogram, standin: StandIn) -> None:
    """A note, a question with buttons, a press, an edit, a file out and in, the menu."""
    assert (await first.get_me()).username == standin.world.me["username"]
    standin.say("Ann", "/due now")
    [update] = await first.get_updates(timeout=5)
    assert update.message is not None
    assert update.message.entities is not None
    assert (update.message.text, update.message.entities[0].type) == ("/due now", "bot_command")
    keys = AiogramKeyboard(inline_keyboard=[[AiogramButton(text="Yes", callback_data="k")]])
    asked = await first.send_message(update.message.chat.id, "<b>Due?</b>", parse_mode="HTML", reply_markup=keys)
    assert asked.text == "Due?"
    standin.press("Ann", standin.answers("Ann")[0], "Yes")
    [press] = await first.get_updates(offset=update.update_id + 1, timeout=5)
    assert press.callback_query is not None
    assert press.callback_query.data == "k"
    assert await first.answer_callback_query(press.callback_query.id, text="Yes")
    assert await first.edit_message_reply_markup(chat_id=asked.chat.id, message_id=asked.message_id)
    paper = await first.send_document(asked.chat.id, BufferedInputFile(b"tag,name\n", "herd.csv"), caption="Here.")
    assert paper.document is not None
    content = await first.download(paper.document.file_id)
    assert content is not None
    assert content.read() == b"tag,name\n"
    assert await first.set_my_commands([AiogramCommand(command="due", description="What is due")])
    assert await first.get_updates(offset=press.update_id + 1, timeout=0) == []


async def test_the_first_understands_refusals(first: Aiogram, standin: StandIn) -> None:
    """Each as the kind of error that the library makes of it."""
    ann = standin.person("Ann")["id"]
    standin.fail("sendMessage", "flood", retry_after=7)
    with pytest.raises(TelegramRetryAfter) as flood:
        await first.send_message(ann, "x")
    assert flood.value.retry_after == 7
    standin.block("Ann")
    with pytest.raises(TelegramForbiddenError):
        await first.send_message(ann, "x")
    with pytest.raises(TelegramBadRequest, match="chat not found"):
        await first.send_message(1, "x")
    await asyncio.sleep(0)


def test_the_second_reads_answers_and_confirms(second: TeleBot, standin: StandIn) -> None:
    """The same by a library that sends its calls in another form."""
    assert second.get_me().username == standin.world.me["username"]
    standin.say("Ann", "/due now")
    [update] = second.get_updates(timeout=5)
    assert (update.message.text, update.message.entities[0].type) == ("/due now", "bot_command")
    keys = types.InlineKeyboardMarkup([[types.InlineKeyboardButton("Yes", callback_data="k")]])
    asked = second.send_message(update.message.chat.id, "<b>Due?</b>", parse_mode="HTML", reply_markup=keys)
    assert asked.text == "Due?"
    standin.press("Ann", standin.answers("Ann")[0], "Yes")
    [press] = second.get_updates(offset=update.update_id + 1, timeout=5)
    assert press.callback_query.data == "k"
    assert second.answer_callback_query(press.callback_query.id, text="Yes")
    assert second.edit_message_reply_markup(asked.chat.id, asked.message_id)
    paper = second.send_document(asked.chat.id, types.InputFile(io.BytesIO(b"tag,name\n"), "herd.csv"), caption="Here.")
    assert second.download_file(second.get_file(paper.document.file_id).file_path) == b"tag,name\n"
    assert second.set_my_commands([types.BotCommand("due", "What is due")])
    assert second.get_updates(offset=press.update_id + 1, timeout=1, long_polling_timeout=1) == []


def test_the_second_understands_refusals(second: TeleBot, standin: StandIn) -> None:
    """The code and the waiting time come through."""
    ann = standin.person("Ann")["id"]
    standin.fail("sendMessage", "flood", retry_after=7)
    with pytest.raises(ApiTelegramException) as flood:
        second.send_message(ann, "x")
    assert flood.value.result_json["parameters"]["retry_after"] == 7
    standin.block("Ann")
    with pytest.raises(ApiTelegramException, match="blocked") as closed:
        second.send_message(ann, "x")
    assert closed.value.error_code == 403
