"""What shells rely on: kept before confirmed, answered once, buttons spent with what they lead to, and strangers refused."""

from __future__ import annotations

from datetime import datetime, timedelta

import pytest

from core.app import Message, ReplyTo
from core.app.book import App
from core.app.post import PARKED
from core.reply import Attached, Choice, Reply
from core.store import intake, people
from core.store.intake import Update
from core.store.outgoing import Outgoing
from core.store.people import Member
from tests.core.app.conftest import AT, Say

ANN = Member("telegram:1", "Ann", "")


def come(app: App, number: int, chat: str = "c") -> Update:
    """An update taken in, and handed out."""
    app.take_updates("bot", [(number, chat, '{"update_id": 1}')])
    update = app.next_update("w", AT)
    assert update is not None
    return update


def waiting(app: App, now: datetime = AT) -> list[Outgoing]:
    """What waits in the outbox, sent and marked."""
    found = []
    while (out := app.claim_outgoing("w", now)) is not None:
        found.append(out)
        app.mark_sent(out, f"m{out.id}")
    return found


def test_updates_are_kept_once(app: App) -> None:
    """Sent again after a lost confirmation, they are known."""
    assert app.take_updates("bot", [(1, "c", "{}"), (2, "c", "{}")]) == 2
    assert app.take_updates("bot", [(2, "c", "{}"), (3, "c", "{}")]) == 1


def test_a_message_is_answered_through_the_outbox(app: App, small_farm: Say) -> None:
    """Note, answer and the update's end are one: the answer names the message that it answers."""
    update = come(app, 1)
    heard = app.hear_update(update, Message("14 kindled 8, 2 dead", AT + timedelta(days=31), "ann", "c", "9"), AT)
    (out,) = waiting(app)
    assert out.payload["lines"] == list(heard.reply.lines)
    assert out.payload["answers"] == "9"
    assert app.next_update("w", AT) is None
    assert app.status()["inbox"] == {"done": 1}
    assert app.status()["chats"] == 1


def test_a_message_redelivered_is_answered_once(app: App, small_farm: Say) -> None:
    """A bot that was registered anew numbers its updates differently: the message is the same."""
    message = Message("bred 14 to 3", AT, "ann", "c", "9")
    for number in (1, 500):
        app.hear_update(come(app, number), message, AT)
    assert len(waiting(app)) == 1


def test_the_choices_of_a_question_are_buttons(app: App, small_farm: Say) -> None:
    """Each has a short key; pressing it says its words, and the question is settled."""
    app.send("k", "c", Reply(("Which?",), (Choice("Doe 14", "14"), Choice("Buck 3", "3"))), AT)
    (out,) = waiting(app)
    first, second = out.payload["choices"]
    assert (first["label"], len(first["key"]) <= 64) == ("Doe 14", True)
    pressed = app.press(second["key"], "c", "bo", AT)
    assert (pressed.state, pressed.says) == ("ok", "3")
    app.hear_update(come(app, 1), Message(pressed.says, AT, "bo", "c", "press:1"), AT, button=second["key"])
    assert app.press(first["key"], "c", "bo", AT).state == "used"


def test_a_single_button_can_be_offered(app: App) -> None:
    """For a message that a shell makes itself."""
    key = app.offer("c", Choice("Yes", "yes"), "b", AT)
    assert app.press(key, "c", "ann", AT).says == "yes"


def test_an_update_that_is_no_note(app: App) -> None:
    """It is answered, in its chat or another, or passed over; and done."""
    app.answer_update(come(app, 1), Reply(("Help is on its way.",)), AT)
    app.answer_update(come(app, 2), Reply(("Elsewhere.",)), AT, chat="d")
    app.answer_update(come(app, 3), None, AT)
    assert [(out.chat, out.payload["lines"]) for out in waiting(app)] == [("c", ["Help is on its way."]), ("d", ["Elsewhere."])]
    assert app.status()["inbox"] == {"done": 3}


def test_the_code_makes_an_owner_once(app: App) -> None:
    """The first to send it is welcomed, the next one is refused, and no new code is shown."""
    code = app.setup_code(AT)
    assert code is not None
    assert app.member("telegram:1") is None
    welcome = app.admit_update(come(app, 1), ANN, code, AT)
    refused = app.admit_update(come(app, 2, "d"), Member("telegram:2", "Bo", ""), code, AT)
    assert "Welcome" in welcome.text
    assert "private" in refused.text
    assert app.members() == (Member("telegram:1", "Ann", "owner"),)
    assert app.member("telegram:2") is None
    assert app.setup_code(AT) is None
    assert app.setup_code(AT, anew=True) is not None
    assert [out.chat for out in waiting(app)] == ["c", "d"]
    assert app.status()["chats"] == 1


def test_an_update_that_fails_thrice_is_set_aside(app: App) -> None:
    """The person is told, and what came after it goes on."""
    app.take_updates("bot", [(1, "c", "{}"), (2, "c", "{}")])
    outcomes = []
    for _ in range(intake.TRIES):
        update = app.next_update("w", AT)
        assert update is not None
        outcomes.append(app.failed(update, AT))
    assert outcomes == [False, False, True]
    following = app.next_update("w", AT)
    assert following is not None
    assert following.update_id == 2
    assert [out.payload["lines"] for out in waiting(app)] == [list(PARKED.lines)]


def test_an_update_that_keeps_killing_the_program_is_set_aside(app: App) -> None:
    """It never fails in words; being handed out again and again tells."""
    app.take_updates("bot", [(1, "c", "{}"), (2, "c", "{}")])
    for _ in range(intake.HANDED_OUT):
        update = app.next_update("w", AT)
        assert update is not None
        assert update.update_id == 1
        app.begin_work("w")
    following = app.next_update("w", AT)
    assert following is not None
    assert following.update_id == 2
    assert app.status()["inbox"] == {"parked": 1, "pending": 1}


def test_a_message_that_could_not_be_sent(app: App) -> None:
    """It is tried again at its time; one that never can be is dropped, and a gone chat is left alone."""
    app.send("k", "c", Reply(("Hello.",)), AT)
    out = app.claim_outgoing("w", AT)
    assert out is not None
    app.retry_at(out, AT + timedelta(seconds=5))
    assert app.claim_outgoing("w", AT) is None
    again = app.claim_outgoing("w", AT + timedelta(seconds=5))
    assert again is not None
    assert again.tries == 1
    app.drop(again)
    assert app.status()["outbox"] == {"dropped": 1}


def test_a_chat_that_blocked_the_bot(app: App, small_farm: Say) -> None:
    """No reminders go there until somebody writes from it again."""
    app.hear_update(come(app, 1), Message("bred 14 to 3", AT, "ann", "c", "9"), AT)
    out = app.claim_outgoing("w", AT)
    assert out is not None
    app.drop(out, chat_gone=True)
    assert app.status()["chats"] == 0
    app.hear_update(come(app, 2), Message("14 looks rough", AT, "ann", "c", "10"), AT)
    assert app.status()["chats"] == 1


@pytest.mark.parametrize("number", ["m1", "unknown"])
def test_an_answer_to_a_message_that_reminds_of_nothing(app: App, number: str) -> None:
    """It answers no chore."""
    app.send("k", "c", Reply(("Hello.",)), AT)
    waiting(app)
    assert app.reply_to("c", number) is None


def test_an_answer_to_a_message_that_is_known_by_its_words(app: App, small_farm: Say) -> None:
    """The bot died between sending its answer and writing the number down: what is said in reply is about that note all the same."""
    app.hear_update(come(app, 1), Message("weighed 14 4-6", AT, "ann", "c", "9"), AT)
    app.hear_update(come(app, 2), Message("14 bit me", AT + timedelta(minutes=1), "ann", "c", "10"), AT)
    said = "\n".join(app.claim_outgoing("w", AT).payload["lines"])  # type: ignore[union-attr] # it is there
    about = app.reply_to("c", "unknown", said)
    assert about is not None
    app.hear_update(come(app, 3), Message("undo", AT + timedelta(minutes=2), "ann", "c", "11", reply_to=about), AT)
    kinds = [entry.fact.kind for entry in app._hearing.book().standing()]
    assert "temper" in kinds
    assert "weighed" not in kinds
    assert app.reply_to("c", "unknown", "Something that nobody said.") is None


def test_buttons_of_the_other_chores_stay(app: App, small_farm: Say) -> None:
    """One letter reminds of two: the buttons of the one that is done go, those of the other can still be pressed."""
    for number, what in ((1, "trim nails on 14"), (2, "order hay")):
        app.hear_update(come(app, number), Message(f"remind me tomorrow to {what}", AT, "ann", "c", f"n{number}"), AT)
    app.tick(AT + timedelta(days=1))
    *_, out = waiting(app, AT + timedelta(days=1))
    before = app.buttons_left("c", f"m{out.id}")
    later = AT + timedelta(days=1, minutes=5)
    pressed = app.press(before[0]["key"], "c", ANN.account, later)
    app.hear_update(
        come(app, 3), Message(pressed.says, later, "ann", "c", "press:1", reply_to=pressed.reply_to), later, button=before[0]["key"]
    )
    after = app.buttons_left("c", f"m{out.id}")
    assert len(before) == 2 * len(after) > 0
    assert app.buttons_left("c", "unknown") == []


def test_an_answer_to_a_reminder(app: App, small_farm: Say) -> None:
    """The chore that was reminded of is what it answers, by its key."""
    app.hear_update(come(app, 1), Message("remind me tomorrow to trim nails on 14", AT, "ann", "c", "9"), AT)
    app.tick(AT + timedelta(days=1))
    *_, out = waiting(app, AT + timedelta(days=1))
    answers = app.reply_to("c", f"m{out.id}")
    assert isinstance(answers, ReplyTo)
    assert answers.chore == "custom"
    assert answers.key is not None


def test_a_letter_keeps_what_its_files_are_to_show(app: App) -> None:
    """Not the files: they are made when it goes out, as the book stood when it was put there."""
    file = Attached("picture", "growing", "31", "31.png", "31 grows well.")
    assert app.send("k", "c", Reply(("31 grows well.",), attached=(file,)), AT)
    (out,) = waiting(app)
    assert [Attached(**told) for told in out.payload["attached"]] == [file]
    assert datetime.fromisoformat(out.payload["at"]) == AT


def test_a_group_with_another_number_gets_the_reminders(app: App, small_farm: Say) -> None:
    """One that the farm never wrote to is still no chat of its own."""
    app.hear_update(come(app, 1, "g"), Message("14 weighed 8-2", AT, "ann", "g", "9"), AT)
    app.chat_moved(come(app, 2, "g"), "-100g")
    app.chat_moved(come(app, 3, "other"), "-100other")
    with app._engine.begin() as connection:
        assert people.active_chats(connection, 1) == ("-100g",)
