"""Talking to the book: one message, or a whole chat."""

from __future__ import annotations

import sys
import uuid
from collections.abc import Callable
from datetime import datetime, timedelta
from functools import partial
from typing import TYPE_CHECKING
from zoneinfo import ZoneInfo

import click

from bot.commands import options
from bot.commands.options import book_options, json_option, moment, now_option, opened, tell, time_of
from bot.settings import data_folder
from bot.terminal import chat as terminal
from bot.terminal.files import with_files
from bot.terminal.width import on_screen
from core.app import Message
from core.app.leaving import BY_COMMAND, wanted_leaving
from core.app.taking_away import handed_over, wanted_form
from core.reply import Reply

if TYPE_CHECKING:
    from core.app import App

#: The conversation that the terminal holds with a book.
TERMINAL = "terminal"
author_option = click.option("--from", "author", default="me", metavar="NAME", show_default=True, help="Who is speaking.")


@click.command(short_help="Take one note or question, as the chat would.")
@click.argument("text")
@author_option
@json_option
@now_option
@book_options
def say(text: str, author: str, as_json: bool, now: str | None, book: str | None, farm: str | None) -> None:
    """Take one note or question, as the chat would: haynote say "doe 14 kindled 8, 2 dead"."""
    app = opened(book, farm, as_json=as_json)
    at_home(app, now)
    at = moment(app, now)
    if (reply := beside_notes(app, text, at)) is not None:
        tell({"facts": [], "ask": None, "reply": reply.text, "chores": []}, reply, as_json=as_json)
        return
    told = app.say(message(text, at, author))
    tell(told.document, told.reply if as_json else in_hand(app, told.reply, at), as_json=as_json)


@click.command()
@author_option
@now_option
@book_options
def chat(author: str, now: str | None, book: str | None, farm: str | None) -> None:
    """Talk to the book. Piped in: one message a line, each reply ended by an empty line. The name of a recording is heard as a spoken note."""
    app = opened(book, farm)
    at_home(app, now)
    hold(app, author, moment(app, now) if now else None)


def _put(text: str) -> None:
    """On the screen, broken between words."""
    click.echo(on_screen(text))


def hold(app: App, author: str, start: datetime | None) -> None:
    """The chat, typed or piped. With a start, the clock is set to it and runs on from there."""
    clock = running(start)
    hear = ear(app, author, clock)
    if sys.stdin.isatty():
        _put(app.due(clock(), 0).reply.text + "\n")
        terminal.typed(hear, _put, data_folder() / "typed-lines")
    else:
        terminal.piped(sys.stdin, hear, click.echo)


def ear(app: App, author: str, clock: Callable[[], datetime]) -> terminal.Hear:
    """What hears a message typed here: a note, a question, a list, a recording, or what concerns the whole book."""
    from bot.terminal.lists import with_list  # noqa: PLC0415 - loads the store, which not every command does
    from bot.terminal.sounds import Sounds  # noqa: PLC0415 - the same

    sounds = Sounds(app, partial(click.echo, err=True))
    if (command := click.get_current_context(silent=True)) is not None:
        command.call_on_close(sounds.close)

    def hear(text: str) -> Reply:
        at = clock()
        if (reply := beside_notes(app, text, at)) is not None:
            return reply
        if (reply := with_list(app, text, at, author, app.upload_folder(data_folder() / "uploads"))) is not None:
            return reply
        if (reply := sounds.answer(message(text, at, author))) is not None:
            return in_hand(app, reply, at)
        return in_hand(app, app.hear(message(text, at, author)), at)

    return hear


def beside_notes(app: App, text: str, at: datetime) -> Reply | None:
    """The answer where the whole book is wanted, or the farm is to be deleted or to stay; None where the words are something else."""
    if (form := wanted_form(text)) is not None:
        return in_hand(app, handed_over(form, owner=True), at)  # whoever sits here has the book already
    return Reply((BY_COMMAND,)) if wanted_leaving(text) is not None else None


def in_hand(app: App, reply: Reply, at: datetime) -> Reply:
    """The reply with its files written into the person's data folder, and their places named."""
    return with_files(app, reply, at, data_folder() / "files") if reply.attached else reply


def message(text: str, at: datetime, author: str) -> Message:
    """What was typed here, as a message of its own."""
    return Message(text, at, author, TERMINAL, uuid.uuid4().hex)


def running(start: datetime | None) -> Callable[[], datetime]:
    """A clock: the real one, or one that was set to `start` just now."""
    shift = start - options.clock() if start else timedelta()
    return lambda: options.clock() + shift


def at_home(app: App, now: str | None) -> None:
    """Tell a new book this machine's timezone, as a note that can be changed like any other."""
    if app.newest() is not None:
        return
    from tzlocal import get_localzone_name  # noqa: PLC0415 - only a new book asks

    name = get_localzone_name()
    if name and "UTC" not in name.upper():
        at = time_of(now, ZoneInfo(name)) if now else options.clock()
        app.hear(Message(f"timezone {name}", at, "haynote", "setup", "timezone"))
