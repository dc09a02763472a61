"""Files that go with a reply: one table that says who makes each sort, and the two steps in which each is made.

    gathers   what is in the book about it: quick, asks the app
    makes     the file's bytes from that alone: slow, and safe to do in another thread

A maker is loaded only when a file of its sort is wanted.
"""

from __future__ import annotations

import importlib
import mimetypes
from collections.abc import Callable
from dataclasses import dataclass
from datetime import datetime
from typing import TYPE_CHECKING, Any

from core.problem import Problem
from core.reply import Attached

if TYPE_CHECKING:
    from core.app import App

#: sort -> where its `Maker` is
MAKERS: dict[str, str] = {
    "calendar": "bot.papers.maker:CALENDAR",
    "export": "bot.tables.maker:EXPORT",
    "paper": "bot.papers.maker:PAPER",
    "picture": "bot.pictures.maker:MAKER",
    "photo": "bot.pictures.maker:PHOTO",
}


@dataclass(frozen=True, slots=True)
class File:
    """A file that is made. `mime` is its media type; `alt` says the same in words."""

    name: str
    mime: str
    content: bytes
    alt: str


@dataclass(frozen=True, slots=True)
class Maker:
    """How a sort of file is made.

    gathers   what the book holds for it at that time (aware), whatever form that has; a Problem where there is nothing to make
    makes     the bytes, from what was gathered
    """

    gathers: Callable[[App, Attached, datetime], Any]
    makes: Callable[[Any], bytes]


def maker(what: str) -> Maker:
    """Who makes files of that sort. KeyError where nobody does."""
    module, _, name = MAKERS[what].partition(":")
    found: Maker = getattr(importlib.import_module(module), name)
    return found


def gathered(app: App, attached: Attached, at: datetime) -> Any:
    """The first step: what the file is made of, or the Problem that stands in the way."""
    return maker(attached.what).gathers(app, attached, at)


def finished(attached: Attached, held: Any) -> File:
    """The second step: the file. It asks the book nothing."""
    mime = mimetypes.guess_type(attached.name)[0] or "application/octet-stream"
    return File(attached.name, mime, maker(attached.what).makes(held), attached.alt)


def made(app: App, attached: Attached, at: datetime) -> File | Problem:
    """Both steps, for a shell that may wait."""
    held = gathered(app, attached, at)
    return held if isinstance(held, Problem) else finished(attached, held)
