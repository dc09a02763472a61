"""Files to print or to carry off: the chores as a calendar."""

from __future__ import annotations

import sys
from pathlib import Path

import click

from bot.commands.options import book_options, json_option, moment, now_option, opened, refuse, to_line, why_not
from core.problem import Problem

out_option = click.option(
    "--out",
    type=click.Path(path_type=Path, dir_okay=False, allow_dash=True),
    metavar="FILE",
    help="Write it there; - for standard output. Default: a file of its own name in this folder.",
)


@click.command(short_help="The chores as a calendar file.")
@click.option("--days", type=click.IntRange(min=0), help="How many days ahead. Default: 14.")
@out_option
@json_option
@now_option
@book_options
def calendar(days: int | None, out: Path | None, as_json: bool, now: str | None, book: str | None, farm: str | None) -> None:
    """The chores of the coming days, overdue ones first, as a calendar file (iCalendar) with alarms.

    Taking in a newer file replaces the chores of an older one. What is done by then has to be taken off by hand.
    """
    from bot.papers.calendar import ics  # noqa: PLC0415 - loaded when it is wanted

    app = opened(book, farm, as_json=as_json)
    told = app.calendar(moment(app, now), days)
    write(ics(told), out or Path("chores.ics"), told.alt, as_json=as_json)


def write(content: bytes, path: Path, alt: str, *, as_json: bool) -> None:
    """Put the file where it is wanted, and say so; the command ends here where that can't be."""
    if str(path) == "-":
        if as_json:
            raise click.UsageError("Standard output can't hold both the file and JSON: give --out FILE.")
        click.echo(content, nl=False)
        return
    try:
        path.write_bytes(content)
    except OSError as error:
        refuse(
            Problem("no_file", f"{path} can't be written: {why_not(error)}.", remedy="Give a place that you can write to."), as_json=as_json
        )
    if as_json:
        click.echo(to_line({"file": str(path), "bytes": len(content), "text": alt}))
    else:
        click.echo(f"{alt}\nFile: {path}", file=sys.stdout)
