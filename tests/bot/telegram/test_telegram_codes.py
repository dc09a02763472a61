"""The code on a cage card: a phone is pointed at it, start is pressed, and the card comes."""

from __future__ import annotations

from bot.papers.qr import link
from tests.bot.telegram.served import Served

BOT = "barn_notes_bot"


def start(tag: str) -> str:
    """What the service sends for the person who follows the code of that tag."""
    return "/start " + str(link(BOT, tag)).partition("start=")[2]


def test_a_code_opens_the_card(barn: Served) -> None:
    """Of its animal, with large letters or small."""
    barn.ask("Ann", "new doe R9 named Clover mini rex castor born 3/4/2025")
    assert "Clover" in barn.ask("Ann", start("R9"))
    assert "Clover" in barn.ask("Ann", start("r9"))


def test_a_stranger_with_a_card_learns_nothing(barn: Served) -> None:
    """The link takes them to the bot, and the bot turns them away."""
    before = barn.notes()
    barn.ask("Ann", "new doe R9 named Clover mini rex castor born 3/4/2025")
    told = barn.ask("Eve", start("R9"))
    assert "private" in told
    assert "Clover" not in told
    assert len(barn.notes()) == len(before) + 1
