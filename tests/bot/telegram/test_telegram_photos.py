"""Photos sent to the chat, and shown there again."""

from __future__ import annotations

from typing import Any

import pytest

from bot.telegram.updates import _photo
from bot.telegram.words import NO_LIST, PHOTO_TOO_LARGE
from core.app import Member
from core.app.photos import WHOSE
from core.store import people
from tests.bot.makers import dot
from tests.bot.telegram.served import Served
from tests.standin import StandIn


def content_of(standin: StandIn, message: dict[str, Any]) -> bytes:
    """The file of a message, as the service keeps it."""
    told = message["photo"][-1] if "photo" in message else message["document"]
    return standin.world.files[told["file_id"]].content


def test_a_photo_is_kept_and_shown(barn: Served, standin: StandIn) -> None:
    """Sent with a tag under it; the button under the answer brings it back as it was."""
    sent = standin.send_file("Ann", "photo", dot(), caption="14")
    answer = standin.wait_answer(sent)
    assert answer["text"] == "The photo is kept with doe 14."
    standin.press("Ann", answer, "Photos of 14")
    shown = standin.wait_answer("Ann", after=answer["message_id"])
    assert shown["caption"] == "Doe 14: 1 photo."
    assert content_of(standin, shown) == dot()


def test_a_picture_sent_as_a_file_is_a_photo(barn: Served, standin: StandIn) -> None:
    """Other files are none."""
    sent = standin.send_file("Ann", "document", dot(), name="x.png", mime_type="image/png", caption="14")
    assert standin.wait_answer(sent)["text"] == "The photo is kept with doe 14."
    other = standin.send_file("Ann", "document", b"%PDF", name="x.pdf", mime_type="application/pdf")
    assert standin.wait_answer(other)["text"] == NO_LIST


def test_an_album_is_answered_once(barn: Served, standin: StandIn) -> None:
    """The words under its first photo count for all."""
    first = standin.send_file("Ann", "photo", dot(), caption="14", media_group_id="77")
    standin.wait_answer(first)
    standin.send_file("Ann", "photo", b"second", media_group_id="77")
    barn.ask("Ann", "14 weighed 8-2")
    texts = [answer.get("text") for answer in standin.answers("Ann", after=first["message_id"])]
    assert texts.count("The photo is kept with doe 14.") == 1
    assert WHOSE not in texts
    assert barn.app.status()["photos"] == 2


def test_a_photo_of_nobody_asks(barn: Served, standin: StandIn) -> None:
    """Whose is it?"""
    assert standin.wait_answer(standin.send_file("Ann", "photo", dot()))["text"] == WHOSE


def test_a_photo_that_can_not_be_fetched_is_said(barn: Served, standin: StandIn) -> None:
    """The service gives out no large files."""
    large = standin.send_file("Ann", "document", b"0" * (21 * 1024 * 1024), name="x.png", mime_type="image/png", caption="14")
    assert standin.wait_answer(large)["text"] == PHOTO_TOO_LARGE


def test_a_photo_is_fetched_again_after_trouble(barn: Served, standin: StandIn) -> None:
    """The line to the service broke."""
    standin.fail("getFile", "broken", times=2)
    sent = standin.send_file("Ann", "photo", dot(), caption="14")
    assert standin.wait_answer(sent)["text"] == "The photo is kept with doe 14."


def test_who_may_only_ask_adds_no_photo(barn: Served, standin: StandIn) -> None:
    """The words under it are answered as any others."""
    with barn.app._engine.begin() as connection:
        people.add_member(connection, 1, Member(f"telegram:{standin.person('Bo')['id']}", "Bo", "looker"), barn.now())
    sent = standin.send_file("Bo", "photo", dot(), caption="card 14")
    assert "Doe 14" in standin.wait_answer(sent)["text"]
    assert barn.app.status()["photos"] == 0


@pytest.mark.parametrize(
    ("message", "found"),
    [
        ({"photo": [{"file_id": "a", "width": 90}, {"file_id": "b", "width": 1280}, {"file_id": "c", "width": 320}]}, ("b", "jpg")),
        ({"document": {"file_id": "d", "mime_type": "image/webp"}}, ("d", "webp")),
        ({"document": {"file_id": "d", "mime_type": "image/tiff"}}, None),
        ({"document": {"mime_type": "image/png"}}, None),
        ({"photo": []}, None),
        ({}, None),
    ],
)
def test_the_largest_size_is_fetched(message: dict[str, Any], found: tuple[str, str] | None) -> None:
    """Of a photo the service keeps several."""
    assert _photo(message) == found
