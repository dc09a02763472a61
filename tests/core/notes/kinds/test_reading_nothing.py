"""A sentence without any word of a kind gives nothing of it."""

from __future__ import annotations

from types import ModuleType

import pytest

from core.notes.clauses.clause import Clause
from core.notes.clauses.scene import Scene
from core.notes.grammar import LEXICON, STATEMENT_KINDS
from core.notes.layout.text import cleaned
from core.notes.reading import Context
from core.notes.roster import herd_of
from core.notes.slots.animals import words_of
from core.notes.slots.itemise import Scan
from core.notes.slots.tokens import tokens
from tests.core.notes.kinds.reads import AT, ROSTER

SENTENCES = ["the barn looks tidy again", "Juno in the barn"]


def clause(text: str) -> Clause:
    """The one statement that a text makes on the sample farm."""
    herd = herd_of(ROSTER)
    scene = Scene(herd, words_of(herd), AT.date(), Context(), text)
    return Clause(Scan(tokens(cleaned(text)), scene.words, LEXICON).run(), scene)


@pytest.mark.parametrize("text", SENTENCES)
@pytest.mark.parametrize("kind", STATEMENT_KINDS, ids=[kind.__name__.rsplit(".", maxsplit=1)[-1] for kind in STATEMENT_KINDS])
def test_a_kind_takes_nothing_from_words_that_are_not_its_own(kind: ModuleType, text: str) -> None:
    """Neither a fact nor a question, nor a word used up."""
    statement = clause(text)
    kind.read(statement)
    assert statement.found == []
    assert statement.used == set()
