"""`haynote serve` as an operator meets it."""

from __future__ import annotations

import json
import os
import re
import signal
import socket
import subprocess
import sys
import threading
from collections.abc import Callable, Iterator
from contextlib import closing
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from bot.commands.serving import serve
from bot.telegram.lock import alone
from tests.standin import StandIn

TOKEN = "7000001:secret-words_of-a-bot"


@pytest.fixture
def standin() -> Iterator[StandIn]:
    with StandIn(token=TOKEN) as served:
        yield served


@pytest.fixture(autouse=True)
def outside(monkeypatch: pytest.MonkeyPatch, tmp_path: Path, standin: StandIn) -> None:
    """The environment of a farm's machine."""
    monkeypatch.setenv("HAYNOTE_DATA", str(tmp_path / "data"))
    monkeypatch.setenv("HAYNOTE_BOT_TOKEN", TOKEN)
    monkeypatch.setenv("HAYNOTE_BOT_API", standin.url)
    monkeypatch.delenv("HAYNOTE_DATABASE_URL", raising=False)


def run(*arguments: str, meanwhile: Callable[[], object] | None = None) -> Result:
    """Run the command; what happens meanwhile, in another thread, ends with Ctrl-C."""

    def act() -> None:
        assert meanwhile is not None
        try:
            meanwhile()
        finally:
            os.kill(os.getpid(), signal.SIGINT)

    if meanwhile is None:
        return CliRunner().invoke(serve, arguments)
    other = threading.Thread(target=act)
    other.start()
    try:
        return CliRunner().invoke(serve, arguments)
    finally:
        other.join()


def test_it_listens_until_it_is_told_to_stop(standin: StandIn) -> None:
    """It says the code on standard output, the rest on standard error, and ends in order."""
    result = run(meanwhile=lambda: standin.wait_calls("getUpdates", answered=False))
    assert result.exit_code == 0, result.output
    assert re.fullmatch(r"set-up code: \S+\n", result.stdout)
    assert "Listening" in result.stderr
    assert TOKEN not in result.output


def test_the_bots_name_is_noted_for_the_codes_of_cage_cards(standin: StandIn, tmp_path: Path) -> None:
    """As the service said it, for the book that is served."""
    run(meanwhile=lambda: standin.wait_calls("getUpdates", answered=False))
    told = json.loads((tmp_path / "data" / "bots.json").read_text(encoding="utf-8"))
    (book, name), = told.items()  # fmt: skip
    assert book.endswith("herd-book.sqlite home")
    assert name == "barn_notes_bot"


def test_no_token_is_explained(monkeypatch: pytest.MonkeyPatch) -> None:
    """With what to do about it."""
    monkeypatch.delenv("HAYNOTE_BOT_TOKEN")
    result = run()
    assert result.exit_code == 1
    assert "HAYNOTE_BOT_TOKEN" in result.stderr


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("HAYNOTE_BOT_TOKEN", "stand-in-words"),
        ("HAYNOTE_BOT_TOKEN", f"bot{TOKEN}"),
        ("HAYNOTE_BOT_TOKEN", f"{TOKEN} "),
        ("HAYNOTE_BOT_API", "api.example.org"),
        ("HAYNOTE_BOT_API", "https:///bot"),
    ],
)
def test_a_setting_that_cant_be_is_explained(monkeypatch: pytest.MonkeyPatch, standin: StandIn, name: str, value: str) -> None:
    """By its name, before anybody is called; a token is not repeated."""
    monkeypatch.setenv(name, value)
    result = run()
    assert result.exit_code == 1
    assert result.stderr.startswith(name)
    assert value.strip() not in result.stderr
    assert standin.calls() == []


def test_a_strange_token_is_explained(standin: StandIn) -> None:
    """Without saying it."""
    standin.fail("getMe", "refuse", code=401, text="Unauthorized")
    result = run()
    assert result.exit_code == 1
    assert "does not know this bot token" in result.stderr
    assert TOKEN not in result.output


def test_a_book_that_cant_be_opened_is_explained(tmp_path: Path) -> None:
    """In the book's own words."""
    (tmp_path / "letter.txt").write_text("Dear Ann, the hay is low. " * 100)
    result = run("--book", str(tmp_path / "letter.txt"))
    assert result.exit_code == 1
    assert "letter.txt" in result.stderr


def test_a_second_server_is_refused(tmp_path: Path) -> None:
    """It would fight the first one over the messages."""
    book = tmp_path / "book.sqlite"
    with alone(book.with_name("book.sqlite.serving")):
        result = run("--book", str(book))
    assert result.exit_code == 1
    assert "Another 'haynote serve' runs" in result.stderr


def test_the_help_is_plain() -> None:
    """It tells where the token comes from."""
    result = run("--help")
    assert result.exit_code == 0
    assert "HAYNOTE_BOT_TOKEN" in result.output


def test_the_token_is_in_no_output(standin: StandIn, tmp_path: Path) -> None:
    """Whatever goes wrong between a real process and the service; and a SIGTERM ends it in order."""
    for method, kind in (("getMe", "broken"), ("getUpdates", "drop"), ("sendMessage", "drop")):
        standin.fail(method, kind)
    standin.fail("getUpdates", "refuse", code=409, text="Conflict: terminated by other getUpdates request")
    standin.fail("sendMessage", "refuse", code=400, text="Bad Request: chat not found")
    said = tmp_path / "said.txt"
    with said.open("w") as out:
        command = [sys.executable, "-X", "dev", "-W", "ignore", "-m", "bot", "serve", "--book", str(tmp_path / "book.sqlite")]
        with subprocess.Popen(command, stdout=out, stderr=out) as server:
            try:
                standin.say("Eve", "let me in")
                standin.wait_calls("sendMessage", count=2, timeout=40)
                server.terminate()
                assert server.wait(10) == 0
            finally:
                server.kill()
    assert "can't be reached" in said.read_text()
    assert "Another program reads" in said.read_text()
    assert TOKEN not in said.read_text()
    assert TOKEN.partition(":")[2] not in said.read_text()


@pytest.mark.parametrize(
    ("given", "said"),
    [
        (("--webhook", "http://barn.example.org/hook"), "begins with https://"),
        (("--webhook", "https://barn.example.org/hook", "--listen", "8443"), "a host and a port"),
        (("--webhook", "https://barn.example.org/hook", "--listen", "127.0.0.1:99999"), "a host and a port"),
    ],
)
def test_a_wrong_webhook_is_wrong_use(given: tuple[str, ...], said: str) -> None:
    """Said at once, with the right form."""
    result = run(*given)
    assert result.exit_code == 2
    assert said in result.stderr


def test_a_port_that_is_taken_is_explained(standin: StandIn) -> None:
    """With where and why, and what to give instead."""
    result = run("--webhook", "http://127.0.0.1:1/hook", "--listen", f"127.0.0.1:{standin.port}")
    assert result.exit_code == 1
    assert f"Can't listen at 127.0.0.1:{standin.port}" in result.stderr
    assert "--listen" in result.stderr


def test_the_webhook_without_its_extra_is_explained(monkeypatch: pytest.MonkeyPatch) -> None:
    """With the line that gets it."""
    monkeypatch.setitem(sys.modules, "bot.telegram.webhook", None)
    result = run("--webhook", "https://barn.example.org/hook")
    assert result.exit_code == 1
    assert "pip install 'haynote[webhook]'" in result.stderr


def free_port() -> int:
    """A port that nobody listens at."""
    with closing(socket.socket()) as probe:
        probe.bind(("127.0.0.1", 0))
        return int(probe.getsockname()[1])


def test_it_serves_by_webhook(standin: StandIn) -> None:
    """The service is told the address that was given, whatever it is behind."""
    result = run(
        "--webhook",
        "https://barn.example.org/hook",
        "--listen",
        f"127.0.0.1:{free_port()}",
        meanwhile=lambda: standin.wait_calls("setWebhook"),
    )
    assert result.exit_code == 0, result.output
    assert standin.calls("setWebhook")[0].params["url"] == "https://barn.example.org/hook"
