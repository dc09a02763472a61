"""Deleting a farm."""

from __future__ import annotations

import json
from pathlib import Path

import click

from bot.commands.exporting import whole
from bot.commands.options import book_options, moment, now_option, opened, refuse, served, why_not
from core.app.leaving import told_stays, told_when
from core.problem import Problem

#: A server would go on with the farm that it keeps in mind.
SERVED = Problem("too_early", "A server runs for this book.", remedy="Nothing was deleted. Stop 'haynote serve', and try again.")


@click.command(short_help="Delete a farm: a last archive first, then seven days to think it over.")
@click.option(
    "--last",
    type=click.Path(path_type=Path, dir_okay=False),
    metavar="FILE",
    help="Where the last archive goes. Nothing is deleted without one.",
)
@click.option("--stay", is_flag=True, help="Take it back: the farm stays.")
@now_option
@book_options
def delete(last: Path | None, stay: bool, now: str | None, book: str | None, farm: str | None) -> None:
    """Delete a farm. Asked for the first time, a last archive is made and seven days begin; asked again after them, it is deleted for good.

    Until then all goes on as ever, and --stay takes it back. Copies and backups of the book are files of yours: delete those yourself.
    """
    from bot.pictures.maker import photo_folder  # noqa: PLC0415 - few leave
    from bot.tables.zips import zipped  # noqa: PLC0415

    if stay == (last is not None):
        raise click.UsageError("say --last FILE, where the last archive goes, or --stay")
    app = opened(book, farm)
    if last is None:
        click.echo(told_stays(taken_back=app.stay()))
        return
    at = moment(app, now)
    parts = app.archive(photo_folder(app))
    try:
        whole(last, zipped(parts))
    except OSError as error:
        refuse(
            Problem(
                "no_file", f"{last} can't be written: {why_not(error)}.", remedy="Nothing was deleted. Give a place that you can write to."
            )
        )
    goes_at = app.want_to_go(at)
    if goes_at > at:
        day = told_when(goes_at, app.timezone())
        click.echo(
            f"The last archive is in {last}. The farm may be deleted from {day} on: then say this again. 'haynote delete --stay' takes it back."
        )
        return
    problem = SERVED if served(book)[1] else app.delete(at, json.loads(parts["about.json"])["notes"], photo_folder(app))
    if problem is not None:
        refuse(problem)
    click.echo(f"The farm is deleted. Its last archive is in {last}.")
