"""A list pasted into the chat of a terminal: looked at, asked about and taken in as on a phone."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from bot.tables.sheets import sheets_of
from core.app import Brought
from core.app.bringing import GONE, PASTED, is_list, kept, listed
from core.reply import Reply

if TYPE_CHECKING:
    from core.app import App


def with_list(app: App, text: str, at: datetime, author: str, folder: Path) -> Reply | None:
    """What is answered to a list, or to a choice about one; None where the words are neither."""
    wanted = listed(text)
    if wanted is None and not is_list(text):
        return None
    wanted = wanted or kept(folder, PASTED, text.encode())
    try:
        content = (folder / Path(wanted.file).name).read_bytes()
    except OSError:
        return Reply((GONE,))
    return app.bring(Brought(wanted.name, sheets_of(wanted.name, content), author, at), wanted)
