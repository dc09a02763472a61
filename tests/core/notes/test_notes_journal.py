"""Which facts of a journal stand, and where a fact put right stands among the others."""

from __future__ import annotations

from datetime import UTC, date, datetime

from core.notes.fact import Fields
from core.notes.journal import Note, Target, standing
from core.notes.kinds.correction import Correct
from core.notes.kinds.weighing import Weighed

AT = datetime(2026, 3, 1, 12, tzinfo=UTC)
ON = date(2026, 3, 1)
FIRST, SECOND, THIRD = (Weighed(who="31", grams=grams, on=ON) for grams in (1000, 1100, 1200))
CORRECT = Correct(set=Fields((("grams", 1),)))


def note(number: int, *facts: object, reverses: tuple[Target, ...] = (), edit: int = 0) -> Note:
    return Note(number, "", AT, "ann", facts=facts, reverses=reverses, edit=edit)  # type: ignore[arg-type] # any facts


def test_an_undone_undo_lets_the_fact_stand_again() -> None:
    """A reversal of a reversal restores."""
    told = note(1, FIRST)
    undo = note(2, reverses=(Target(1),))
    assert [entry.fact for entry in standing([told])] == [FIRST]
    assert standing([told, undo]) == ()
    assert [entry.fact for entry in standing([told, undo, note(3, reverses=(Target(2),))])] == [FIRST]


def test_one_fact_of_a_note_can_be_taken_back() -> None:
    """The others of the same message stand."""
    told = note(1, FIRST, SECOND)
    assert [entry.target for entry in standing([told, note(2, reverses=(Target(1, 0),))])] == [Target(1, 1)]


def test_a_fact_put_right_keeps_the_place_of_the_wrong_one() -> None:
    """A correction, and a correction of it, stand where the first note stood."""
    told, other = note(1, FIRST), note(2, SECOND)
    right = note(3, CORRECT, THIRD, reverses=(Target(1, 0),))
    again = note(4, CORRECT, FIRST, reverses=(Target(3, 1),))
    places = {entry.note.id: entry.place for entry in standing([told, other, right]) if entry.fact is not CORRECT}
    assert places == {2: (2, 0), 3: (1, 0)}
    assert [entry.place for entry in standing([told, other, right, again]) if entry.fact is FIRST] == [(1, 0)]


def test_an_edited_message_stands_where_it_was_first_sent() -> None:
    """Also after several edits."""
    notes = [note(1, FIRST), note(2, SECOND), note(3, THIRD, reverses=(Target(1),), edit=1)]
    assert [entry.place for entry in standing(notes)] == [(2, 0), (1, 0)]
    notes.append(note(4, FIRST, reverses=(Target(1), Target(3)), edit=2))
    assert [entry.place for entry in standing(notes)] == [(2, 0), (1, 0)]


def test_a_correction_of_what_is_not_in_the_journal_has_its_own_place() -> None:
    """The fold never fails on a journal that lacks its beginning."""
    assert standing([note(5, CORRECT, THIRD, reverses=(Target(1, 0),))])[1].place == (5, 1)
    assert standing([note(5, CORRECT, THIRD, reverses=(Target(1),))])[1].place == (5, 1)
    assert standing([note(5, CORRECT, THIRD)])[1].place == (5, 1)


def test_a_note_knows_its_reading() -> None:
    """What was understood can be shown again from the journal."""
    assert note(1, FIRST).reading.facts == (FIRST,)
