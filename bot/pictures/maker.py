"""Who makes the pictures that go with a reply, and who brings the photos."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from bot.attachments import Maker
from bot.pictures.draw import png
from bot.settings import data_folder

if TYPE_CHECKING:
    from core.app import App, Problem
    from core.app.pictures import Picture
    from core.reply import Attached


def _picture(app: App, attached: Attached, at: datetime) -> Picture | Problem:
    return app.picture(attached.about, attached.key, at)


def _photo(app: App, attached: Attached, _at: datetime) -> bytes | Problem:
    return app.photo(attached.key or "", photo_folder(app))


def photo_folder(app: App) -> Path:
    """Where the photos of a book lie."""
    return app.photo_folder(data_folder() / "photos")


def _as_it_came(content: bytes) -> bytes:
    return content


MAKER = Maker(_picture, png)
PHOTO = Maker(_photo, _as_it_came)
