"""Who makes the pictures that go with a reply."""

from __future__ import annotations

from datetime import datetime
from typing import TYPE_CHECKING

from bot.attachments import Maker
from bot.pictures.draw import png

if TYPE_CHECKING:
    from core.app import App, Problem
    from core.app.pictures import Picture
    from core.reply import Attached


def _picture(app: App, attached: Attached, at: datetime) -> Picture | Problem:
    return app.picture(attached.about, attached.key, at)


MAKER = Maker(_picture, png)
