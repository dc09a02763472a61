"""`haynote hear`: what a recording would become, without writing anything down."""

from __future__ import annotations

from contextlib import closing
from pathlib import Path
from typing import TYPE_CHECKING

import click

from bot.commands import options
from bot.commands.options import book_options, json_option, moment, opened, refuse, tell, time_of
from bot.commands.reading import from_roster
from bot.voice import ear as voice
from core.app import Message
from core.app.speaking import primer_of, told
from core.problem import Problem

if TYPE_CHECKING:
    from datetime import datetime

    from core.app.reading import Reader
    from core.app.telling import Told


@click.command(short_help="Show what a recording would become.")
@click.argument("file", type=click.Path(path_type=Path, exists=True, dir_okay=False))
@click.option(
    "--roster", "roster_file", type=click.Path(path_type=Path), metavar="FILE", help="The farm to hear for; without it, your own book."
)
@json_option
@click.option("--at", "--now", "at", metavar="TIME", help="When it was spoken (ISO 8601). Default: now.")
@book_options
def hear(file: Path, roster_file: Path | None, as_json: bool, at: str | None, book: str | None, farm: str | None) -> None:
    """Show what was said in a recording and what it would become, and write nothing down. Needs the extra 'voice'."""
    if roster_file:
        reader = from_roster(roster_file, as_json=as_json)
        sent = time_of(at, reader.timezone()) if at else options.clock()
    else:
        app = opened(book, farm, as_json=as_json)
        sent = moment(app, at)
        reader = app.reader(sent)
    found = told_of(file, reader, sent)
    if isinstance(found, Problem):
        refuse(found, as_json=as_json)
    tell(found.document, found.reply, as_json=as_json)


def told_of(file: Path, reader: Reader, sent: datetime) -> Told | Problem:
    """What the recording would become; progress with a long one goes to standard error."""
    ear = voice.ear()
    if isinstance(ear, Problem):
        return ear
    with closing(ear):
        sounds = ear.hear(file, primer_of(reader.start), progress)
    return sounds if isinstance(sounds, Problem) else told(reader.start, sounds.ears, Message("", sent), sounds.seconds)


def progress(done: float, of: float) -> None:
    """How far a long recording is."""
    if of > voice.LONG_S:
        click.echo(f"Heard {done:.0f} of {of:.0f} s.", err=True)
