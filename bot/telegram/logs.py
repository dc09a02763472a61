"""What the operator sees: plain lines on standard error, never with the bot's token in them.

The token is the key to the bot. The HTTP library writes it into every line about a request, since it is part of the address.
"""

from __future__ import annotations

import logging
import re
import sys
from typing import TextIO

#: Any bot's token: its number, a colon, and the secret. A token in an address follows the word "bot".
TOKEN = re.compile(r"\d{5,}:[A-Za-z0-9_-]{8,}")
HIDDEN = "TOKEN"
FORM = "%(asctime)s %(levelname)s %(message)s"

#: Libraries that tell of every request.
TALKATIVE = ("httpx", "httpcore", "telegram", "asyncio")


class WithoutToken(logging.Formatter):
    """Lines without tokens. The whole line is cleaned at the end: a token may come in by an argument or by a traceback."""

    def __init__(self, token: str) -> None:
        super().__init__(FORM)
        self.token = token

    def format(self, record: logging.LogRecord) -> str:
        """The line, tokens hidden."""
        return cleaned(super().format(record), self.token)


def cleaned(text: str, token: str) -> str:
    """The text with this token, and whatever looks like one, hidden."""
    return TOKEN.sub(HIDDEN, text.replace(token, HIDDEN) if token else text)


def log_to(stream: TextIO | None, token: str) -> logging.Handler:
    """Send every log line to the stream (standard error where none is given), cleaned. The handler, so that it can be taken off again."""
    handler = logging.StreamHandler(stream or sys.stderr)
    handler.setFormatter(WithoutToken(token))
    root = logging.getLogger()
    for old in [each for each in root.handlers if isinstance(each.formatter, WithoutToken)]:
        root.removeHandler(old)
    root.addHandler(handler)
    logging.getLogger("haynote").setLevel(logging.INFO)
    for name in TALKATIVE:
        logging.getLogger(name).setLevel(logging.WARNING)
    return handler
