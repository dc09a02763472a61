"""Answers that bring a paper along: a few words, and the file to be made."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from core.problem import Problem
from core.reply import Attached, Reply
from core.reports.due import due
from core.reports.papers.calendar import alt_of
from core.reports.papers.press import sheet
from core.reports.papers.wanted import Wanted

if TYPE_CHECKING:
    from core.reports.answers import Asked

#: What asks for the chores as a file for a calendar.
CALENDAR = re.compile(r"\b(calendar|ics)\b", re.IGNORECASE)
#: What stands under a calendar.
TAKE_IN = "Open it with your calendar. A newer one replaces the chores of an older one; what is done by then you take off yourself."
#: What asks for paper.
ON_PAPER = re.compile(r"\b(print|printed|printout|pdf|on paper|cage cards?|litter (record|sheet)s?|chores? sheet|crib)\b", re.IGNORECASE)
#: What is asked about, and the paper that shows it.
SHOWN_BY = {"card": "cards", "pedigree": "pedigree", "litters": "litter", "keep": "plan", "winter": "plan", "due": "chores", "help": "crib"}
SIZE = re.compile(r"\b(a4|letter)\b", re.IGNORECASE)
GENERATIONS = re.compile(r"\b(\d+) gen(eration)?s?\b", re.IGNORECASE)
DAYS = re.compile(r"\b(\d{1,3}) days?\b", re.IGNORECASE)
LITTER = re.compile(r"\blitter\b", re.IGNORECASE)


def calendar_reply(asked: Asked, days: int | None) -> Reply:
    """The chores of the herd, or of one animal, for a calendar."""
    tag = asked.who.tag if asked.who else None
    found = due(asked.herd, asked.today, days)
    found = found.of(tag) if tag else found
    if not found.chores:
        return found.reply()
    alt = alt_of(found)
    return Reply((alt, TAKE_IN), attached=(Attached("calendar", "chores", Wanted(tag, days=days).key(), "chores.ics", alt),))


def paper_wanted(asked: Asked) -> str | None:
    """The paper that the question asks for; None where it asks for words."""
    about = SHOWN_BY.get(asked.query.about)
    if about is None or not ON_PAPER.search(asked.said):
        return None
    return "litter" if about == "cards" and LITTER.search(asked.said) else about


def paper_reply(asked: Asked, about: str) -> Reply:
    """That paper, or why there is none."""
    wish = wish_of(asked)
    made = sheet(asked.herd, asked.today, about, wish)
    if isinstance(made, Problem):
        return Reply((f"{made.text} {made.remedy}",))
    return Reply((made.alt,), attached=(Attached("paper", about, wish.key(), made.name, made.alt),))


def wish_of(asked: Asked) -> Wanted:
    """What the question says about the paper."""
    size, generations = SIZE.search(asked.said), GENERATIONS.search(asked.said)
    return Wanted(
        who=asked.who.tag if asked.who else None,
        scope=asked.query.scope,
        breed=asked.query.breed,
        days=_days(asked),
        generations=int(generations[1]) if generations else None,
        size=size[0].lower() if size else None,
    )


def _days(asked: Asked) -> int | None:
    """How many days ahead."""
    until, days = asked.query.until, DAYS.search(asked.said)
    if until is not None:
        return max((until - asked.today).days, 0)
    return int(days[1]) if days else None
