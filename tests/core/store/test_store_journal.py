"""The journal comes back as it went in, on both engines."""

from __future__ import annotations

from dataclasses import MISSING, fields
from datetime import UTC, date, datetime, timedelta, timezone
from typing import Any

import pytest
from sqlalchemy import Connection, Engine, insert, select
from sqlalchemy.exc import IntegrityError, StatementError

from core.notes.fact import Cents, ColorCounts, Fact, Fields
from core.notes.journal import Note, Target
from core.notes.kinds.kindling import Kindled
from core.notes.kinds.mating import Bred
from core.notes.kinds.setting import SettingChanged
from core.notes.reading import Ask, Draft, ReplyTo
from core.store import journal
from core.store.columns import Moment
from core.store.fact_tables import FACT_TYPES
from core.store.people import add_farm
from core.store.tables import notes

AT = datetime(2026, 3, 4, 7, 15, 30, 123456, tzinfo=timezone(timedelta(hours=-6)))

#: A telling value of each type of field.
VALUES: dict[str, Any] = {
    "int": 8,
    "float": 3.5,
    "bool": False,
    "date": date(2026, 3, 4),
    "str": "naïve “words” 🐇",
    "Tag": "R21",
    "Sex": "doe",
    "Cents": Cents(1850),
    "SettingValue": "13:30",
    "ColorCounts": ColorCounts((("red", 2), ("castor", 1), ("red", 3))),
    "Fields": Fields((("who", "15"), ("count", 7))),
}


def filled(fact: type[Fact], *, whole: bool) -> Fact:
    """A fact with every field said, or only those that must be."""
    said = [field for field in fields(fact) if whole or (field.default is MISSING and field.default_factory is MISSING)]
    return fact(**{field.name: VALUES[str(field.type).removesuffix(" | None")] for field in said})


def note(place: int, *facts: Fact, **more: Any) -> Note:
    """A note of that number."""
    return Note(**{"id": place, "text": f"note {place}", "at": AT, "author": "ann", "facts": facts} | more)


@pytest.mark.parametrize("kind", sorted(FACT_TYPES))
def test_every_kind_comes_back(connection: Connection, kind: str) -> None:
    """A fact with all its fields, and one with the needed ones alone, are the same after the database."""
    kept = note(1, filled(FACT_TYPES[kind], whole=True), filled(FACT_TYPES[kind], whole=False))
    journal.append(connection, 1, kept)
    assert journal.load(connection, 1) == (kept,)


@pytest.mark.parametrize("value", [3, 0.7, "opal", "18.50"])
def test_a_settings_value_keeps_its_type(connection: Connection, value: float | str) -> None:
    """Numbers stay numbers and words stay words."""
    journal.append(connection, 1, note(1, SettingChanged(name="aim", value=value)))
    (fact,) = journal.load(connection, 1)[0].facts
    assert isinstance(fact, SettingChanged)
    assert (fact.value, type(fact.value)) == (value, type(value))


def test_a_whole_note_comes_back(connection: Connection) -> None:
    """Question, draft, answer, subject, what it answers and what it takes back: nothing is lost."""
    draft = Draft("kindled", {"doe": "14"}, "born", (Draft("remark", {"text": "x"}, "confirm"),))
    first = note(1, filled(Kindled, whole=True), chat="c", number="5", ask=Ask("how_many", "How many?", ("7", "8"), draft), unread="um")
    more = {"reply_to": ReplyTo("kindling", "14", "kindling:14:2026-03-04"), "subject": "14", "reply": "Noted.\nThanks."}
    second = note(2, chat="c", number="5", edit=1_790_000_000, reverses=(Target(1), Target(1, 0)), **more)
    bare = note(3, ask=Ask("what", "What?"))
    for each in (first, second, bare):
        journal.append(connection, 1, each)
    assert journal.load(connection, 1) == (first, second, bare)


def test_a_moment_comes_back_in_utc(connection: Connection) -> None:
    """The offset is gone, the moment is not, to the microsecond."""
    journal.append(connection, 1, note(1))
    assert journal.load(connection, 1)[0].at == AT
    assert journal.load(connection, 1)[0].at.tzinfo == UTC


def test_a_moment_without_offset_is_refused(connection: Connection) -> None:
    """Whose seven o'clock would it be?"""
    with pytest.raises(StatementError, match="has no offset"):
        journal.append(connection, 1, note(1, at=datetime(2026, 3, 4, 7, 15)))  # noqa: DTZ001 - the very thing that is refused


def test_an_unsaid_moment_stays_unsaid(opened: Engine) -> None:
    """Nothing becomes nothing, both ways."""
    kind = Moment()
    assert kind.process_bind_param(None, opened.dialect) is None
    assert kind.process_result_value(None, opened.dialect) is None


def test_only_the_newer_notes(connection: Connection) -> None:
    """What is known already is not read again."""
    for number in (1, 2, 3):
        journal.append(connection, 1, note(number, filled(Bred, whole=True), reverses=(Target(1),) if number > 1 else ()))
    assert [each.id for each in journal.load(connection, 1, after=1)] == [2, 3]
    assert journal.load(connection, 1, after=3) == ()
    assert journal.last_id(connection, 1) == 3


def test_the_same_message_goes_in_once(opened: Engine) -> None:
    """The database itself refuses a second note of one chat, number and edit."""
    with opened.begin() as connection:
        add_farm(connection, "home")
        journal.append(connection, 1, note(1, chat="c", number="5"))
    with pytest.raises(IntegrityError), opened.begin() as connection:
        journal.append(connection, 1, note(2, chat="c", number="5"))


def test_messages_without_a_number_are_each_their_own(connection: Connection) -> None:
    """The terminal gives none."""
    for number in (1, 2):
        journal.append(connection, 1, note(number, chat="c"))
    assert journal.last_id(connection, 1) == 2


def test_a_fact_needs_its_note(opened: Engine) -> None:
    """Foreign keys are on."""
    from core.store.tables import facts

    with opened.begin() as connection:
        add_farm(connection, "home")
    with pytest.raises(IntegrityError), opened.begin() as connection:
        connection.execute(insert(facts).values(farm_id=1, note_id=7, fact_index=0, kind="bred"))


def test_farms_share_nothing(connection: Connection) -> None:
    """Each farm counts its own notes and reads only them."""
    other = add_farm(connection, "other")
    journal.append(connection, 1, note(1, filled(Bred, whole=True)))
    journal.append(connection, other, note(1, filled(Kindled, whole=True), reverses=(Target(1),)))
    assert [type(each.facts[0]) for each in journal.load(connection, 1)] == [Bred]
    assert [each.reverses for each in journal.load(connection, other)] == [(Target(1),)]
    assert journal.load(connection, 99) == ()


def test_a_rolled_back_note_was_never_there(opened: Engine) -> None:
    """A transaction that fails leaves nothing."""
    with opened.begin() as connection:
        add_farm(connection, "home")
    with opened.connect() as connection:
        journal.append(connection, 1, note(1, filled(Bred, whole=True)))
        connection.rollback()
    with opened.begin() as connection:
        assert connection.execute(select(notes)).all() == []
