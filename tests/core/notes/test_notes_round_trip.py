"""Every fact, written back, reads as itself: what the book exports is what it takes."""

from __future__ import annotations

from datetime import UTC, datetime, time

import pytest
from hypothesis import given
from hypothesis import strategies as st

from core.notes.fact import from_json, to_json
from core.notes.kinds import KIND_OF
from core.notes.reader import read
from core.notes.reading import Context, Message
from tests.farm import TODAY, small_herd
from tests.strategies import written_facts

FACTS = written_facts()
HERD = small_herd()


@pytest.mark.parametrize("kind", sorted(FACTS))
@given(data=st.data())
def test_written_back_it_reads_as_itself(kind: str, data: st.DataObject) -> None:
    """The sentence of a fact has one reading: that fact, no question, no word left over."""
    fact = data.draw(FACTS[kind])
    text = KIND_OF[kind].show(fact, HERD)

    reading = read(Message(text, datetime.combine(TODAY, time(12), UTC)), HERD, Context())

    assert [to_json(one) for one in reading.facts] == [to_json(fact)], text
    assert reading.ask is None, text


@pytest.mark.parametrize("kind", sorted(FACTS))
@given(data=st.data())
def test_json_gives_the_fact_back(kind: str, data: st.DataObject) -> None:
    """What the contract prints of a fact makes the same fact."""
    fact = data.draw(FACTS[kind])

    assert from_json(type(fact), to_json(fact)) == fact


@pytest.mark.parametrize("kind", sorted(FACTS))
@given(data=st.data())
def test_taken_answered_and_written(kind: str, data: st.DataObject) -> None:
    """Any fact can be taken, and its reply and its sentence are whole lines."""
    fact, of = data.draw(FACTS[kind]), KIND_OF[kind]
    after = of.apply(fact, HERD)

    assert all(line == line.strip() and "None" not in line for line in of.reply(fact, HERD, after))
    assert "None" not in of.show(fact, HERD)


def test_every_kind_has_facts() -> None:
    """The strategies cover every kind."""
    assert set(FACTS) == set(KIND_OF)
