"""Clients for the stand-in's own tests: python-telegram-bot's, and a bare one for requests that no library would send."""

from __future__ import annotations

import json
from collections.abc import Iterable
from http.client import HTTPConnection
from typing import Any

from telegram import Bot
from telegram.request import HTTPXRequest

from tests.standin.server import StandIn


def ptb(standin: StandIn, token: str = "") -> Bot:
    """PTB's client pointed at the stand-in; use it with `async with`."""
    return Bot(
        token or standin.token,
        base_url=f"{standin.url}/bot",
        base_file_url=f"{standin.url}/file/bot",
        request=HTTPXRequest(),
        get_updates_request=HTTPXRequest(),
    )


def post(standin: StandIn, path: str, body: bytes | Iterable[bytes], content_type: str = "application/json") -> tuple[int, Any]:
    """Status and JSON of the answer to one request."""
    connection = HTTPConnection("127.0.0.1", standin.port, timeout=60)
    try:
        connection.request("POST", path, body, {"Content-Type": content_type})
        answer = connection.getresponse()
        return answer.status, json.loads(answer.read())
    finally:
        connection.close()


def call(standin: StandIn, method: str, **fields: Any) -> tuple[int, Any]:
    """A call of a method with a JSON body."""
    return post(standin, f"/bot{standin.token}/{method}", json.dumps(fields).encode())


def control(standin: StandIn, verb: str, **arguments: Any) -> Any:
    """What the control address answers."""
    return post(standin, f"/control/{verb}", json.dumps(arguments).encode())[1]
