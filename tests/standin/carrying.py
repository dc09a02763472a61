"""Updates brought to a bot's webhook: one after the other, and each again until the bot answers that it has it."""

from __future__ import annotations

import json
from http.client import HTTPConnection, HTTPException
from urllib.parse import urlsplit

from tests.standin.world import World

HEADER = "X-Telegram-Bot-Api-Secret-Token"

#: Before a new try the service waits so long [s]; the real one waits longer each time.
AGAIN_S = 0.05


def carry(world: World, brought: list[tuple[int, int | None]]) -> None:
    """Bring what waits until the world closes. `brought`: each try, as (the update's number, the HTTP status or None where nobody answered)."""
    while True:
        with world.turn:
            while not world.closing and (world.hook is None or not world.waiting):
                world.turn.wait()
            if world.closing or world.hook is None:
                return
            (url, secret), update = world.hook, world.waiting[0]
        status = push(url, secret, json.dumps(update).encode())
        with world.turn:
            brought.append((update["update_id"], status))
            if status is not None and 200 <= status < 300:
                world.waiting = [other for other in world.waiting if other is not update]
            else:
                world.turn.wait(AGAIN_S)
            world.turn.notify_all()


def push(url: str, secret: str | None, body: bytes, method: str = "POST") -> int | None:
    """The status that a webhook answers with; None where nobody does."""
    where = urlsplit(url)
    connection = HTTPConnection(where.hostname or "", where.port, timeout=10)
    headers = {"Content-Type": "application/json"} | ({} if secret is None else {HEADER: secret})
    try:
        connection.request(method, where.path, body, headers)
        return connection.getresponse().status
    except (OSError, HTTPException):
        return None
    finally:
        connection.close()
