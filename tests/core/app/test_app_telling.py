"""What the book tells: the contract's objects, as of a moment."""

from __future__ import annotations

from datetime import timedelta

import pytest

from core.app import Problem
from core.app.book import App
from core.app.telling import Told
from core.notes.kinds.animal import AnimalNoted
from tests.core.app.conftest import AT, Say, record

LATER = AT + timedelta(days=40)


@pytest.fixture
def farm(app: App, small_farm: Say) -> App:
    """A farm with a litter."""
    small_farm("14 kindled 8, 2 dead", days=31)
    return app


def test_due_has_the_contracts_fields(farm: App) -> None:
    """Overdue ones first, none later than asked for."""
    told = farm.due(LATER, 14).document["chores"]
    assert {"on", "chore", "tag", "text", "key", "overdue"} <= set(told[0])
    assert told[0]["overdue"] is True
    assert max(chore["on"] for chore in told) <= f"{LATER + timedelta(days=14):%Y-%m-%d}"
    assert farm.due(LATER).document["chores"] == told


@pytest.mark.parametrize(
    ("question", "keys"),
    [("digest", {"week_of", "flags", "chores", "counts"}), ("keep", {"today", "verdicts", "plan"}), ("herd", {"animals"})],
)
def test_the_reports_have_the_contracts_fields(farm: App, question: str, keys: set[str]) -> None:
    """Each comes as an object and as a reply."""
    told = getattr(farm, question)(LATER)
    assert keys <= set(told.document)
    assert told.reply.lines


def test_a_card_is_the_herds_object_with_more(farm: App) -> None:
    """By tag, in any spelling."""
    told = farm.card("014", LATER)
    assert isinstance(told, Told)
    (herds,) = [one for one in farm.herd(LATER).document["animals"] if one["tag"] == "14"]
    assert set(herds) < set(told.document)
    assert told.reply.lines[0].startswith("Doe 14")


def test_a_card_by_name(farm: App) -> None:
    """A name does as well as a tag."""
    record(farm, AnimalNoted(tag="14", name="Juno"))
    told = farm.card("juno", LATER)
    assert isinstance(told, Told)
    assert told.document["tag"] == "14"


def test_a_card_of_nobody(farm: App) -> None:
    """The tag is named, and how to find the right one."""
    told = farm.card("99", LATER)
    assert isinstance(told, Problem)
    assert (told.code, "99" in told.text, bool(told.remedy)) == ("no_animal", True, True)


def test_notes_sent_later_do_not_count(farm: App, say: Say) -> None:
    """Nor does what they took back."""
    before = farm.due(LATER).document
    say("undo", days=50)
    say("new doe 40 mini rex", days=50)
    assert farm.due(LATER).document == before
    assert farm.due(AT + timedelta(days=51)).document != before


def test_a_question_is_answered_in_the_chat(farm: App, say: Say) -> None:
    """The same reports, as a reply."""
    assert say("who's due", days=40).lines == farm.due(AT + timedelta(days=40)).reply.lines
