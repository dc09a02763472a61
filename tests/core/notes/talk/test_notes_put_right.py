"""The last note put right in a few words, field by field, as the reader of notes hears it."""

from __future__ import annotations

from datetime import timedelta
from typing import Any

import pytest

from core.notes.listen import Heard, listen
from core.notes.reader import read
from core.notes.reading import Message, ReplyTo
from core.notes.replay import book
from tests.conversations.heard import echo, farm
from tests.core.notes.talking import NOW, facts, why

KINDLED = "14 kindled 8, 2 dead"
BRED = "15 bred to flint, 2 falls"
WEIGHED = "31 4-6"
TREATED = "gave 9 fenbendazole .2 ml, 28 day withdrawal"
NEW = "new doe 40 mini rex opal born 3/4"
LISTED = "list 32 for 60 until dec 20"
LOST = "12 lost 2 kits froze"
TAGGED = "tattooed R30 out of 16, buck, black"
CULLED = "butchered 32 5-2 dressed 2-12"
FOSTERED = "moved 2 kits from 12 to 16"
SOLD = "sold R23 $40 to the smiths"

BOUGHT = "bought 4 bags feed 50 lb 18.50 each"
GIVEN = "gave R22 to the neighbor"
FED = "moss gets 1/2 cup"
COLD = "cold snap tonight 15F"

PUT_RIGHT: list[tuple[str, str, dict[str, Any]]] = [
    (WEIGHED, "sry that was 32", {"who": "32"}),
    (WEIGHED, "*4-8", {"grams": 2041}),
    (WEIGHED, "32*", {"who": "32"}),
    (WEIGHED, "and it was yesterday", {"on": "2026-11-24"}),
    (WEIGHED, "and on monday", {"on": "2026-11-23"}),
    (WEIGHED, "scratch that, 4-8", {"grams": 2041}),
    (WEIGHED, "that's for 32", {"who": "32"}),
    (WEIGHED, "should've been 4-8", {"grams": 2041}),
    (WEIGHED, "ugh I meant 32", {"who": "32"}),
    (WEIGHED, "32 rather", {"who": "32"}),
    (LISTED, "til dec 12 I mean", {"until": "2026-12-12"}),
    (LISTED, "and 55 dollars not 60", {"price": "55.00"}),
    (BRED, "it was 16", {"who": "16"}),
    (BRED, "and 3 falls", {"falls": 3}),
    (BRED, "3 falls i mean", {"falls": 3}),
    ("moved 31 to B3", "no, 32", {"who": "32"}),
    ("moved 31 to B3", "sry B4", {"cage": "B4"}),
    ("box in 14", "out not in", {"change": "out"}),
    ("box in 14", "out i mean", {"change": "out"}),
    (TREATED, "sry .3", {"dose": ".3 ml"}),
    (TREATED, ".3 cc i mean", {"dose": ".3 cc"}),
    (TREATED, "0.3 ml not 0.2", {"dose": "0.3 ml"}),
    (TREATED, "penicillin not fenbendazole", {"with": "penicillin"}),
    (TREATED, "21 days i mean", {"withdrawal_days": 21}),
    (TREATED, "sry that was 16", {"who": "16"}),
    (BOUGHT, "no 5", {"bags": 5}),
    (BOUGHT, "3 bags i mean", {"bags": 3}),
    (BOUGHT, "19.50 each sorry", {"price": "78.00"}),
    ("120 lb feed left", "110 i mean", {"grams": 49895}),
    ("120 lb feed left", "100 lb not 120", {"grams": 45359}),
    (COLD, "18 i mean", {"celsius": -7.8}),
    (COLD, "12 not 15", {"celsius": -11.1}),
    (COLD, "sorry -9 C", {"celsius": -9.0}),
    (COLD, "no, 10F", {"celsius": -12.2}),
    ("keep two bucks a breed", "make that 3", {"value": 3}),
    (CULLED, "2-10 dressed i mean", {"dressed_grams": 1191}),
    (GIVEN, "to my cousin i mean", {"to": "my cousin"}),
    (TAGGED, "out of 12 i mean", {"litter_of": "12"}),
    (FED, "make that a cup", {"amount": 1.0}),
    ("3 best of breed", "best opposite i mean", {"placing": "best opposite"}),
    (KINDLED, "alive should be 7", {"alive": 7}),
    (KINDLED, "recount, 7 alive", {"alive": 7}),
    (KINDLED, "none dead actually", {"dead": 0}),
    (KINDLED, "the day was the 23rd", {"on": "2026-11-23"}),
    (KINDLED, "wrong doe, it was 9", {"doe": "9"}),
    (KINDLED, "yesterday, i mean", {"on": "2026-11-24"}),
    (BRED, "1 falls", {"falls": 1}),
    (BRED, "falls were 1", {"falls": 1}),
    (BRED, "with moss, i mean", {"who": "5"}),
    (WEIGHED, "4-7 i mean", {"grams": 2013}),
    (WEIGHED, "misread the scale, 4-7", {"grams": 2013}),
    (WEIGHED, "weight was 4-7", {"grams": 2013}),
    (WEIGHED, "wrong rabbit that was 32", {"who": "32"}),
    (WEIGHED, "weighed him yesterday actually", {"on": "2026-11-24"}),
    (TREATED, "21 days not 28", {"withdrawal_days": 21}),
    (TREATED, "21 day withdrawal not 28", {"withdrawal_days": 21}),
    (TREATED, ".4 ml not .2", {"dose": ".4 ml"}),
    (TREATED, "dose was .4 ml", {"dose": ".4 ml"}),
    (NEW, "41 not 40", {"tag": "41"}),
    (NEW, "it's a buck, sorry", {"sex": "buck"}),
    (NEW, "color castor, i mean", {"color": "castor"}),
    (NEW, "breed is new zealand", {"breed": "new zealand"}),
    (NEW, "born 4/3 not 3/4", {"born": "2026-04-03"}),
    (LISTED, "make that 65", {"price": "65.00"}),
    (LISTED, "price should be 65", {"price": "65.00"}),
    (LISTED, "until dec 27", {"until": "2026-12-27"}),
    (LISTED, "until dec 28 not 20", {"until": "2026-12-28"}),
    (LOST, "cause was a rat", {"cause": "predator"}),
    (LOST, "not froze, crushed", {"cause": "crushed"}),
    (LOST, "actually they were crushed", {"cause": "crushed"}),
    (LOST, "three, sorry", {"count": 3}),
    (TAGGED, "R31 not R30", {"tag": "R31"}),
    (CULLED, "live weight was 5-0", {"live_grams": 2268}),
    (CULLED, "dressed 2-10", {"dressed_grams": 1191}),
    (FOSTERED, "other way round, from 16 to 12", {"from": "16", "to": "12"}),
    (SOLD, "to the millers not the smiths", {"to": "the millers"}),
    (SOLD, "got 45 dollars, sorry", {"price": "45.00"}),
    (SOLD, "forty five dollars sorry", {"price": "45.00"}),
    ("14 to cage B3", "B4 not B3", {"cage": "B4"}),
    ("14 to cage B3", "cage was B4", {"cage": "B4"}),
    ("22 palpated open", "actually not sure", {"result": "unsure"}),
    ("weaned 16: 3 bucks 2 does", "2 bucks 3 does", {"bucks": 2, "does": 3}),
    ("buck 5 bcs 2", "2.5 not 2", {"score": 2.5}),
    ("buck 5 bcs 2", "score was three", {"score": 3}),
    ("buck 5 bcs 2", "that was buck 3", {"who": "3"}),
    ("33 type 4", "fur not type", {"trait": "fur"}),
    ("33 is black", "no, otter", {"color": "otter"}),
    ("moss gets 1/2 cup", "make that 3/4", {"amount": 0.75}),
    ("5 snotty nose", "weepy eye not snotty nose", {"sign": "weepy eye"}),
    ("found R22 dead", "cause was bloat", {"cause": "bloat"}),
]

AS_BEFORE: list[tuple[str, str]] = [
    (KINDLED, "moss not doing well"),
    (SOLD, "price was good"),
    (SOLD, "price was forty"),
    (BRED, "falls were many"),
    (WEIGHED, "cage was dirty"),
    (WEIGHED, "31 was lively"),
    (WEIGHED, "32 was 4-5"),
    (FOSTERED, "from 16 to nowhere"),
    ("weaned 16: 3 bucks 2 does", "some bucks 2 does"),
    ("butcher 12 on dec 3", "sorry"),
    ("remind me friday to trim nails on 9", "tomorrow, sorry about it"),
]


def _heard(*messages: str, reply_to: ReplyTo | None = None) -> Heard:
    """The last of some messages, a minute apart."""
    told = book(farm())
    heard = None
    for minute, text in enumerate(messages):
        at = NOW + timedelta(minutes=minute)
        heard = listen(told, Message(text, at, "ann", "barn", str(minute), 0, reply_to), echo, read)
        told = heard.book
    assert heard is not None
    return heard


@pytest.mark.parametrize(("note", "words", "put"), PUT_RIGHT, ids=[words for _, words, _ in PUT_RIGHT])
def test_a_field_is_put_right(note: str, words: str, put: dict[str, Any]) -> None:
    """By its name, by what was wrong, or by its looks behind an "oops"."""
    told = facts(_heard(note, words))
    assert [{"kind": fact["kind"], "set": fact["set"]} for fact in told] == [{"kind": "correct", "set": put}]


@pytest.mark.parametrize(("note", "words"), AS_BEFORE, ids=[words for _, words in AS_BEFORE])
def test_other_words_put_nothing_right(note: str, words: str) -> None:
    """They are no value that such a field can have."""
    assert "correct" not in [fact["kind"] for fact in facts(_heard(note, words))]


@pytest.mark.parametrize("words", ["make it 5", "Correction to 14: born 8 not 7.", "price was 45"])
def test_with_nothing_told_nothing_is_put_right(words: str) -> None:
    """There is no note of theirs yet."""
    assert all(fact["kind"] in ("correct", "remark") for fact in facts(_heard(words)))


def test_one_weight_of_a_list_is_put_right() -> None:
    """By its animal."""
    (told,) = facts(_heard("31 4-6, 32 4-4", "32 was 4-5"))
    assert (told["who"], told["set"]) == ("32", {"grams": 1956})


REPLIES: list[tuple[str, str, str, list[dict[str, Any]], str | None]] = [
    ("kindling", "14", "she did!", [], "how_many"),
    ("kindling", "14", "8 kits, lost one", [{"kind": "kindled", "doe": "14", "born": 8, "alive": 7, "dead": 1}], None),
    ("palpate", "22", "yes she is", [{"kind": "palpated", "doe": "22", "result": "bred"}], None),
    ("palpate", "22", "no she's not", [{"kind": "palpated", "doe": "22", "result": "open"}], None),
    ("check_nest", "12", "all 7 fine", [{"kind": "kit_count", "doe": "12", "count": 7}], None),
    ("check_nest", "12", "runt was dead", [], "how_many"),
    ("check_nest", "12", "she peed in it", [{"kind": "nest_manners", "doe": "12", "sign": "soiled"}], None),
    ("sale_date", "32", "drop the price to 30", [{"kind": "for_sale", "who": "32", "price": "30.00"}], None),
]


@pytest.mark.parametrize(("chore", "who", "text", "expected", "asked"), REPLIES, ids=[text for _, _, text, _, _ in REPLIES])
def test_a_reminder_is_answered_in_passing(chore: str, who: str, text: str, expected: list[dict[str, Any]], asked: str | None) -> None:
    """The chore gives the words their meaning."""
    heard = _heard(text, reply_to=ReplyTo(chore, who))
    assert (facts(heard), why(heard)) == (expected, asked)


def test_degrees_are_put_right_by_degrees_only() -> None:
    """ "Not 15" behind a temperature takes a number; other words change nothing."""
    heard = _heard(COLD, "colder not 15")
    assert all(fact["kind"] != "correct" for fact in facts(heard))


@pytest.mark.parametrize(
    ("chore", "text", "on"),
    [
        ("nest_box_in", "doing it saturday", "2026-11-28"),
        ("nest_box_in", "boxes are all dirty, friday", "2026-11-27"),
        ("nest_box_out", "too cold, leave it till sunday", "2026-11-29"),
        ("nest_box_out", "leaving it in another week", "2026-12-02"),
        ("wean", "give them two more weeks", "2026-12-09"),
        ("kindling", "check again friday", "2026-11-27"),
    ],
)
def test_a_later_day_puts_the_chore_off(chore: str, text: str, on: str) -> None:
    """Whatever stands before the day."""
    (told,) = facts(_heard(text, reply_to=ReplyTo(chore, "9")))
    assert (told["kind"], told["on"]) == ("remind", on)


@pytest.mark.parametrize(
    ("chore", "text"), [("nest_box_out", "not yet still cold"), ("weigh", "scale's broken"), ("rebreed", "not this month")]
)
def test_what_was_not_done_stays_open(chore: str, text: str) -> None:
    """Kept as said."""
    assert [fact["kind"] for fact in facts(_heard(text, reply_to=ReplyTo(chore, "12")))] == ["remark"]


def test_a_yes_may_be_said_twice() -> None:
    """ "Yes that's right" confirms as "yes" does."""
    (told,) = facts(_heard("31 4-6", "31 2-6", "yes that's right"))
    assert told["grams"] == 1077
