"""Dates that stand as headings in an orderly note: `24 Nov: ...`, `Scores, 24 Nov`, a date alone on its line.

A heading's day holds for its line, or for all lines below it where it has a line of its own, until the next heading.
"""

from __future__ import annotations

from typing import Final

from core.notes.dates import Said
from core.notes.items import Item

REACH: Final = 6  # items: a heading is short
#: Words that may stand before a date that a sentence begins with.
BEFORE_DATE: Final = frozenset(
    {",", "-", "(", ")", "and", "so", "then", "also", "but", "the", "ok", "well", "plus", "on", "bred", "sat", "date", "dated"}
)
IN_TITLE: Final = frozenset({",", "-", "("})


def leading_date(items: list[Item]) -> tuple[Said | None, bool]:
    """The date that a sentence begins with, or that the title before its colon holds; and whether it heads the rest of its line."""
    begin = next((i for i, item in enumerate(items) if item.sort not in {"mark", "break"}), len(items))
    place = next((i for i in range(begin, min(begin + REACH, len(items))) if items[i].sort == "date"), None)
    if place is None:
        return None, False
    before, colon = items[begin:place], place + 1 < len(items) and items[place + 1].said == ":"
    if all(item.said in BEFORE_DATE for item in before):
        return items[place].value, colon
    return (items[place].value, True) if colon and _is_title(before) else (None, False)


def title_date(items: list[Item]) -> Said | None:
    """The date of a line that only tells what the lines below it are about: `Weights, 24 Nov`."""
    told = [item for item in items if item.sort != "break" and item.said not in {":", "."}]
    return told[-1].value if 1 < len(told) <= REACH and told[-1].sort == "date" and _is_title(told[:-1]) else None


def _is_title(words: list[Item]) -> bool:
    """Whether the words before a date name what follows: one of the barn's, and neither animal nor number."""
    plain = all(item.sort == "word" or item.said in IN_TITLE for item in words)
    return (
        plain and any(item.marks for item in words) and not any(item.marks & {"pronoun", "negation", "question", "until"} for item in words)
    )
