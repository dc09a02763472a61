"""The book written back as dated notes."""

from __future__ import annotations

from core.notes.as_notes import export_notes
from core.notes.listen import listen
from core.notes.reading import Ask, Draft, Message, Reading
from core.notes.replay import book
from tests.conversations.heard import echo, farm
from tests.core.notes.talking import NOW, Barn
from tests.farm import fact


def test_what_stands_is_written_in_the_order_it_happened() -> None:
    """Undone and corrected notes are left out, so are questions."""
    barn = Barn()
    for minutes, text in enumerate(["31 3-14", "32 4-1", "undo", "why 12", "14 kindled 7", "make that 8"]):
        barn.say(text, minutes=minutes)
    lines = list(export_notes(barn.book))
    assert [line[:10] for line in lines] == ["2026-11-25", "2026-11-25"]
    assert "31" in lines[0]
    assert "14 kindled 8" in lines[1]


def test_what_was_confirmed_says_so() -> None:
    """So that reading it back doesn't ask once more; lines of a file are taken even where the checks say no."""
    barn = Barn()
    barn.say("15 kindled 6")
    barn.say("yes", minutes=1)
    (line,) = export_notes(barn.book)
    assert line.endswith(", confirmed")
    again = Barn()
    again.say("15 kindled 6, confirmed")
    assert again.stands() == barn.stands()
    lined = Barn()
    lined.say("12 lost 9, confirmed", chat="replay")
    assert [each["count"] for each in lined.stands()] == [9]
    typed = Barn()
    typed.say("12 lost 9, confirmed")
    assert typed.stands() == []


def test_a_question_answered_beforehand_is_recorded() -> None:
    """The reader's own doubt too, where only a yes is missing."""
    draft = Draft("kit_count", {"doe": "12", "count": 9, "on": "2026-11-25"}, "confirm")
    heard = listen(book(farm()), Message("12 has 9, confirmed", NOW), echo, lambda *_: Reading((), Ask("confirm", "9?", (), draft)))
    assert heard.note.facts == (fact("kit_count", doe="12", count=9),)
    assert heard.note.ask is None
