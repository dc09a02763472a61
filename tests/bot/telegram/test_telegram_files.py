"""Pictures and papers on their way to a chat."""

from __future__ import annotations

from typing import Any

import pytest

from bot import attachments
from bot.telegram.parcels import LONGEST_CAPTION, Part, parts_of
from bot.telegram.sender import CANT_MAKE, TOO_LARGE
from core.reply import Attached, Choice, Reply
from tests.bot import makers
from tests.bot.telegram.served import Served
from tests.standin import StandIn


@pytest.fixture(autouse=True)
def _makers(monkeypatch: pytest.MonkeyPatch) -> None:
    """Somebody who makes pictures and papers."""
    monkeypatch.setitem(attachments.MAKERS, "picture", makers.PLACE)
    monkeypatch.setitem(attachments.MAKERS, "paper", makers.PLACE)


def reply(*attached: Attached, text: str = "14 grows well.") -> Reply:
    """A reply with these files and a button."""
    return Reply((text,), (Choice("Card", "card 14"),), attached)


def content_of(standin: StandIn, message: dict[str, Any]) -> bytes:
    """The file of a message, as the service keeps it."""
    told = message["photo"][-1] if "photo" in message else message["document"]
    return standin.world.files[told["file_id"]].content


def test_a_picture_comes_with_its_words_and_buttons(barn: Served, standin: StandIn) -> None:
    """One message: the words stand under the picture, and the button works."""
    shown = barn.send("Ann", reply(makers.attached()))
    assert shown["caption"] == "14 grows well."
    assert content_of(standin, shown) == makers.dot()
    standin.press("Ann", shown, "Card")
    assert "Doe 14" in standin.wait_answer("Ann", after=shown["message_id"])["text"]


def test_a_paper_comes_as_a_file_with_its_name(barn: Served, standin: StandIn) -> None:
    """So that it can be kept and printed."""
    shown = barn.send("Ann", reply(makers.attached(what="paper", name="cards.pdf")))
    assert shown["document"]["file_name"] == "cards.pdf"
    assert shown["caption"] == "14 grows well."


def test_several_files_follow_the_words(barn: Served, standin: StandIn) -> None:
    """Each with what it shows under it; the buttons stand under the last."""
    first = barn.send("Ann", reply(makers.attached(), makers.attached("15", alt="15 is slow.")))
    assert first["text"] == "14 grows well."
    second = standin.wait_answer("Ann", after=first["message_id"])
    third = standin.wait_answer("Ann", after=second["message_id"])
    assert [second["caption"], third["caption"]] == ["14 grows well.", "15 is slow."]
    assert "reply_markup" not in second
    assert "reply_markup" in third


def test_what_can_not_be_shown_is_said(barn: Served) -> None:
    """Nothing to show, a mistake of ours, a file too large: each in words, the reply before it."""
    for key, problem in (("none", makers.NONE), ("broken", CANT_MAKE), ("large", TOO_LARGE)):
        shown = barn.send("Ann", reply(makers.attached(key)))
        assert shown["text"] == f"14 grows well.\n{problem.text} {problem.remedy}"


def test_a_refused_picture_comes_as_a_file(barn: Served, standin: StandIn) -> None:
    """Its words go first and by themselves: they must arrive whatever is wrong with the file."""
    standin.fail("sendPhoto", "refuse", code=400, text="Bad Request: PHOTO_INVALID_DIMENSIONS")
    first = barn.send("Ann", reply(makers.attached()))
    assert first["text"] == "14 grows well."
    second = standin.wait_answer("Ann", after=first["message_id"])
    assert second["document"]["file_name"] == "growing-14.png"


def test_a_picture_is_sent_again_after_trouble(barn: Served, standin: StandIn) -> None:
    """It is drawn anew; it arrives once."""
    standin.fail("sendPhoto", "broken", times=2)
    shown = barn.send("Ann", reply(makers.attached()))
    assert content_of(standin, shown) == makers.dot()


def test_words_too_long_for_a_caption_go_first() -> None:
    """Nothing of them is lost; what stands under the file itself is cut where it ends."""
    told = {"what": "paper", "about": "sheet", "key": None, "name": "week.pdf", "alt": "A week. " * 200}
    text, file = parts_of({"lines": ["x" * (LONGEST_CAPTION + 1)], "attached": [told]}, bare=False)
    assert text == Part("x" * (LONGEST_CAPTION + 1))
    assert file.attached == Attached(**told)
    assert 0 < len(file.text) <= LONGEST_CAPTION


def test_letters_from_before_there_were_files_go_out() -> None:
    """An outbox outlives the program that filled it."""
    assert parts_of({"lines": ["14 kindled."]}, bare=False) == (Part("14 kindled."),)


def test_a_file_needs_no_words() -> None:
    """A picture without a description is still sent."""
    told = {"what": "photo", "about": "photo", "key": "1", "name": "1.jpg", "alt": ""}
    assert parts_of({"lines": [""], "attached": [told]}, bare=False) == (Part("", Attached(**told)),)
