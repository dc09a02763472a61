"""Undo, corrections and edits.

Over 300 lines: undo, corrections and edits undo one another, so they are tested side by side.
"""

from __future__ import annotations

from datetime import date

import pytest

from core.notes.fact import to_json
from core.notes.talk.correction_fields import amended, field_for, holds
from tests.conversations.heard import farm
from tests.core.notes.talking import Barn, facts, why
from tests.farm import fact

ON = "2026-11-25"


def test_each_further_undo_goes_one_back() -> None:
    """Of one's own notes only."""
    barn = Barn()
    barn.say("31 3-14")
    barn.say("32 4-1", minutes=1)
    barn.say("33 4-0", "bo", minutes=2)
    barn.say("undo", minutes=3)
    assert [each["who"] for each in barn.stands()] == ["31", "33"]
    barn.say("undo", minutes=4)
    assert [each["who"] for each in barn.stands()] == ["33"]
    heard = barn.say("undo", minutes=5)
    assert heard.reply.lines == ("There is no note of yours to take back.",)
    assert facts(heard) == [{"kind": "undo"}]
    assert barn.say("undo the weighed on 31", minutes=6).reply.lines == ("There is no note of yours about 31 to take back.",)


def test_undo_of_a_named_kind_and_animal_takes_back_the_last_that_fits() -> None:
    """Only the fact that fits, where the message told several."""
    barn = Barn()
    barn.say("31 3-14; 32 4-1")
    barn.say("14 kindled 7", minutes=1)
    barn.say("undo the weighed on 31", minutes=2)
    assert [each.get("who") or each["doe"] for each in barn.stands()] == ["32", "14"]
    barn.say("undo the kindled", minutes=3)
    assert [each["who"] for each in barn.stands()] == ["32"]


def test_undo_of_a_correction_restores_what_was_before() -> None:
    """The wrong value stands again, and the reply says so."""
    barn = Barn()
    barn.say("14 kindled 7")
    before = barn.herd
    barn.say("make that 8", minutes=1)
    assert barn.stands() == [{"kind": "kindled", "doe": "14", "on": ON, "born": 8}]
    heard = barn.say("undo", minutes=2)
    assert barn.stands() == [{"kind": "kindled", "doe": "14", "on": ON, "born": 7}]
    assert any(line.startswith("Stands again: ") for line in heard.reply.lines)
    assert barn.herd == before


def test_undo_right_after_a_question_drops_it() -> None:
    """An older note is not what was meant; what the asked note recorded goes with it."""
    barn = Barn()
    barn.say("31 3-14")
    barn.say("bred 15", minutes=1)
    assert "Dropped" in barn.say("undo", minutes=2).reply.text
    assert [each["who"] for each in barn.stands()] == ["31"]
    barn.say("32 4-1; 12 lost 9", minutes=3)
    barn.say("undo", minutes=4)
    assert [each["who"] for each in barn.stands()] == ["31"]


@pytest.mark.parametrize(
    ("told", "said", "put", "stands"),
    [
        ("14 kindled 7", "make that 8", {"born": 8}, {"born": 8}),
        ("14 kindled 8, 2 dead", "make that dead 3", {"dead": 3}, {"born": 8, "alive": 5, "dead": 3}),
        ("bred 15 to 3", "sorry 16 not 15", {"who": "16"}, {"doe": "16", "buck": "3"}),
        ("bred 15 to 3", "that was moss", {"who": "5"}, {"doe": "15", "buck": "5"}),
        ("31 3-14", "make that 3-12", {"grams": 1701}, {"who": "31", "grams": 1701}),
        ("12 lost 1 kit cold", "no it was a rat", {"cause": "predator"}, {"doe": "12", "cause": "predator"}),
        ("31 3-14", "that was on 2026-11-24", {"on": "2026-11-24"}, {"who": "31", "on": "2026-11-24"}),
    ],
)
def test_a_correction_puts_one_field_right(told: str, said: str, put: dict[str, object], stands: dict[str, object]) -> None:
    """Only `correct` is printed; the book holds the fact as it should be."""
    barn = Barn()
    barn.say(told)
    heard = barn.say(said, minutes=1)
    assert facts(heard) == [{"kind": "correct", "set": put}]
    (fact_now,) = barn.stands()
    assert stands.items() <= fact_now.items()
    assert heard.reply.lines[-1].startswith("Was: ")


def test_a_correction_finds_the_fact_that_holds_what_was_wrong() -> None:
    """ "Not 15" is the note about 15, though another came later; a side fact is not what a number means."""
    barn = Barn()
    barn.say("15 4-3")
    barn.say("31 3-14", minutes=1)
    barn.say("that was 16 not 15", minutes=2)
    assert [entry.fact.who for _, entry in barn.book.happened() if entry.fact.kind == "weighed"] == ["16", "31"]  # type: ignore[attr-defined]
    barn.say("12 lost 1; 12 lounging", minutes=3)
    barn.say("make that 2", minutes=4)
    assert {"kind": "kits_lost", "doe": "12", "on": ON, "count": 2} in barn.stands()


def test_a_plan_put_right_lies_ahead() -> None:
    """ "Make that saturday" is the next one, though a past Saturday was nearer."""
    barn = Barn()
    barn.say("remind me friday to trim nails")
    heard = barn.say("make that saturday", minutes=1)
    assert facts(heard) == [{"kind": "correct", "set": {"on": "2026-11-28"}}]
    assert why(barn.say("make that 3-12", minutes=2)) == "what"


@pytest.mark.parametrize(
    ("told", "said", "put"),
    [
        ("bred 15 to flint", "the buck was moss", {"buck": "5"}),
        ("bred 15 to flint", "her tag is 16", {"doe": "16"}),
        ("14 kindled 7", "the mother was clover", {"doe": "9"}),
        ("12 lost 1", "actually 1 kit cold", {"cause": "cold"}),
    ],
)
def test_words_that_are_no_note_may_put_the_last_one_right(told: str, said: str, put: dict[str, object]) -> None:
    """A field by its name, or the rest of its sentence told otherwise."""
    barn = Barn()
    barn.say(told)
    heard = barn.say(said, minutes=1)
    assert facts(heard) == [{"kind": "correct", "set": put}]


@pytest.mark.parametrize("said", ["the buck was purple", "the sire is moss", "no, what a day", "no"])
def test_words_that_put_nothing_right_stay_words(said: str) -> None:
    """No such animal, no such field, nothing that differs, and nothing that was asked."""
    barn = Barn()
    barn.say("31 3-14")
    before = barn.herd.animals
    heard = barn.say(said, minutes=1)
    assert [fact["kind"] for fact in facts(heard)] in ([], ["remark"])
    assert barn.herd.animals == before
    if said == "no":
        assert heard.reply.lines == ("Nothing is waiting for an answer.",)


def test_a_plans_yes_without_a_plan_says_what_to_ask() -> None:
    """`do it` takes up the plan that stands before it; with none there, it is told how to see one."""
    heard = Barn().say("do it")
    assert heard.reply.lines == ("Send \u201cwinter\u201d first: then \u201cdo it\u201d plans what stands there.",)
    assert not facts(heard)


def test_a_correction_of_a_named_animals_fact() -> None:
    """Not of the last one."""
    barn = Barn()
    barn.say("31 3-14")
    barn.say("32 4-1", minutes=1)
    assert facts(barn.say("31 should be 3-12", minutes=2)) == [{"kind": "correct", "set": {"grams": 1701}, "who": "31"}]
    assert {each["who"]: each["grams"] for each in barn.stands()} == {"31": 1701, "32": 1843}


def test_a_correction_that_nothing_takes_asks() -> None:
    """A weighing has no dead kits."""
    barn = Barn()
    barn.say("31 3-14")
    heard = barn.say("make that dead 3", minutes=1)
    assert why(heard) == "what"
    assert facts(heard) == []


def test_a_correction_that_cannot_be_asks() -> None:
    """The corrected fact is checked like any other, in the herd without the wrong one."""
    barn = Barn()
    barn.say("12 lost 5")
    barn.say("make that 6", minutes=1)
    assert barn.stands()[0]["count"] == 6
    assert why(barn.say("make that 9", minutes=2)) == "impossible"
    assert barn.stands()[0]["count"] == 6


@pytest.mark.parametrize(
    ("said", "put"),
    [("no 9 not 8", {"born": 9}), ("no 9 not 14", {"who": "9"}), ("make that 9", {"born": 9}), ("no 7", {"born": 7})],
)
def test_a_number_is_the_count_or_the_animal_as_what_was_wrong_tells(said: str, put: dict[str, object]) -> None:
    """Or as only one of them can be: 7 is a buck, and did not kindle."""
    barn = Barn()
    barn.say("14 kindled 8")
    assert facts(barn.say(said, minutes=1)) == [{"kind": "correct", "set": put}]


def test_a_number_that_may_be_either_asks() -> None:
    """9 is a doe that may have kindled, and nine kits are a litter."""
    barn = Barn()
    barn.say("14 kindled 8")
    heard = barn.say("no 9", minutes=1)
    assert (facts(heard), why(heard)) == ([], "which_number")
    assert len(heard.reply.choices) == 2


def test_a_correction_with_nothing_to_correct_is_kept_as_said() -> None:
    """And the person is told."""
    heard = Barn().say("make that 8")
    assert facts(heard) == [{"kind": "correct", "set": {"count": 8}}]
    assert heard.reply.lines == ("There is no note of yours to put right yet.",)


def test_the_other_persons_last_note_can_be_put_right() -> None:
    """Where one has none of one's own."""
    barn = Barn()
    barn.say("14 kindled 7")
    assert facts(barn.say("make that 8", "bo", minutes=1)) == [{"kind": "correct", "set": {"born": 8}}]


def test_an_edit_replaces_the_message() -> None:
    """In its place; the same words again change nothing."""
    barn = Barn()
    barn.say("14 kindled 7", number="a")
    barn.say("31 3-14", minutes=1)
    again = barn.say("14 kindled 7", number="a", edit=1, minutes=2)
    assert not again.is_new
    barn.say("14 kindled 8", number="a", edit=1, minutes=2)
    barn.say("14 kindled 9", number="a", edit=2, minutes=3)
    assert [each.get("born") for each in barn.stands()] == [None, 9]
    assert [entry.place[0] for entry in barn.book.standing()] == [2, 1]


def test_an_edit_after_an_answer_takes_the_answer_back_too() -> None:
    """ "Bred 15", "flint", then edited to Moss: one mating, to Moss."""
    barn = Barn()
    barn.say("bred 15", number="a")
    barn.say("flint", minutes=1)
    barn.say("bred 15 to moss", number="a", edit=1, minutes=2)
    assert barn.stands() == [{"kind": "bred", "doe": "15", "buck": "5", "on": ON}]


def test_undo_of_an_edited_message_takes_every_version_back() -> None:
    """None of them comes back."""
    barn = Barn()
    barn.say("14 kindled 7", number="a")
    barn.say("14 kindled 8", number="a", edit=1, minutes=1)
    barn.say("undo", minutes=2)
    assert barn.stands() == []


def test_an_edited_correction_corrects_the_same_fact() -> None:
    """ "Make that 8" edited to 9 puts the first note right."""
    barn = Barn()
    barn.say("14 kindled 7")
    barn.say("make that 8", number="c", minutes=1)
    barn.say("make that 9", number="c", edit=1, minutes=2)
    assert barn.stands() == [{"kind": "kindled", "doe": "14", "born": 9, "on": ON}]
    assert [entry.place for entry in barn.book.standing() if entry.fact.kind == "kindled"] == [(1, 0)]


def test_the_same_message_heard_again_gives_the_same_answer() -> None:
    """And is not recorded twice."""
    barn = Barn()
    first = barn.say("15 kindled 6", number="a")
    again = barn.say("15 kindled 6", number="a")
    assert again.reply == first.reply
    assert not again.is_new
    plain = barn.say("31 3-14", number="b", minutes=1)
    assert barn.say("31 3-14", number="b").reply == plain.reply


def test_the_sire_asked_about_is_told_by_taking_other_breedings_back() -> None:
    """Two bucks fit; the one named stays."""
    barn = Barn()
    barn.say("bred 15 to 3", minutes=-31 * 1440)
    barn.say("bred 15 to 5", minutes=-31 * 1440 + 60)
    assert why(barn.say("15 kindled 6")) == "which_animal"
    assert facts(barn.say("juno", minutes=1))[0]["kind"] == "remark"
    assert why(barn.say("hello", minutes=1)) is None
    barn.say("it was moss", minutes=2)
    assert [each["buck"] for each in barn.stands() if each["kind"] == "bred"] == ["5"]
    assert [litter.sire for litter in barn.herd.litters.values() if litter.dam == "15"] == ["5"]


# --- which field --------------------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("kind", "fields", "name", "value", "own"),
    [
        ("weighed", {"who": "31", "grams": 1}, "count", 4, None),
        ("sold", {"who": "31"}, "count", 4, None),
        ("sold", {"litter_of": "12", "count": 2}, "who", "16", "litter_of"),
        ("tagged", {"litter_of": "12", "tag": "R30"}, "who", "16", "litter_of"),
        ("tagged", {"who": "31", "tag": "R30"}, "who", "32", "who"),
        ("animal", {"tag": "40"}, "who", "41", "tag"),
        ("fostered", {"from_": "14", "to": "12", "count": 2}, "who", "9", "from"),
        ("weather", {"what": "cold"}, "who", "9", None),
        ("culled", {"who": "12", "live_grams": 4000}, "grams", 4100, "live_grams"),
        ("planned", {"who": "12", "what": "cull", "until": date(2026, 12, 1)}, "on", "2026-12-02", "until"),
    ],
)
def test_a_corrected_value_finds_the_facts_own_field(
    kind: str, fields: dict[str, object], name: str, value: object, own: str | None
) -> None:
    """An animal where the fact has its animal, a number where it counts."""
    assert field_for(fact(kind, **fields), name, value, farm()) == own


def test_what_was_wrong_is_found_by_tag_name_or_word() -> None:
    """A fact about 14 holds `Juno`; one of today holds no `moss`."""
    told = fact("kindled", doe="14", born=7)
    assert holds(told, "juno", farm())
    assert holds(told, "7", farm())
    assert not holds(told, "moss", farm())


@pytest.mark.parametrize(
    ("kind", "fields", "put", "right"),
    [
        ("kindled", {"doe": "14", "born": 7, "alive": 7}, {"born": 8}, {"born": 8, "alive": 8}),
        ("kindled", {"doe": "14", "born": 7, "alive": 5}, {"born": 8}, {"born": 8, "alive": 5}),
        ("kindled", {"doe": "14", "born": 8, "alive": 6, "dead": 2}, {"born": 9}, {"born": 9, "alive": 7, "dead": 2}),
        ("kindled", {"doe": "14", "born": 8, "alive": 6, "dead": 2}, {"alive": 7}, {"born": 8, "alive": 7, "dead": 1}),
        ("kindled", {"doe": "14", "born": 8, "alive": 6}, {"alive": 9}, {"born": 9, "alive": 9}),
        ("kindled", {"doe": "14", "born": 8}, {"doe": "9"}, {"doe": "9", "born": 8}),
        ("weaned", {"doe": "16", "count": 5, "bucks": 3, "does": 2}, {"bucks": 2}, {"count": 4, "bucks": 2, "does": 2}),
        ("weaned", {"doe": "16", "count": 5, "bucks": 3, "does": 2}, {"count": 4}, {"count": 4}),
        ("weaned", {"doe": "16", "count": 5, "bucks": 3}, {"count": 4}, {"count": 4, "bucks": 3}),
    ],
)
def test_numbers_that_hang_together_stay_together(
    kind: str, fields: dict[str, object], put: dict[str, object], right: dict[str, object]
) -> None:
    """Born, alive and dead; bucks, does and the count."""
    corrected = amended(fact(kind, **fields), put)
    assert corrected is not None
    said = to_json(corrected)
    assert right.items() <= said.items()
    assert {name for name in said if name not in ("kind", "on", "doe")} == set(right) - {"doe"}


def test_a_value_that_makes_no_fact_is_none() -> None:
    """A day that is no day."""
    assert amended(fact("weighed", who="31", grams=1), {"on": "on"}) is None
