"""`haynote work`: a worker beside `haynote serve`, for a book of many farms."""

from __future__ import annotations

import asyncio
import logging
import sys
from contextlib import closing

import click

from bot.commands.options import outside
from bot.commands.serving import NO_KEY, STRANGE_KEY, fail

NOT_HERE = "A book in a file is worked on by 'haynote serve' alone. Workers are for a book on PostgreSQL: set HAYNOTE_DATABASE_URL."
READY = "Working as {name}. Stop with Ctrl-C."


@click.command(short_help="Take messages in beside a server of many farms.")
@click.option("--book", metavar="URL", help="The book, instead of your own: a database's address.")
def work(book: str | None) -> None:
    """Work off messages beside 'haynote serve --all-farms', on this machine or another, with the same book and the same bot token.

    Start as many as you have processors to spare. The server alone fetches messages and sends answers; a worker reads them and writes them down.
    """
    from telegram.error import InvalidToken  # noqa: PLC0415 - only this command pays for it

    from bot.telegram import logs  # noqa: PLC0415
    from bot.telegram.counter import Counter  # noqa: PLC0415
    from bot.telegram.serve import bot_of, until_told  # noqa: PLC0415
    from bot.telegram.work import Working  # noqa: PLC0415
    from core.app import Problem, open_house  # noqa: PLC0415

    kept = outside()
    if kept.bot_token is None:
        fail(NO_KEY)
    written = logs.log_to(sys.stderr, kept.bot_token)
    try:
        house = open_house(book or kept.database_url)
        if isinstance(house, Problem):
            fail(f"{house.text} {house.remedy}".strip())
        with closing(house):
            if not house.has_workers:
                fail(NOT_HERE)
            with house.working() as name:
                run = Working(bot_of(kept), Counter(house), house, name)
                asyncio.run(until_told(run, ready=lambda: click.echo(READY.format(name=name), err=True)))
    except InvalidToken:
        fail(STRANGE_KEY)
    finally:
        logging.getLogger().removeHandler(written)
