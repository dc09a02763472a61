"""The token never reaches a log."""

from __future__ import annotations

import io
import logging
from collections.abc import Iterator

import pytest

from bot.telegram.logs import cleaned, log_to

TOKEN = "7000001:a-secret_of-the_bot"


@pytest.fixture
def lines() -> Iterator[io.StringIO]:
    stream = io.StringIO()
    root, before = logging.getLogger(), list(logging.getLogger().handlers)
    handler = log_to(stream, TOKEN)
    yield stream
    root.removeHandler(handler)
    assert root.handlers == before


def test_a_token_in_a_message_is_hidden(lines: io.StringIO) -> None:
    """Whether it stands in the words, in an argument or in a traceback."""
    log = logging.getLogger("haynote.test")
    log.warning("asked https://example/bot%s/getMe", TOKEN)
    log.error("no luck", exc_info=ValueError(f"token {TOKEN} was rejected"))
    said = lines.getvalue()
    assert "asked https://example/botTOKEN/getMe" in said
    assert "token TOKEN was rejected" in said
    assert TOKEN not in said
    assert "a-secret" not in said


def test_any_token_is_hidden() -> None:
    """Also one that this run does not use, or before one is known."""
    assert cleaned("bot123456:abcDEF_ghi-9 at 10:30", "") == "botTOKEN at 10:30"


def test_talkative_libraries_are_kept_short(lines: io.StringIO) -> None:
    """The HTTP library tells of every request at INFO."""
    logging.getLogger("httpx").info("HTTP Request: POST")
    logging.getLogger("haynote.telegram").info("one line of ours")
    assert lines.getvalue().strip().endswith("INFO one line of ours")
    assert "HTTP Request" not in lines.getvalue()


def test_starting_twice_does_not_say_everything_twice(lines: io.StringIO) -> None:
    """A second start takes the first one's handler off."""
    second = io.StringIO()
    handler = log_to(second, TOKEN)
    logging.getLogger("haynote.telegram").info("once")
    logging.getLogger().removeHandler(handler)
    assert second.getvalue().count("once") == 1
    assert lines.getvalue() == ""
