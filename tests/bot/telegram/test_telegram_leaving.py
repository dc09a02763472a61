"""Deleting a farm from a chat: asked for, marked as leaving with a last archive, taken back; by an owner and in private only."""

from __future__ import annotations

from pathlib import Path

from core.app.leaving import WAITING
from core.app.members import OWNERS_ONLY
from core.app.taking_away import ONLY_IN_PRIVATE
from tests.bot.telegram.served import Served
from tests.bot.telegram.test_telegram_exports import file_of, parts, sent
from tests.bot.telegram.test_telegram_people import invited
from tests.standin import StandIn


def test_an_owner_asks_confirms_and_takes_it_back(barn: Served, standin: StandIn) -> None:
    """The seven days and the archive come with the confirming, not before; notes go on meanwhile; a button takes it back."""
    before = barn.notes()
    asked = sent(barn, standin, "Delete my farm!")
    assert barn.app.goes_at() is None
    standin.press("Ann", asked, "Yes, delete it")
    marked = standin.wait_answer("Ann", after=asked["message_id"])
    assert barn.app.goes_at() == barn.now() + WAITING
    (laid,) = Path(f"{barn.book}.last-archives").iterdir()
    assert dict(parts(laid.read_bytes())) == dict(parts(file_of(standin, marked)))
    assert f"lies on the bot's machine as {laid.name}" in marked["caption"]
    assert "may be deleted from" in marked["caption"]
    assert barn.notes() == before
    noted = sent(barn, standin, "14 weighed 4-6")
    assert barn.notes() == [*before, "14 weighed 4-6"]
    standin.press("Ann", marked, "Keep my farm")
    assert standin.wait_answer("Ann", after=noted["message_id"])["text"] == "The farm stays."
    assert barn.app.goes_at() is None


def test_nobody_else_and_nowhere_else(barn: Served, standin: StandIn) -> None:
    """Helpers, lookers and groups read one line, the farm is as it was, and no archive is made."""
    barn.ask("Bo", invited(barn, "helper"))
    barn.ask("Lu", invited(barn, "looker"))
    for person in ("Bo", "Lu"):
        for words in ("delete my farm", "yes, delete my farm", "keep my farm"):
            assert barn.ask(person, words) == OWNERS_ONLY
    standin.group("Barn", "Ann")
    assert standin.wait_answer(standin.say("Ann", "/delete everything", chat="Barn"))["text"] == ONLY_IN_PRIVATE
    assert barn.app.goes_at() is None
    assert not Path(f"{barn.book}.last-archives").exists()
    assert barn.notes() == ["new doe 14", "new buck 3"]
