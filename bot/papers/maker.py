"""Who makes papers and calendars that go with a reply."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from bot.attachments import Maker
from bot.papers.calendar import ics
from bot.papers.pdf import pdf
from bot.settings import data_folder
from bot.telegram.met import bot_of
from core.app.papers import wanted
from core.problem import Problem

if TYPE_CHECKING:
    from core.app import App
    from core.app.papers import ChoreCalendar, Paper
    from core.reply import Attached


def _calendar(app: App, attached: Attached, at: datetime) -> ChoreCalendar:
    """The chores; the key says whose, and for how many days, where it is not the usual two weeks."""
    return app.calendar(at, wanted(attached.key))


def _paper(app: App, attached: Attached, at: datetime) -> tuple[Paper, str | None] | Problem:
    """What stands on the paper, and the bot's name for its codes."""
    paper = app.paper(attached.about, wanted(attached.key), at)
    return paper if isinstance(paper, Problem) else (paper, bot_of(data_folder(), app.place))


def _pdf(held: tuple[Paper, str | None]) -> bytes:
    return pdf(*held).content


CALENDAR = Maker(_calendar, ics)
PAPER = Maker(_paper, _pdf)
