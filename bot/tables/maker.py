"""Who makes the files in which a person takes the whole book away."""

from __future__ import annotations

import json
from datetime import datetime
from typing import TYPE_CHECKING, Any

from bot.attachments import Maker
from bot.pictures.maker import photo_folder
from bot.tables.zips import zipped

if TYPE_CHECKING:
    from core.app import App
    from core.reply import Attached

Held = tuple[str, Any]


def held_of(app: App, form: str) -> Any:
    """What the book holds for a form."""
    if form == "archive":
        return app.archive(photo_folder(app))
    takes = {
        "notes": app.export_notes,
        "json": app.export_document,
        "fam": app.export_fam,
        "csv": app.export_csv,
        "xlsx": app.export_tables,
    }
    return takes[form]()


def _held(app: App, attached: Attached, _at: datetime) -> Held:
    return attached.about, held_of(app, attached.about)


def content_of(held: Held) -> bytes:
    """The file of a form, from what the book holds for it."""
    form, told = held
    if form in ("csv", "archive"):
        return zipped(told)
    if form == "xlsx":
        from bot.tables.workbook import workbook  # noqa: PLC0415 - slow to load

        return workbook(told)
    lines = (json.dumps(told, ensure_ascii=False),) if form == "json" else told
    return "".join(f"{line}\n" for line in lines).encode()


EXPORT = Maker(_held, content_of)
