"""From text to the book and back, with the real reader: whatever is sent, undone, or written out and read again."""

from __future__ import annotations

import json
from datetime import timedelta
from functools import lru_cache
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.notes.as_notes import TALK, export_notes
from core.notes.layout.dated_lines import DatedLine, dated_lines
from core.notes.listen import listen
from core.notes.reading import Message, ReplyTo
from core.notes.replay import Book, book
from tests.conversations.heard import echo, farm
from tests.conversations.transcript import FARM
from tests.core.notes.talking import NOW

CORPUS = Path(__file__).parents[2] / "corpus"
GAP = timedelta(minutes=20)  # longer than what counts as the same note sent twice


@lru_cache(maxsize=1)
def texts() -> tuple[str, ...]:
    """The single notes of both files."""
    lines = [line for name in ("examples.jsonl", "notes_dev.jsonl") for line in (CORPUS / name).read_text(encoding="utf-8").split("\n")]
    return tuple(case["text"] for case in (json.loads(line) for line in lines if line.strip()) if "text" in case)


def sent(number: int, text: str, reply_to: ReplyTo | None = None) -> Message:
    return Message(text, NOW + number * GAP, "ann", "barn", str(number), 0, reply_to)


@lru_cache(maxsize=1)
def season() -> Book:
    """All notes told one after the other, sensible or not in that order."""
    kept = book(farm())
    for number, text in enumerate(texts()):
        kept = listen(kept, sent(number, text), echo).book
    return kept


def strange() -> st.SearchStrategy[str]:
    """Any text, and pieces of notes put together anyhow."""
    pieces = st.sampled_from(sorted({word for text in texts() for word in text.split()}))
    return st.one_of(st.text(max_size=30), st.lists(pieces, max_size=9).map(" ".join), st.sampled_from(texts()))


@given(st.lists(strange(), min_size=1, max_size=4), st.sampled_from(["kindling", "wean", "weigh", "custom", "nonsense", ""]))
def test_any_text_is_heard(said: list[str], chore: str) -> None:
    """Also as the answer to a reminder: never an error, and never silence."""
    kept = book(farm())
    for number, text in enumerate(said):
        reply_to = ReplyTo(chore, "14") if number == 1 else None
        heard = listen(kept, sent(number, text, reply_to), echo)
        assert heard.reply.lines
        kept = heard.book


@given(strange())
def test_undo_of_anything_restores_the_herd_before(text: str) -> None:
    """Unless the message itself took something back, or recorded nothing."""
    before = book(farm())
    heard = listen(before, sent(0, text), echo)
    if any(fact.kind not in TALK for fact in heard.note.facts):
        assert listen(heard.book, sent(1, "undo"), echo).herd == before.herd


def test_replaying_the_export_gives_an_equal_book() -> None:
    """The same facts stand, line by line, and they add up to the same herd."""
    kept = season()
    again = book(farm())
    wanted = [entry.fact for _, entry in kept.happened() if entry.fact.kind not in TALK]
    assert len(wanted) > len(texts()) / 3
    for line, fact in zip(dated_lines("\n".join(export_notes(kept))), wanted, strict=True):
        assert isinstance(line, DatedLine)
        heard = listen(again, line.message(FARM, "me"), echo)
        assert heard.note.facts == (fact,), line.text
        again = heard.book
    assert again.herd == kept.herd


@pytest.mark.parametrize("place", range(0, 60, 7))
def test_undoing_step_by_step_leads_back(place: int) -> None:
    """Told and undone, the book is as it was; told, undone and told again, as it was after."""
    number = len(texts()) + 1
    kept = season()
    heard = listen(kept, sent(number, texts()[place]), echo)
    if any(fact.kind not in TALK for fact in heard.note.facts):
        assert listen(heard.book, sent(number + 1, "undo"), echo).herd == kept.herd
