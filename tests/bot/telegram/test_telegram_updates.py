"""What an update says."""

from __future__ import annotations

import json
from datetime import UTC, datetime
from typing import Any

from bot.telegram.updates import Update, chat_of, read

ANN = {"id": 1001, "is_bot": False, "first_name": "Ann", "last_name": "Hale"}
ROOM = {"id": 1001, "type": "private", "first_name": "Ann"}
AT = 1772608500
MESSAGE = {"message_id": 7, "date": AT, "chat": ROOM, "from": ANN}


def told(**body: Any) -> Update | None:
    return read(json.dumps({"update_id": 77, **body}))


def test_a_text() -> None:
    """Who, where, when, what."""
    update = told(message=MESSAGE | {"text": "doe 14 kindled 8"})
    assert update == Update("telegram:1001", "Ann Hale", "1001", "7", datetime.fromtimestamp(AT, UTC), text="doe 14 kindled 8")


def test_an_edit() -> None:
    """The same message, told apart by the number of the update."""
    update = told(edited_message=MESSAGE | {"text": "doe 14 kindled 9", "edit_date": AT + 5})
    assert update is not None
    assert (update.number, update.edit, update.text) == ("7", 77, "doe 14 kindled 9")


def test_an_answer() -> None:
    """It names the message that it answers."""
    update = told(message=MESSAGE | {"text": "done", "reply_to_message": MESSAGE | {"message_id": 3}})
    assert update is not None
    assert update.answers == "3"


def test_a_picture_with_words_is_its_words() -> None:
    """What stands under a picture is a note like any other."""
    update = told(message=MESSAGE | {"photo": [], "caption": "31 4-6", "media_group_id": "9"})
    assert update is not None
    assert (update.text, update.sent, update.album) == ("31 4-6", "photo", "9")


def test_a_voice_note_has_no_text() -> None:
    """But is something that a person sent."""
    update = told(message=MESSAGE | {"voice": {}})
    assert update is not None
    assert (update.text, update.sent) == (None, "voice")


def test_a_group_is_known_as_one() -> None:
    """By the kind of the chat."""
    update = told(message=MESSAGE | {"text": "14 missed", "chat": {"id": -5, "type": "group", "title": "Barn"}})
    assert update is not None
    assert (update.chat, update.group) == ("-5", True)


def test_a_button() -> None:
    """The press has a number of its own; the button's key is what was put there."""
    update = told(callback_query={"id": "4", "from": ANN, "message": MESSAGE, "data": "key", "chat_instance": "1"})
    assert update is not None
    assert (update.chat, update.number, update.press) == ("1001", "7", ("4", "key"))


def test_a_button_under_a_message_that_is_too_old_to_be_shown() -> None:
    """The service then tells the message's chat and number, and 0 for its date (Bot API, InaccessibleMessage)."""
    update = told(callback_query={"id": "4", "from": ANN, "message": MESSAGE | {"date": 0}, "data": "key", "chat_instance": "1"})
    assert update is not None
    assert update.press == ("4", "key")


def test_what_no_person_said_is_passed_over() -> None:
    """The service's own talk, other bots, presses without a message, and kinds of update that nobody asked for."""
    assert told(message=MESSAGE | {"pinned_message": MESSAGE}) is None
    assert told(message=MESSAGE | {"text": "beep", "from": ANN | {"is_bot": True}}) is None
    assert told(channel_post={"message_id": 1, "date": AT, "chat": ROOM, "text": "x"}) is None
    assert told(callback_query={"id": "4", "from": ANN, "chat_instance": "1", "data": "key"}) is None
    assert told(callback_query={"id": "4", "from": ANN, "message": MESSAGE, "chat_instance": "1", "game_short_name": "x"}) is None


def test_the_chat_of_an_update() -> None:
    """Updates are worked off in each chat's order; what has no chat belongs to its person, else to nobody."""
    assert chat_of({"message": MESSAGE}) == chat_of({"callback_query": {"from": ANN, "message": MESSAGE}}) == "1001"
    assert chat_of({"callback_query": {"from": ANN | {"id": 8}}}) == "8"
    assert chat_of({"poll": {}}) == ""


def test_a_person_without_a_name_is_somebody() -> None:
    """A last name and a nickname may be missing."""
    for user, called in (({"username": "ann"}, "ann"), ({}, "somebody")):
        update = told(message=MESSAGE | {"text": "x", "from": {"id": 1, "is_bot": False, **user}})
        assert update is not None
        assert update.name == called
