"""Spaces in the wrong place."""

from __future__ import annotations

import pytest

from core.notes.grammar import LEXICON
from core.notes.slots.stray_space import put_back, run_together
from core.notes.slots.tokens import tokens


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("las tnight", "last night"),
        ("fros tlast", "frost last"),
        ("inw ith", "in with"),
        ("kin dled", "kindled"),
        ("last night", "last night"),
        ("zorro kits", "zorro kits"),
        ("moss kitz", "moss kitz"),
        ("last 8", "last 8"),
        ("qwx zzv", "qwx zzv"),
        ("kitz", "kitz"),
    ],
)
def test_a_letter_goes_back_to_its_word(typed: str, meant: str) -> None:
    """Only where both become words that are known, and no name is touched."""
    found = tokens(typed)
    assert put_back(found, 0, LEXICON, {"moss"}) == (typed != meant)
    assert " ".join(token.key for token in found) == meant


@pytest.mark.parametrize(
    ("typed", "meant"),
    [
        ("lastnight", "last night"),
        ("thismorning", "this morning"),
        ("awhite", "a white"),
        ("theqwx", "theqwx"),
        ("aqwx", "aqwx"),
        ("thes", "thes"),
    ],
)
def test_a_word_run_together_is_parted(typed: str, meant: str) -> None:
    """A small word and a known one without a space; a word that is neither stays whole."""
    found = tokens(typed)
    run_together(found, 0, LEXICON)
    assert " ".join(token.key for token in found) == meant
