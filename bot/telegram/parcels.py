"""What a letter is sent as: pieces of text and files, one message each."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

from bot.telegram.pieces import length, pieces
from core.reply import Attached

#: What may stand under a picture or file, in the service's own count: UTF-16 units. Its limit is 1024 [D: Bot API, sendPhoto].
LONGEST_CAPTION = 1000

#: The largest picture and the largest file that a bot may send, in bytes [D: Bot API, sending files].
LARGEST_PHOTO = 10 * 1024 * 1024
LARGEST_FILE = 50 * 1024 * 1024

#: What is shown as a picture; everything else goes as a file to keep.
SHOWN = ("picture", "photo")


@dataclass(frozen=True, slots=True)
class Part:
    """One message of a letter: words, or a file with the words under it."""

    text: str
    attached: Attached | None = None


def parts_of(payload: dict[str, Any], *, bare: bool) -> tuple[Part, ...]:
    """The messages that a letter is sent as. A short text stands under the only file; where that was refused (`bare`), by itself."""
    text = "\n".join(payload["lines"])
    files = [Attached(**told) for told in payload.get("attached", ())]
    if len(files) == 1 and text.strip() and length(text) <= LONGEST_CAPTION and not bare:
        return (Part(text, files[0]),)
    return (*(Part(piece) for piece in pieces(text)), *(Part(_caption(file.alt), file) for file in files))


def _caption(alt: str) -> str:
    """The words under a file that stands by itself: as much as fits, to the end of a line or a word."""
    return next(iter(pieces(alt, LONGEST_CAPTION)), "")
