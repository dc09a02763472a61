"""Days as people say them, fenced: only anchored shapes are dates, never a bare number, `may`, `mar`, `sat` or `sun`.

Weekdays, days of the month and `a week ago monday` are our own arithmetic; what is left of the anchored shapes goes to dateparser.
A date is found first and weighed later: whether it lies behind or ahead depends on the kind of note.

Over 300 lines: the shapes of a day are tried in one order, and each guards the next.
"""

from __future__ import annotations

import calendar
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, datetime, timedelta
from functools import lru_cache
from typing import Final

from core.notes.slots.numbers import ORDINALS, UNITS, spoken
from core.notes.slots.tokens import NUMBER, Token

MONTHS: Final = {
    name: number
    for number, names in enumerate(
        (
            "january jan", "february feb", "march mar", "april apr", "may", "june jun", "july jul", "august aug", "september sep sept",
            "october oct", "november nov", "december dec",
        ),
        start=1,
    )
    for name in names.split()
}  # fmt: skip
WEEKDAYS: Final = {
    name: number
    for number, names in enumerate(
        ("monday mon", "tuesday tues tue", "wednesday wed weds", "thursday thurs thur thu", "friday fri", "saturday sat", "sunday sun")
    )
    for name in names.split()
}
#: Short names that are words as well: dates only behind `on`, `last`, `next`, `this`, `til` or at an end.
WORDLIKE: Final = frozenset({"mon", "wed", "sat", "sun", "fri", "may", "mar", "march"})
NEAR_DAYS: Final = {
    "today": 0, "tonight": 0, "tonite": 0, "2day": 0, "yesterday": -1, "yday": -1, "yest": -1, "ystday": -1, "yesterdays": -1, "overnight": -1,
    "tomorrow": 1, "tmrw": 1, "tmw": 1, "tomorow": 1, "tomm": 1, "tom": 1, "todays": 0,
}  # fmt: skip
MOST_DAYS: Final = 36_500  # not a figure: a hundred years
PARTS_OF_DAY: Final = frozenset({"morning", "afternoon", "evening", "night", "noon", "am", "pm", "eve", "midday", "morn"})
PERIODS: Final = {
    "day": "day", "days": "day", "d": "day", "week": "week", "weeks": "week", "wk": "week", "wks": "week", "month": "month", "months": "month",
    "mo": "month", "mos": "month", "year": "year", "years": "year", "yr": "year", "yrs": "year", "hour": "hour", "hours": "hour", "hr": "hour",
    "hrs": "hour", "minute": "minute", "minutes": "minute", "min": "minute", "mins": "minute",
}  # fmt: skip
DATE_FIRST: Final = frozenset(
    {
        *MONTHS,
        *WEEKDAYS,
        *NEAR_DAYS,
        "last",
        "this",
        "next",
        "the",
        "day",
        "in",
        "end",
        "week",
        "wk",
        "christmas",
        "xmas",
        "new",
        "halloween",
        "earlier",
        "just",
        "night",
        "nite",
    }
)
WEEK_OF: Final = "week of"
WEEKS_SAID = 4  # not a figure: a month's weeks by number
MONTHS_BACK_AT_MOST = 13  # not a figure: a past date older than this is more likely a slip


@dataclass(frozen=True, slots=True)
class Said:
    """A day as it was said.

    shape  near (days), weekday (0 to 6), day (of the month), day_month, month, numeric, iso, ago (words for dateparser)
    """

    shape: str
    a: int = 0
    b: int = 0
    year: int | None = None
    modifier: str = ""  # last, next, this
    words: str = ""
    weekday: int | None = None  # the weekday said beside it


@dataclass(frozen=True, slots=True)
class Days:
    """What it comes to: `on`, or a span until `until`; neither where it can't be."""

    on: date | None
    until: date | None = None


def date_at(tokens: Sequence[Token], at: int) -> tuple[Said, int] | None:
    """The date that begins at `at`, and the index after it."""
    found = _one_date(tokens, at)
    if found is None:
        return None
    said, end = found
    while True:
        following = _joined(tokens, end)
        further = _one_date(tokens, following) if following < len(tokens) else None
        together = _together(said, further[0]) if further else None
        if together is None or further is None:
            return said, end
        said, end = together, further[1]


def _joined(tokens: Sequence[Token], end: int) -> int:
    """Past a comma or `the` that stands between a weekday and its date."""
    while end < len(tokens) and tokens[end].key in {",", "on", "the"}:
        end += 1
    return end


def _together(one: Said, other: Said) -> Said | None:
    """A weekday and its date, or a day and its part of day, as one."""
    exact = {"day_month", "numeric", "iso", "day"}
    if one.shape == "weekday" and other.shape in exact and not one.modifier:
        return Said(other.shape, other.a, other.b, other.year, other.modifier, other.words, one.a)
    if other.shape == "weekday" and one.shape in exact and not other.modifier:
        return Said(one.shape, one.a, one.b, one.year, one.modifier, one.words, other.a)
    if one.shape == "month_alone" and other == Said("day", other.a):
        return Said("day", other.a, modifier=one.modifier)  # "next month on the 5th"
    if one.shape == "weekend" and other.shape == "weekday":
        return other
    return None


def _one_date(tokens: Sequence[Token], at: int) -> tuple[Said, int] | None:
    token = tokens[at]
    key = token.key
    if token.sort == "iso":
        year, month, day = (int(part) for part in key.split("-"))
        return Said("iso", day, month, year), at + 1
    if token.sort == "slash":
        return _numeric(key), at + 1
    if token.sort == NUMBER:
        return _from_number(tokens, at)
    if key in ORDINALS:
        return _ordinal_day(tokens, at, ORDINALS[key], at + 1)
    if key in DATE_FIRST:
        return _from_word(tokens, at, key)
    return None


def _numeric(said: str) -> Said:
    parts = [int(part) for part in said.split("/")]
    return Said("numeric", parts[0], parts[1], _full_year(parts[2]) if len(parts) > 2 else None)


def _full_year(year: int) -> int:
    return year + 2000 if year < 100 else year  # not a figure: a century


def _key(tokens: Sequence[Token], at: int) -> str:
    return tokens[at].key if 0 <= at < len(tokens) else ""


def _from_number(tokens: Sequence[Token], at: int) -> tuple[Said, int] | None:
    """`3 nov`, `23-Nov-26`, `3rd`, `11-24-26`, `3 days ago`."""
    key = tokens[at].key
    if not key.isdigit() or len(key) > 4:
        return None
    following = _key(tokens, at + 1)
    if following in {"st", "nd", "rd", "th"} and tokens[at + 1].glued:
        return _ordinal_day(tokens, at, int(key), at + 2)
    dashed = following == "-" and _key(tokens, at + 2) in MONTHS
    month_at = at + 2 if dashed else at + 1
    if (
        _key(tokens, month_at) in MONTHS
        and int(key) <= 31  # not a figure: days in a month
        and not _month_is_word(tokens, month_at)
        and not _tag_before_date(tokens, at, month_at)
    ):
        return _with_year(tokens, Said("day_month", int(key), MONTHS[_key(tokens, month_at)]), month_at + 1)
    return _ago(tokens, at, at + 1, key)


def _tag_before_date(tokens: Sequence[Token], at: int, month_at: int) -> bool:
    """`cull 12 dec 3`: the number before the month is an animal, the one behind it the day."""
    after = _key(tokens, month_at + 1)
    before = _key(tokens, at - 1)
    return (
        after.isdigit()
        and len(after) <= 2
        and before.isalpha()
        and before not in {"on", "since", "born", "b", "until", "til", "till", "by", "the", "bred"}
    )


def _month_is_word(tokens: Sequence[Token], at: int) -> bool:
    """`may` before a verb: `7 may kindle`."""
    return (
        _key(tokens, at) in {"may", "mar", "march"}
        and _key(tokens, at + 1).isalpha()
        and _key(tokens, at + 1) not in PARTS_OF_DAY | {"doe", "buck", "and"}
    )


def _week_of_month(tokens: Sequence[Token], at: int, which: int) -> tuple[Said, int] | None:
    """`the first week of december`, `the last week of may` (0): `week` stands at the index."""
    if _key(tokens, at) != "week" or _key(tokens, at + 1) != "of" or _key(tokens, at + 2) not in MONTHS:
        return None
    return Said("month_week", MONTHS[_key(tokens, at + 2)], which), at + 3


def _ordinal_day(tokens: Sequence[Token], at: int, day: int, end: int) -> tuple[Said, int] | None:
    """`the 3rd`, `3rd of november`, `on the 3rd`; a bare ordinal (`her 4th litter`, `2nd place`) is no date."""
    month_at = end + 1 if _key(tokens, end) == "of" else end
    if day <= WEEKS_SAID and (week := _week_of_month(tokens, end, day)):
        return week
    if _key(tokens, month_at) in MONTHS:
        return _with_year(tokens, Said("day_month", day, MONTHS[_key(tokens, month_at)]), month_at + 1)
    before, earlier = _key(tokens, at - 1), _key(tokens, at - 2)
    following = _key(tokens, end)
    if following == "of" and _key(tokens, end + 1) in {"next", "this", "last"} and _key(tokens, end + 2) == "month":
        return Said("day", day, modifier=_key(tokens, end + 1)), end + 3
    labels = end + 1 < len(tokens) and tokens[end + 1].glued and tokens[end + 1].sort == NUMBER  # `wk2`
    if (following in PERIODS and not labels) or (following in {"time", "try", "attempt"} and earlier != "on"):
        return None  # "on the 31st day", "for the third time" count
    anchored = (
        before == "the"
        and earlier in {"on", "back", "by", "before", "after", "until", "til", "till", "since", "of", "for", "was", "from", "around"}
    ) or before in {"on", "til", "till", "until", "by"}
    plain_end = following in {"", ".", ",", ";", ":", "\n", "and", "she", "he", "i", "at", "but", "with", "to", "for"}
    if anchored or (before == "the" and plain_end and tokens[at].sort == NUMBER):
        return Said("day", day), end  # "on the 45th" too: a day that can't be is asked about
    return None


def _with_year(tokens: Sequence[Token], said: Said, end: int) -> tuple[Said, int]:
    year_at = (
        end + 1 if _key(tokens, end) in {"-", ",", "."} and (tokens[end].key != "." or _key(tokens, end + 1).startswith("20")) else end
    )
    year = _key(tokens, year_at)
    if year.isdigit() and (len(year) == 4 and year.startswith("20")):
        return Said(said.shape, said.a, said.b, int(year)), year_at + 1
    if year.isdigit() and len(year) == 2 and _key(tokens, end) == "-" and tokens[end].glued and tokens[end + 1].glued:
        return Said(said.shape, said.a, said.b, 2000 + int(year)), year_at + 1  # not a figure: a century
    return said, end + 1 if _key(tokens, end) == "." and _key(tokens, end - 1) in MONTHS and len(_key(tokens, end - 1)) <= 4 and _key(
        tokens, end + 1
    ).isdigit() else end


def _from_word(tokens: Sequence[Token], at: int, key: str) -> tuple[Said, int] | None:
    following = _key(tokens, at + 1)
    if key in NEAR_DAYS:
        return None if key == "tom" else _near(tokens, NEAR_DAYS[key], at + 1)
    if key in MONTHS:
        found = _month_first(tokens, at)
        if found:
            return found
    if key in WEEKDAYS:
        return _weekday(tokens, at, key)
    if key in {"last", "this", "next"}:
        return _modified(tokens, at, key, following)
    if key in {"the", "day"}:
        return _day_before(tokens, at if key == "day" else at + 1)
    if key in {"week", "wk"}:
        return _week_of(tokens, at)
    if key == "in":
        return _in(tokens, at)
    if key == "end" and following == "of":
        of = at + 3 if _key(tokens, at + 2) in {"the", "this"} else at + 2
        if _key(tokens, of) == "month":
            return Said("month_end"), of + 1
        if _key(tokens, of) in MONTHS:
            return Said("month_end", MONTHS[_key(tokens, of)]), of + 1
    if (key == "new" and following == "years") or (key == "new" and following == "year" and _key(tokens, at + 2) == "s"):
        return _new_year(tokens, at)
    if (
        key in {"christmas", "xmas"}
        and _key(tokens, at - 1) in {"by", "until", "til", "till", "through", "thru", "on", "before", "after", "around"}
        and _key(tokens, at - 2) not in {"week", "day", "weekend"}
    ):
        eve = following == "eve"
        return Said("day_month", 24 if eve else 25, 12), at + 1 + eve  # not a figure: christmas
    if key in {"night", "nite"} and following == "before" and _key(tokens, at + 2) == "last":
        return Said("near", -2), at + 3
    if key == "earlier" and following == "today":
        return Said("near"), at + 2
    if key == "just" and following == "now":
        return Said("near"), at + 2
    return None


def _week_of(tokens: Sequence[Token], at: int) -> tuple[Said, int] | None:
    """`week of 16 Nov`, `the week of the 16th`: seven days, not that one."""
    day_at = at + 3 if _key(tokens, at + 2) == "the" and _key(tokens, at + 3) in MONTHS else at + 2
    if _key(tokens, at + 1) != "of" or day_at >= len(tokens):
        return None
    if _key(tokens, day_at) == "the":
        day_at += 1
    found = _one_date(tokens, day_at)
    if found is None or found[0].shape not in {"day_month", "numeric", "iso", "day"}:
        return None
    return Said(found[0].shape, found[0].a, found[0].b, found[0].year, found[0].modifier, WEEK_OF), found[1]


def _new_year(tokens: Sequence[Token], at: int) -> tuple[Said, int] | None:
    """`until new year's`, `by new years eve`."""
    if _key(tokens, at - 1) not in {"by", "until", "til", "till", "through", "thru", "on", "before", "around"}:
        return None
    end = at + (2 if _key(tokens, at + 1) == "years" else 3)
    eve = _key(tokens, end) == "eve"
    return (Said("day_month", 31, 12) if eve else Said("day_month", 1, 1)), end + (
        eve or _key(tokens, end) == "day"
    )  # not a figure: the year's turn


def _near(tokens: Sequence[Token], days: int, end: int) -> tuple[Said, int]:
    """Past `morning` or `night` behind `yesterday`."""
    return Said("near", days), end + 1 if _key(tokens, end) in PARTS_OF_DAY else end


def _month_first(tokens: Sequence[Token], at: int) -> tuple[Said, int] | None:
    """`nov 3rd`, `dec. 20 2026`, `march fourth`; a month alone only behind `in`, `by`, `until`, `come`."""
    month = MONTHS[tokens[at].key]
    day_at = at + 2 if _key(tokens, at + 1) == "." else at + 1
    if _key(tokens, day_at) == "the":
        day_at += 1
    key = _key(tokens, day_at)
    end = day_at + 1
    if key in ORDINALS or (key in {"twenty", "thirty"} and _key(tokens, end) in ORDINALS):
        tens = {"twenty": 20, "thirty": 30}.get(key, 0)  # not a figure: number words
        day = tens + ORDINALS[_key(tokens, end)] if tens else ORDINALS[key]
        return _with_year(tokens, Said("day_month", day, month), end + 1 if tens else end)
    if key.isdigit() and len(key) == 4 and key.startswith("20"):
        return Said("month", month, 0, int(key)), end
    if key.isdigit() and len(key) <= 2 and 1 <= int(key) <= 31:  # not a figure: days in a month
        if _key(tokens, end) in {"st", "nd", "rd", "th"}:
            end += 1
        elif _key(tokens, at - 1) == "in" and _tag_behind(tokens, day_at):
            return Said("month", month), at + 1
        elif tokens[at].key in WORDLIKE and not _fenced(tokens, at, end):
            return None
        return _with_year(tokens, Said("day_month", int(key), month), end)
    words = spoken(tokens, day_at) if day_at < len(tokens) and key != "one" and tokens[at].key not in {"may", "mar"} else None
    if words and words[0] == int(words[0]) and 1 <= words[0] <= 31:  # not a figure: days in a month
        return _with_year(tokens, Said("day_month", int(words[0]), month), words[1])
    if (
        _key(tokens, at - 1) in {"in", "by", "until", "til", "till", "come", "this", "next", "early", "late", "for", "mid"}
        and key not in UNITS
    ):
        return Said("month", month), at + 1
    return None


def _tag_behind(tokens: Sequence[Token], at: int) -> bool:
    """`in may 14 kindled 6`, `last may 14 had 6`: behind the month's own word the number is an animal that did something."""
    following = _key(tokens, at + 1)
    return following.isalpha() and following not in {
        "st",
        "nd",
        "rd",
        "th",
        "and",
        "at",
        "in",
        "on",
        "or",
        "to",
        "thru",
        "through",
        "till",
        "until",
    }


def _fenced(tokens: Sequence[Token], at: int, end: int) -> bool:
    """`may 3`, `mar 3` need an anchor or an end beside them: an animal may be called so."""
    before, after = _key(tokens, at - 1), _key(tokens, end)
    return before in {"on", "since", "by", "until", "til", "till", "born", "b", "due", "from", "for"} or after in {
        "",
        ".",
        ",",
        ":",
        ";",
        "\n",
        "2026",
        "2027",
    }


def _weekday(tokens: Sequence[Token], at: int, key: str) -> tuple[Said, int] | None:
    before, after = _key(tokens, at - 1), _key(tokens, at + 1)
    if key in WORDLIKE:
        anchored = before in {"on", "by", "til", "till", "until", "since", "for", "me", "rem", "remind", "this"}
        ending = after in {"", ".", ",", ":", ";", "!", "?", "\n", *PARTS_OF_DAY} and before not in {
            "she",
            "he",
            "it",
            "the",
            "a",
            "that",
            "just",
        }
        starting = at == 0 and after not in {"on", "in", "at", "down", "pen", "cage"} and not (key in {"sun", "sat"} and after.isalpha())
        counted = after.isdigit() or _key(tokens, at + 2) in {"fall", "falls"}
        between = before.isdigit() and counted and not tokens[at].glued  # "15x7 sun 2 falls", "16x3 sat one fall"
        if not (anchored or ending or starting or between or _date_behind(tokens, at + 1)):
            return None
    end = at + 1
    if after in PARTS_OF_DAY:
        end += 1
    if _key(tokens, end) == "week" and before != "last":
        return Said("weekday", WEEKDAYS[key], 1, None, "week"), end + 1
    return Said("weekday", WEEKDAYS[key]), end


def _date_behind(tokens: Sequence[Token], at: int) -> bool:
    """`mon 11/22`, `sat nov 21`, `wed 25 nov`: a date stands right behind, so that the short word is its weekday."""
    if at >= len(tokens):
        return False
    if tokens[at].sort in {"slash", "iso"}:
        return True
    beside = {_key(tokens, at), _key(tokens, at + 1)}
    return any(key in MONTHS for key in beside) and any(key.isdigit() for key in beside)


def _modified(tokens: Sequence[Token], at: int, key: str, following: str) -> tuple[Said, int] | None:
    if following in WEEKDAYS:
        end = at + 2
        return Said("weekday", WEEKDAYS[following], modifier=key), end + 1 if _key(tokens, end) in PARTS_OF_DAY else end
    if following in {"night", "evening", "nite", "pm", "eve"}:
        return Said("near", -1 if key == "last" else 0), at + 2
    if key == "this" and following in PARTS_OF_DAY:
        return Said("near"), at + 2
    if key == "last" and (week := _week_of_month(tokens, at + 1, 0)):
        return week
    if following in {"week", "wk", "month", "weekend", "wkend", "wknd"}:
        shape = {"month": "month_alone", "wk": "week", "wkend": "weekend", "wknd": "weekend"}.get(following, following)
        return Said(shape, modifier=key), at + 2
    if following in {"spring", "fall", "winter", "year"}:
        return None
    if following in MONTHS and key in {"next", "last"} and (not _key(tokens, at + 2).isdigit() or _tag_behind(tokens, at + 2)):
        return Said("month", MONTHS[following], modifier="last" if key == "last" else ""), at + 2
    return None


def _day_before(tokens: Sequence[Token], at: int) -> tuple[Said, int] | None:
    """`the day before yesterday`, `day after tomorrow`, `the other day` (no date: it can't be known)."""
    if _key(tokens, at) == "day" and _key(tokens, at + 1) == "before" and _key(tokens, at + 2) in {"yesterday", "yday"}:
        return Said("near", -2), at + 3
    if _key(tokens, at) == "day" and _key(tokens, at + 1) == "after" and _key(tokens, at + 2) in {"tomorrow", "tmrw"}:
        return Said("near", 2), at + 3
    return None


def _amount(tokens: Sequence[Token], at: int) -> tuple[str, int] | None:
    key = _key(tokens, at)
    if key.isdigit():
        return key, at + 1
    if key in {"a", "an"}:
        if _key(tokens, at + 1) == "couple":
            return "2", at + 3 if _key(tokens, at + 2) == "of" else at + 2
        return "1", at + 1
    if key == "couple":
        return "2", at + 2 if _key(tokens, at + 1) == "of" else at + 1
    words = spoken(tokens, at) if at < len(tokens) else None
    return (str(int(words[0])), words[1]) if words else None


def _in(tokens: Sequence[Token], at: int) -> tuple[Said, int] | None:
    """`in 2 weeks`, `in a couple of days`."""
    amount = _amount(tokens, at + 1)
    if (
        amount
        and PERIODS.get(_key(tokens, amount[1])) in {"hour", "minute"}
        and not any(token.key.startswith("remind") for token in tokens)
    ):
        return None  # "three falls in ten minutes"
    if amount and _key(tokens, amount[1]) in PERIODS and _key(tokens, amount[1] + 1) not in {"old", "of"}:
        period = PERIODS[_key(tokens, amount[1])]
        return Said("ago", int(amount[0]), modifier="ahead", words=period), amount[1] + 1
    return None


def ago_at(tokens: Sequence[Token], at: int) -> tuple[Said, int] | None:
    """`3 days ago`, `two weeks ago`, `a week ago monday`, `a week from saturday`; `at` is the amount."""
    amount = _amount(tokens, at)
    return _ago(tokens, at, amount[1], amount[0]) if amount else None


def _ago(tokens: Sequence[Token], _at: int, end: int, amount: str) -> tuple[Said, int] | None:
    period = PERIODS.get(_key(tokens, end))
    if period is None:
        return None
    following = _key(tokens, end + 1)
    if following in {"ago", "back"}:
        if _key(tokens, end + 2) in WEEKDAYS:
            return Said("weekday", WEEKDAYS[_key(tokens, end + 2)], -int(amount), None, "weeks" if period == "week" else "days"), end + 3
        return Said("ago", int(amount), modifier="back", words=period), end + 2
    if following == "from":
        if _key(tokens, end + 2) in {"now", "today"}:
            return Said("ago", int(amount), modifier="ahead", words=period), end + 3
        if _key(tokens, end + 2) in WEEKDAYS and period == "week":
            return Said("weekday", WEEKDAYS[_key(tokens, end + 2)], int(amount), None, "weeks"), end + 3
    return None


@lru_cache(4096)
def days_of(said: Said, today: date, direction: str, order: str) -> Days:
    """The day or days meant, seen from `today`; `direction` is `past` or `plan`. No day where it can't be."""
    try:
        days = _SHAPES[said.shape](said, today, direction, order)
    except OverflowError:  # "3881120 weeks from Saturday"
        return Days(None)
    if said.words == WEEK_OF and days.on is not None:
        monday = days.on - timedelta(days.on.weekday())
        return Days(monday, monday + timedelta(6))  # not a figure: monday to sunday
    if days.on and said.weekday is not None and days.on.weekday() != said.weekday:
        return Days(None)
    return days


def _exact(year: int, month: int, day: int) -> date | None:
    if (
        not 1 <= month <= 12  # not a figure: months in a year
        or not 1 <= day <= calendar.monthrange(year, month)[1]
        or not 1 < year < 9000  # not a figure: months and years of the calendar
    ):
        return None
    return date(year, month, day)


def _near_days(said: Said, today: date, _direction: str, _order: str) -> Days:
    return Days(today + timedelta(said.a))


def _weekday_days(said: Said, today: date, direction: str, _order: str) -> Days:
    back = (today.weekday() - said.a) % 7
    if said.modifier == "weeks":  # `a week ago monday`, `a week from saturday`
        near = today - timedelta(back) if said.b < 0 else today + timedelta((said.a - today.weekday()) % 7 or 7)
        return Days(near + timedelta(7 * said.b))
    if said.modifier == "days":
        return Days(None)
    if said.modifier == "last" or (direction == "past" and said.modifier != "next"):
        return Days(today - timedelta((back or 7) if said.modifier == "last" else back))
    ahead = (said.a - today.weekday()) % 7 or 7
    if said.modifier in {"next", "week"}:
        monday = today - timedelta(today.weekday()) + timedelta(7)
        return Days(monday + timedelta(said.a))
    return Days(today + timedelta(ahead))


def _day_days(said: Said, today: date, direction: str, _order: str) -> Days:
    """The latest such day of a month, or the next one; of the month that was said beside it."""
    if said.modifier:
        return Days(_exact(*_month_beside(said, today), said.a))
    for step in range(13):
        months = today.year * 12 + today.month - 1 + (step if direction == "plan" else -step)  # not a figure: months in a year
        found = _exact(months // 12, months % 12 + 1, said.a)  # not a figure: months in a year
        if found and (found <= today if direction == "past" else found >= today):
            return Days(found)
    return Days(None)


def _day_month_days(said: Said, today: date, direction: str, _order: str) -> Days:
    return Days(_dated(said.a, said.b, said.year, today, direction))


def _dated(day: int, month: int, year: int | None, today: date, direction: str) -> date | None:
    if year is not None:
        return _exact(year, month, day)
    this_year = _exact(today.year, month, day)
    if direction == "plan":
        return this_year if this_year and this_year >= today else _exact(today.year + 1, month, day)
    if this_year and this_year > today:
        return _exact(today.year - 1, month, day) if direction == "born" or _long_ahead(this_year, today) else this_year
    return this_year


def _long_ahead(this_year: date, today: date) -> bool:
    """Whether a day told as past lies so far ahead that last year's is meant (December told in January)."""
    return (this_year - today).days > 183  # not a figure: half a year


def _numeric_days(said: Said, today: date, direction: str, order: str) -> Days:
    day, month = (said.b, said.a) if order == "MDY" else (said.a, said.b)
    return Days(_dated(day, month, said.year, today, direction))


def _iso_days(said: Said, _today: date, _direction: str, _order: str) -> Days:
    return Days(_exact(said.year or 0, said.b, said.a))


def _month_days(said: Said, today: date, direction: str, _order: str) -> Days:
    year = said.year or today.year
    if said.year:
        pass
    elif direction == "plan" and said.a < today.month:
        year += 1
    elif direction != "plan" and said.a > today.month:
        year -= 1
    return Days(date(year, said.a, 1), date(year, said.a, calendar.monthrange(year, said.a)[1]))


def _month_week_days(said: Said, today: date, direction: str, _order: str) -> Days:
    """Seven days: the first from the month's first day on, the last up to its last day."""
    year = today.year - (said.a > today.month) if direction == "past" else today.year + (said.a < today.month)
    last = date(year, said.a, calendar.monthrange(year, said.a)[1])
    begins = date(year, said.a, 1) + timedelta(7 * (said.b - 1)) if said.b else last - timedelta(6)  # not a figure: days of a week
    return Days(begins, begins + timedelta(6))  # not a figure: days of a week


def _month_end_days(said: Said, today: date, direction: str, _order: str) -> Days:
    """The last day of the month spoken of, the latest or the next one."""
    month = said.a or today.month
    year = today.year
    if said.a and direction == "past":
        year -= said.a >= today.month
    elif said.a:
        year += said.a < today.month
    return Days(date(year, month, calendar.monthrange(year, month)[1]))


def _week_days(said: Said, today: date, _direction: str, _order: str) -> Days:
    weeks = {"last": -1, "next": 1}.get(said.modifier, 0)
    monday = today - timedelta(today.weekday()) + timedelta(7 * weeks)
    return Days(monday, monday + timedelta(6))  # not a figure: monday to sunday


def _weekend_days(said: Said, today: date, direction: str, _order: str) -> Days:
    saturday = today - timedelta(today.weekday()) + timedelta(5)  # not a figure: monday to saturday
    if said.modifier == "last" or (direction == "past" and said.modifier == "this" and saturday > today):
        saturday -= timedelta(7)
    elif said.modifier == "next":
        saturday += timedelta(7)
    return Days(saturday, saturday + timedelta(1))


def _month_beside(said: Said, today: date) -> tuple[int, int]:
    """Year and month of `last month`, `this month` or `next month`."""
    months = today.year * 12 + today.month - 1 + {"last": -1, "next": 1}.get(said.modifier, 0)  # not a figure: months in a year
    return months // 12, months % 12 + 1  # not a figure: months in a year


def _whole_month_days(said: Said, today: date, _direction: str, _order: str) -> Days:
    year, month = _month_beside(said, today)
    return Days(date(year, month, 1), date(year, month, calendar.monthrange(year, month)[1]))


def days_from(today: date, days: int) -> date | None:
    """The day so many days on, or back; None where nobody can mean it."""
    return today + timedelta(days) if abs(days) <= MOST_DAYS else None


def _ago_days(said: Said, today: date, _direction: str, order: str) -> Days:
    if said.words in {"day", "week"}:
        days = said.a * (7 if said.words == "week" else 1)
        return Days(days_from(today, days if said.modifier == "ahead" else -days))
    words = f"{said.a} {said.words}s ago" if said.modifier == "back" else f"in {said.a} {said.words}s"
    return Days(_by_dateparser(words, today, order))


def _by_dateparser(words: str, today: date, order: str) -> date | None:
    """What dateparser makes of an anchored span, from noon of the day: English only, never a bare token."""
    import dateparser  # type: ignore[import-untyped] # noqa: PLC0415 - its first use costs a fifth of a second

    noon = datetime(today.year, today.month, today.day, 12)  # not a figure: an hour of the day  # noqa: DTZ001 - farm-local, on purpose without a zone
    settings = {"RELATIVE_BASE": noon, "DATE_ORDER": order, "RETURN_AS_TIMEZONE_AWARE": False}
    found = dateparser.parse(words, languages=["en"], settings=settings)
    return found.date() if found else None


_SHAPES: Final = {
    "near": _near_days, "weekday": _weekday_days, "day": _day_days, "day_month": _day_month_days, "numeric": _numeric_days, "iso": _iso_days,
    "month": _month_days, "month_end": _month_end_days, "month_week": _month_week_days, "week": _week_days, "weekend": _weekend_days, "ago": _ago_days, "month_alone": _whole_month_days,
}  # fmt: skip
