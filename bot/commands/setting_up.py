"""`haynote setup`: a walk from nothing to a bot that knows its farm, and the code that makes somebody its owner.

The questions go to standard error and the code to standard output. Answers may be piped in, a line each; where none are left, all stays as it is.
"""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from getpass import getpass
from typing import TYPE_CHECKING, Final

import click

from bot import settings_file
from bot.commands import options
from bot.commands.options import book_options, opened, why_not
from bot.commands.talking import at_home, ear, message
from bot.settings import KEY, KEY_FORM
from bot.terminal import chat as terminal

if TYPE_CHECKING:
    from core.app import App

KEY_WANTED: Final = "The bot's token, from @BotFather on Telegram; it is not shown"
KEPT: Final = "Kept in {file}, for your eyes only."
NOT_KEPT: Final = "{file} can't be written: {why}. Put the token into HAYNOTE_BOT_TOKEN instead."
WINS: Final = "HAYNOTE_BOT_TOKEN is set here, and wins over the file."
NO_SUCH_VALUE: Final = "That can't be '{answer}'. {form}"
#: The farm's settings that are asked for: what each is, and what may be answered.
WISHES: Final = (
    ("timezone", "The farm's time zone", "Give it as Continent/City, such as America/Chicago or Europe/Berlin."),
    ("weight_units", "A weight without a unit is in", "Say lb, kg or g."),
    ("temperature_units", "A temperature without a unit is in", "Say F or C."),
    ("date_order", "Dates in numbers are read", "Say MDY where 3/4 is March 4, DMY where it is the third of April, or YMD."),
)
ANIMALS: Final = (
    "The first animals, a line each, such as: new doe 14 named Juno mini rex castor born 3/4/2025\n"
    "Or paste a list with its headings (tag, sex, breed, born, ...), then an empty line. An empty line alone ends this."
)
#: A line with so many of these is a row of a list, and the list goes on until a line without.
IN_A_ROW: Final = 2
BETWEEN: Final = ("\t", ",", ";")


@click.command(short_help="Set the bot up: token, timezone, units, first animals, and the code for its owner.")
@click.option("--new", is_flag=True, help="Make the farm of that name first, in a book of many.")
@click.option("--code", "only_code", is_flag=True, help="Ask nothing: only print a code.")
@book_options
def setup(book: str | None, farm: str | None, new: bool, only_code: bool) -> None:
    """Ask for the bot's token, the timezone, the units and the first animals, then print a code: whoever sends it to the bot becomes an owner of the farm.

    Enter leaves things as they are. The answers can be piped in, a line each. A code works once, for a day.
    """
    app: App = opened(book, farm, create=new)
    if not only_code:
        _walk(app)
    code = app.setup_code(options.clock(), anew=True)
    click.echo(f"set-up code: {code}")
    click.echo(f"For the book {app.status()['book']}", err=True)
    click.echo("Send it to the bot from the phone of the person who owns the farm. Then: haynote serve", err=True)


def _walk(app: App) -> None:
    """All the questions, until nothing more is answered."""
    try:
        _ask_for_token()
        for name, what, form in WISHES:
            _ask_for_wish(app, name, what, form)
        if not app.has_animals:
            terminal.converse(_notes(), ear(app, "me", options.clock), tell)
    except EOFError:
        return


def _ask_for_token() -> None:
    """The token, which goes into the settings file and nowhere else."""
    while answer := _answer(KEY_WANTED, "set" if options.outside().bot_token else "later", hidden=True):
        if KEY.fullmatch(answer):
            _keep(answer)
            return
        tell(f"That is no bot token. {KEY_FORM}")


def _keep(token: str) -> None:
    file = settings_file.place(os.environ)
    try:
        settings_file.kept(file, "bot_token", token)
    except OSError as error:
        tell(NOT_KEPT.format(file=file, why=why_not(error)))
        return
    tell(KEPT.format(file=file))
    if os.environ.get("HAYNOTE_BOT_TOKEN"):
        tell(WINS)


def _ask_for_wish(app: App, name: str, what: str, form: str) -> None:
    """One setting of the farm's; an answer other than what holds already is a note like any other."""
    at_home(app, None)
    while (answer := _answer(what, app.wish(name))) and answer.lower() != app.wish(name).lower():
        note = message(f"setting {name} is {answer}", options.clock(), "me")
        read = app.reader(note.at).read(note.text, note.at)
        if read["ask"] is None and [fact.get("name") for fact in read["facts"]] == [name]:
            tell(app.hear(note).text)
            return
        tell(NO_SUCH_VALUE.format(answer=answer, form=form))


def _notes() -> Iterator[str]:
    """What is told of animals: each line a note, the rows of a list together; until an empty line, or nothing more comes."""
    rows: list[str] = []
    if is_typed():
        tell(ANIMALS)
    while True:
        try:
            line = _answer("", "")
        except EOFError:
            line = ""
        if sum(line.count(sign) for sign in BETWEEN) >= IN_A_ROW:
            rows.append(line)
            continue
        yield from _of_rows(rows)
        if not line and not rows:
            return
        if line:
            yield line
        rows = []


def _of_rows(rows: list[str]) -> Iterator[str]:
    """The rows as one list, or as the notes that they are."""
    from core.app.bringing import is_list  # noqa: PLC0415 - loads the store

    text = "\n".join(rows)
    yield from (text,) if is_list(text) else rows


def _answer(question: str, default: str, *, hidden: bool = False) -> str:
    """What a person answers to the question, or is piped in; EOFError where nothing more comes."""
    asked = f"{question} [{default}]: " if question else "> "
    if hidden and is_typed():
        return getpass(asked).strip()
    if is_typed():
        click.echo(asked, nl=False, err=True)
    line = sys.stdin.readline()
    if not line:
        raise EOFError
    if not is_typed():
        tell((asked if hidden else f"{asked}{line}").rstrip())
    return line.strip()


def is_typed() -> bool:
    """Whether a person sits at the keyboard."""
    return sys.stdin.isatty()


def tell(text: str) -> None:
    """A word to the person, beside what programs read."""
    if text:
        click.echo(text, err=True)
