"""Answers on a screen: no word is cut in two."""

from __future__ import annotations

from bot.terminal.width import broken, on_screen

LONG = "Doe 14: 8 born, 6 alive, 2 dead; check the nest tomorrow and take the nest box out on Sunday.\nShort."


def test_a_long_line_breaks_between_words() -> None:
    """What goes on is set in; short lines stay, and nothing is lost."""
    shown = broken(LONG, 50)
    assert shown == "Doe 14: 8 born, 6 alive, 2 dead; check the nest\n  tomorrow and take the nest box out on Sunday.\nShort."
    assert broken("  a) " + "word " * 20 + "end", 10).split() == ["a)", *["word"] * 20, "end"]


def test_nothing_is_broken_that_goes_elsewhere() -> None:
    """The tests' own output is no screen."""
    assert on_screen(LONG) == LONG
