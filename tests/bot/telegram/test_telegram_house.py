"""One bot for all farms of a book: each person is heard by their own, and by nobody else's."""

from __future__ import annotations

import asyncio
import os
import signal
import threading
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

import pytest
from click.testing import CliRunner

from bot.commands.serving import serve
from bot.commands.setting_up import setup
from bot.commands.working import work
from bot.settings import Settings
from bot.telegram import words
from bot.telegram.counter import Counter
from bot.telegram.hints import hint_of
from bot.telegram.met import bot_of as name_of
from bot.telegram.met import remember
from bot.telegram.patience import Bell, Bells
from bot.telegram.serve import bot_of
from bot.telegram.signs import INBOX, Ear, FarBell
from bot.telegram.work import Working
from core.app import App, House, open_book, open_house
from tests.bot.telegram.served import FAST, Served
from tests.postgres import postgres_server, postgres_template, postgres_url  # noqa: F401 - fixtures
from tests.standin import StandIn

TOKEN = "7000001:secret-words_of-a-bot"


@pytest.fixture(params=["sqlite", "postgres"])
def url(request: pytest.FixtureRequest, tmp_path: Path) -> str:
    """A new book on each engine."""
    return f"sqlite:///{tmp_path}/book.sqlite" if request.param == "sqlite" else str(request.getfixturevalue("postgres_url"))


def code_of(url: str, farm: str, served: Served) -> str:
    """A set-up code of that farm, which is made where it is not there."""
    app = open_book(url, farm, create=True)
    assert isinstance(app, App)
    code = app.setup_code(served.now(), anew=True)
    app.close()
    assert code is not None
    return code


@pytest.fixture
def barns(standin: StandIn, url: str, tmp_path: Path) -> Iterator[Served]:
    """A server of two farms: Ann owns both, Bo owns Dale."""
    first = open_book(url, "Hill")
    assert isinstance(first, App)
    first.close()
    house = open_house(url)
    assert isinstance(house, House)
    with Served(standin, tmp_path, house=house) as served:
        for farm, who in (("Hill", "Ann"), ("Dale", "Ann"), ("Dale", "Bo")):
            assert "Welcome" in served.ask(who, code_of(url, farm, served))
        yield served


def test_each_is_heard_by_their_own_farm(barns: Served) -> None:
    """Somebody on two says which; a stranger is refused."""
    assert barns.ask("Bo", "new doe 14 mini rex") == "Doe 14 on the book: Mini Rex."
    assert "14" in barns.ask("Ann", "card of 14")
    assert barns.ask("Ann", "/farm hill") == "This chat is about Hill now."
    assert barns.ask("Ann", "new doe 14 californian") == "Doe 14 on the book: Californian."
    assert barns.ask("Ann", "/farm") == "You are on Dale and Hill. This chat is about Hill. To change: “/farm Dale”."
    assert "private bot" in barns.ask("Cy", "card of 14")


def test_buttons_and_pictures_are_of_the_farm_that_they_came_from(barns: Served) -> None:
    """Whatever farm the chat means by then."""
    note = barns.standin.say("Ann", "new doe 14 mini rex")
    answer = barns.standin.wait_answer(note)
    barns.ask("Ann", "/farm hill")
    undo = next(button for row in answer["reply_markup"]["inline_keyboard"] for button in row if button["text"] == "Undo")
    last = barns._last(barns.standin.person("Ann")["id"])
    barns.standin.press("Ann", answer, undo["text"])
    told = barns.standin.wait_answer("Ann", after=last)["text"]
    assert told.startswith("Taken back")


def test_strangers_codes_and_farms_in_an_update() -> None:
    """What is told of each; of one that no person made, nothing."""
    assert hint_of('{"update_id": 1}') is None
    body = '{"update_id": 1, "message": {"message_id": 5, "date": 1, "chat": {"id": 7, "type": "private"}, "from": {"id": 7}, "text": %s}}'
    told = hint_of(body % '"/start ABCD-EFGH"')
    assert told is not None
    assert (told.words, told.farm, told.account, told.chat) == ("ABCD-EFGH", None, "telegram:7", "7")
    assert hint_of(body % f'"{"hay " * 30}"') == replace(told, words="")
    assert hint_of(body % '"/farm Green Acres"') == replace(told, words="/farm Green Acres", farm="Green Acres")
    assert words.farm("/farm@barn_bot") == ""
    assert words.farm("farm") is None


def test_the_name_of_the_bot_of_a_whole_book(tmp_path: Path) -> None:
    """Is that of each farm in it."""
    remember(tmp_path, "/a/book.sqlite", "barn_bot")
    assert name_of(tmp_path, "/a/book.sqlite Green Acres") == "barn_bot"
    assert name_of(tmp_path, "/a/other.sqlite home") is None


@contextmanager
def working(url: str, standin: StandIn) -> Iterator[Working]:
    """A worker in a thread of its own."""
    house = open_house(url)
    assert isinstance(house, House)
    ready, runs = threading.Event(), []

    async def live(name: str) -> None:
        run = Working(bot_of(Settings("", standin.token, standin.url)), Counter(house, lambda: standin.world.now), house, name, FAST)
        runs.append((run, asyncio.get_running_loop()))
        try:
            await run.run(ready.set)
        finally:
            run.counter.close()

    def begin() -> None:
        with house.working() as name:
            asyncio.run(live(name))

    thread = threading.Thread(target=begin)
    thread.start()
    assert ready.wait(10)
    (run, loop), = runs  # fmt: skip
    yield run
    loop.call_soon_threadsafe(run.stop)
    thread.join(15)
    assert not thread.is_alive()
    house.close()


def test_a_worker_takes_its_share(standin: StandIn, postgres_url: str, tmp_path: Path) -> None:  # noqa: F811
    """While the server itself takes nothing in, the worker hears of messages at once, and the server of its answers."""
    house = open_house(postgres_url)
    assert isinstance(house, House)
    with Served(standin, tmp_path, replace(FAST, tick=3600), house=house) as served:
        served.ask("Ann", code_of(postgres_url, "home", served))
        house.next_update = lambda *_: None  # type: ignore[method-assign, assignment, return-value]
        with working(postgres_url, standin) as run:
            assert run.name == "work-1"
            for tag in range(14, 20):
                assert served.ask("Ann", f"new doe {tag}") == f"Doe {tag} on the book."
        assert house.status(served.now())["inbox"] == {"done": 7}


def test_what_a_worker_held_that_is_gone_is_taken_up(standin: StandIn, postgres_url: str, tmp_path: Path) -> None:  # noqa: F811
    """Once the server's clock looks for it, long before the claim would end."""
    house = open_house(postgres_url)
    assert isinstance(house, House)
    with Served(standin, tmp_path, house=house) as served:
        served.ask("Ann", code_of(postgres_url, "home", served))
        real = house.next_update
        with house.working() as name:
            taken = threading.Event()

            def taking(_worker: str, now: object) -> None:
                if real(name, now) is not None:  # type: ignore[arg-type]
                    house.next_update = real  # type: ignore[method-assign]
                    taken.set()

            house.next_update = taking  # type: ignore[method-assign, assignment]
            note = standin.say("Ann", "new doe 14")
            assert taken.wait(10)
            assert standin.answers(note) == []
        assert standin.wait_answer(note)["text"] == "Doe 14 on the book."


@pytest.fixture
def app(tmp_path: Path) -> Iterator[App]:
    """One farm's book."""
    found = open_book(str(tmp_path / "book.sqlite"))
    assert isinstance(found, App)
    yield found
    found.close()


class Deaf:
    """A house that can't be heard twice, and then once."""

    def __init__(self) -> None:
        self.asked = self.told = 0

    @contextmanager
    def listening(self) -> Iterator[object]:
        """Fails twice."""
        self.asked += 1
        if self.asked < 3:
            raise OSError("the database is away")
        yield lambda _seconds: (INBOX,)

    def give_sign(self, what: str) -> None:
        """Fails always."""
        self.told += 1
        raise OSError(what)


async def test_signs_that_cant_be_heard() -> None:
    """The ear tries again, and rings when it hears."""
    house, bell, bells = Deaf(), Bell(), Bells(patience=lambda _: 0.0)
    listens = asyncio.create_task(Ear(house, INBOX, bell, bells).run())  # type: ignore[arg-type]
    await bell.wait(10)
    assert house.asked == 3
    bells.door.end()
    await listens


async def test_signs_that_cant_be_given(app: App) -> None:
    """The bell rings here all the same, and the next sign is tried again."""
    house, bell, counter = Deaf(), FarBell(), Counter(app)
    tells = asyncio.create_task(bell.tell(house, counter, INBOX))  # type: ignore[arg-type]
    for times in (1, 2):
        bell.ring()
        await bell.wait(10)
        while house.told < times:
            await asyncio.sleep(0)
    tells.cancel()
    counter.close()


@pytest.fixture
def outside(monkeypatch: pytest.MonkeyPatch, tmp_path: Path, standin: StandIn) -> None:
    """The environment of a host's machine."""
    monkeypatch.setenv("HAYNOTE_DATA", str(tmp_path / "data"))
    monkeypatch.setenv("HAYNOTE_BOT_TOKEN", standin.token)
    monkeypatch.setenv("HAYNOTE_BOT_API", standin.url)
    monkeypatch.delenv("HAYNOTE_DATABASE_URL", raising=False)


def run_until(command: object, arguments: list[str], meanwhile: object) -> object:
    """Run a command; what happens meanwhile, in another thread, ends with Ctrl-C."""

    def act() -> None:
        try:
            meanwhile()  # type: ignore[operator]
        finally:
            os.kill(os.getpid(), signal.SIGINT)

    other = threading.Thread(target=act)
    other.start()
    try:
        return CliRunner().invoke(command, arguments)  # type: ignore[arg-type]
    finally:
        other.join()


@pytest.mark.usefixtures("outside")
def test_the_commands_of_a_host(standin: StandIn, postgres_url: str) -> None:  # noqa: F811
    """A farm is made, all are served, and a worker works beside."""
    made = CliRunner().invoke(setup, ["--book", postgres_url, "--farm", "Green Acres", "--new"])
    assert made.exit_code == 0, made.output
    assert "set-up code" in made.stdout
    served = run_until(serve, ["--book", postgres_url, "--all-farms"], lambda: standin.wait_calls("getUpdates", answered=False))
    assert served.exit_code == 0, served.output  # type: ignore[attr-defined]
    assert served.stdout == ""  # type: ignore[attr-defined]
    worked = run_until(work, ["--book", postgres_url], lambda: standin.wait_calls("getMe", count=2))
    assert worked.exit_code == 0, worked.output  # type: ignore[attr-defined]


@pytest.mark.usefixtures("outside")
def test_what_a_worker_wants(standin: StandIn, postgres_url: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:  # noqa: F811
    """A database, a book that opens, a bot that the service knows, and a token; what is missing is told."""
    assert "is worked on by 'haynote serve' alone" in CliRunner().invoke(work, ["--book", str(tmp_path / "book.sqlite")]).stderr
    assert "no address of a book" in CliRunner().invoke(work, ["--book", "://"]).stderr
    standin.fail("getMe", "refuse", code=401, text="Unauthorized")
    assert "does not know this bot token" in CliRunner().invoke(work, ["--book", postgres_url]).stderr
    monkeypatch.delenv("HAYNOTE_BOT_TOKEN")
    assert "HAYNOTE_BOT_TOKEN" in CliRunner().invoke(work, []).stderr


@pytest.mark.usefixtures("outside")
def test_one_farm_or_all() -> None:
    """Not both."""
    assert CliRunner().invoke(serve, ["--all-farms", "--farm", "Hill"]).exit_code == 2
