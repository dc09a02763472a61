"""What the book wrote is read back exactly, and nothing else is taken for it."""

from __future__ import annotations

from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.herd.state import Herd
from core.notes.fact import Cents, ColorCounts, Fact
from core.notes.kinds import KIND_OF, KINDS
from core.notes.written import written_fact
from tests.farm import TODAY, fact, small_herd
from tests.strategies import written_facts

HERD = small_herd()
FACTS = written_facts()


@pytest.mark.parametrize("kind", sorted(FACTS))
@given(data=st.data())
def test_read_back(kind: str, data: st.DataObject) -> None:
    """Every kind's sentence gives its fact, whichever day it is read on; without its day in front, it is of that day."""
    one = data.draw(FACTS[kind])
    text = KIND_OF[kind].show(one, HERD)

    assert written_fact(text, HERD, date(2030, 1, 1)) == one
    bare = text.removeprefix(f"{getattr(one, 'on', None)}: ")
    assert written_fact(bare, HERD, getattr(one, "on", None) or TODAY) == one


@given(
    st.text(min_size=1),
    st.sampled_from(("remark", "sold", "died", "fault", "moved", "done", "treated", "shown", "temper", "color", "skipped")),
)
def test_anybodys_words_come_back(words: str, kind: str) -> None:
    """Whatever a person's own words hold, they come back as they were."""
    fields = {
        "remark": {"text": words}, "sold": {"who": "31", "price": Cents(4000), "to": words}, "died": {"who": "31", "cause": words},
        "fault": {"who": "31", "fault": words}, "moved": {"who": "31", "cage": words}, "done": {"chore": words},
        "treated": {"who": "31", "with_": words, "dose": words}, "shown": {"who": "31", "placing": words},
        "temper": {"who": "31", "grade": "bad", "sign": words}, "color": {"who": "31", "color": words}, "skipped": {"chore": words},
    }[kind]  # fmt: skip
    one = fact(kind, **fields)

    sentence = KIND_OF[kind].show(one, HERD)
    assert sentence.isprintable()
    assert written_fact(sentence, HERD, TODAY) == one


def test_a_remark_that_ends_like_an_answer() -> None:
    """Words that a file would take for a yes stand in quotes."""
    assert KIND_OF["remark"].show(fact("remark", text="the vet's visit is confirmed."), HERD).endswith('confirmed."')


@given(st.dictionaries(st.text(min_size=1), st.integers(1, 9), min_size=1, max_size=3))
def test_any_colors_come_back(counts: dict[str, int]) -> None:
    """Colours that the handbook doesn't know come back too."""
    one = fact("litter_colors", doe="16", colors=ColorCounts(tuple(counts.items())))

    assert written_fact(KIND_OF["litter_colors"].show(one, HERD), HERD, TODAY) == one


@pytest.mark.parametrize(
    "text",
    [
        "31 4-6",
        "sold 31 for 40.00 to bob yesterday",
        "doe 14 kindled 8, 2 dead",
        "doe 14 kindled 8, 6 alive",
        "34 weighed 1900 g",
        "doe 99 missed",
        "fostered 2 kits from doe 12 to doe 99",
        "2026-13-40: doe 14 missed",
        "2026-11-24: plan to cull 31",
        "31 color blak",
        '31 fault "broken \\x"',
        "setting digest_day is someday",
        "setting bucks_a_breed for Unicorn is 2",
        "undo the sale on R23",
        "correct: who 15x",
        'correct: who "\\x"',
        "doe 16 litter colors many",
        "doe 16 litter colors 3 purplish",
        "plan to cull 31 on 2026-02-30",
    ],
)
def test_everything_else_is_left_to_the_reader(text: str) -> None:
    """A person's looser words, unknown animals and impossible values are no sentence of the book."""
    assert written_fact(text, HERD, TODAY) is None


def test_a_stud_from_elsewhere_comes_back() -> None:
    """A buck that is not on the book may stand in a breeding."""
    one = fact("bred", doe="15", buck="Duke")

    assert written_fact(KIND_OF["bred"].show(one, HERD), HERD, TODAY) == one


def test_a_new_animal_needs_no_book() -> None:
    """The first note of a farm is read back too."""
    assert written_fact('new doe 40, name "Hazel"', Herd(), TODAY) == fact("animal", tag="40", sex="doe", name="Hazel")


def test_one_sentence_has_one_reading() -> None:
    """No kind's pattern fits another kind's sentence."""

    def kinds_that_fit(one: Fact) -> set[str]:
        text = KIND_OF[one.kind].show(one, HERD)
        return {found.kind for found in [written_fact(text, HERD, TODAY)] if found}

    assert all(kind.written for kind in KINDS)
    assert kinds_that_fit(fact("died", litter_of="16", count=2)) == {"died"}
