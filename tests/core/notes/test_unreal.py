"""What is wanted, needed, ordered, expected or denied has not happened."""

from __future__ import annotations

import pytest

from core.notes.reader import read
from core.notes.reading import Message
from tests.core.notes.test_read_notes import AT, herd


def kinds(text: str) -> set[str]:
    """The kinds of the facts that the message gives."""
    return {fact.kind for fact in read(Message(text, AT), herd()).facts}


@pytest.mark.parametrize(
    "text",
    [
        "need to tattoo 16's kits as R30",
        "I want to move 14 to cage B3",
        "15 needs breeding to Flint",
        "15 to be bred to 3",
        "16 wants weaning",
        "16 is ready to wean",
        "let me wean 16",
        "i'd wean 16 now",
        "16 should be weaned by now",
        "told to foster 2 from 12 to 16",
        "could move 2 kits from 12 to 16",
        "forgot to breed 15 to Flint",
        "31 should weigh 4-6",
        "31 needs 4 oz more",
        "buyer wants 31 at 4-6",
        "12's litter should weigh 5 lb",
        "want 5 at bcs 3",
        "moss should get 1/2 cup",
        "need to buy 4 bags feed",
        "will have 120 lb feed left by sunday",
        "16 will pull fur soon",
        "33 should be black",
        "33 wants type 4",
        "3 should win best of breed",
        "12 could lose 2 kits tonight in this cold",
        "will treat 22 with ivermectin friday",
        "R22 could have died",
        "32 needs culled",
        "somebody told me to cull 12",
    ],
)
def test_what_is_wished_or_to_come_is_no_fact(text: str) -> None:
    """Words of wanting, needing or ordering before the verb leave it undone; a plan and a reminder may stand."""
    assert kinds(text) <= {"remark"}


@pytest.mark.parametrize(
    "text",
    [
        "didn't buy 4 bags feed",
        "don't give 22 ivermectin",
        "moss no longer gets 1/2 cup",
        "31 isn't 4-6",
        "16 didn't pee in the box",
        "not 120 lb feed left",
    ],
)
def test_what_is_denied_is_no_fact(text: str) -> None:
    """A denial right before the verb or the figure."""
    assert kinds(text) <= {"remark"}


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("had to wean 16 early", "weaned"),
        ("could only count 6 kits under 12", "kit_count"),
        ("I'd give Biscuit a 3 for body condition", "condition"),
        ("12 never pulled any fur", "nest_manners"),
        ("5 needs the vet for his snotty nose", "ailment"),
        ("31 4-6, should gain some", "weighed"),
        ("22 will not lift for Moss", "refused"),
        ("14 must have kindled, 6 in the box", "kindled"),
        ("will breed 15 to Flint tomorrow", "planned"),
        ("not bad 31 at 4-6", "weighed"),
        ("15 had to be moved to B3", "moved"),
        ("I will say weaned 16", "weaned"),
    ],
)
def test_such_words_leave_what_is_done(text: str, kind: str) -> None:
    """Past duty, judgement, what was seen, and words behind the figure change nothing."""
    assert kind in kinds(text)
