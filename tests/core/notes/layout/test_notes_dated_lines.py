"""Files of dated notes: what is a note, how it goes on, and how a line is known again."""

from __future__ import annotations

from datetime import date, datetime
from zoneinfo import ZoneInfo

from core.notes.layout.dated_lines import DatedLine, UndatedLine, dated_lines, written
from core.notes.talk.doubt import is_timed

FILE = """\
# a season
2026-03-04 07:15 doe 14 kindled 8, 2 dead
2026-03-05 31 4-6

2026-03-05T9:05 weights
  31 4-6
  32 4-2
2026-03-05 31 4-6
no date here
2026-02-30 feb thirty
2026-03-06 25:00 no such time
2026-03-07
"""


def lines() -> list[DatedLine | UndatedLine]:
    return list(dated_lines(FILE))


def test_each_dated_line_is_a_message_at_its_own_time() -> None:
    """The time may be missing: then it is noon."""
    first, second = lines()[0], lines()[1]
    assert isinstance(first, DatedLine)
    assert isinstance(second, DatedLine)
    chicago = ZoneInfo("America/Chicago")
    assert first.message(chicago, "ann").at == datetime(2026, 3, 4, 7, 15, tzinfo=chicago)
    assert second.message(chicago, "ann").at == datetime(2026, 3, 5, 12, tzinfo=chicago)
    assert first.message(chicago, "ann").text == "doe 14 kindled 8, 2 dead"
    assert (first.line, second.line) == (2, 3)


def test_two_spaces_go_on_with_the_message_above() -> None:
    """A list of weights is one message."""
    third = lines()[2]
    assert isinstance(third, DatedLine)
    assert third.text == "weights\n31 4-6\n32 4-2"
    assert third.line == 5


def test_a_line_is_known_by_its_words_and_how_often_they_came() -> None:
    """The same file gives the same identities; two equal lines two different ones; a line put in between changes none."""
    numbers = [each.number for each in lines() if isinstance(each, DatedLine)]
    assert len(set(numbers)) == len(numbers)
    more = list(dated_lines(FILE.replace("# a season", "2026-03-01 frost")))
    assert set(numbers) < {each.number for each in more if isinstance(each, DatedLine)}


def test_only_lines_with_a_time_can_be_duplicates() -> None:
    """A line's identity tells whether its time was written."""
    timed = [is_timed("replay", each.number) for each in lines() if isinstance(each, DatedLine)]
    assert timed[:3] == [True, False, True]
    assert is_timed("chat", "2026-03-05 --:-- 0 1")


def test_lines_without_a_day_are_handed_back() -> None:
    """No date, no such date, no such time: nothing is guessed."""
    assert [(each.line, each.text) for each in lines() if isinstance(each, UndatedLine)] == [
        (9, "no date here"),
        (10, "2026-02-30 feb thirty"),
        (11, "2026-03-06 25:00 no such time"),
    ]


def test_a_continuation_with_nothing_above_stands_alone() -> None:
    """Two spaces at the beginning of a file go on with nothing."""
    assert list(dated_lines("# nothing")) == []
    assert list(dated_lines("  31 4-6")) == [UndatedLine(1, "31 4-6")]


def test_a_note_written_as_a_line_reads_back() -> None:
    """Further lines of a text are indented, blank ones left out."""
    text = written(date(2026, 3, 4), "first\n\nsecond")
    assert text == "2026-03-04 first\n  second"
    (line,) = dated_lines(text)
    assert isinstance(line, DatedLine)
    assert line.text == "first\nsecond"
    assert written(date(2026, 3, 4), " ") == "2026-03-04 "
