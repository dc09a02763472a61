"""What a message means beside the one before it: an animal spoken of, a fact put right."""

from __future__ import annotations

from typing import Any

import pytest

from core.app import reader
from core.app.reading import Reader
from core.notes.reading import Message, ReplyTo
from tests.core.notes.kinds.reads import AT, ROSTER, fact, read_after

TALKS: list[tuple[tuple[str, ...], dict[str, Any]]] = [
    (("14 looks good", "condition 3"), fact("condition", who="14", score=3.0)),
    (("31", "he died"), fact("died", who="31")),
    (("9 is sweet", "she missed"), fact("missed", doe="9")),
    (("22 looks good", "she is open"), fact("palpated", doe="22", result="open")),
    (("22 looks good", "she's open"), fact("palpated", doe="22", result="open")),
    (("14 looks rough", "is she due?"), fact("query", about="due", who="14")),
    (("14 looks rough", "how is she?"), fact("query", about="card", who="14")),
    (("12 looks rough", "lost 2 kits"), fact("kits_lost", doe="12", count=2)),
    (("sold 31 for 40", "no, $45"), fact("correct", set={"price": "45.00"})),
    (("moved 31 to B3", "no, B4"), fact("correct", set={"cage": "B4"})),
    (("moved 31 to cage B3", "make that cage B4"), fact("correct", set={"cage": "B4"})),
    (("14 kindled 8", "no, yesterday"), fact("correct", set={"on": "2026-11-24"})),
    (("14 kindled 8", "make that 7"), fact("correct", set={"born": 7})),
    (("14 kindled 8", "doe 9 not 14"), fact("correct", set={"who": "9"})),
    (("12 lost 2 kits", "3 not 2"), fact("correct", set={"count": 3})),
    (("12 lost 2 kits", "it was 16 not 12"), fact("correct", set={"who": "16"})),
    (("12 lost 3 kits", "only lost 2"), fact("correct", set={"count": 2})),
    (("12 lost 3 kits", "she just lost two"), fact("correct", set={"count": 2})),
    (("12 lost 2 kits", "just lost 1 more"), fact("kits_lost", doe="12", count=1)),
    (("12 lost 2 kits", "only lost 3"), fact("kits_lost", doe="12", count=3)),
    (("12 has 7 kits", "only lost 1"), fact("kits_lost", doe="12", count=1)),
    (("bred 15 to Flint", "5 not Flint"), fact("correct", set={"who": "5"})),
    (("weighed 31 4-6", "that was 32"), fact("correct", set={"who": "32"})),
    (("weighed 31 4-6", "31 should be 4-8"), fact("correct", set={"grams": 2041}, who="31")),
    (("weighed 31 4-6", "31 should be heavier"), fact("remark", text="31 should be heavier", who="31")),
    (("bred 15 to 7", "we didn't breed 15 after all"), fact("undo", who="15")),
    (("bred 15 to 7", "didn't breed her after all"), fact("undo")),
    (("remind me friday to trim nails on 9", "no, saturday"), fact("correct", set={"on": "2026-11-28"})),
]


@pytest.mark.parametrize(("texts", "wanted"), TALKS, ids=[" / ".join(texts) for texts, _ in TALKS])
def test_the_last_message_means(texts: tuple[str, ...], wanted: dict[str, Any]) -> None:
    """Exactly that fact, and nothing asked."""
    assert read_after(*texts) == ([wanted], None)


ASKED = [
    (("14 kindled 8", "no, 9"), "which_number"),
    (("14 kindled 8", "that was 9"), "which_number"),
    (("14 kindled 8", "no, feb 30"), "when"),
    (("14 looks rough", "lost 2 kits"), "impossible"),
]


@pytest.mark.parametrize(("texts", "why"), ASKED, ids=[" / ".join(texts) for texts, _ in ASKED])
def test_the_last_message_asks(texts: tuple[str, ...], why: str) -> None:
    """Two readings of a number, a day that can't be, or more than there are."""
    assert read_after(*texts) == ([], why)


@pytest.mark.parametrize("text", ["he looks too good, changed my mind", "decided against it, keeping him", "not sure about 31"])
@pytest.mark.parametrize("chore", ["cull_date", "sale_date"])
def test_a_reminder_that_is_answered_against_takes_no_animal_off_the_book(chore: str, text: str) -> None:
    """Words that say no to a cull or a sale, or give no figure, are neither."""
    found = reader(ROSTER)
    assert isinstance(found, Reader)
    told = found.read_in("barn", Message(text, AT, reply_to=ReplyTo(chore, "31")))
    assert {one["kind"] for one in told["facts"]}.isdisjoint({"culled", "sold", "for_sale", "died"})
