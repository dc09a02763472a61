"""One message heard, whatever it is."""

from __future__ import annotations

from dataclasses import replace

from hypothesis import given
from hypothesis import strategies as st

from core.notes.listen import noted
from core.notes.reading import Message
from core.notes.talk.recall import animals_of, subject_of
from core.reply import Choice
from tests.core.notes import small_reader
from tests.core.notes.talking import NOW, Barn, why
from tests.farm import fact

WORDS = st.sampled_from(
    [
        "14",
        "12",
        "9",
        "3",
        "7",
        "kindled",
        "bred",
        "to",
        "lost",
        "has",
        "weaned",
        "missed",
        "undo",
        "no",
        "yes",
        "make",
        "that",
        "8",
        "sorry",
        "i",
        "mean",
        "not",
        "done",
        "skip",
        "tomorrow",
        "flint",
        "moss",
        "juno",
        ";",
        ",",
        "4-6",
        "dead",
        "why",
        "due",
        "sold",
        "kindling",
        "wait",
        "confirmed",
        "again",
        "the",
        "on",
    ]
)


@given(st.lists(st.one_of(st.lists(WORDS, max_size=6).map(" ".join), st.text(max_size=12)), min_size=1, max_size=6))
def test_no_text_is_ever_too_strange(texts: list[str]) -> None:
    """Any messages one after the other, also as answers to reminders: always an answer, never an error."""
    barn = Barn()
    for minutes, text in enumerate(texts):
        reply_to = ("kindling", "14") if minutes % 3 == 2 else None
        assert barn.say(text, minutes=minutes, reply_to=reply_to).reply.lines


@given(st.lists(WORDS, min_size=1, max_size=5).map(" ".join))
def test_undo_restores_the_herd_whatever_was_said(text: str) -> None:
    """As far as the message recorded anything."""
    barn = Barn()
    barn.say("31 3-14", "bo")
    before = barn.herd
    heard = barn.say(text, minutes=20)
    barn.say("undo", minutes=21)
    if not any(each.kind in ("undo", "correct") for each in heard.note.facts):
        assert barn.herd == before


def test_the_reply_echoes_and_asks_with_choices() -> None:
    """What was recorded comes first, the question last."""
    heard = Barn().say("31 3-14; bred 15")
    assert "31" in heard.reply.lines[0]
    assert heard.reply.lines[-1] == "Which buck?"
    assert [weight.grams for weight in heard.herd.animals["31"].weights] == [1758]
    assert heard.reply.choices == (Choice("3", "3"), Choice("5", "5"))


def test_a_question_of_the_persons_is_answered_by_the_reports() -> None:
    """Which are handed in: they lie above the notes."""
    assert Barn().say("why 12").reply.lines == ("(asked: why 12)",)


def test_a_message_that_says_nothing_gets_a_word_all_the_same() -> None:
    """Nobody is left without an answer."""
    assert Barn().say("").reply.lines == ("That message was empty.",)
    assert Barn().say(";").reply.lines == ("Nothing to note there.",)


def test_reading_alone_gives_the_same_note() -> None:
    """Without an answer, for those who only want to see what was understood."""
    barn = Barn()
    heard = barn.say("31 3-14", number="a")
    message = Message("31 3-14", NOW, "ann", "barn", "a")
    assert noted(Barn().book, message, small_reader.read) == replace(heard.note, reply="")
    assert noted(barn.book, message, small_reader.read) == heard.note


def test_an_empty_chat_number_is_no_identity() -> None:
    """Messages without a number are each new."""
    barn = Barn()
    assert barn.say("31 3-14", number=" ").is_new
    assert why(barn.say("14 kindled 7", minutes=1)) is None


def test_a_fact_is_about_its_animals() -> None:
    """The new tag of a tagged kit; never the person an animal was given to."""
    assert subject_of(fact("tagged", litter_of="16", tag="R30")) == "R30"
    assert animals_of(fact("given_away", who="R22", to="the neighbor")) == ("R22",)
    assert subject_of(fact("feed_left", grams=1000)) is None
