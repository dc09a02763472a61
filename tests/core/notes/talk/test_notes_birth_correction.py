"""A birth put right in a few words, and corrections that are asked about."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest

from core.notes.fact import Cents, Fields
from core.notes.kinds.correction import Correct
from core.notes.listen import listen
from core.notes.reading import Message
from core.notes.talk.answer import COUNTS
from core.notes.talk.birth_correction import birth_numbers
from core.notes.talk.correction_fields import amended, birth_agreed, senses
from tests.conversations.heard import echo, farm
from tests.core.notes.talking import NOW, Barn, facts, why
from tests.farm import fact


@pytest.mark.parametrize(
    ("words", "numbers"),
    [
        ("2 dead", {"dead": 2}),
        ("8 born 2 dead", {"born": 8, "dead": 2}),
        ("8, 2 dead", {"born": 8, "dead": 2}),
        ("14 had 8", {"born": 8}),
        ("doe 14 had 8", {"born": 8}),
        ("juno kindled eight, two dead", {"born": 8, "dead": 2}),
        ("she had 8 kits", {"born": 8}),
        ("7 alive", {"alive": 7}),
        ("2 dead not 1", {"dead": 2}),
        ("6 live and 2 dead", {"alive": 6, "dead": 2}),
        ("6 were alive to start with, 8 born", {"alive": 6, "born": 8}),
        ("15 had 8", None),
        ("15 not 14", None),
        ("7", None),
        ("dead", None),
        ("2.5 dead", None),
        ("2 more dead", None),
        ("8 7 had", None),
        ("had not", None),
        ("", None),
    ],
)
def test_what_the_words_say_of_a_birth(words: str, numbers: dict[str, int] | None) -> None:
    """Numbers beside born, alive and dead; anything else is no such thing."""
    assert birth_numbers(words, "14", farm()) == numbers


def test_of_a_doe_that_is_not_on_the_book() -> None:
    """The numbers alone still count; her tag is no verb's subject."""
    assert birth_numbers("2 dead", "99", farm()) == {"dead": 2}


@pytest.mark.parametrize(
    ("told", "put", "reply"),
    [
        ("no, 2 dead", {"dead": 2}, "Doe 14: 9 born, 7 alive, 2 dead."),
        ("no, 8 born 2 dead", {"born": 8, "dead": 2}, "Doe 14: 8 born, 6 alive, 2 dead."),
        ("no, 14 had 8", {"born": 8}, "Doe 14: 8 born, 7 alive, 1 dead."),
        ("no 7 alive", {"alive": 7}, "Doe 14: 9 born, 7 alive, 2 dead."),
        ("sorry, 6 live 2 dead", {"alive": 6, "dead": 2}, "Doe 14: 8 born, 6 alive, 2 dead."),
    ],
)
def test_a_no_behind_a_kindling_puts_the_birth_right(told: str, put: dict[str, int], reply: str) -> None:
    """It is no loss since, and no second litter."""
    barn = Barn()
    barn.say("14 kindled 9, 1 dead")
    heard = barn.say(told, minutes=1)
    assert facts(heard) == [{"kind": "correct", "set": put}]
    assert heard.reply.lines[0] == reply
    assert heard.reply.lines[-1] == "Was: Doe 14: 9 born, 8 alive, 1 dead."
    assert [each["kind"] for each in barn.stands()] == ["kindled"]


def test_a_no_behind_a_kindling_that_waits_for_a_yes_puts_it_right() -> None:
    """The question comes again with the right numbers."""
    barn = Barn()
    barn.say("15 kindled 8")
    assert why(barn.say("no, 2 dead", minutes=1)) == "confirm"
    assert barn.say("yes", minutes=2).reply.lines[0] == "Doe 15: 8 born, 6 alive, 2 dead."


def test_a_no_that_says_something_else_goes_on_to_the_question() -> None:
    """ "No" alone is an answer."""
    barn = Barn()
    barn.say("15 kindled 8")
    assert barn.say("no, never", minutes=1).note.facts != barn.heard[0].note.facts
    barn.say("15 kindled 8", minutes=20)
    assert barn.say("no", minutes=21).reply.lines == ("Not recorded, then.",)
    assert barn.stands() == []


def test_a_question_about_another_note_comes_before_the_birth() -> None:
    """ "No, 2 falls" and the like belong to what was asked last."""
    barn = Barn()
    barn.say("14 kindled 9, 1 dead")
    barn.say("bred 15", minutes=1)
    barn.say("no, 2 dead", minutes=2)
    assert [each.get("dead") for each in barn.stands()] == [1]


def test_a_confirmed_birth_is_not_asked_about_again() -> None:
    """The breeding was asked for once; the count puts right no breeding."""
    barn = Barn()
    barn.say("15 kindled 8")
    barn.say("yes", minutes=1)
    heard = barn.say("no, 2 dead", minutes=2)
    assert (why(heard), heard.reply.lines[0]) == (None, "Doe 15: 8 born, 6 alive, 2 dead.")


@pytest.mark.parametrize(
    ("answer", "reply", "born"),
    [
        ("yes", "Doe 14: 25 born, 25 alive.", 25),
        ("no", "Left as it was.", 9),
        ("no 8 born", "Doe 14: 8 born, 8 alive.", 8),
        ("i mean 8", "Doe 14: 8 born, 8 alive.", 8),
    ],
)
def test_a_doubtful_correction_waits_for_an_answer(answer: str, reply: str, born: int) -> None:
    """What stood stands until then; another correction is one of what stands."""
    barn = Barn()
    barn.say("14 kindled 9")
    heard = barn.say("no 25 born", minutes=1)
    assert why(heard) == "confirm"
    assert [each["born"] for each in barn.stands()] == [9]
    assert barn.say(answer, minutes=2).reply.lines[0] == reply
    assert [each["born"] for each in barn.stands()] == [born]


def test_another_may_say_yes_to_a_doubtful_correction() -> None:
    """It is still the first one's note that is put right."""
    barn = Barn()
    barn.say("14 kindled 9")
    barn.say("15 4-2", "bo", minutes=1)
    barn.say("no 25 born", minutes=2)
    barn.say("yes", "bo", minutes=3)
    assert [each.get("born") for each in barn.stands()] == [None, 25]


def test_a_correction_confirmed_beforehand_is_taken() -> None:
    """As a note is; what can't be is asked about all the same."""
    barn = Barn()
    barn.say("14 kindled 9")
    assert why(barn.say("no 9 born 10 dead, confirmed", minutes=1)) == "impossible"
    assert why(barn.say("no 25 born, confirmed", minutes=2)) is None
    assert [each["born"] for each in barn.stands()] == [25]


def test_a_correction_that_cannot_be_is_not_recorded() -> None:
    """The checks of its kind hold for it too."""
    barn = Barn()
    barn.say("14 kindled 9")
    assert why(barn.say("no 9 born 10 dead", minutes=1)) == "impossible"
    assert [each.get("dead") for each in barn.stands()] == [None]
    assert barn.say("no 9 born 1 dead", minutes=2).reply.lines[0] == "Doe 14: 9 born, 8 alive, 1 dead."


def test_lost_kits_are_put_right_by_the_dead() -> None:
    """ "No, 3 dead" after a loss is its count."""
    barn = Barn()
    barn.say("12 lost 2")
    assert facts(barn.say("no dead 3", minutes=1)) == [{"kind": "correct", "set": {"count": 3}}]


def test_alive_and_dead_make_the_born() -> None:
    """Where both are said and the born are not."""
    said: dict[str, Any] = {"born": 9, "alive": 8, "dead": 1}
    put = {"alive": 5, "dead": 2}
    assert birth_agreed(said, said | put, put) == {"born": 7, "alive": 5, "dead": 2}


@pytest.mark.parametrize(
    ("text", "grams"),
    [("no 5 oz", [4224, 142]), ("no, 9 lb 5 oz", [4224]), ("make that 9-5", [4224])],
)
def test_ounces_alone_are_those_of_the_pounds_or_all(text: str, grams: list[int]) -> None:
    """A weight with pounds in it can be meant either way; of pounds and ounces there is no doubt."""
    weighed = fact("weighed", who="22", grams=4252, on="2026-11-25")
    correct = Correct(set=Fields((("grams", grams[-1]),)))
    assert [dict(each.set)["grams"] for each in senses(weighed, correct, text, farm())] == grams


def test_ounces_that_fit_both_ways_are_asked_about() -> None:
    """The choices mean only one each."""
    book = Barn().book
    for minute, text in enumerate(("22 weighed 9-6", "no 5 oz")):
        heard = listen(book, Message(text, NOW + timedelta(minutes=minute), "ann", "barn", str(minute)), echo)
        book = heard.book
    assert why(heard) == "which_number"
    assert [choice.says for choice in heard.reply.choices] == ["that was 9-5", "that was 0-5"]


def test_a_tag_of_two_figures_is_no_count_and_a_number() -> None:
    """ "22 weighs" begins with one number, "8 2" with two."""
    assert COUNTS.match("8 2 dead")
    assert not COUNTS.match("22 weighs 9-6")


def test_a_word_is_no_number_of_a_fact() -> None:
    """Nothing is amended with it."""
    assert amended(fact("kindled", doe="14", born=8), {"born": "many"}) is None


@pytest.mark.parametrize(
    ("kind", "fields", "put"),
    [
        ("sold", {"who": "31", "price": 3500}, ("price", "40.00")),
        ("sold", {"litter_of": "12", "count": 2, "price": 3500}, ("count", 40)),
        ("sold", {"who": "31"}, ("count", 40)),
    ],
)
def test_a_number_alone_is_the_price_of_one_sold(kind: str, fields: dict[str, Any], put: tuple[str, Any]) -> None:
    """Of several it is how many; where no price was said it is neither."""
    price = {"price": Cents(fields["price"])} if "price" in fields else {}
    correct = Correct(set=Fields((("count", 40),)))
    assert senses(fact(kind, **(fields | price)), correct, "no it was 40", farm())[0].set == (put,)
