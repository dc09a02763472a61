"""What was typed, without the chat's own signs."""

from __future__ import annotations

import re

import pytest

from bot.telegram.words import COMMANDS, PRESSES, TOAST_LETTERS, code, meant

BOT = "barn_notes_bot"


@pytest.mark.parametrize(
    ("typed", "note"),
    [
        ("doe 14 kindled 8", "doe 14 kindled 8"),
        ("  two lines\nas typed ", "  two lines\nas typed "),
        ("/due", "due"),
        ("/Due@barn_notes_bot", "due"),
        ("/start", "help"),
        ("/start card_14", "card 14"),
        ("/start@barn_notes_bot tag64_UjIyJg", "card R22&"),
        ("/start help", "help help"),
        ("/keep bucks", "keep bucks"),
        ("@barn_notes_bot doe 14 kindled 8", "doe 14 kindled 8"),
        ("@Barn_Notes_Bot, 14 missed", "14 missed"),
        ("mail me@barn_notes_bot.example", "mail me@barn_notes_bot.example"),
        ("31 4/6", "31 4/6"),
    ],
)
def test_a_command_is_its_word(typed: str, note: str) -> None:
    """A stroke and the bot's own name are no part of a note; all else stays as typed."""
    assert meant(typed, BOT) == note


@pytest.mark.parametrize("sent", ["ABCD-EFGH-JKMN", " ABCD-EFGH-JKMN ", "/start ABCD-EFGH-JKMN"])
def test_the_code_is_found(sent: str) -> None:
    """Typed alone, or sent by a link."""
    assert code(sent) == "ABCD-EFGH-JKMN"


def test_the_menu_is_one_that_the_service_takes() -> None:
    """Lower case, 1 to 32 letters; descriptions of 1 to 256 (Bot API, BotCommand)."""
    assert all(re.fullmatch("[a-z0-9_]{1,32}", word) and 1 <= len(shown) <= 256 for word, shown in COMMANDS)


def test_windows_over_buttons_are_short_enough() -> None:
    """At most 200 letters (Bot API, answerCallbackQuery)."""
    assert all(len(text) <= TOAST_LETTERS for text in PRESSES.values())
