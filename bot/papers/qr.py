"""QR codes that open the chat at an animal: a deep link of the Bot API, whose payload the bot takes for the note `card TAG`."""

from __future__ import annotations

import re
from base64 import urlsafe_b64decode, urlsafe_b64encode
from collections.abc import Sequence

#: What a link's payload may hold, and how much of it (Bot API, deep linking).
LONGEST = 64
PLAIN = re.compile(r"[A-Za-z0-9-]+")
#: What a tag in a link may hold: one word, so that no link can make a person say more than whose card they want.
ONE_WORD = re.compile(r"[\w&/-]+")
#: A payload that names a tag: as it is, or, where it has other letters, in base 64.
AS_IT_IS = "card_"
IN_64 = "tag64_"


def link(username: str, word: str) -> str | None:
    """The address that opens the bot's chat at the animal which that word means; None where it is too long, or too strange, for one."""
    coded = AS_IT_IS + word if PLAIN.fullmatch(word) else IN_64 + urlsafe_b64encode(word.encode()).decode().rstrip("=")
    return f"https://t.me/{username}?start={coded}" if len(coded) <= LONGEST and ONE_WORD.fullmatch(word) else None


def note_of(payload: str) -> str | None:
    """The note that such a payload stands for; None where it is another one, such as a set-up code."""
    word = _decoded(payload.removeprefix(IN_64)) if payload.startswith(IN_64) else payload.removeprefix(AS_IT_IS)
    return f"card {word}" if payload.startswith((AS_IT_IS, IN_64)) and ONE_WORD.fullmatch(word) else None


def _decoded(coded: str) -> str:
    try:
        return urlsafe_b64decode(coded + "=" * (-len(coded) % 4)).decode()
    except ValueError:
        return ""


def matrix(address: str) -> Sequence[Sequence[int]]:
    """The code's fields, dark ones as 1, without the margin. Up to a quarter of it may be dirty."""
    import segno  # noqa: PLC0415 - loaded by the first code

    return [list(row) for row in segno.make_qr(address, error="q").matrix]
