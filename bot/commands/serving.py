"""`haynote serve`: the bot on Telegram."""

from __future__ import annotations

import asyncio
import logging
import sys
from functools import partial
from typing import NoReturn

import click

from bot.settings import Settings, data_folder, settings

NO_KEY = "No bot token. Make a bot with @BotFather on Telegram and put its token into HAYNOTE_BOT_TOKEN."
STRANGE_KEY = "Telegram does not know this bot token. Look at HAYNOTE_BOT_TOKEN, or let @BotFather show the token again."
SERVED = "Another 'haynote serve' runs for this book. Stop that one first."
ELSEWHERE = "Another 'haynote serve' runs for this farm or with this bot, perhaps on another machine. Stop that one first."
CODE = "set-up code: {code}"
SEND_IT = "Send this code to your bot on Telegram, within a day: whoever sends it first owns this book."
READY = "Listening. Stop with Ctrl-C."


@click.command()
@click.option("--book", metavar="URL", help="The book to serve instead of your own: a file, or a database's address.")
@click.option("--farm", metavar="NAME", help="The farm, where the book holds several.")
def serve(book: str | None, farm: str | None) -> None:
    """Answer on Telegram, and send reminders and the weekly digest.

    The bot's token is read from HAYNOTE_BOT_TOKEN. While the book has no owner, a set-up code is printed: the first person to send it
    to the bot owns the book, and everybody else is refused. It runs until you stop it, and loses nothing when the machine goes down.
    """
    kept = settings()
    if kept.bot_token is None:
        _fail(NO_KEY)
    _serve(kept, book or kept.database_url, farm)


def _serve(kept: Settings, url: str, farm: str | None) -> None:
    """Open the book, hold its lock and serve."""
    from telegram.error import InvalidToken  # noqa: PLC0415 - only this command pays for it

    from bot.telegram import logs  # noqa: PLC0415
    from bot.telegram.counter import Counter, clock  # noqa: PLC0415
    from bot.telegram.lock import AlreadyServedError, alone, lock_file  # noqa: PLC0415
    from bot.telegram.met import remember  # noqa: PLC0415
    from bot.telegram.serve import Serving, bot_of  # noqa: PLC0415
    from bot.telegram.serve import serve as serving  # noqa: PLC0415
    from core.app import Problem, open_book  # noqa: PLC0415

    token = kept.bot_token or ""
    bot = token.partition(":")[0]
    written = logs.log_to(sys.stderr, token)
    try:
        with alone(lock_file(url, bot, data_folder())) as alive:
            app = open_book(url, farm)
            if isinstance(app, Problem):
                _fail(f"{app.text} {app.remedy}".strip())
            with app.serving(bot) as free:
                if not free:
                    _fail(ELSEWHERE)
                _tell_code(app.setup_code(clock()))
                met = partial(remember, data_folder(), app.place)
                run = Serving(bot_of(kept), Counter(app), met=met, alive=alive)
                asyncio.run(serving(run, ready=lambda: click.echo(READY, err=True)))
    except AlreadyServedError:
        _fail(SERVED)
    except InvalidToken:
        _fail(STRANGE_KEY)
    finally:
        logging.getLogger().removeHandler(written)


def _tell_code(code: str | None) -> None:
    """Tell the code that makes somebody the book's owner, while it has none."""
    if code:
        click.echo(CODE.format(code=code))
        click.echo(SEND_IT, err=True)


def _fail(text: str) -> NoReturn:
    """Say why not, and end with 1."""
    click.echo(text, err=True)
    raise SystemExit(1)
