"""Answers that bring a paper along: a few words, and the file to be made."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from core.reply import Attached, Reply
from core.reports.due import due
from core.reports.papers.calendar import alt_of
from core.reports.papers.wanted import Wanted

if TYPE_CHECKING:
    from core.reports.answers import Asked

#: What asks for the chores as a file for a calendar.
CALENDAR = re.compile(r"\b(calendar|ics)\b", re.IGNORECASE)
#: What stands under a calendar.
TAKE_IN = "Open it with your calendar. A newer one replaces the chores of an older one; what is done by then you take off yourself."


def calendar_reply(asked: Asked, days: int | None) -> Reply:
    """The chores of the herd, or of one animal, for a calendar."""
    tag = asked.who.tag if asked.who else None
    found = due(asked.herd, asked.today, days)
    found = found.of(tag) if tag else found
    if not found.chores:
        return found.reply()
    alt = alt_of(found)
    return Reply((alt, TAKE_IN), attached=(Attached("calendar", "chores", Wanted(tag, days=days).key(), "chores.ics", alt),))
