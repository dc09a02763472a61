"""Who makes papers and calendars that go with a reply."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from bot.attachments import Maker
from bot.papers.calendar import ics
from core.app.papers import wanted

if TYPE_CHECKING:
    from core.app import App
    from core.app.papers import ChoreCalendar
    from core.reply import Attached


def _calendar(app: App, attached: Attached, at: datetime) -> ChoreCalendar:
    """The chores; the key says whose, and for how many days, where it is not the usual two weeks."""
    asked = wanted(attached.key)
    return app.calendar(at, asked.days, asked.who)


CALENDAR = Maker(_calendar, ics)
