"""A maker of files for the tests: what it makes depends on the key alone."""

from __future__ import annotations

import struct
import zlib
from datetime import datetime

from bot.attachments import Maker
from core.app import App
from core.problem import Problem
from core.reply import Attached

#: Where `bot.attachments.MAKERS` finds it.
PLACE = "tests.bot.makers:MAKER"

NONE = Problem("no_animal", "There is nothing to show.", remedy="Weigh it first.")


def attached(key: str | None = "14", what: str = "picture", name: str = "growing-14.png", alt: str = "14 grows well.") -> Attached:
    """A file to be made, of a sort that the tests register."""
    return Attached(what, "growing", key, name, alt)


def dot() -> bytes:
    """The smallest PNG."""

    def chunk(kind: bytes, body: bytes) -> bytes:
        return struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))

    head = struct.pack(">IIBBBBB", 1, 1, 8, 0, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(b"\0\0")) + chunk(b"IEND", b"")


def gathers(app: App, told: Attached, at: datetime) -> str | Problem:
    """What is in the book: the farm's name and the time, or nothing."""
    return NONE if told.key == "none" else f"{told.key} {app.name} {at:%Y-%m-%d}"


def makes(held: str) -> bytes:
    """A picture; an error for what is broken, a long file for what is large."""
    if held.startswith("broken"):
        raise ValueError(held)
    return b"0" * (51 * 1024 * 1024) if held.startswith("large") else dot()


MAKER = Maker(gathers, makes)
