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
        "tried to remember when I bred 15 to Flint",
        "I remember 14 kindled 8",
        "planning: 15 x 3",
        "31 has to hit 4-6 by the show",
        "31 will never see 4-6",
        "dog nearly got R22",
        "14 not in B3",
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


@pytest.mark.parametrize(
    "text",
    [
        "box in 9 if 14 kindles",
        "if 14 kindles, box in 9",
        "when 14 kindles, box in 9",
        "if 31 doesn't make 5 lb, cull him",
        "cull 31 if he doesn't make 5 lb",
        "keep 33 if she makes 5 lb",
        "foster 2 from 12 to 16 if she has milk",
        "list 32 for 60 if he doesn't place",
        "if 22 palpates open, breed her to Flint and put the box in",
        "unless 14 kindles tonight, box out",
        "check if 14 kindled",
        "please wean 16",
    ],
)
def test_what_hangs_on_a_condition_is_no_fact(text: str) -> None:
    """Neither the condition nor what would follow from it has happened; an order isn't carried out."""
    assert kinds(text) <= {"remark"}


@pytest.mark.parametrize(
    ("text", "kind"),
    [
        ("if I counted right, 14 kindled 8", "kindled"),
        ("if memory serves 14 kindled 8", "kindled"),
        ("if we get out of here 14 kindled 8", "remark"),
        ("moved 14 to B3 if you need her", "moved"),
        ("weaned 16 if that's all right", "weaned"),
        ("weighed 31 4-6 and if he gains we keep him", "weighed"),
        ("when 14 kindled she had 8", "kindled"),
        ("please, 14 kindled 8", "kindled"),
        ("could you log 31 4-6", "weighed"),
        ("can you remind me friday to trim nails", "remind"),
    ],
)
def test_a_hedge_is_no_condition(text: str, kind: str) -> None:
    """What a speaker doubts of himself, or says by the way, leaves the deed; so does a polite head."""
    assert kind in kinds(text)


@pytest.mark.parametrize(
    "text", ["can you wean 16", "will you be weaning 16", "are you weaning 16", "could you put the box in with 14", "did he wean 16"]
)
def test_a_question_to_somebody_records_no_deed(text: str) -> None:
    """A small verb and a person first."""
    assert kinds(text) <= {"remark", "query"}


@pytest.mark.parametrize("text", ["what a good doe 14 is", "how 14 loves hay", "where 14 sleeps is wet"])
def test_an_exclamation_asks_nothing(text: str) -> None:
    """Question words that lead no question."""
    assert kinds(text) == {"remark"}


@pytest.mark.parametrize("text", ["how heavy is 14", "when is 14 due", "when 14 due"])
def test_such_words_still_ask(text: str) -> None:
    """Without a question mark too."""
    assert kinds(text) == {"query"}
