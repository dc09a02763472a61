"""How long the bot remembers what was said, and when words are too like what was said before."""

from __future__ import annotations

from typing import Final

from core.handbook.figure import Figure

DUPLICATE_MINUTES: Final = Figure(15, "minutes", 5, 30, "ours", "the same facts again this soon are one note sent twice")
SUBJECT_MINUTES: Final = Figure(90, "minutes", 30, 180, "ours", "the animal last spoken of stays the subject")
ANSWER_HOURS: Final = Figure(24, "hours", 1, 72, "ours", "a question older than a day is no longer what a bare answer means")
LATER_TODAY_HOURS: Final = Figure(
    3, "hours", 1, 6, "ours", "a reminder put off to later today comes again after so long, or when the quiet hours begin"
)
SLIP_NAME_LETTERS: Final = Figure(4, "letters", 4, 6, "ours", "names this long may carry one slip")
CHOICES_AT_MOST: Final = Figure(5, "choices", 3, 8, "ours", "what fits under a message")
SCORE_HIGHEST: Final = Figure(5, "points", 5, 10, "ours", "type, fur, colour, size")
