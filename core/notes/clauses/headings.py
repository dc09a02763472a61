"""Dates that stand as headings in an orderly note: `24 Nov: ...`, `Scores, 24 Nov`, a date alone on its line.

A heading's day holds for its line, or for all lines below it where it has a line of its own, until the next heading.
"""

from __future__ import annotations

from itertools import pairwise
from typing import Final

from core.notes.slots.dates import Said
from core.notes.slots.items import SIGNS, Item

REACH: Final = 6  # items: a heading is short
#: Words that may stand before a date that a sentence begins with.
BEFORE_DATE: Final = frozenset(
    {",", "-", "(", ")", "and", "so", "then", "also", "but", "the", "ok", "well", "plus", "on", "bred", "sat", "date", "dated"}
)
IN_TITLE: Final = frozenset({",", "-", "("})


def leading_date(items: list[Item]) -> tuple[Said | None, bool]:
    """The date that a sentence begins with, or that the title before its colon holds; and whether it heads the rest of its line."""
    begin = next((i for i, item in enumerate(items) if item.sort not in SIGNS), len(items))
    if "date" not in [item.sort for item in items[begin : begin + REACH]]:
        return None, False
    place = next(i for i in range(begin, len(items)) if items[i].sort == "date")
    before, colon = items[begin:place], place + 1 < len(items) and items[place + 1].said == ":"
    if all(item.said in BEFORE_DATE for item in before):
        return items[place].value, colon
    return (items[place].value, True) if colon and _is_title(before) else (None, False)


def title_date(items: list[Item]) -> Said | None:
    """The date of a line that only tells what the lines below it are about: `Weights, 24 Nov`."""
    told = [item for item in items if item.sort != "break" and item.said not in {":", ".", ",", "-"}]
    if len(told) > 1 and told[0].sort == "date" and all(item.said in ROUNDS or item.said in PARTS_OF_DAY for item in told[1:]):
        day: Said = told[0].value  # "11/24 PM"
        return day
    return told[-1].value if 1 < len(told) <= REACH and told[-1].sort == "date" and _is_title(told[:-1]) else None


#: What a note is said to hold at its head, and the words that tell from when.
ROUNDS: Final = frozenset({"round", "rounds", "everything", "notes", "report", "list", "log", "update", "rundown", "summary", "recap", "news"})  # fmt: skip
PARTS_OF_DAY: Final = frozenset({"am", "pm", "morning", "evening", "night", "afternoon", "barn", "chores", "check"})
#: What may stand before `last night's chores` where that is all of a sentence, and a heading.
LEADING_IN: Final = frozenset("okay ok so well here heres this these is are was were the from for all everything and now done with".split())  # noqa: SIM905
FROM_WHEN: Final = frozenset({"from", "for", "of", "about", "on"})


def round_date(items: list[Item]) -> Said | None:
    """The day of a head, one of whose items is a date, that only tells what the note holds: `So this is everything from last night's round: ...`, `Notes from Monday.`"""
    sorts = [item.sort for item in items]
    place = sorts.index("date")
    end = next((i for i in range(place + 1, len(items)) if items[i].said == ":"), len(items))
    head = [item for item in items[:end] if item.sort != "mark"]
    if any(item.sort not in {"word", "date", "break"} for item in head) or sum(1 for item in head if item.sort == "date") > 1:
        return None
    said = [item.said for item in head]
    at = said.index(items[place].said)
    if said[at + 1 :] == ["chores"] and LEADING_IN.issuperset(said[:at]):
        day: Said = items[place].value
        return day
    near = said[at + 1 : at + 2] + said[max(at - 1, 0) : at]
    named = not ROUNDS.isdisjoint(said) or ("all", "of") in pairwise(said)
    return items[place].value if named and (not ROUNDS.isdisjoint(near) or not FROM_WHEN.isdisjoint(said[max(at - 1, 0) : at])) else None


def _is_title(words: list[Item]) -> bool:
    """Whether the words before a date name what follows: one of the barn's, and neither animal nor number."""
    plain = all(item.sort == "word" or item.said in IN_TITLE for item in words)
    return (
        plain and any(item.marks for item in words) and not any(item.marks & {"pronoun", "negation", "question", "until"} for item in words)
    )
