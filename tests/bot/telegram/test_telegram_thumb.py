"""What a thumb can do: undo, fix, numbers to press, and answers to the bot's own messages."""

from __future__ import annotations

from typing import Any

from core.app.letters import Letter, Offer, numbers, put
from core.notes.reading import ReplyTo
from core.reply import Choice, Reply
from tests.bot.telegram.served import Served
from tests.standin import StandIn


def rows(message: dict[str, Any]) -> list[list[str]]:
    """The labels under a message, row by row."""
    return [[button["text"] for button in row] for row in message.get("reply_markup", {}).get("inline_keyboard", [])]


def test_undo_and_fix_stand_under_a_note(barn: Served, standin: StandIn) -> None:
    """Undo takes back that note, whatever was told since; a question offers neither."""
    first = standin.wait_answer(standin.say("Ann", "14 weighed 8-2"))
    assert rows(first) == [["Undo", "Fix"]]
    other = standin.wait_answer(standin.say("Ann", "14 weighed 8-4 yesterday"))
    standin.press("Ann", first, "Undo")
    assert standin.wait_answer("Ann", after=other["message_id"])["text"] == "Taken back: Doe 14: 8 lb 2 oz."
    assert rows(standin.wait_answer(standin.say("Ann", "who is due"))) == []
    assert [weight.grams for weight in barn.app._hearing.book().herd.animals["14"].weights] == [3742]


def test_fix_asks_and_takes_the_next_words(barn: Served, standin: StandIn) -> None:
    """The note as it should be takes its place."""
    first = standin.wait_answer(standin.say("Ann", "14 weighed 8-2"))
    standin.press("Ann", first, "Fix")
    asked = standin.wait_answer("Ann", after=first["message_id"])
    assert asked["text"].startswith("It says “14 weighed 8-2”.")
    answer = standin.wait_answer(standin.say("Ann", "14 weighed 9-1"))
    assert answer["text"] == "Doe 14: 9 lb 1 oz.\nWas: Doe 14: 8 lb 2 oz."


def test_a_count_has_a_pad_of_numbers(barn: Served, standin: StandIn) -> None:
    """Five in a row; pressing one answers that very question."""
    barn.ask("Ann", "bred 14 to 3 31 days ago")
    asked = barn.reply(standin.say("Ann", "14 kindled"))
    assert rows(asked) == [["1", "2", "3", "4", "5"], ["6", "7", "8", "9", "10"], ["11", "12", "13", "14"]]
    standin.say("Ann", "3 weighed 9-2")
    standin.press("Ann", asked, "8")
    standin.wait_calls("answerCallbackQuery")
    barn.reply(standin.say("Ann", "who is due"))
    assert [litter.born for litter in barn.app._hearing.book().herd.litters.values()] == [8]


def test_a_reply_is_about_the_message_it_answers(barn: Served, standin: StandIn) -> None:
    """The bot's answer, or the person's own note."""
    note = standin.say("Ann", "14 weighed 8-2")
    answer = standin.wait_answer(note)
    other = standin.wait_answer(standin.say("Ann", "3 weighed 9-2"))
    assert barn.ask("Ann", "it was 8-4", reply_to=answer).startswith("Doe 14: 8 lb 4 oz.")
    assert barn.ask("Ann", "undo", reply_to=other) == "Taken back: Buck 3: 9 lb 2 oz."


def test_a_reminder_of_kits_has_numbers(barn: Served, standin: StandIn) -> None:
    """They stand above what else can be answered, and are heard as the answer to that reminder."""
    barn.ask("Ann", "bred 14 to 3 31 days ago")
    chat = str(standin.person("Ann")["id"])
    chore = ReplyTo("kindling", "14", None)
    offers = (*(Offer(choice, chore) for choice in numbers(1)),)
    with barn.app._engine.begin() as connection:
        put(connection, 1, Letter("r", chat, ("14 is due.",), offers, chores=(chore,)), barn.now())
    barn.ring()
    note = standin.say("Ann", "who is due")
    reminder = standin._wait(lambda: next((each for each in standin.answers("Ann") if each["text"] == "14 is due."), None), "it", 10)
    standin.press("Ann", reminder, "7")
    heard = standin._wait(lambda: next((each for each in standin.answers(note) if "7 born" in each["text"]), None), "it", 10)
    assert heard["text"].startswith("Doe 14: 7 born")


def test_a_thumb_up_is_enough(barn: Served, standin: StandIn) -> None:
    """Once the farm says so, a plain note gets one and no words; what tells more or asks is still said. Undo works as a reply to one's own note."""
    barn.ask("Ann", "a thumb up is enough")
    note = standin.say("Ann", "moved 14 to cage 3")
    standin.wait_calls("setMessageReaction")
    assert "palpate" in barn.ask("Ann", "bred 14 to 3").lower()
    assert standin.world.reactions[note["chat"]["id"], note["message_id"]][0]["emoji"] == "👍"
    assert "moved" not in " ".join(each["text"] for each in standin.answers(note))
    assert barn.ask("Ann", "undo", reply_to=note) == "Taken back: Doe 14 is in cage 3."
    pressed = barn.send("Ann", Reply(("Where is she?",), (Choice("C4", "moved 14 to cage C4"),)))
    standin.press("Ann", pressed, "C4")
    assert standin.wait_answer("Ann", after=pressed["message_id"])["text"] == "Doe 14 is in cage C4."


def test_words_where_no_thumb_is_taken(barn: Served, standin: StandIn) -> None:
    """A group may have no reactions: then the answer comes as ever, with its buttons."""
    barn.ask("Ann", "a thumb up is enough")
    standin.fail("setMessageReaction", "refuse", code=400)
    answer = barn.reply(standin.say("Ann", "moved 14 to cage 3"))
    assert answer["text"] == "Doe 14 is in cage 3."
    assert rows(answer) == [["Undo", "Fix"]]
