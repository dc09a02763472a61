"""The herd as the fold of the notes: by the day things happened, and the same however the book was kept warm."""

from __future__ import annotations

from datetime import UTC, date, datetime, timedelta

from hypothesis import given
from hypothesis import strategies as st

from core.herd.state import Herd
from core.notes.journal import Note, Target
from core.notes.kinds.animal import AnimalNoted
from core.notes.kinds.death import Died
from core.notes.kinds.kindling import Kindled
from core.notes.kinds.plan import Planned
from core.notes.kinds.setting import SettingChanged
from core.notes.kinds.weighing import Weighed
from core.notes.replay import STRIDE, Book, book, fold, local_day, reversed_by, zone
from tests.strategies import journals, told_facts

AT = datetime(2026, 3, 10, 12, tzinfo=UTC)


def note(number: int, *facts: object, at: datetime = AT, reverses: tuple[Target, ...] = ()) -> Note:
    return Note(number, "", at, "ann", facts=facts, reverses=reverses)  # type: ignore[arg-type] # any facts


@given(journals())
def test_a_book_kept_warm_equals_the_whole_replay(notes: tuple[Note, ...]) -> None:
    """Note by note, in one go, or folded from the standing facts: one herd."""
    warm = Book()
    for each in notes:
        warm = warm.with_note(each)
    whole = book(Herd(), notes)
    assert warm.herd == whole.herd == fold(Herd(), whole.standing())
    assert warm.line.places == whole.line.places


@given(journals(), st.lists(told_facts(), min_size=1, max_size=3))
def test_undo_of_any_note_restores_the_herd_before(notes: tuple[Note, ...], facts: list[object]) -> None:
    """Whatever was told, and whenever it happened."""
    before = book(Herd(), notes)
    told = before.with_note(note(before.last_id + 1, *facts, at=notes[-1].at))
    assert told.with_note(note(told.last_id + 1, at=notes[-1].at, reverses=(Target(told.last_id),))).herd == before.herd


def test_a_late_note_lands_on_its_day() -> None:
    """Told after the death, the weight of the day before still counts, in its place."""
    kept = book(Herd(), [note(1, AnimalNoted(tag="31", on=date(2026, 3, 1))), note(2, Died(who="31", on=date(2026, 3, 9)))])
    late = kept.with_note(note(3, Weighed(who="31", grams=1500, on=date(2026, 3, 8))))
    assert [entry.fact.kind for _, entry in late.happened()] == ["animal", "weighed", "died"]
    assert [day for day, _ in late.happened()] == [date(2026, 3, 1), date(2026, 3, 8), date(2026, 3, 9)]


def test_plans_count_from_the_day_they_were_told() -> None:
    """A plan's `on` lies ahead: it must not wait for its day."""
    plan = Planned(who="31", what="cull", on=date(2026, 12, 3))
    kept = book(Herd(), [note(1, plan)])
    assert [day for day, _ in kept.happened()] == [date(2026, 3, 10)]


def test_the_day_told_follows_the_farms_timezone_as_it_was_then() -> None:
    """23:30 in Chicago is already tomorrow in UTC; a timezone told later doesn't move it."""
    late = datetime(2026, 3, 10, 4, 30, tzinfo=UTC)
    zoned = [note(1, SettingChanged(name="timezone", value="America/Chicago"), at=late), note(2, AnimalNoted(tag="31"), at=late)]
    moved = note(3, SettingChanged(name="timezone", value="Asia/Tokyo"), at=late)
    assert [day for day, _ in book(Herd(), zoned).happened()] == [date(2026, 3, 9), date(2026, 3, 9)]
    assert [day for day, _ in book(Herd(), zoned).with_note(moved).happened()][-1] == date(2026, 3, 10)
    assert local_day(late, book(Herd(), zoned).herd) == date(2026, 3, 9)


def test_an_unknown_timezone_is_taken_as_utc() -> None:
    """A slip in a setting must not stop the replay."""
    assert zone("nowhere") is UTC
    assert zone("") is UTC


def test_the_herd_before_a_note_is_found_in_a_long_book() -> None:
    """Before any day of many, near and far from the snapshots."""
    first = date(2026, 1, 1)
    notes = [note(1, AnimalNoted(tag="31", on=first))]
    notes += [note(number, Weighed(who="31", grams=number, on=first + timedelta(number))) for number in range(2, 2 * STRIDE + 10)]
    kept = book(Herd(), notes)
    for number in (2, 3, STRIDE - 1, STRIDE, STRIDE + 1, STRIDE + 5, 2 * STRIDE, 2 * STRIDE + 9):
        before = kept.before(first + timedelta(number), 0)
        assert [weight.grams for weight in before.animals["31"].weights] == list(range(2, number))


def test_a_late_note_in_a_long_book_costs_no_truth() -> None:
    """Far back, near the end and at a snapshot, the herd is that of the whole replay."""
    first = date(2026, 1, 1)
    notes = [note(1, AnimalNoted(tag="31", on=first))]
    notes += [note(number, Weighed(who="31", grams=number, on=first + timedelta(number))) for number in range(2, STRIDE + 10)]
    for back in (3, STRIDE - 1, STRIDE, STRIDE + 5):
        late = note(500, Kindled(doe="31", born=5, on=first + timedelta(back)))
        assert book(Herd(), notes).with_note(late).herd == book(Herd(), [*notes, late]).herd


def test_what_is_taken_back_and_by_which_note() -> None:
    """A reversal that was itself taken back takes nothing back."""
    told = note(1, Weighed(who="31", grams=1, on=date(2026, 3, 1)))
    undo = note(2, reverses=(Target(1),))
    assert reversed_by([told, undo]) == {Target(1): 2}
    assert reversed_by([told, undo, note(3, reverses=(Target(2),))]) == {Target(2): 3}


def test_an_empty_book_has_no_last_note() -> None:
    """The first note is number one."""
    assert Book().last_id == 0


@given(journals(), st.lists(told_facts(), min_size=2, max_size=4), st.integers(1, 3))
def test_a_note_that_tells_more_is_as_if_it_had_told_all_at_once(notes: tuple[Note, ...], facts: list[object], told: int) -> None:
    """Its first facts are taken in once, the others behind them: the same herd, in the same order."""
    before = book(Herd(), notes)
    whole = note(before.last_id + 1, *facts, at=notes[-1].at)
    begun = before.with_note(note(whole.id, *facts[:told], at=whole.at))
    grown, once = begun.with_note(whole, len(facts[:told])), before.with_note(whole)
    assert grown.herd == once.herd
    assert grown.notes == once.notes
    assert grown.line.places == once.line.places
