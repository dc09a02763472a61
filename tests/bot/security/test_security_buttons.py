"""Buttons that nobody was shown: made up, taken from another chat, or pressed again."""

from __future__ import annotations

from typing import Any

import pytest

from bot.telegram.words import NOT_YOURS, PRESSES
from core.reply import Choice, Reply
from tests.bot.telegram.served import Served
from tests.bot.telegram.test_telegram_people import invited
from tests.standin import StandIn

QUESTION = Reply(("Which doe?",), (Choice("14", "14 weighed 8-2"), Choice("none", "nothing")))

#: What somebody may put into a press who writes their own client.
MADE_UP = ["14 weighed 8-2", "doe 14 died", "undo", "x" * 64, "' OR 1=1 --", "%", "\u0000", "1", " "]


def key_of(message: dict[str, Any], label: str) -> str:
    """What the button of that label carries."""
    rows = message["reply_markup"]["inline_keyboard"]
    return next(str(button["callback_data"]) for row in rows for button in row if button["text"] == label)


def forge(standin: StandIn, who: str, message: dict[str, Any], data: str) -> dict[str, Any]:
    """A press that carries any data, as under that message; what the window over it says."""
    before = len(standin.calls("answerCallbackQuery"))
    with standin.world.turn:
        query = {"id": standin.world.new_query_id(), "from": standin.person(who), "message": message, "chat_instance": "1", "data": data}
        standin.world.queue("callback_query", query)
    return dict(standin.wait_calls("answerCallbackQuery", count=before + 1)[before].params)


@pytest.mark.parametrize("data", MADE_UP)
def test_a_made_up_button_does_nothing(barn: Served, standin: StandIn, data: str) -> None:
    """Not even one that says what a real one means: only the book knows what a key says."""
    question = barn.send("Ann", QUESTION)
    before = barn.notes()
    assert forge(standin, "Ann", question, data)["text"] == PRESSES["unknown"]
    assert barn.notes() == before


def test_a_button_tells_nothing_of_what_it_does(barn: Served) -> None:
    """No words of the note and no number that can be counted on; no two alike."""
    keys = {key_of(barn.send("Ann", QUESTION), "14") for _ in range(5)}
    assert len(keys) == 5
    assert all(len(key) >= 16 and "weighed" not in key for key in keys)


def test_a_button_of_another_chat_is_refused(barn: Served, standin: StandIn) -> None:
    """A helper who came by the key of a question that was asked in the owner's own chat."""
    barn.ask("Bo", invited(barn, "helper"))
    question = barn.send("Ann", QUESTION)
    mine = barn.send("Bo", Reply(("Hello.",)))
    before = barn.notes()
    assert forge(standin, "Bo", mine, key_of(question, "14"))["text"] == NOT_YOURS
    assert barn.notes() == before
    assert forge(standin, "Ann", question, key_of(question, "14"))["text"] == "14"


def test_a_button_in_a_group_is_for_whoever_was_answered(barn: Served, standin: StandIn) -> None:
    """Nobody else takes a note back by it, but anybody by words; a reminder is for all."""
    barn.ask("Bo", invited(barn, "helper"))
    group = standin.group("Barn", "Ann", "Bo")["id"]
    answer = barn.reply(standin.say("Ann", "@barn_notes_bot 14 weighed 8-2", chat="Barn"))
    assert forge(standin, "Bo", answer, key_of(answer, "Undo"))["text"] == PRESSES["not_yours"]
    assert barn.ask("Bo", "undo", chat="Barn", reply_to=answer) == "Taken back: Doe 14: 8 lb 2 oz."
    answer = barn.reply(standin.say("Bo", "@barn_notes_bot 14 weighed 8-3", chat="Barn"))
    assert forge(standin, "Bo", answer, key_of(answer, "Undo"))["text"] == "Undo"
    reminder = barn.send("Ann", QUESTION, chat=group)
    assert forge(standin, "Bo", reminder, key_of(reminder, "none"))["text"] == "none"


def test_a_press_is_not_heard_again(barn: Served, standin: StandIn) -> None:
    """Neither that button nor its neighbours, however often they are sent."""
    question = barn.send("Ann", QUESTION)
    assert forge(standin, "Ann", question, key_of(question, "14"))["text"] == "14"
    standin.wait_calls("editMessageReplyMarkup")
    before = barn.notes()
    said = [forge(standin, "Ann", question, key_of(question, label))["text"] for label in ("14", "none", "14", "14")]
    assert said == [PRESSES["used"]] * 4
    assert barn.notes() == before
    assert before.count("14 weighed 8-2") == 1


def test_a_button_of_somebody_removed_is_dead(barn: Served, standin: StandIn) -> None:
    """They are a stranger now, in their own chat too."""
    barn.ask("Bo", invited(barn, "helper"))
    question = barn.send("Bo", QUESTION)
    barn.ask("Ann", "remove Bo from the people")
    before = barn.notes()
    assert forge(standin, "Bo", question, key_of(question, "14"))["text"] == NOT_YOURS
    assert barn.notes() == before
