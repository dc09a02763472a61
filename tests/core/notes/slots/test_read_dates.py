"""Days as people say them, told on Wednesday 25 November 2026; what can't be a day is none."""

from __future__ import annotations

from datetime import date

import pytest

from core.notes.slots.dates import Days, Said, ago_at, date_at, days_of
from core.notes.slots.tokens import tokens

TODAY = date(2026, 11, 25)


def day(text: str, direction: str = "past", order: str = "MDY", at: int = 0) -> date | None:
    """The day that the words at an index say; None where they say none."""
    found = date_at(tokens(text), at)
    return days_of(found[0], TODAY, direction, order).on if found else None


@pytest.mark.parametrize(
    ("text", "on"),
    [
        ("today", "2026-11-25"), ("tonight", "2026-11-25"), ("yesterday", "2026-11-24"), ("yday", "2026-11-24"), ("last night", "2026-11-24"),
        ("overnight", "2026-11-24"), ("this morning", "2026-11-25"), ("earlier today", "2026-11-25"), ("yesterday morning", "2026-11-24"),
        ("day before yesterday", "2026-11-23"), ("the day before yesterday", "2026-11-23"), ("monday", "2026-11-23"), ("tues", "2026-11-24"),
        ("wednesday", "2026-11-25"), ("last wednesday", "2026-11-18"), ("last friday", "2026-11-20"), ("thurs", "2026-11-19"),
        ("nov 3", "2026-11-03"), ("nov 3rd", "2026-11-03"), ("3 nov", "2026-11-03"), ("3rd of november", "2026-11-03"), ("Nov. 3, 2026", "2026-11-03"),
        ("23-Nov-26", "2026-11-23"), ("23 November 2026", "2026-11-23"), ("march fourth", "2026-03-04"), ("november twenty second", "2026-11-22"),
        ("november twenty", "2026-11-20"), ("11/20", "2026-11-20"), ("11/20/26", "2026-11-20"), ("11/20/2025", "2025-11-20"), ("2026-11-20", "2026-11-20"),
        ("dec 28", "2026-12-28"), ("3 days ago", "2026-11-22"), ("two weeks ago", "2026-11-11"), ("a week ago monday", "2026-11-16"),
        ("5 days back", "2026-11-20"), ("monday, 23 nov", "2026-11-23"), ("11/24 tuesday", "2026-11-24"), ("just now", "2026-11-25"),
        ("in november", "2026-11-01"), ("2 months ago", "2026-09-25"),
    ],
)  # fmt: skip
def test_a_past_day(text: str, on: str) -> None:
    """The latest such day."""
    found = ago_at(tokens(text), 0) or date_at(tokens(text), 0) or date_at(tokens(text), 1)
    assert found is not None
    assert days_of(found[0], TODAY, "past", "MDY").on == date.fromisoformat(on)


@pytest.mark.parametrize(
    ("text", "on"),
    [
        ("friday", "2026-11-27"), ("wednesday", "2026-12-02"), ("next friday", "2026-12-04"), ("friday week", "2026-12-04"), ("tomorrow", "2026-11-26"),
        ("day after tomorrow", "2026-11-27"), ("dec 3", "2026-12-03"), ("jan 3", "2027-01-03"), ("in 2 weeks", "2026-12-09"), ("in a couple of days", "2026-11-27"),
        ("2 weeks from today", "2026-12-09"), ("a week from saturday", "2026-12-05"), ("end of the month", "2026-11-30"), ("next week", "2026-11-30"),
        ("next month", "2026-12-01"), ("this weekend", "2026-11-28"), ("next weekend", "2026-12-05"), ("12/3", "2026-12-03"),
    ],
)  # fmt: skip
def test_a_day_to_come(text: str, on: str) -> None:
    """The next such day."""
    found = ago_at(tokens(text), 0) or date_at(tokens(text), 0)
    assert found is not None
    assert days_of(found[0], TODAY, "plan", "MDY").on == date.fromisoformat(on)


def test_a_day_of_the_month_is_the_latest_or_the_next() -> None:
    """`on the 3rd` lies behind for what happened and ahead for a plan."""
    assert day("on the 3rd", at=2) == date(2026, 11, 3)
    assert day("on the 28th", at=2) == date(2026, 10, 28)
    assert day("on the 3rd", "plan", at=2) == date(2026, 12, 3)
    assert day("on the seventh", at=2) == date(2026, 11, 7)


def test_the_farms_order_of_numbers() -> None:
    """`4/3` is April 3 or March 4."""
    assert day("4/3") == date(2026, 4, 3)
    assert day("4/3", order="DMY") == date(2026, 3, 4)


@pytest.mark.parametrize("text", ["feb 30", "2/29", "13/45", "tuesday 11/23", "31 nov"])
def test_no_such_day(text: str) -> None:
    """A date that can't be, or contradicts its weekday, is none."""
    found = date_at(tokens(text), 0)
    assert found is not None
    assert days_of(found[0], TODAY, "past", "MDY") == Days(None)


@pytest.mark.parametrize(
    "text",
    [
        "8",
        "may kindle",
        "sat in the nest",
        "sun spot on ear",
        "mon pen",
        "mar 3 litter 5",
        "the radio",
        "4th litter",
        "in the box",
        "2nd place",
        "day 32",
        "april",
        "end of story",
        "earlier note",
        "just fine",
        "night shift",
        "this one",
        "next box",
        "tom came",
        "32 days",
    ],
)
def test_words_that_are_no_date(text: str) -> None:
    """Bare numbers and names of days or months without an anchor are words."""
    assert date_at(tokens(text), 0) is None


def test_a_tag_before_a_month_is_no_day() -> None:
    """`cull 12 dec 3`: the third of December, for 12."""
    found = tokens("cull 12 dec 3")
    assert date_at(found, 1) is None
    assert date_at(found, 2) == (Said("day_month", 3, 12), 4)


def test_a_months_span() -> None:
    """A month alone is its first and its last day."""
    found = date_at(tokens("in january"), 1)
    assert found is not None
    assert days_of(found[0], TODAY, "plan", "MDY") == Days(date(2027, 1, 1), date(2027, 1, 31))


def test_told_as_past_but_ahead() -> None:
    """Dec 28 in November stays this year's, to be asked about; last year's where it lies half a year ahead. A birth goes back."""
    assert day("dec 28") == date(2026, 12, 28)
    january = date(2026, 1, 5)
    found = date_at(tokens("dec 28"), 0)
    assert found is not None
    assert days_of(found[0], january, "past", "MDY").on == date(2025, 12, 28)
    assert days_of(found[0], TODAY, "born", "MDY").on == date(2025, 12, 28)
