"""Notes in: replaying a file of them."""

from __future__ import annotations

import json
import sys
from pathlib import Path
from typing import Any

import click

from bot.commands.options import book_options, json_option, opened, refuse, tell, why_not
from core.problem import Problem


@click.command(short_help="Take in a file of dated notes, one a line.")
@click.argument("file", type=click.Path(path_type=Path, allow_dash=True))
@click.option(
    "--roster", type=click.Path(path_type=Path), metavar="FILE", help="Begin an empty book with this roster's settings and animals."
)
@json_option
@book_options
def replay(file: Path, roster: Path | None, as_json: bool, book: str | None, farm: str | None) -> None:
    """Take in a file of dated notes, one a line: 2026-03-04 07:15 doe 14 kindled 8, 2 dead.

    Each is read as of its own time. Replaying a file twice adds nothing. Lines that ask or are not understood are listed at the end.
    """
    text = file_text(file, as_json=as_json)
    animals = None if roster is None else roster_of(roster, as_json=as_json)
    app = opened(book, farm, as_json=as_json)
    with click.progressbar(length=text.count("\n") + 1, label="Reading notes", file=sys.stderr) as bar:
        told = app.replay(text, roster=animals, progress=lambda done, _all: bar.update(done - bar.pos))
    if isinstance(told, Problem):
        refuse(told, as_json=as_json)
    tell(told.document, told.reply, as_json=as_json)


def file_text(path: Path, *, as_json: bool) -> str:
    """What the file says, or standard input for `-`; the command ends here where it can't be read."""
    try:
        return sys.stdin.read() if str(path) == "-" else path.read_text(encoding="utf-8-sig")
    except (OSError, UnicodeDecodeError) as error:
        refuse(Problem("no_file", f"{path} can't be read: {why_not(error)}.", remedy="Give a text file in UTF-8."), as_json=as_json)


def roster_of(path: Path, *, as_json: bool) -> Any:
    """The roster in the file; the command ends here where it is no JSON."""
    try:
        return json.loads(file_text(path, as_json=as_json))
    except ValueError as error:
        refuse(
            Problem("bad_roster", f"{path} is no JSON: {error}.", remedy="Give a roster: one JSON object with animals."), as_json=as_json
        )
