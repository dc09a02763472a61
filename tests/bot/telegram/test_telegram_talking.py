"""A person and the bot, over real HTTP."""

from __future__ import annotations

from bot.telegram.words import COMMANDS, NOT_YOURS, ONLY_TEXT, PRESSES
from core.reply import Choice, Reply
from tests.bot.telegram.served import Served, opened_notes
from tests.standin import StandIn

QUESTION = Reply(("Which weight?",), (Choice("14", "14 weighed 8-2"), Choice("none", "nothing weighed")))


def test_a_note_is_answered(barn: Served, standin: StandIn) -> None:
    """The answer echoes what was understood, stands under the note, and the note is in the journal."""
    note = standin.say("Ann", "14 weighed 8-2")
    answer = standin.wait_answer(note)
    assert "8 lb 2 oz" in answer["text"]
    assert answer["reply_to_message"]["text"] == "14 weighed 8-2"
    assert barn.notes()[-1] == "14 weighed 8-2"


def test_notes_of_a_chat_are_answered_in_order(barn: Served, standin: StandIn) -> None:
    """However fast they come."""
    said = [standin.say("Ann", f"14 weighed 8-{ounces}") for ounces in range(1, 12)]
    standin.wait_answer("Ann", after=said[-1]["message_id"])
    standin.wait_calls("sendMessage", count=3 + len(said))
    answers = standin.answers(said[0])
    assert [answer["reply_to_message"]["message_id"] for answer in answers] == [note["message_id"] for note in said]


def test_a_stranger_is_refused_and_nothing_is_recorded(barn: Served, standin: StandIn) -> None:
    """They get one polite line, and their words are in no journal."""
    before = barn.notes()
    assert "private" in barn.ask("Eve", "14 weighed 8-2")
    assert "private" in barn.ask("Eve", "AAAA-BBBB-CCCC")
    assert barn.notes() == before
    assert not any("AAAA-BBBB" in raw for raw in inbox(barn))


def test_the_set_up_code_serves_once(served: Served) -> None:
    """The first person who sends it owns the book; for the next it is no code."""
    code = served.app.setup_code(served.now())
    assert code is not None
    assert "Welcome" in served.ask("Ann", f"/start {code.lower()}")
    assert "private" in served.ask("Eve", code)
    assert [(member.name, member.role) for member in served.app.members()] == [("Ann", "owner")]
    assert served.app.setup_code(served.now()) is None


def test_the_code_is_in_no_journal(served: Served) -> None:
    """It is a key, not a note."""
    served.owner()
    assert served.notes() == []
    assert inbox(served) == ["{}"]


def test_an_edited_message_is_heard_again(barn: Served, standin: StandIn) -> None:
    """What it said first no longer counts; the answer tells the new reading. Two edits in one second are two."""
    note = standin.say("Ann", "14 weighed 8-2")
    first = standin.wait_answer(note)
    standin.edit(note, "14 weighed 8-4")
    second = standin.wait_answer("Ann", after=first["message_id"])
    assert "8 lb 4 oz" in second["text"]
    standin.edit(note, "14 weighed 8-6")
    assert "8 lb 6 oz" in standin.wait_answer("Ann", after=second["message_id"])["text"]
    assert [kept.text for kept in opened_notes(barn.book)][-3:] == ["14 weighed 8-2", "14 weighed 8-4", "14 weighed 8-6"]
    assert barn.app._hearing.book().herd.animals["14"].weights[-1].grams == 3799


def test_a_button_says_its_words(barn: Served, standin: StandIn) -> None:
    """Pressing a choice is heard like typing it, ends the waiting sign, and takes the buttons away."""
    question = barn.send("Ann", QUESTION)
    rows = question["reply_markup"]["inline_keyboard"]
    assert [[button["text"] for button in row] for row in rows] == [["14", "none"]]
    assert all(len(button["callback_data"].encode()) <= 64 for row in rows for button in row)
    standin.press("Ann", question, "14")
    assert "8 lb 2 oz" in standin.wait_answer("Ann", after=question["message_id"])["text"]
    assert standin.wait_calls("answerCallbackQuery")[0].params["text"] == "14"
    standin.wait_calls("editMessageReplyMarkup")
    assert barn.notes()[-1] == "14 weighed 8-2"


def test_a_button_serves_once(barn: Served, standin: StandIn) -> None:
    """A second press, before the buttons are gone, is told that the question is answered."""
    question = barn.send("Ann", QUESTION)
    standin.fail("editMessageReplyMarkup", "refuse", code=400, text="Bad Request: message can't be edited")
    standin.press("Ann", question, "14")
    standin.wait_calls("editMessageReplyMarkup")
    standin.press("Ann", question, "none")
    assert standin.wait_calls("answerCallbackQuery", count=2)[1].params["text"] == PRESSES["used"]
    assert barn.notes()[-1] == "14 weighed 8-2"


def test_an_old_button_says_so(barn: Served, standin: StandIn) -> None:
    """After a month a question is asked anew rather than answered by its buttons."""
    question = barn.send("Ann", QUESTION)
    standin.world.pass_time(40 * 24 * 3600)
    standin.press("Ann", question, "14")
    assert standin.wait_calls("answerCallbackQuery")[0].params["text"] == PRESSES["expired"]


def test_a_press_that_the_service_forgot_still_counts(barn: Served, standin: StandIn) -> None:
    """The waiting sign has ended by itself; what was pressed is heard all the same."""
    question = barn.send("Ann", QUESTION)
    standin.press("Ann", question, "14")
    standin.expire_presses()
    assert "8 lb 2 oz" in standin.wait_answer("Ann", after=question["message_id"])["text"]


def test_a_stranger_can_press_nothing(barn: Served, standin: StandIn) -> None:
    """In a group everybody sees the buttons; only the farm's people can use them."""
    group = standin.group("Barn", "Ann", "Eve")
    question = barn.send("Ann", QUESTION, chat=group["id"])
    before = barn.notes()
    standin.press("Eve", question, "14")
    assert standin.wait_calls("answerCallbackQuery")[0].params["text"] == NOT_YOURS
    assert barn.notes() == before


def test_a_group_speaks_to_the_bot_by_name(barn: Served, standin: StandIn) -> None:
    """The name is no part of the note, and the answer goes to the group."""
    standin.group("Barn", "Ann")
    note = standin.say("Ann", "@barn_notes_bot 14 weighed 8-2", chat="Barn")
    assert "8 lb 2 oz" in standin.wait_answer(note)["text"]
    assert barn.notes()[-1] == "14 weighed 8-2"


def test_what_is_no_text_gets_a_plain_line(barn: Served, standin: StandIn) -> None:
    """A place can't be read; the words under a picture can."""
    place = standin.send_place("Ann")
    assert standin.wait_answer(place)["text"] == ONLY_TEXT
    picture = standin.send_file("Ann", "photo", b"\xff\xd8", caption="14 weighed 8-2")
    assert "8 lb 2 oz" in standin.wait_answer(picture)["text"]


def test_an_album_gets_one_line(barn: Served, standin: StandIn) -> None:
    """Things sent together are several messages for the service and one for a person."""
    for _ in range(3):
        last = standin.send_place("Ann", media_group_id="77")
    barn.ask("Ann", "14 weighed 8-2")
    assert [answer["text"] for answer in standin.answers("Ann", after=last["message_id"] - 3)].count(ONLY_TEXT) == 1


def test_commands_are_the_same_words(barn: Served, standin: StandIn) -> None:
    """/due is "due"; the menu shows the commands."""
    assert [(each["command"], each["description"]) for each in standin.world.commands[""]] == list(COMMANDS)
    for command, _ in (*COMMANDS, ("start", "")):
        typed = {"start": "help"}.get(command, command)
        assert barn.ask("Ann", f"/{command}") == barn.ask("Ann", typed)


def test_a_long_answer_comes_in_pieces(barn: Served, standin: StandIn) -> None:
    """Each below the limit, in order, the buttons under the last."""
    lines = tuple(f"{number} is a line of a long answer" for number in range(400))
    first = barn.send("Ann", Reply(lines, (Choice("Yes", "14 weighed 8-2"),)))
    piece, text = first, first["text"]
    while "\n399 is" not in text:
        piece = standin.wait_answer("Ann", after=piece["message_id"])
        text += "\n" + piece["text"]
    assert tuple(text.splitlines()) == lines
    assert "reply_markup" not in first
    assert piece["reply_markup"]["inline_keyboard"][0][0]["text"] == "Yes"


def test_long_labels_stand_below_each_other(barn: Served, standin: StandIn) -> None:
    """A phone is narrow."""
    choices = (Choice("Doe 14, nest box in", "14 weighed 8-2"), Choice("No", "no"))
    question = barn.send("Ann", Reply(("Which?",), choices))
    assert [len(row) for row in question["reply_markup"]["inline_keyboard"]] == [1, 1]


def inbox(barn: Served) -> list[str]:
    """What is kept of the updates."""
    with barn.app._engine.begin() as connection:
        return [row.raw for row in connection.exec_driver_sql("select raw from inbox")]
