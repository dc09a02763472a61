"""Every transcript of this folder, heard by the domain: the whole answer to each message, and what was recorded."""

from __future__ import annotations

from pathlib import Path

import pytest

from core.notes.listen import printed
from core.problem import WHY
from tests.conversations.heard import hear
from tests.conversations.transcript import transcripts, turns

CODES_ASKED = {turn.why for path in transcripts() for turn in turns(path)} - {None}


@pytest.mark.parametrize("path", transcripts(), ids=lambda path: path.stem)
def test_the_conversation_goes_as_written(path: Path) -> None:
    """Each answer word by word, each choice, each question's reason, each recorded kind."""
    expected = turns(path)
    for turn, heard in zip(expected, hear(expected), strict=True):
        where = f"{path.name}:{turn.line} {turn.text!r}"
        asked = heard.note.ask.why if heard.note.ask else None
        assert turn.same_reply(list(heard.reply.lines)), f"{where} was answered:\n" + heard.reply.text
        assert [choice.label for choice in heard.reply.choices] == turn.choices, where
        assert asked == turn.why, where
        if turn.kinds is not None:
            assert [fact.kind for fact in printed(heard.note).facts] == turn.kinds, where


def test_every_reason_to_ask_has_a_transcript() -> None:
    """The contract's codes, all of them."""
    assert set(WHY) <= CODES_ASKED
