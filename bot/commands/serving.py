"""`haynote serve`: the bot on Telegram."""

from __future__ import annotations

import asyncio
import logging
import sys
from collections.abc import Callable
from contextlib import closing
from functools import partial
from typing import TYPE_CHECKING, NoReturn

import click

from bot.commands.options import outside
from bot.settings import Settings, data_folder, trouble

if TYPE_CHECKING:
    from bot.telegram.webhook import Address

NO_KEY = "No bot token. Make a bot with @BotFather on Telegram and put its token into HAYNOTE_BOT_TOKEN, or let 'haynote setup' keep it."
STRANGE_KEY = "Telegram does not know this bot token. Look at HAYNOTE_BOT_TOKEN, or let @BotFather show the token again."
SERVED = "Another 'haynote serve' runs for this book. Stop that one first."
ELSEWHERE = "Another 'haynote serve' runs for this farm or with this bot, perhaps on another machine. Stop that one first."
NO_LISTENING = "Can't listen at {where}: {why}. Give another HOST:PORT with --listen."
NO_EXTRA = "The webhook needs tornado, which is not installed: pip install 'haynote[webhook]'."
NOT_HTTPS = "Telegram brings updates only to an address that begins with https://, such as https://barn.example.org/hook."
NO_PORT = "Give a host and a port, such as 127.0.0.1:8443."
ONE_OR_ALL = "Say --farm or --all-farms, not both."
LISTEN = "127.0.0.1:8443"
CODE = "set-up code: {code}"
SEND_IT = "Send this code to your bot on Telegram, within a day: whoever sends it first owns this book."
READY = "Listening. Stop with Ctrl-C."


log = logging.getLogger("haynote.telegram")


def _https(given: str) -> None:
    """The address that the service is told; plain http is for a trial on one's own machine."""
    if not given.startswith(("https://", "http://127.0.0.1:")):
        raise click.BadParameter(NOT_HTTPS)


def _port(given: str) -> tuple[str, int]:
    """A host and a port."""
    host, _, port = given.rpartition(":")
    if not host or not port.isdecimal() or not 0 < int(port) < 65536:
        raise click.BadParameter(NO_PORT)
    return host.strip("[]"), int(port)


@click.command()
@click.option("--book", metavar="URL", help="The book to serve instead of your own: a file, or a database's address.")
@click.option("--farm", metavar="NAME", help="The farm, where the book holds several.")
@click.option("--all-farms", is_flag=True, help="Serve every farm of the book with this one bot.")
@click.option(
    "--webhook",
    metavar="URL",
    envvar="HAYNOTE_WEBHOOK",
    show_envvar=True,
    help="Let Telegram bring updates to this https address instead of asking for them.",
)
@click.option(
    "--listen",
    metavar="HOST:PORT",
    envvar="HAYNOTE_LISTEN",
    show_envvar=True,
    help=f"Where to listen for them, behind the address: {LISTEN} unless you say otherwise.",
)
def serve(book: str | None, farm: str | None, all_farms: bool, webhook: str | None, listen: str | None) -> None:
    """Answer on Telegram, and send reminders and the weekly digest.

    The bot's token is read from HAYNOTE_BOT_TOKEN. While the book has no owner, a set-up code is printed: the first person to send it
    to the bot owns the book, and everybody else is refused. It runs until you stop it, and loses nothing when the machine goes down.
    """
    kept = outside()
    if kept.bot_token is None:
        fail(NO_KEY)
    if (wrong := trouble(kept)) is not None:
        fail(wrong)
    if all_farms and farm is not None:
        raise click.UsageError(ONE_OR_ALL)
    _serve(kept, book or kept.database_url, farm, _address(webhook or kept.webhook, listen or kept.listen or LISTEN), all_farms=all_farms)


def _address(webhook: str | None, listen: str) -> Address | None:
    """Where updates are brought to; None where they are fetched. Wrong use where it is no such address."""
    if webhook is None:
        return None
    _https(webhook)
    host, port = _port(listen)
    try:
        from bot.telegram.webhook import Address  # noqa: PLC0415 - an extra
    except ModuleNotFoundError:
        fail(NO_EXTRA)
    return Address(webhook, host, port)


def _serve(kept: Settings, url: str, farm: str | None, at: Address | None, *, all_farms: bool) -> None:
    """Open the book, hold its lock and serve."""
    from telegram.error import InvalidToken  # noqa: PLC0415 - only this command pays for it

    from bot.telegram import logs  # noqa: PLC0415
    from bot.telegram.beside import Beside  # noqa: PLC0415
    from bot.telegram.counter import Counter, clock  # noqa: PLC0415
    from bot.telegram.lock import AlreadyServedError, alone, lock_file  # noqa: PLC0415
    from bot.telegram.met import remember  # noqa: PLC0415
    from bot.telegram.serve import CantListenError, Serving, bot_of, until_told  # noqa: PLC0415
    from core.app import House, Problem, open_book, open_house  # noqa: PLC0415

    token = kept.bot_token or ""
    bot = token.partition(":")[0]
    written = logs.log_to(sys.stderr, token)
    try:
        with alone(lock_file(url, bot, data_folder())) as alive:
            book = open_house(url) if all_farms else open_book(url, farm)
            if isinstance(book, Problem):
                fail(f"{book.text} {book.remedy}".strip())
            with closing(book), closing(Beside()) as beside, book.serving(bot) as free:
                if not free:
                    fail(ELSEWHERE)
                if isinstance(book, House):
                    book.troubled = partial(log.error, "What is due on the farm %s could not be looked up: %s")
                else:
                    _tell_code(book.setup_code(clock()))
                book.reckon = beside
                met = partial(remember, data_folder(), book.place)
                run = Serving(bot_of(kept), Counter(book), met=met, alive=partial(_each_minute, alive, beside.rest), at=at)
                asyncio.run(until_told(run, ready=lambda: click.echo(READY, err=True)))
    except AlreadyServedError:
        fail(SERVED)
    except CantListenError as error:
        fail(NO_LISTENING.format(where=error.where, why=error.why))
    except InvalidToken:
        fail(STRANGE_KEY)
    finally:
        logging.getLogger().removeHandler(written)


def _each_minute(alive: Callable[[], object], rest: Callable[[], object]) -> None:
    """A sign of life; and an end to what nobody needs any more."""
    alive()
    rest()


def _tell_code(code: str | None) -> None:
    """Tell the code that makes somebody the book's owner, while it has none."""
    if code:
        click.echo(CODE.format(code=code))
        click.echo(SEND_IT, err=True)


def fail(text: str) -> NoReturn:
    """Say why not, and end with 1."""
    click.echo(text, err=True)
    raise SystemExit(1)
