"""Every transcript of this folder, heard by the domain: the whole answer to each message, and what was recorded."""

from __future__ import annotations

from pathlib import Path

import pytest

from core.notes.as_notes import TALK, export_notes
from core.notes.layout.dated_lines import DatedLine, dated_lines
from core.notes.listen import listen, printed
from core.notes.replay import book
from core.problem import WHY
from tests.conversations.heard import answering, echo, farm, hear
from tests.conversations.transcript import FARM, transcripts, turns

CODES_ASKED = {turn.why for path in transcripts() for turn in turns(path)} - {None}


@pytest.mark.parametrize("path", transcripts(), ids=lambda path: path.stem)
def test_the_conversation_goes_as_written(path: Path) -> None:
    """Each answer word by word, each choice, each question's reason, each recorded kind."""
    expected = turns(path)
    for turn, heard in zip(expected, hear(expected, answering(path)), strict=True):
        where = f"{path.name}:{turn.line} {turn.text!r}"
        asked = heard.note.ask.why if heard.note.ask else None
        assert turn.same_reply(list(heard.reply.lines)), f"{where} was answered:\n" + heard.reply.text
        assert [choice.label for choice in heard.reply.choices] == turn.choices, where
        assert asked == turn.why, where
        if turn.kinds is not None:
            assert [fact.kind for fact in printed(heard.note).facts] == turn.kinds, where


@pytest.mark.parametrize("path", transcripts(), ids=lambda path: path.stem)
def test_what_it_left_on_the_book_reads_back(path: Path) -> None:
    """Confirmed, corrected, put off or answered: written out as notes, it gives the same facts and the same herd."""
    kept = hear(turns(path))[-1].book
    facts = [entry.fact for _, entry in kept.happened() if entry.fact.kind not in TALK]
    again = book(farm())
    for line, fact in zip(dated_lines("\n".join(export_notes(kept))), facts, strict=True):
        assert isinstance(line, DatedLine)
        heard = listen(again, line.message(FARM, "me"), echo)
        assert heard.note.facts == (fact,), line.text
        again = heard.book
    assert again.herd == kept.herd


def test_every_reason_to_ask_has_a_transcript() -> None:
    """The contract's codes, all of them."""
    assert set(WHY) <= CODES_ASKED
