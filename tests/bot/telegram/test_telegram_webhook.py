"""Updates brought to the server instead of fetched by it."""

from __future__ import annotations

import json
import socket
from collections.abc import Iterator
from contextlib import closing
from pathlib import Path

import pytest

from bot.telegram.serve import CantListenError
from bot.telegram.webhook import LONGEST, Address, secret
from tests.bot.telegram.served import Served
from tests.standin import StandIn
from tests.standin.carrying import push


@pytest.fixture
def at() -> Address:
    """A free port of this machine."""
    with closing(socket.socket()) as probe:
        probe.bind(("127.0.0.1", 0))
        port = int(probe.getsockname()[1])
    return Address(f"http://127.0.0.1:{port}/hook.v1", "127.0.0.1", port)


@pytest.fixture
def hooked(standin: StandIn, tmp_path: Path, at: Address) -> Iterator[Served]:
    with Served(standin, tmp_path / "book.sqlite", at=at) as server:
        standin.wait_calls("setWebhook")
        yield server


def update(number: int, text: str = "new doe 15") -> bytes:
    """An update that the stand-in did not make."""
    chat = {"id": 5001, "type": "private", "first_name": "Eve"}
    sender = {"id": 5001, "is_bot": False, "first_name": "Eve"}
    message = {"message_id": number, "date": 1772608500, "chat": chat, "from": sender, "text": text}
    return json.dumps({"update_id": number, "message": message}).encode()


def test_a_note_is_brought_recorded_and_answered(hooked: Served, standin: StandIn) -> None:
    """Without a single question for news."""
    hooked.owner()
    assert "14" in hooked.ask("Ann", "new doe 14")
    standin.wait_confirmed()
    assert not standin.calls("getUpdates")
    assert hooked.notes() == ["new doe 14"]
    assert {status for _, status in standin.brought} == {200}


def test_the_service_is_told_what_to_bring_and_how(hooked: Served, standin: StandIn, at: Address) -> None:
    """One at a time, so that a chat's messages come in order; and nothing that waits is dropped."""
    params = standin.calls("setWebhook")[0].params
    assert params == {
        "url": at.url,
        "secret_token": secret(standin.token),
        "max_connections": 1,
        "allowed_updates": ["message", "edited_message", "callback_query"],
    }
    assert not standin.calls("deleteWebhook")


def test_what_came_while_nobody_listened_is_brought_again(standin: StandIn, tmp_path: Path, at: Address) -> None:
    """The service keeps the address; a stopped server loses nothing, and order is kept."""
    with Served(standin, tmp_path / "book.sqlite", at=at) as server:
        server.owner()
        server.ask("Ann", "new doe 14")
    for text in ("new doe 15", "new doe 16", "new buck 3"):
        last = standin.say("Ann", text)
    with Served(standin, tmp_path / "book.sqlite", at=at) as server:
        assert "3" in server.reply(last)["text"]
        assert server.notes() == ["new doe 14", "new doe 15", "new doe 16", "new buck 3"]


def test_an_update_brought_twice_is_recorded_once(hooked: Served, standin: StandIn, at: Address) -> None:
    """As happens when the answer got lost: it is confirmed again and not taken in again."""
    hooked.owner()
    hooked.ask("Ann", "new doe 14")
    standin.wait_confirmed()
    again = json.dumps(_last_update(hooked)).encode()
    assert push(at.url, secret(standin.token), again) == 200
    hooked.ask("Ann", "new buck 3")
    assert hooked.notes() == ["new doe 14", "new buck 3"]


def _last_update(hooked: Served) -> object:
    from sqlalchemy import text

    with hooked.app._engine.begin() as connection:
        return json.loads(connection.execute(text("select raw from inbox order by update_id desc limit 1")).scalar_one())


def test_what_cant_be_written_down_is_not_confirmed(hooked: Served, standin: StandIn, at: Address, monkeypatch: pytest.MonkeyPatch) -> None:
    """The service keeps it and brings it again."""
    hooked.owner()
    standin.wait_confirmed()
    take, failures = hooked.app.take_updates, [OSError("disk full"), OSError("disk full")]

    def full(*given: object) -> int:
        if failures:
            raise failures.pop()
        return take(*given)  # type: ignore[arg-type]

    monkeypatch.setattr(hooked.app, "take_updates", full)
    assert "14" in hooked.ask("Ann", "new doe 14")
    standin.wait_confirmed()
    assert [status for _, status in standin.brought][-3:] == [503, 503, 200]
    assert hooked.notes() == ["new doe 14"]


@pytest.mark.parametrize(
    "body",
    [
        b"",
        b"{",
        b"[]",
        b"7",
        b"null",
        b'{"update_id": "7"}',
        b'{"update_id": true}',
        b'{"message": {}}',
        b'{"update_id": 7, "message": 3}',
        b"\xff\xfe",
    ],
)
def test_what_is_no_update_is_refused(hooked: Served, standin: StandIn, at: Address, body: bytes) -> None:
    """With 400, also where the secret is right; the server goes on."""
    assert push(at.url, secret(standin.token), body) == 400
    hooked.owner()


def test_a_body_that_is_too_long_is_not_read(hooked: Served, standin: StandIn, at: Address) -> None:
    """The connection is refused or cut, and the server goes on."""
    assert push(at.url, secret(standin.token), update(1, "x" * LONGEST)) in (400, 413, None)
    hooked.owner()


def test_nothing_else_is_at_that_address(hooked: Served, standin: StandIn, at: Address) -> None:
    """Another path is not found, nor is one that the pattern of the path would fit; another method is not allowed."""
    key = secret(standin.token)
    assert push(at.url + "/more", key, update(1)) == 404
    assert push(at.url.replace("hook.v1", "hookxv1"), key, update(1)) == 404
    assert push(at.url, key, b"", "GET") == 405


def test_a_port_that_is_taken_is_told(standin: StandIn, tmp_path: Path, at: Address) -> None:
    """With the place and the reason."""
    server = Served(standin, tmp_path / "book.sqlite", at=at)
    with closing(socket.socket()) as other:
        other.bind((at.host, at.port))
        other.listen()
        with server:
            server._thread.join(10)
            error, server.error = server.error, None
    assert isinstance(error, CantListenError)
    assert error.where == f"127.0.0.1:{at.port}"
    assert "in use" in error.why


def test_the_address_is_told_again_until_the_service_takes_it(standin: StandIn, tmp_path: Path, at: Address) -> None:
    """A service that is down when the server starts is no reason to give up."""
    for kind in ("broken", "drop"):
        standin.fail("setWebhook", kind)
    with Served(standin, tmp_path / "book.sqlite", at=at) as server:
        server.owner()
    assert len(standin.calls("setWebhook")) == 3


def test_going_back_to_fetching_loses_nothing(standin: StandIn, tmp_path: Path, at: Address) -> None:
    """The next server that fetches takes the address away, and gets what waited."""
    with Served(standin, tmp_path / "book.sqlite", at=at) as server:
        server.owner()
    note = standin.say("Ann", "new doe 14")
    with Served(standin, tmp_path / "book.sqlite") as server:
        assert "14" in server.reply(note)["text"]
    assert standin.world.webhook_url == ""
