"""Somebody calls the webhook who is not the service."""

from __future__ import annotations

import json
import logging
import re
import socket
from contextlib import closing
from pathlib import Path

import pytest

from bot.telegram.webhook import Address, secret
from tests.bot.telegram.served import Served
from tests.standin import StandIn
from tests.standin.carrying import push

TOKEN = "7000001:stand-in-token"
WRONG = [None, "", "guess", TOKEN, secret(TOKEN)[:-1], secret(TOKEN) + "0", secret(TOKEN).upper(), secret("7000001:other"), "\u00e9"]


def _free() -> Address:
    with closing(socket.socket()) as probe:
        probe.bind(("127.0.0.1", 0))
        port = int(probe.getsockname()[1])
    return Address(f"http://127.0.0.1:{port}/hook", "127.0.0.1", port)


def _forged(owner: int) -> bytes:
    """A note as the farm's owner would have sent it."""
    who = {"id": owner, "is_bot": False, "first_name": "Ann"}
    message = {"message_id": 900, "date": 1772608500, "chat": {"id": owner, "type": "private"}, "from": who, "text": "doe 14 died"}
    return json.dumps({"update_id": 799_999_999, "message": message}).encode()


@pytest.mark.parametrize("given", WRONG, ids=range(len(WRONG)))
def test_a_wrong_secret_is_refused(tmp_path: Path, caplog: pytest.LogCaptureFixture, given: str | None) -> None:
    """403, nothing kept of it, and a line in the log that tells neither the words nor any secret."""
    caplog.set_level(logging.DEBUG)
    at = _free()
    with StandIn(token=TOKEN) as standin, Served(standin, tmp_path / "book.sqlite", at=at) as server:
        server.owner()
        server.ask("Ann", "new doe 14")
        caplog.clear()
        assert push(at.url, given, _forged(standin.person("Ann")["id"])) == 403
        said = [record.getMessage() for record in caplog.records if record.name.startswith(("haynote", "tornado"))]
        server.ask("Ann", "new buck 3")
        assert server.notes() == ["new doe 14", "new buck 3"]
    assert said == ["Refused a call to the webhook without the right secret, from 127.0.0.1."]


def test_the_secret_is_of_a_form_that_the_service_takes_and_tells_no_token() -> None:
    """1 to 256 of A-Z a-z 0-9 _ - (Bot API, setWebhook); another for each bot."""
    assert re.fullmatch(r"[A-Za-z0-9_-]{1,256}", secret(TOKEN))
    assert "stand-in" not in secret(TOKEN)
    assert secret(TOKEN) != secret("7000002:stand-in-token")
