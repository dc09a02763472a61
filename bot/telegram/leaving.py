"""A farm that an owner wants deleted, or to stay: the last archive is made and lies on the machine before the farm is marked."""

from __future__ import annotations

from datetime import datetime

from bot.settings import data_folder
from bot.telegram.counter import Counter
from core.app import Member
from core.app import Update as Kept
from core.app.leaving import Leave
from core.app.members import OWNER


async def leave(counter: Counter, kept: Kept, who: Member, what: str, button: str | None) -> None:
    """Do what is wished, answer, and be done with the update. Where the archive can't be made or written, nothing is marked."""
    app, now = counter.app, counter.now()
    last = await _last_archive(counter, now) if (what, who.role) == ("go", OWNER) else ""
    wish = Leave(what, now, await counter.ask(app.timezone), last)
    await counter.ask(app.leaving_update, kept, who, wish, button=button)


async def _last_archive(counter: Counter, now: datetime) -> str:
    """The last archive laid down; the file's name."""
    from bot.tables.maker import content_of, held_of  # noqa: PLC0415 - few leave

    content = await counter.make(content_of, ("archive", await counter.ask(held_of, counter.app, "archive")))
    return await counter.make(counter.app.keep_last, content, data_folder() / "last-archives", now)
