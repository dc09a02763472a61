"""`haynote demo`: an invented farm's season in a throw-away book, and what the program makes of it."""

from __future__ import annotations

import sys
import tempfile
from importlib.resources import files
from pathlib import Path
from typing import TYPE_CHECKING

import click

from bot.commands.options import opened
from bot.commands.talking import hold
from bot.terminal.width import on_screen
from core.problem import Problem

if TYPE_CHECKING:
    from core.app import App


@click.command(short_help="An invented season in a throw-away book: chores, digest, advice, chat.")
def demo() -> None:
    """Replay an invented season into a throw-away book; show chores, digest and advice; then chat about it."""
    with tempfile.TemporaryDirectory(prefix="haynote-", ignore_cleanup_errors=True) as folder:
        app = opened(str(Path(folder) / "demo.sqlite"), None)
        try:
            show(app)
        finally:
            app.close()


def season_of_notes() -> str:
    """The invented farm's notes, one a line."""
    return files("demo_data").joinpath("season.txt").read_text(encoding="utf-8")


def show(app: App) -> None:
    """The season taken in, what follows from it, and a chat if a person is there."""
    season = season_of_notes()
    click.echo("Reading a season of notes of an invented farm: this takes some seconds.", err=True)
    with click.progressbar(length=season.count("\n"), label="A season of notes", file=sys.stderr) as bar:
        told = app.replay(season, progress=lambda done, _all: bar.update(done - bar.pos))
    now = app.newest()
    if isinstance(told, Problem) or now is None:
        raise click.ClickException("The demo's season could not be read. Please install Haynote anew.")
    click.echo(f"{told.document['recorded']} notes of an invented farm are in a throw-away book. It is {now:%A, %d %B %Y} there.\n")
    for title, answer in (("haynote due", app.due(now, 7)), ("haynote digest", app.digest(now)), ("haynote keep", app.keep(now))):
        click.secho(f"--- {title}", bold=True)
        click.echo(on_screen(answer.reply.text) + "\n")
    if sys.stdin.isatty():
        click.echo("Ask it something: 'why 9', 'who is due this week', 'is flicker better than ember', or text a note.\n")
        hold(app, "me", now)
