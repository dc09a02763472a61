"""What the stand-in does for a well-behaved bot, tried with python-telegram-bot's own client."""

from __future__ import annotations

import asyncio
from collections.abc import AsyncIterator, Iterator
from datetime import timedelta

import pytest
import pytest_asyncio
from telegram import Bot, BotCommand, InlineKeyboardButton, InlineKeyboardMarkup, ReactionTypeEmoji, ReplyParameters
from telegram.error import BadRequest, ChatMigrated, Conflict, Forbidden

from tests.standin import StandIn
from tests.standin.clients import ptb

#: One grey dot: the smallest PNG, made for this test (signature, IHDR, IDAT, IEND).
DOT = bytes.fromhex(
    "89504e470d0a1a0a0000000d49484452000000010000000108000000003a7e9b550000000a49444154789c636800000082008177cd72b60000000049454e44ae426082"
)
KEYBOARD = InlineKeyboardMarkup([[InlineKeyboardButton("15", callback_data="k1"), InlineKeyboardButton("51", callback_data="k2")]])


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


async def test_the_bot_knows_itself(bot: Bot, standin: StandIn) -> None:
    """getMe gives a whole User, in privacy mode unless told otherwise."""
    me = await bot.get_me()
    assert (me.username, me.is_bot, me.can_read_all_group_messages) == ("barn_notes_bot", True, False)


async def test_a_note_reaches_the_bot_and_the_answer_comes_back(bot: Bot, standin: StandIn) -> None:
    """A person's message is an update; the bot's answer stands below it with the next number of that chat."""
    note = standin.say("Ann", "/start doe 14 kindled 8")
    (update,) = await bot.get_updates()
    assert update.message.text == "/start doe 14 kindled 8"
    assert update.message.entities[0].type == "bot_command"
    await bot.send_message(
        note["chat"]["id"], "Doe 14: <b>8</b> born &amp; well", parse_mode="HTML", reply_parameters=ReplyParameters(note["message_id"])
    )
    answer = standin.wait_answer(note)
    assert answer["text"] == "Doe 14: 8 born & well"
    assert answer["entities"] == [{"type": "bold", "offset": 8, "length": 1}]
    assert answer["reply_to_message"]["text"] == note["text"]
    assert answer["message_id"] == 2


def test_numbers_run_in_each_chat(standin: StandIn) -> None:
    """Message numbers belong to a chat."""
    assert [standin.say(who, "hay low")["message_id"] for who in ("Ann", "Ben", "Ann")] == [1, 1, 2]


async def test_offset_confirms_strictly(bot: Bot, standin: StandIn) -> None:
    """Updates come again until a higher offset confirms them, and never after."""
    for text in ("one", "two", "three"):
        standin.say("Ann", text)
    first = await bot.get_updates()
    assert [u.message.text for u in await bot.get_updates() if u.message] == ["one", "two", "three"]
    assert [u.update_id for u in await bot.get_updates(offset=first[1].update_id)] == [u.update_id for u in first[1:]]
    assert len(await bot.get_updates()) == 2
    assert await bot.get_updates(offset=first[-1].update_id + 1) == ()
    assert standin.pending() == 0


async def test_limit_and_negative_offset(bot: Bot, standin: StandIn) -> None:
    """`limit` bounds a batch without confirming; a negative offset keeps the last and forgets the others."""
    for text in ("one", "two", "three"):
        standin.say("Ann", text)
    assert len(await bot.get_updates(limit=2)) == 2
    assert [u.message.text for u in await bot.get_updates(offset=-1) if u.message] == ["three"]
    assert standin.pending() == 1


async def test_long_poll_ends_with_the_first_update(bot: Bot, standin: StandIn) -> None:
    """A poll with a timeout waits, and returns as soon as a person writes."""
    poll = asyncio.create_task(bot.get_updates(timeout=30))
    await asyncio.to_thread(standin.wait_calls, "getUpdates", answered=False)
    assert not poll.done()
    standin.say("Ann", "hay low")
    assert len(await poll) == 1


async def test_a_second_poller_ends_the_first(bot: Bot, standin: StandIn) -> None:
    """Only one may poll: the older poll gets 409."""
    poll = asyncio.create_task(bot.get_updates(timeout=30))
    await asyncio.to_thread(standin.wait_calls, "getUpdates", answered=False)
    async with ptb(standin) as other:
        await other.get_updates()
    with pytest.raises(Conflict):
        await poll


async def test_a_webhook_stands_in_the_way_of_polling(bot: Bot, standin: StandIn) -> None:
    """409 while a webhook is set; deleteWebhook clears it and, when asked, what waits."""
    standin.say("Ann", "hay low")
    standin.world.webhook_url = "https://example.org/hook"
    with pytest.raises(Conflict):
        await bot.get_updates()
    assert (await bot.get_webhook_info()).pending_update_count == 1
    await bot.delete_webhook()
    assert len(await bot.get_updates()) == 1
    await bot.delete_webhook(drop_pending_updates=True)
    assert standin.pending() == 0


async def test_allowed_updates_stick(bot: Bot, standin: StandIn) -> None:
    """Kinds that the bot did not ask for are not kept, also on later polls that don't name them."""
    await bot.get_updates(allowed_updates=["message"])
    await bot.get_updates()
    standin.edit(standin.say("Ann", "8 kits"), "9 kits")
    assert [u.edited_message for u in await bot.get_updates()] == [None]


async def test_an_edit_is_an_update(bot: Bot, standin: StandIn) -> None:
    """An edited message keeps its number and has the date of the edit."""
    note = standin.say("Ann", "doe 14 kindled 8")
    standin.world.pass_time(60)
    standin.edit(note, "doe 15 kindled 8")
    edited = (await bot.get_updates())[1].edited_message
    assert (edited.text, edited.message_id, (edited.edit_date - edited.date).seconds) == ("doe 15 kindled 8", 1, 60)


async def test_a_press_is_answered_once(bot: Bot, standin: StandIn) -> None:
    """A press brings the button's data and the message; a second answer, or one too late, is refused."""
    sent = await bot.send_message(standin.person("Ann")["id"], "Which doe?", reply_markup=KEYBOARD)
    standin.press("Ann", standin.answers("Ann")[0], "51")
    query = (await bot.get_updates())[0].callback_query
    assert (query.data, query.message.message_id) == ("k2", sent.message_id)
    assert await bot.answer_callback_query(query.id, text="Doe 51")
    with pytest.raises(BadRequest, match=r"(?i)query is too old"):
        await bot.answer_callback_query(query.id)
    late = standin.press("Ann", standin.answers("Ann")[0], "k1")
    standin.expire_presses()
    with pytest.raises(BadRequest, match=r"(?i)query is too old"):
        await bot.answer_callback_query(late)
    with pytest.raises(LookupError, match="no button"):
        standin.press("Ann", standin.answers("Ann")[0], "16")


async def test_editing_a_message(bot: Bot, standin: StandIn) -> None:
    """A new text takes the old keyboard away; an unchanged, absent or foreign message is refused."""
    note = standin.say("Ann", "hay low")
    ann = note["chat"]["id"]
    sent = await bot.send_message(ann, "Which doe?", reply_markup=KEYBOARD)
    await bot.edit_message_text("Doe <i>51</i>", ann, sent.message_id, parse_mode="HTML")
    (now,) = standin.answers(note)
    assert (now["text"], now["entities"][0]["type"], "reply_markup" in now) == ("Doe 51", "italic", False)
    with pytest.raises(BadRequest, match=r"(?i)message is not modified"):
        await bot.edit_message_text("Doe <i>51</i>", ann, sent.message_id, parse_mode="HTML")
    await bot.edit_message_reply_markup(ann, sent.message_id, reply_markup=KEYBOARD)
    with pytest.raises(BadRequest, match=r"(?i)message is not modified"):
        await bot.edit_message_reply_markup(ann, sent.message_id, reply_markup=KEYBOARD)
    with pytest.raises(BadRequest, match=r"(?i)message to edit not found"):
        await bot.edit_message_text("?", ann, 99)
    with pytest.raises(BadRequest, match=r"(?i)can't be edited"):
        await bot.edit_message_text("?", ann, note["message_id"])
    assert await bot.delete_message(ann, sent.message_id)
    with pytest.raises(BadRequest, match=r"(?i)delete not found"):
        await bot.delete_message(ann, sent.message_id)


async def test_pictures_and_files_go_out(bot: Bot, standin: StandIn) -> None:
    """A photo is looked at, a document kept byte for byte, and both can be sent again by their id."""
    ann = standin.person("Ann")["id"]
    photo = await bot.send_photo(ann, DOT, caption="Growth")
    assert (photo.photo[0].width, photo.caption) == (1, "Growth")
    await bot.send_photo(ann, photo.photo[0].file_id)
    content = bytes(range(256)) + b"\r\n--\r\n"
    sent = await bot.send_document(ann, content, filename="herd.csv")
    assert sent.document.file_name == "herd.csv"
    assert standin.world.files[sent.document.file_id].content == content
    with pytest.raises(BadRequest, match=r"(?i)IMAGE_PROCESS_FAILED"):
        await bot.send_photo(ann, content)
    with pytest.raises(BadRequest, match=r"(?i)wrong file identifier"):
        await bot.send_document(ann, "no-such-id")
    with pytest.raises(BadRequest, match=r"(?i)no text in the message"):
        await bot.edit_message_text("?", ann, photo.message_id)
    await bot.edit_message_caption(ann, photo.message_id, caption="Gain")
    assert standin.answers("Ann")[0]["caption"] == "Gain"


async def test_files_come_in(bot: Bot, standin: StandIn) -> None:
    """A voice note can be fetched by getFile and download; an unknown file can't."""
    standin.send_file("Ann", "voice", b"\x00ogg", duration=2)
    standin.send_file("Ann", "photo", DOT, caption="doe 14")
    standin.send_file("Ann", "document", b"notes", name="notes.txt")
    voice, picture, document = [update.message for update in await bot.get_updates()]
    assert (voice.voice.duration, picture.caption, document.document.file_name) == (timedelta(seconds=2), "doe 14", "notes.txt")
    file = await bot.get_file(voice.voice.file_id)
    assert bytes(await file.download_as_bytearray()) == b"\x00ogg"
    with pytest.raises(BadRequest, match=r"(?i)wrong file_id"):
        await bot.get_file("no-such-id")
    standin.world.files[voice.voice.file_id].content = bytes(20 * 1024 * 1024 + 1)
    with pytest.raises(BadRequest, match=r"(?i)too big"):
        await bot.get_file(voice.voice.file_id)


async def test_menu_reaction_and_action(bot: Bot, standin: StandIn) -> None:
    """Commands are kept, a reaction lands on its message, a chat action is taken, a chat can be looked up."""
    note = standin.say("Ann", "hay low")
    ann = note["chat"]["id"]
    assert await bot.set_my_commands([BotCommand("due", "What is due")])
    assert (await bot.get_my_commands())[0].command == "due"
    with pytest.raises(BadRequest, match=r"(?i)BOT_COMMAND_INVALID"):
        await bot.set_my_commands([BotCommand("Due!", "What is due")])
    assert await bot.set_message_reaction(ann, note["message_id"], ReactionTypeEmoji("👍"))
    assert standin.world.reactions[ann, 1][0]["emoji"] == "👍"
    with pytest.raises(BadRequest, match=r"(?i)react not found"):
        await bot.set_message_reaction(ann, 99, ReactionTypeEmoji("👍"))
    assert await bot.send_chat_action(ann, "typing")


async def test_privacy_mode_in_a_group(bot: Bot, standin: StandIn) -> None:
    """In a group only commands, mentions and replies to the bot reach it."""
    group = standin.group("Barn", "Ann", "Ben")
    sent = await bot.send_message(group["id"], "Good morning")
    standin.say("Ann", "doe 14 kindled 8", chat="Barn")
    standin.say("Ann", "/due", chat="Barn")
    standin.say("Ben", "@barn_notes_bot who is due", chat="Barn")
    standin.say("Ben", "and you", chat="Barn", reply_to={"message_id": sent.message_id, **standin.world.chats[group["id"]].messages[1]})
    assert [u.message.text for u in await bot.get_updates() if u.message] == ["/due", "@barn_notes_bot who is due", "and you"]


async def test_a_bot_that_reads_all_gets_all() -> None:
    """With privacy mode off every group message reaches the bot."""
    with StandIn(reads_all=True) as standin:
        standin.group("Barn", "Ann")
        standin.say("Ann", "doe 14 kindled 8", chat="Barn")
        assert standin.pending() == 1
        with pytest.raises(LookupError, match="no group"):
            standin.say("Ann", "doe 14 kindled 8", chat="Shed")


async def test_a_group_that_moves(bot: Bot, standin: StandIn) -> None:
    """The old id answers with the new one; both chats tell of it."""
    old = standin.group("Barn", "Ann")["id"]
    new = standin.migrate("Barn")["id"]
    with pytest.raises(ChatMigrated) as moved:
        await bot.send_message(old, "Good morning")
    assert moved.value.new_chat_id == new
    await bot.send_message(new, "Good morning")
    told = [u.message for u in await bot.get_updates()]
    assert (told[0].migrate_to_chat_id, told[1].migrate_from_chat_id) == (new, old)


async def test_closed_doors(bot: Bot, standin: StandIn) -> None:
    """A person who blocked the bot, a group that threw it out, a chat that never was."""
    ann, group = standin.person("Ann")["id"], standin.group("Barn", "Ben")["id"]
    standin.block("Ann")
    standin.kick("Ben", "Barn")
    with pytest.raises(Forbidden, match=r"(?i)blocked by the user"):
        await bot.send_message(ann, "Good morning")
    with pytest.raises(Forbidden, match=r"(?i)kicked from the group chat"):
        await bot.send_message(group, "Good morning")
    with pytest.raises(BadRequest, match=r"(?i)chat not found"):
        await bot.send_message(4711, "Good morning")
    standin.unblock("Ann")
    await bot.send_message(ann, "Good morning")
    changes = [u.my_chat_member.new_chat_member.status for u in await bot.get_updates() if u.my_chat_member]
    assert changes == ["kicked", "kicked", "member"]
