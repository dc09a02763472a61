"""Files in a terminal: written where the person can open them, and named under the reply."""

from __future__ import annotations

from dataclasses import replace
from datetime import datetime
from pathlib import Path
from typing import TYPE_CHECKING

from bot.attachments import made
from core.problem import Problem
from core.reply import Attached, Reply

if TYPE_CHECKING:
    from core.app import App


def with_files(app: App, reply: Reply, at: datetime, folder: Path) -> Reply:
    """The reply with a line for each file that goes with it: where it lies now, or why there is none."""
    lines = (_line(app, attached, at, folder) for attached in reply.attached)
    return replace(reply, lines=(*reply.lines, *lines), attached=())


def _line(app: App, attached: Attached, at: datetime, folder: Path) -> str:
    file = made(app, attached, at)
    if isinstance(file, Problem):
        return f"{file.text} {file.remedy}".strip()
    path = folder / file.name
    try:
        folder.mkdir(parents=True, exist_ok=True)
        path.write_bytes(file.content)
    except OSError as error:
        return f"{attached.name} can't be written to {folder}: {error.strerror or error}."
    return f"File: {path}"
