"""Writing the whole book out, in the form that somebody wants."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping
from pathlib import Path
from typing import TYPE_CHECKING

import click

from bot.commands.options import book_options, opened, refuse, why_not
from core.problem import Problem
from core.words import count

if TYPE_CHECKING:
    from core.app import App

#: Forms that are no text.
FILES = ("csv", "xlsx", "archive")


@click.command(short_help="Write out the whole book: notes, tables, JSON or a journal.")
@click.option(
    "--notes", "what", flag_value="notes", default="notes", help="What stands, as dated notes that can be replayed (the default)."
)
@click.option(
    "--journal", "what", flag_value="journal", help="Everything as typed, with authors, replies, edits and undos: JSON lines for restore."
)
@click.option(
    "--csv", "what", flag_value="csv", help="Everything as tables: a folder of CSV files, or one ZIP where FILE ends so. Wants --to."
)
@click.option("--xlsx", "what", flag_value="xlsx", help="The same as a workbook with a sheet a table. Wants --to.")
@click.option("--json", "what", flag_value="json", help="What stands, as one JSON object with a published schema.")
@click.option(
    "--fam", "what", flag_value="fam", help="Who is out of whom, for genetics programs: a PLINK .fam file. Nothing else is in it."
)
@click.option(
    "--archive",
    "what",
    flag_value="archive",
    help="The whole farm, people and photos too, in one ZIP that restore takes on another machine.",
)
@click.option("--to", type=click.Path(path_type=Path), metavar="FILE", help="Write into this file. Default: standard output.")
@book_options
def export(what: str, to: Path | None, book: str | None, farm: str | None) -> None:
    """Write out the whole book: what stands, as notes that can be replayed, as tables or as JSON; or, with --journal, all that was ever typed."""
    if what in FILES and to is None:
        raise click.UsageError(f"--{what} makes no text: say where it goes, for example --to book.{'xlsx' if what == 'xlsx' else 'zip'}")
    app = opened(book, farm)
    try:
        if what in FILES and to is not None:
            write_files(app, what, to)
        else:
            with click.open_file(str(to or "-"), "w", encoding="utf-8", atomic=to is not None) as out:
                out.writelines(f"{line}\n" for line in text_of(app, what))
    except OSError as error:
        refuse(Problem("no_file", f"{to} can't be written: {why_not(error)}.", remedy="Give a place that you can write to."))


def text_of(app: App, what: str) -> Iterable[str]:
    """The book as lines of text."""
    if what == "json":
        return (json.dumps(app.export_document(), ensure_ascii=False),)
    if what == "fam":
        return app.export_fam()
    return app.export_journal() if what == "journal" else app.export_notes()


def write_files(app: App, what: str, to: Path) -> None:
    """The book as a workbook, as CSV files in a folder, or as a ZIP of these. OSError where they can't be written."""
    from bot.tables.maker import content_of, held_of  # noqa: PLC0415 - loads what makes workbooks

    if what == "xlsx":
        whole(to, content_of((what, held_of(app, what))))
        click.echo(f"The book is in {to}, a sheet a table.", err=True)
        return
    if what == "archive":
        parts = held_of(app, what)
        whole(to, content_of((what, parts)))
        click.echo(f"The farm is in {to}, {count(sum(name.startswith('photos/') for name in parts), 'photo')} with it.", err=True)
        return
    files: Mapping[str, bytes] = app.export_csv()
    if to.suffix.lower() == ".zip":
        from bot.tables.zips import zipped  # noqa: PLC0415

        whole(to, zipped(files))
    else:
        to.mkdir(parents=True, exist_ok=True)
        for name, content in files.items():
            whole(to / name, content)
    click.echo(f"The book is in {to}, {len(files)} tables.", err=True)


def whole(path: Path, content: bytes) -> None:
    """Write a file, put in place only once it is whole."""
    part = path.with_name(path.name + ".part")
    try:
        part.write_bytes(content)
        part.replace(path)
    finally:
        part.unlink(missing_ok=True)
