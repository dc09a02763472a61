"""Whatever a book holds, each form in which it leaves holds all that the form can carry, and says what it leaves out.

The tables, the workbook and the JSON are held to the same beside their own rooms: `test_moving_back`, `test_tables_round`.
"""

from __future__ import annotations

from datetime import UTC, datetime
from typing import Any

import vobject
from hypothesis import given, settings
from hypothesis import strategies as st

from bot.papers.calendar import ics
from core.app.carrying import journal_lines, notes_of
from core.app.taking_away import FORMS
from core.notes.as_notes import TALK, export_notes
from core.notes.journal import Note
from core.notes.layout.dated_lines import DatedLine, dated_lines
from core.notes.listen import listen
from core.notes.replay import book
from core.reports.due import due
from core.reports.papers.calendar import chore_calendar
from core.reports.papers.fam import SEX, fam_lines
from core.reports.papers.wanted import Wanted
from tests.conversations.heard import echo, farm
from tests.conversations.transcript import FARM
from tests.farm import TODAY
from tests.strategies import journals, written_facts

NOW = datetime(2026, 11, 25, 18, tzinfo=UTC)
FACTS = st.one_of(*(facts for kind, facts in written_facts().items() if kind not in TALK))


@settings(max_examples=15)
@given(st.lists(FACTS, max_size=4))
def test_as_notes_each_fact_is_read_again(facts: list[Any]) -> None:
    """Line by line the same facts, asked about or not, and the same herd."""
    told = book(farm(), [Note(1, "told", NOW, "me", facts=tuple(facts))])
    again = book(farm())
    for line, (_, entry) in zip(dated_lines("\n".join(export_notes(told))), told.happened(), strict=True):
        assert isinstance(line, DatedLine)
        heard = listen(again, line.message(FARM, "me"), echo)
        assert heard.note.facts == (entry.fact,), line.text
        again = heard.book
    assert again.herd == told.herd


@settings(max_examples=8)
@given(journals())
def test_an_archive_holds_every_note_as_it_was(notes: tuple[Note, ...]) -> None:
    """What was taken back too, with its author and moment; `about.json` says what stays behind."""
    assert notes_of(journal_lines("home", notes)) == notes


@settings(max_examples=8)
@given(journals())
def test_a_family_file_holds_everybody_and_says_that_it_holds_no_more(notes: tuple[Note, ...]) -> None:
    """Each animal once, with its sex where somebody told it."""
    herd = book(farm(), notes).herd
    rows = {row[1]: row for row in (line.split(" ") for line in fam_lines(herd, "home"))}
    assert len(rows) == len(fam_lines(herd, "home"))
    told = {one.key: SEX[one.sex] for one in herd.animals.values() if one.sex}
    assert {key: rows[key][4] for key in told} == told
    assert "Nothing else" in FORMS["fam"].tells


@settings(max_examples=8)
@given(journals())
def test_a_calendar_holds_every_chore(notes: tuple[Note, ...]) -> None:
    """As many as are due, each under a name of its own, in its own words; and it says until when."""
    herd = book(farm(), notes).herd
    made = chore_calendar(herd, "home", NOW, Wanted(days=60))
    events = vobject.readOne(ics(made).decode()).contents.get("vevent", [])
    assert [event.summary.value for event in events] == [chore.text for chore in due(herd, TODAY, 60).chores]
    assert len({event.uid.value for event in events}) == len(events)
    assert "until" in made.alt
