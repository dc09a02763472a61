"""What a message means in its conversation: answers, corrections, the animal last spoken of."""

from __future__ import annotations

from datetime import timedelta

import pytest

from core.notes.meaning import meaning_of
from core.notes.reading import Ask, Draft, Message, Reading
from core.notes.talk.answer import answered
from core.notes.talk.doubt import draft_of, settled
from tests.conversations.transcript import DAY
from tests.core.notes.talking import NOW, Barn, facts, why
from tests.farm import fact

KINDLED_7 = [{"kind": "kindled", "doe": "14", "born": 7}]


@pytest.mark.parametrize("answer", ["7", "seven", "she had 7", "about 7 kits", "it was 7"])
def test_a_number_answers_how_many(answer: str) -> None:
    """Bare, in words, or with small words around it."""
    barn = Barn()
    assert why(barn.say("14 kindled")) == "how_many"
    assert facts(barn.say(answer, minutes=1)) == KINDLED_7


def test_an_answer_may_say_more_than_was_asked() -> None:
    """It is read as the rest of the sentence."""
    barn = Barn()
    barn.say("14 kindled")
    assert facts(barn.say("8, 2 dead", minutes=1)) == [{"kind": "kindled", "doe": "14", "born": 8, "alive": 6, "dead": 2}]


@pytest.mark.parametrize("answer", ["it was flint", "3", "Flint", "to flint"])
def test_anyone_on_the_farm_may_answer(answer: str) -> None:
    """By tag or by name."""
    barn = Barn()
    assert why(barn.say("bred 15")) == "which_animal"
    assert facts(barn.say(answer, "bo", minutes=2)) == [{"kind": "bred", "doe": "15", "buck": "3"}]


def test_an_answer_from_another_chat_must_name_something() -> None:
    """A bare number there was not meant for a question nobody saw; a name is."""
    barn = Barn()
    barn.say("bred 15")
    assert why(barn.say("3", "bo", minutes=1, chat="other")) == "what"
    assert facts(barn.say("flint", "bo", minutes=2, chat="other")) == [{"kind": "bred", "doe": "15", "buck": "3"}]


def test_an_answer_that_lacks_something_asks_again() -> None:
    """The buck is known, but he can't be: the question comes back."""
    barn = Barn()
    barn.say("bred 15")
    assert why(barn.say("12", minutes=1)) == "wrong_sex"
    assert facts(barn.say("5", minutes=2)) == [{"kind": "bred", "doe": "15", "buck": "5"}]


def test_a_full_new_note_drops_the_question() -> None:
    """The number that follows is not its answer."""
    barn = Barn()
    barn.say("14 kindled")
    assert facts(barn.say("31 3-14", minutes=1))[0]["kind"] == "weighed"
    assert why(barn.say("7", minutes=2)) == "what"


def test_a_question_of_the_persons_leaves_ours_open() -> None:
    """Asking who is due is no answer and no note."""
    barn = Barn()
    barn.say("14 kindled")
    barn.say("why 12", minutes=1)
    assert facts(barn.say("7", minutes=2)) == KINDLED_7


def test_words_that_say_nothing_are_told_what_is_open() -> None:
    """The question isn't lost."""
    barn = Barn()
    barn.say("14 kindled")
    assert "Still open: How many?" in barn.say("hm let me look", minutes=1).reply.lines
    assert facts(barn.say("7", minutes=2)) == KINDLED_7


def test_a_question_is_over_after_a_day() -> None:
    """A bare number then means something else."""
    barn = Barn()
    barn.say("14 kindled")
    assert why(barn.say("7", minutes=25 * 60)) == "what"


@pytest.mark.parametrize(("answer", "kinds"), [("yes", ["kindled"]), ("yep!", ["kindled"]), ("no", []), ("never mind", [])])
def test_a_doubt_is_answered_yes_or_no(answer: str, kinds: list[str]) -> None:
    """Yes records, no records nothing."""
    barn = Barn()
    assert why(barn.say("15 kindled 6")) == "confirm"
    heard = barn.say(answer, minutes=1)
    assert [fact["kind"] for fact in facts(heard)] == kinds
    assert why(heard) is None


def test_no_with_another_number_is_checked_anew() -> None:
    """Not 6 lb 0: 10 lb 0."""
    barn = Barn()
    barn.say("moss 10-8")
    assert why(barn.say("moss 6-0", minutes=30)) == "confirm"
    assert facts(barn.say("no 10-0", minutes=31)) == [{"kind": "weighed", "who": "5", "grams": 4536}]


def test_no_to_any_question_drops_it() -> None:
    """Nothing is recorded, and nothing stays open."""
    barn = Barn()
    barn.say("bred 15")
    assert facts(barn.say("never mind", minutes=1)) == []
    assert facts(barn.say("flint", minutes=2))[0]["kind"] == "remark"


def test_several_doubts_of_one_note_share_the_answer() -> None:
    """One yes for both."""
    barn = Barn()
    heard = barn.say("15 kindled 6; 16 kindled 4; 31 3-14")
    assert why(heard) == "confirm"
    assert [fact["kind"] for fact in facts(heard)] == ["weighed"]
    assert [fact["doe"] for fact in facts(barn.say("yes", minutes=1))] == ["15", "16"]


def test_the_worst_doubt_is_asked_and_the_others_are_told() -> None:
    """Nothing is left out in silence."""
    barn = Barn()
    heard = barn.say("12 lost 9; 15 kindled 6")
    assert why(heard) == "impossible"
    assert any(line.startswith("Not recorded: ") for line in heard.reply.lines)


def test_the_animal_last_spoken_of_stays_each_persons_subject() -> None:
    """For ninety minutes."""
    barn = Barn()
    barn.say("22 sneezing")
    barn.say("31 3-14", "bo", minutes=1)
    assert facts(barn.say("ear mites", minutes=2)) == [{"kind": "ailment", "who": "22", "sign": "ear mites"}]
    assert why(barn.say("ear mites", minutes=200)) == "which_animal"


def test_a_gone_animals_note_is_put_right_with_another() -> None:
    """ "I mean R22" takes the refused weight for R22."""
    barn = Barn()
    barn.say("sold pip 40")
    assert why(barn.say("pip 5-1", minutes=30)) == "impossible"
    assert facts(barn.say("i mean r22", minutes=31)) == [{"kind": "weighed", "who": "R22", "grams": 2296}]


def test_a_question_without_a_draft_is_put_right_by_its_own_words() -> None:
    """The unknown tag in the note is replaced by the right one and read again."""
    barn = Barn()
    assert why(barn.say("45 4-2;")) == "which_animal"
    assert facts(barn.say("i mean 15", minutes=1)) == [{"kind": "weighed", "who": "15", "grams": 1871}]


def test_a_question_put_right_in_its_number() -> None:
    """More lost than are alive; the right count is recorded."""
    barn = Barn()
    assert why(barn.say("12 lost 9")) == "impossible"
    assert facts(barn.say("i mean 2 not 9", minutes=1))[0].get("count") == 2


def test_a_buck_put_right_in_an_asked_mating() -> None:
    """A buck given to a question about a mating is its buck."""
    barn = Barn()
    barn.say("bred 15 to 12")
    assert facts(barn.say("i mean moss", minutes=1)) == [{"kind": "bred", "doe": "15", "buck": "5"}]


def test_kindling_after_all_takes_missed_back_and_waits_for_the_count() -> None:
    """ "Wait, she's kindling" is an undo, and "5, all alive" is her litter."""
    barn = Barn()
    barn.say("14 missed")
    assert facts(barn.say("wait no shes kindling right now", minutes=40)) == [{"kind": "undo"}]
    assert barn.stands() == []
    assert facts(barn.say("5, all alive", minutes=75)) == [{"kind": "kindled", "doe": "14", "born": 5, "alive": 5}]


@pytest.mark.parametrize("text", ["wait 14 is kindling", "she's kindling", "no she's kindling 5"])
def test_kindling_is_no_undo_without_a_missed_before(text: str) -> None:
    """Nor with a count, which is a note of its own."""
    barn = Barn()
    barn.say("31 3-14")
    assert facts(barn.say(text, minutes=1)) == [{"kind": "remark", "text": text}]
    barn.say("14 missed", minutes=2)
    assert "undo" not in [fact["kind"] for fact in facts(barn.say("she's kindling 5 no doubt", minutes=3))]


def test_a_bare_number_with_no_question_records_nothing() -> None:
    """Whatever the reader would make of it."""
    barn = Barn()
    barn.say("22 sneezing")
    heard = barn.say("12", minutes=1)
    assert (facts(heard), why(heard)) == ([], "what")


def test_an_answer_that_is_none_is_read_as_a_note() -> None:
    """The question stays."""
    barn = Barn()
    barn.say("bred 15")
    assert facts(barn.say("purple", minutes=1))[0]["kind"] == "remark"
    assert facts(barn.say("flint", minutes=2))[0]["kind"] == "bred"


def test_a_correction_that_the_question_cannot_take_is_one_of_the_last_note() -> None:
    """The question was about a mating; dead kits are none of its business."""
    barn = Barn()
    barn.say("bred 15")
    assert facts(barn.say("make that dead 3", minutes=1)) == [{"kind": "correct", "set": {"dead": 3}}]


def test_a_correction_of_something_recorded_after_the_question() -> None:
    """What this person recorded since is what is corrected."""
    barn = Barn()
    barn.say("bred 15")
    barn.say("32 4-1", chat="other", minutes=1)
    assert facts(barn.say("make that 4-2", minutes=2)) == [{"kind": "correct", "set": {"grams": 1871}}]


def test_a_doubt_about_the_day_is_answered_with_a_day() -> None:
    """A day to come can't be; the right one is taken."""
    barn = Barn()
    draft = Draft("weighed", {"who": "31", "grams": 1758}, "on")
    ask = Ask("when", "Which day?", (), draft)
    answer = answered(ask, "yesterday", barn.herd, DAY, lambda _: Reading())
    assert answer is not None
    assert answer.facts == (fact("weighed", who="31", grams=1758, on=DAY - timedelta(1)),)
    assert answered(ask, "hm", barn.herd, DAY, lambda _: Reading()) is None
    until = Ask("when", "Until when?", (), Draft("planned", {"who": "31", "what": "keep"}, "until"))
    planned = answered(until, "friday", barn.herd, DAY, lambda _: Reading())
    assert planned is not None
    assert planned.facts == (fact("planned", who="31", what="keep", until=DAY + timedelta(2)),)


@pytest.mark.parametrize(("count", "whose"), [(1, {"who": "12"}), (3, {"litter_of": "12", "count": 3})])
def test_a_count_beside_one_animal_is_its_kits(count: int, whose: dict[str, object]) -> None:
    """One animal needs no count."""
    asked = Ask("which_animal", "Which one?", (), Draft("sold", {"count": count}, "who"))
    answer = answered(asked, "sorrel", Barn().herd, DAY, lambda _: Reading())
    assert answer is not None
    assert answer.facts == (fact("sold", **whose),)


def test_the_wrong_field_is_what_a_problem_asks_about() -> None:
    """The day for `when`, the animal of the wrong sex, the count that is too high."""
    herd = Barn().herd
    told = fact("bred", doe="15", buck="12")
    assert draft_of(told, "when", herd).wanted == "on"
    assert draft_of(told, "wrong_sex", herd).wanted == "buck"
    assert draft_of(fact("kits_lost", doe="12", count=9), "impossible", herd).wanted == "count"
    assert draft_of(fact("feed_left", grams=1), "impossible", herd).wanted == "confirm"


def test_the_worse_question_comes_first() -> None:
    """By the contract's order, whoever found it; what is not asked now is told."""
    barn = Barn()
    heard = barn.say("bred 15; 12 lost 9")
    assert why(heard) == "which_animal"
    assert any(line.startswith("Not recorded: ") for line in heard.reply.lines)
    doubt = Ask("confirm", "Sure?", ("yes", "no"), Draft("weighed", {"who": "31", "grams": 1, "on": DAY.isoformat()}, "confirm"))
    reading = Reading((fact("kits_lost", doe="12", count=9),), doubt)
    worse = settled(barn.book, Message("", NOW), meaning_of(reading))
    assert worse.ask is not None
    assert worse.ask.why == "impossible"
    assert "Not recorded: Sure?" in worse.notices
